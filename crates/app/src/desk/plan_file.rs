//! Opening a plan.

use super::DeskError;
use super::pilot::lots_beside;
use barm_documents::plan_text::{self, Mistake, Read};
use barm_domain::pilot::Known;
use barm_domain::plan::{Plan, Question};
use std::path::{Path, PathBuf};

/// A plan that was read without mistakes.
#[derive(Debug)]
pub(crate) struct OpenPlan {
    /// The plan.
    pub(crate) plan: Plan,
    /// Its file.
    pub(crate) path: PathBuf,
}

/// A file's bytes.
pub(crate) fn bytes(path: &Path) -> Result<Vec<u8>, DeskError> {
    std::fs::read(path).map_err(|source| DeskError::Read { path: path.to_owned(), source })
}

/// Reads a plan that must be sound, with what pilots found of its lots.
pub(crate) fn open_plan(path: &Path) -> Result<OpenPlan, DeskError> {
    let mut open = sound(path, plan_text::read(&bytes(path)?))?;
    open.plan.known = Known::of(&lots_beside(path)?);
    Ok(open)
}

/// Reads a plan that must be sound, but for a bag list that may be out of step with it.
pub(crate) fn open_with_old_list(path: &Path) -> Result<OpenPlan, DeskError> {
    sound(path, plan_text::read_with_old_list(&bytes(path)?))
}

/// What was read, if it is sound.
pub(crate) fn sound(path: &Path, read: Read) -> Result<OpenPlan, DeskError> {
    match read.plan {
        Some(plan) if read.mistakes.is_empty() => Ok(OpenPlan { plan, path: path.to_owned() }),
        _ => Err(DeskError::Plan(Mistakes {
            path: path.to_owned(),
            unreadable: read.unreadable,
            mistakes: read.mistakes,
        })),
    }
}

/// The mistakes of a plan file, in the order of the file.
#[derive(Debug)]
pub(crate) struct Mistakes {
    /// The file.
    pub(crate) path: PathBuf,
    /// Whether it is no text or no TOML, so that no plan can be made out at all.
    pub(crate) unreadable: bool,
    /// Its mistakes.
    pub(crate) mistakes: Vec<Mistake>,
}

impl Mistakes {
    /// Whether the bag list is all that is wrong, so that it may only be out of step.
    pub(crate) fn only_of_the_list(&self) -> bool {
        let of_list = |mistake: &Mistake| {
            mistake.field.as_ref().is_some_and(|field| field.0.starts_with("bag["))
        };
        self.mistakes.iter().all(of_list)
    }
}

impl std::fmt::Display for Mistakes {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        let count = self.mistakes.len();
        let word = if count == 1 { "mistake" } else { "mistakes" };
        let path = self.path.display();
        if self.unreadable {
            write!(f, "{path} cannot be read as a plan: {count} {word}")?;
        } else {
            write!(f, "{path} has {count} {word}")?;
        }
        for mistake in &self.mistakes {
            write!(f, "\n{path}:{mistake}")?;
        }
        Ok(())
    }
}

/// Id and words of each question, shared controls last.
pub(crate) fn questions(plan: &Plan) -> Vec<(&str, &str)> {
    let mut questions: Vec<(&str, &str)> =
        plan.questions.iter().map(|q: &Question| (q.id.as_str(), q.asks.as_str())).collect();
    questions.push((barm_domain::plan::CONTROLS, "Shared controls"));
    questions
}

//! Opening a plan.

use super::DeskError;
use barm_documents::plan_text::{self, Mistake};
use barm_domain::plan::{Plan, Question};
use std::path::{Path, PathBuf};

/// A plan that was read without mistakes.
#[derive(Debug)]
pub(crate) struct OpenPlan {
    /// The plan.
    pub(crate) plan: Plan,
}

/// A file's bytes.
pub(crate) fn bytes(path: &Path) -> Result<Vec<u8>, DeskError> {
    std::fs::read(path).map_err(|source| DeskError::Read { path: path.to_owned(), source })
}

/// Reads a plan that must be sound.
pub(crate) fn open_plan(path: &Path) -> Result<OpenPlan, DeskError> {
    let read = plan_text::read(&bytes(path)?);
    match read.plan {
        Some(plan) if read.mistakes.is_empty() => Ok(OpenPlan { plan }),
        _ => Err(DeskError::Plan(Mistakes { path: path.to_owned(), mistakes: read.mistakes })),
    }
}

/// The mistakes of a plan file, in the order of the file.
#[derive(Debug)]
pub(crate) struct Mistakes {
    /// The file.
    pub(crate) path: PathBuf,
    /// Its mistakes.
    pub(crate) mistakes: Vec<Mistake>,
}

impl std::fmt::Display for Mistakes {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        let count = self.mistakes.len();
        let word = if count == 1 { "mistake" } else { "mistakes" };
        write!(f, "{} has {count} {word}", self.path.display())?;
        for mistake in &self.mistakes {
            write!(f, "\n{}:{mistake}", self.path.display())?;
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

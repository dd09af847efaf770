//! A new plan from a few answers, and a bag list kept in step.

use super::plan_file::{bytes, open_with_old_list};
use super::{DeskError, OpenPlan};
use barm_documents::plan_text;
use barm_domain::bag_list;
use barm_domain::plan::{Period, Plan, PlannedBag};
use barm_domain::ready::{self, Ready};
use barm_domain::starter::{self, Answers};
use barm_store::written::{WriteError, replace};
use std::fs::File;
use std::io::{self, Write};
use std::path::Path;

/// The text of a new plan with notes, its bag list written by the plain rule.
pub(crate) fn new_plan(answers: &Answers) -> Result<String, DeskError> {
    sound(plan_text::write_new(&starter::plan(answers)?))
}

/// The text of a ready plan with notes, fitted to these answers.
pub(crate) fn ready_plan(ready: Ready, answers: &ready::Answers) -> Result<String, DeskError> {
    sound(plan_text::write_new(&ready::plan(ready, answers)?))
}

/// The text, if it can be read again.
fn sound(text: String) -> Result<String, DeskError> {
    // What was answered may not exist, such as a time zone.
    let read = plan_text::read(text.as_bytes());
    // One slip comes back in every period; its first place says it all.
    match read.mistakes.into_iter().next() {
        None => Ok(text),
        Some(mistake) => Err(DeskError::Answer(mistake)),
    }
}

/// A plan whose bag list has been brought in step.
#[derive(Debug)]
pub(crate) struct Renewed {
    /// The plan with its new list.
    pub(crate) open: OpenPlan,
    /// Bags that were on the list before.
    pub(crate) before: usize,
    /// How many of them stay, label and all.
    pub(crate) stay: usize,
    /// Treatments with more bags than the plan asks for, with both numbers. Those that others are
    /// compared with are left out: groups make more of them for themselves.
    pub(crate) more: Vec<(String, usize, usize)>,
    /// Periods with groups that have nothing to make, with the number of those groups.
    pub(crate) idle: Vec<(String, usize)>,
}

/// Brings the bag list of a plan file in step with its questions, periods and groups and saves the
/// file. Bags that are still in the plan stay as they are, unless the list is to be written anew.
pub(crate) fn renew_bags(path: &Path, anew: bool) -> Result<Renewed, DeskError> {
    let mut open = open_with_old_list(path)?;
    let plan = &open.plan;
    let list = if anew { bag_list::write_anew(plan)? } else { bag_list::write(plan)? };
    let before = plan.bags.len();
    let stays = |bag: &&PlannedBag| list.bags.iter().any(|now| now.code == bag.code);
    let stay = plan.bags.iter().filter(stays).count();
    open.plan.bags = list.bags;
    open.plan.retired_codes = list.retired;
    let old = String::from_utf8_lossy(&bytes(path)?).into_owned();
    let text = plan_text::write(&open.plan, &old);
    replace(path, text.as_bytes()).map_err(|source| cannot_write(path, source))?;
    let (more, idle) = (more_than_asked(&open.plan), idle(&open.plan));
    Ok(Renewed { open, before, stay, more, idle })
}

fn more_than_asked(plan: &Plan) -> Vec<(String, usize, usize)> {
    let compared_with = |name: &str| plan.questions.iter().any(|q| plan.is_reference(q, name));
    let own = plan.questions.iter().flat_map(|question| {
        question
            .treatments
            .iter()
            .map(move |one| (&one.name, one.replicates.unwrap_or(question.replicates) as usize))
    });
    let periods = plan.periods.len();
    let shared =
        plan.controls.iter().map(|c| (&c.treatment.name, c.per_period as usize * periods));
    own.chain(shared)
        .filter(|(name, _)| !compared_with(name))
        .map(|(name, asked)| {
            let listed = plan.bags.iter().filter(|bag| bag.treatment == *name).count();
            (name.clone(), listed, asked)
        })
        .filter(|(_, listed, asked)| listed > asked)
        .collect()
}

fn idle(plan: &Plan) -> Vec<(String, usize)> {
    let of = |period: &Period| {
        let busy = |group: u32| {
            plan.bags.iter().any(|bag| bag.period == period.name && bag.group == group)
        };
        (1..=period.groups).filter(|group| !busy(*group)).count()
    };
    let counted = plan.periods.iter().map(|period| (period.name.clone(), of(period)));
    counted.filter(|(_, groups)| *groups > 0).collect()
}

/// Refuses a place for a new file that is taken, before any work is done for it. `usual` is what
/// such a file is mostly called.
pub(crate) fn must_be_free(path: &Path, usual: &'static str) -> Result<(), DeskError> {
    // A name that ends in a slash means a folder, whether or not it is there.
    let slash = path.as_os_str().to_string_lossy().ends_with(std::path::is_separator);
    if slash || path.is_dir() {
        return Err(DeskError::Folder { path: path.to_owned(), usual });
    }
    if path.exists() {
        return Err(DeskError::Taken { path: path.to_owned() });
    }
    Ok(())
}

/// Writes bytes to a file that must not be there yet.
pub(crate) fn write_new(path: &Path, bytes: &[u8]) -> Result<(), DeskError> {
    let fails = |source: io::Error| match source.kind() {
        io::ErrorKind::AlreadyExists => DeskError::Taken { path: path.to_owned() },
        _ => cannot_write(path, source),
    };
    let mut file = File::create_new(path).map_err(fails)?;
    file.write_all(bytes).and_then(|()| file.sync_all()).map_err(fails)
}

fn cannot_write(path: &Path, source: io::Error) -> DeskError {
    DeskError::Write(WriteError { doing: "write", path: path.to_owned(), source })
}

/// Writes a changed plan over its file.
pub(super) fn replace_plan(path: &Path, text: &str) -> Result<(), DeskError> {
    replace(path, text.as_bytes()).map_err(|source| cannot_write(path, source))
}

//! A new plan from a few answers, and a bag list kept in step.

use super::plan_file::{bytes, open_plan};
use super::{DeskError, OpenPlan};
use barm_documents::plan_text;
use barm_domain::bag_list;
use barm_domain::plan::Plan;
use barm_domain::starter::{self, Answers};
use barm_store::written::{WriteError, replace};
use std::fs::File;
use std::io::{self, Write};
use std::path::Path;

/// The text of a new plan with notes, its bag list written by the plain rule.
pub(crate) fn new_plan(answers: &Answers) -> Result<String, DeskError> {
    let text = plan_text::write_new(&starter::plan(answers)?);
    // What was answered may not exist, such as a time zone.
    let read = plan_text::read(text.as_bytes());
    // One slip comes back in every period; its first place says it all.
    match read.mistakes.into_iter().next() {
        None => Ok(text),
        Some(mistake) => Err(DeskError::Answer(mistake)),
    }
}

fn put_bags(plan: &mut Plan) -> Result<(), DeskError> {
    let list = bag_list::write(plan)?;
    plan.bags = list.bags;
    plan.retired_codes = list.retired;
    Ok(())
}

/// Brings the bag list of a plan file in step with its questions, periods and groups, keeping the
/// codes of bags that stay, and saves the file. Gives the plan and the numbers of bags before and
/// after.
pub(crate) fn renew_bags(path: &Path) -> Result<(OpenPlan, usize, usize), DeskError> {
    let mut open = open_plan(path)?;
    let before = open.plan.bags.len();
    put_bags(&mut open.plan)?;
    let old = String::from_utf8_lossy(&bytes(path)?).into_owned();
    let text = plan_text::write(&open.plan, &old);
    replace(path, text.as_bytes()).map_err(|source| cannot_write(path, source))?;
    let after = open.plan.bags.len();
    Ok((open, before, after))
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

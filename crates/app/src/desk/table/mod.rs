//! Any table of a teacher's: levels compared, or a curve laid through it.

mod compared;
mod failure;
mod figures;
mod fitted;
mod verdict;

pub(crate) use compared::{Compared, compare_table};
pub(crate) use failure::TableError;
pub(crate) use figures::{chance, figure};
pub(crate) use fitted::fit_table;

use super::DeskError;
use super::plan_file::bytes;
use barm_documents::columns::{Columns, Wanted, read};
use std::path::Path;

/// Reads the columns of a table.
fn columns(path: &Path, wanted: &[Wanted<'_>]) -> Result<Columns, DeskError> {
    let failed = |why| DeskError::Table { path: path.to_owned(), why };
    let of = |heading: &str| wanted.iter().filter(|one| one.heading.trim() == heading).count();
    if let Some(one) = wanted.iter().find(|one| of(one.heading.trim()) > 1) {
        return Err(failed(TableError::SameColumn { heading: one.heading.to_owned() }));
    }
    let table = read(&bytes(path)?, wanted).map_err(|why| failed(why.into()))?;
    if table.rows.is_empty() {
        return Err(failed(TableError::NoRows { left_out: table.left_out.len() }));
    }
    Ok(table)
}

/// What has to be said of how a table was read.
fn notes(table: &Columns) -> Vec<String> {
    let mut notes = table.notes.clone();
    if !table.left_out.is_empty() {
        const NAMED: usize = 8;
        let named: Vec<String> =
            table.left_out.iter().take(NAMED).map(ToString::to_string).collect();
        let more = table.left_out.len().saturating_sub(NAMED);
        let more = if more > 0 { format!(" and {more} more") } else { String::new() };
        let (s, rows) = if table.left_out.len() == 1 { ("", "A row") } else { ("s", "Rows") };
        notes.push(format!(
            "{rows} with a blank cell in one of these columns left out: line{s} {}{more}.",
            named.join(", ")
        ));
    }
    notes
}

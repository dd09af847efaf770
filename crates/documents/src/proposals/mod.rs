//! Proposals of groups as a table: one line a group, to be collected and looked through elsewhere.
//!
//! Cells that a spreadsheet would take for a formula are written with an apostrophe before them,
//! and read without it.

use crate::guard::{guarded, unguarded};
use barm_domain::nearest::{nearest, plain};
use barm_domain::proposal::Written;
use csv::WriterBuilder;

/// A proposal with the words that belong to it alone.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Row {
    /// Line of the file, from 1; 0 if it is of no file.
    pub line: u64,
    /// The proposal.
    pub written: Written,
    /// What the group expects.
    pub expects: String,
    /// Why.
    pub because: String,
}

/// Something in a table that cannot be read.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("line {line}: {what}; {fix}")]
pub struct Unread {
    /// Line of the file, from 1.
    pub line: u64,
    /// What is wrong.
    pub what: String,
    /// What to do.
    pub fix: String,
}

/// Heads of the columns, in the order in which they are written.
pub const HEADS: [&str; 10] = [
    "period",
    "group",
    "question",
    "changes",
    "levels",
    "keeps",
    "compared with",
    "bags",
    "expects",
    "because",
];

/// Columns without which nothing can be judged.
const NEEDED: [&str; 5] = ["period", "group", "changes", "levels", "compared with"];

/// Reads a table in UTF-8 with commas, semicolons or tabs. Everything wrong is named at once.
///
/// # Errors
/// Each [`Unread`] with its line.
pub fn read(bytes: &[u8]) -> Result<Vec<Row>, Vec<Unread>> {
    let wrong = |line, what: String, fix: &str| Unread { line, what, fix: fix.to_owned() };
    let (heads, mut reader) = crate::headed::opened(bytes).ok_or_else(|| {
        vec![wrong(1, "this is no text in UTF-8".into(), "save it as CSV in UTF-8")]
    })?;
    let columns = columns(&heads)?;
    let (mut rows, mut wrongs) = (Vec::new(), Vec::new());
    for record in reader.records() {
        let Ok(record) = record else {
            wrongs.push(wrong(1, "a line cannot be read".into(), "save the file as CSV again"));
            break;
        };
        let line = record.position().map_or(0, csv::Position::line);
        let cell = |head: &str| {
            let column = HEADS.iter().position(|known| *known == head);
            let at = column.and_then(|column| columns[column]);
            unguarded(at.and_then(|at| record.get(at)).unwrap_or_default())
        };
        if record.iter().all(str::is_empty) {
            continue;
        }
        let mut number = |head: &str, usual: Option<u32>| {
            let written = cell(head);
            let read = if written.is_empty() { usual } else { written.parse().ok() };
            if read.is_none() {
                let what = format!("“{written}” is no number for {head}");
                wrongs.push(wrong(line, what, "write it in figures"));
            }
            read.unwrap_or_default()
        };
        let (group, bags) = (number("group", None), number("bags", Some(2)));
        rows.push(Row {
            line,
            written: Written {
                period: cell("period").to_owned(),
                group,
                asks: cell("question").to_owned(),
                changes: cell("changes").to_owned(),
                levels: cell("levels")
                    .split('|')
                    .flat_map(|part| part.split(';'))
                    .map(|level| level.trim().to_owned())
                    .filter(|level| !level.is_empty())
                    .collect(),
                keeps: cell("keeps").to_owned(),
                beside: cell("compared with").to_owned(),
                bags,
            },
            expects: cell("expects").to_owned(),
            because: cell("because").to_owned(),
        });
    }
    if wrongs.is_empty() { Ok(rows) } else { Err(wrongs) }
}

/// Where each head of [`HEADS`] stands.
fn columns(heads: &[String]) -> Result<Vec<Option<usize>>, Vec<Unread>> {
    let at = |known: &str| heads.iter().position(|head| plain(head) == plain(known));
    let missing = NEEDED.iter().filter(|known| at(known).is_none());
    let missing: Vec<Unread> = missing
        .map(|known| {
            let near = nearest(known, heads.iter().map(String::as_str));
            let fix = near.map_or_else(
                || format!("the first line names the columns: {}", HEADS.join(", ")),
                |near| format!("call the column “{near}” so"),
            );
            Unread { line: 1, what: format!("there is no column “{known}”"), fix }
        })
        .collect();
    if missing.is_empty() {
        Ok(HEADS.iter().map(|head| at(head)).collect())
    } else {
        Err(missing)
    }
}

/// Writes proposals as a table that [`read`] reads again.
pub fn write(rows: &[Row]) -> String {
    table(rows, None)
}

/// The same of what no class did: a last column says in every line what it is, such as
/// `rehearsal`. [`read`] passes over it.
pub fn write_marked(rows: &[Row], mark: &str) -> String {
    table(rows, Some(mark))
}

fn table(rows: &[Row], mark: Option<&str>) -> String {
    let mut writer = WriterBuilder::new().from_writer(Vec::new());
    // Writing to memory does not fail.
    let _ = writer.write_record(HEADS.into_iter().chain(mark.map(|_| "made up")));
    for row in rows {
        let written = &row.written;
        let cells = [
            written.period.clone(),
            written.group.to_string(),
            written.asks.clone(),
            written.changes.clone(),
            written.levels.join("; "),
            written.keeps.clone(),
            written.beside.clone(),
            written.bags.to_string(),
            row.expects.clone(),
            row.because.clone(),
        ];
        let cells = cells.iter().map(String::as_str).chain(mark);
        let _ = writer.write_record(cells.map(guarded));
    }
    writer.into_inner().ok().and_then(|bytes| String::from_utf8(bytes).ok()).unwrap_or_default()
}

//! Any table with a line of headings: the columns that are asked for, cell by cell.
//!
//! Comma, semicolon, tab or bar between cells; UTF-8, UTF-16 or Windows-1252; quoted cells; decimal
//! commas. Headings may stand under a title.

mod number;

use crate::readings::quoted::quoted;
use crate::readings::table::{DELIMITERS, Row, first_rows, named_delimiter, rows};
use crate::readings::text::decode;
use barm_domain::nearest::{nearest, plain};
use number::Decimals;

/// Rows at the top among which headings are looked for.
const TOP: usize = 30;
/// Cells that are named where many are wrong.
const NAMED: usize = 5;

/// A column that is asked for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Wanted<'a> {
    /// Its heading.
    pub heading: &'a str,
    /// Whether its cells must be numbers.
    pub number: bool,
}

/// The columns that were asked for, row by row.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Columns {
    /// Headings as they stand in the table, in the order in which they were asked for.
    pub headings: Vec<String>,
    /// Complete rows.
    pub rows: Vec<Cells>,
    /// Lines of rows that were left out because one of these cells is blank.
    pub left_out: Vec<u64>,
    /// What a person should know about how the table was read.
    pub notes: Vec<String>,
}

/// One row.
#[derive(Debug, Clone, PartialEq)]
pub struct Cells {
    /// Its line in the file, from 1.
    pub line: u64,
    /// Its texts, without the blanks around them: the columns that need not be numbers, in order.
    pub texts: Vec<String>,
    /// Its numbers: the columns that must be, in order.
    pub numbers: Vec<f64>,
}

/// Why a table cannot be read.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[non_exhaustive]
pub enum ColumnsError {
    /// Nothing in it.
    #[error("the file is empty")]
    Empty,
    /// A heading is not there.
    #[error("there is no column {} ({meant})", quoted(heading))]
    NoColumn {
        /// The heading that was asked for.
        heading: String,
        /// What was meant, or what there is.
        meant: String,
    },
    /// A heading is there twice.
    #[error("two columns are called {}; give one of them another name", quoted(heading))]
    Twice {
        /// The heading.
        heading: String,
    },
    /// A quotation mark that is never closed, so that the rest of the file is one cell.
    #[error(
        "line {line}: a quotation mark is opened there and never closed, so the rest of the table cannot be told; close it or take it out"
    )]
    OpenQuote {
        /// Line on which that row starts.
        line: u64,
    },
    /// A row with more cells than there are headings.
    #[error(
        "line {line} has more cells than there are headings; a decimal comma in a table that commas part looks like this: write a point, or part the cells by semicolons"
    )]
    TooWide {
        /// Its line.
        line: u64,
    },
    /// Cells of a column of numbers that are none.
    #[error("{}", .0.join("\n  "))]
    NotNumbers(Vec<String>),
}

/// Reads the columns asked for; any bytes give an answer.
///
/// A row with a blank cell in one of them (nothing, or a mark such as `NA` in a column of numbers) is
/// left out and listed. A row in which all of them are blank is no row.
///
/// # Errors
/// [`ColumnsError`] for a table without them, and for numbers that are none, all at once.
pub fn read(bytes: &[u8], wanted: &[Wanted<'_>]) -> Result<Columns, ColumnsError> {
    let decoded = decode(bytes);
    let text = &decoded.text;
    let Some((delimiter, from, places)) = find(text, wanted)? else {
        return Err(ColumnsError::Empty);
    };
    let all = rows(text, delimiter);
    let heads = all[from].cells.clone();
    let body: Vec<&Row> = all[from + 1..].iter().filter(|row| !row.is_blank()).collect();
    checked(text, &heads, &body)?;
    let mut read = Columns {
        headings: places.iter().map(|&at| heads[at].clone()).collect(),
        notes: decoded.note.into_iter().collect(),
        ..Columns::default()
    };
    let decimals: Vec<Decimals> =
        places.iter().map(|&at| Decimals::of(body.iter().map(|row| row.cell(at)))).collect();
    let mut wrong = Vec::new();
    for row in body {
        let blank = |(at, wanted): (&usize, &Wanted<'_>)| {
            let cell = row.cell(*at);
            cell.is_empty() || (wanted.number && number::is_blank(cell))
        };
        let blanks = places.iter().zip(wanted).filter(|one| blank((one.0, one.1))).count();
        if blanks == wanted.len() {
            continue;
        }
        if blanks > 0 {
            read.left_out.push(row.line);
            continue;
        }
        let mut cells = Cells { line: row.line, texts: Vec::new(), numbers: Vec::new() };
        for ((&at, wanted), decimals) in places.iter().zip(wanted).zip(&decimals) {
            let cell = row.cell(at);
            if !wanted.number {
                cells.texts.push(cell.to_owned());
                continue;
            }
            match decimals.number(cell) {
                Ok(number) => cells.numbers.push(number),
                Err(why) => wrong.push(format!(
                    "line {}, column {}: {} {why}",
                    row.line,
                    quoted(wanted.heading),
                    quoted(cell)
                )),
            }
        }
        read.rows.push(cells);
    }
    if wrong.is_empty() { Ok(read) } else { Err(ColumnsError::NotNumbers(few(wrong))) }
}

/// Refuses rows of which nobody knows how they are meant.
fn checked(text: &str, heads: &[String], body: &[&Row]) -> Result<(), ColumnsError> {
    let breaks = |cell: &String| cell.contains(['\n', '\r']);
    if let Some(last) = body.last().filter(|row| row.cells.iter().any(breaks))
        && text.matches('"').count() % 2 == 1
    {
        return Err(ColumnsError::OpenQuote { line: last.line });
    }
    let beyond = |row: &&&Row| row.cells.iter().skip(heads.len()).any(|cell| !cell.is_empty());
    match body.iter().find(beyond) {
        Some(row) => Err(ColumnsError::TooWide { line: row.line }),
        None => Ok(()),
    }
}

/// The first few, and how many more there are.
fn few(mut wrong: Vec<String>) -> Vec<String> {
    let more = wrong.len().saturating_sub(NAMED);
    if more > 0 {
        wrong.truncate(NAMED);
        wrong.push(format!("and {more} more like these"));
    }
    wrong
}

/// Delimiter, row of the headings and place of each column; nothing for an empty file.
#[allow(clippy::type_complexity, reason = "three parts of one place")]
fn find(
    text: &str,
    wanted: &[Wanted<'_>],
) -> Result<Option<(u8, usize, Vec<usize>)>, ColumnsError> {
    let named = named_delimiter(text);
    let after = usize::from(named.is_some());
    let delimiters = named.map_or(DELIMITERS.to_vec(), |delimiter| vec![delimiter]);
    let mut best: Option<(usize, ColumnsError)> = None;
    for delimiter in delimiters {
        let top = first_rows(text, delimiter, TOP);
        for (at, row) in top.iter().enumerate().skip(after).filter(|(_, row)| !row.is_blank()) {
            let found: Vec<_> =
                wanted.iter().map(|one| place(&row.cells, one.heading)).collect();
            let there = found.iter().filter(|one| one.is_ok()).count();
            match found.into_iter().collect::<Result<Vec<usize>, ColumnsError>>() {
                Ok(places) => return Ok(Some((delimiter, at, places))),
                // A row that has more of the headings, or more cells, says better what is missing.
                Err(why) => {
                    let worth = there * 1_000 + row.cells.len().min(999);
                    if best.as_ref().is_none_or(|(most, _)| worth > *most) {
                        best = Some((worth, why));
                    }
                }
            }
        }
    }
    best.map_or(Ok(None), |(_, why)| Err(why))
}

/// Where a heading stands: as written, else by its letters and digits alone.
fn place(heads: &[String], heading: &str) -> Result<usize, ColumnsError> {
    let wanted = heading.trim();
    let as_written = |head: &String| head == wanted;
    let alike = |head: &String| !plain(wanted).is_empty() && plain(head) == plain(wanted);
    for same in [&as_written as &dyn Fn(&String) -> bool, &alike] {
        let mut found = heads.iter().enumerate().filter(|(_, head)| same(head));
        match (found.next(), found.next()) {
            (Some((at, _)), None) => return Ok(at),
            (Some(_), Some(_)) => {
                return Err(ColumnsError::Twice { heading: heading.to_owned() });
            }
            (None, _) => {}
        }
    }
    let meant = match nearest(wanted, heads.iter().map(String::as_str)) {
        Some(near) => format!("did you mean {}?", quoted(near)),
        None => {
            let named = heads.iter().filter(|head| !head.is_empty()).take(12);
            let named: Vec<String> = named.map(|head| quoted(head)).collect();
            format!("there are {}", named.join(", "))
        }
    };
    Err(ColumnsError::NoColumn { heading: heading.to_owned(), meant })
}

#[cfg(test)]
mod tests;

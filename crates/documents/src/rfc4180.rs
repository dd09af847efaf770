//! Tables with commas, read to the letter (RFC 4180): for files that programs write for programs.
//!
//! What people type is read by `readings` and others with good will; here a file that is not quite
//! right is refused, for a guess could put one student in place of another. Cells of columns that
//! nobody asked for are dropped as they are read.

use crate::bundle::Refused;
use crate::readings::quoted::quoted;

/// A column by its head.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Column {
    /// Its head; capitals do not matter.
    pub(crate) head: &'static str,
    /// Whether a table without it is refused.
    pub(crate) needed: bool,
}

/// A column that must be there.
pub(crate) const fn needed(head: &'static str) -> Column {
    Column { head, needed: true }
}

/// A column that is read where it is there.
pub(crate) const fn welcome(head: &'static str) -> Column {
    Column { head, needed: false }
}

/// A row: its line, and the cells of the columns that were asked for, in that order.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Row {
    /// Line of the file on which it begins, from 1.
    pub(crate) line: u64,
    cells: Vec<String>,
}

impl Row {
    /// The cell of a column, blank where there is none.
    pub(crate) fn cell(&self, column: usize) -> &str {
        self.cells.get(column).map_or("", String::as_str)
    }
}

/// Reads those columns of a table, in any order and among others.
///
/// # Errors
/// [`Refused`] for text that is no UTF-8, for other separators, for rows of another length, for
/// quotation marks that do not close, and for columns that are missing or stand there twice.
pub(crate) fn read(file: &str, bytes: &[u8], columns: &[Column]) -> Result<Vec<Row>, Refused> {
    let text = text(file, bytes)?;
    let mut parser = Parser { file, text, at: 0, line: 1 };
    let heads = parser.record()?.map(|(_, cells)| cells).unwrap_or_default();
    let places = places(file, &heads, columns)?;
    let mut rows = Vec::new();
    while let Some((line, mut cells)) = parser.record()? {
        if heads.len() > 1 && cells.len() == 1 && cells[0].is_empty() {
            continue;
        }
        if cells.len() != heads.len() {
            let (cells, heads) = (cells.len(), heads.len());
            let what = format!("there are {cells} cells under {heads} heads");
            return Err(Refused::of(file, what, "export the file again").on(line));
        }
        let taken = places.iter().map(|place| {
            place.and_then(|at| cells.get_mut(at)).map(std::mem::take).unwrap_or_default()
        });
        rows.push(Row { line, cells: taken.collect() });
    }
    Ok(rows)
}

/// The text of a file in UTF-8, without a mark before it.
pub(crate) fn text<'a>(file: &str, bytes: &'a [u8]) -> Result<&'a str, Refused> {
    let fix = "export or save it in UTF-8";
    if bytes.starts_with(&[0xff, 0xfe]) || bytes.starts_with(&[0xfe, 0xff]) {
        return Err(Refused::of(file, "the file is written in UTF-16", fix));
    }
    let bytes = bytes.strip_prefix(b"\xef\xbb\xbf").unwrap_or(bytes);
    let line =
        |end: usize| bytes[..end].iter().filter(|byte| **byte == b'\n').count() as u64 + 1;
    if let Some(at) = bytes.iter().position(|byte| *byte == 0) {
        return Err(Refused::of(file, "there is a NUL, which no text has", fix).on(line(at)));
    }
    std::str::from_utf8(bytes).map_err(|error| {
        let at = line(error.valid_up_to());
        Refused::of(file, "a sign is not written in UTF-8", fix).on(at)
    })
}

/// Where each column stands.
fn places(
    file: &str,
    heads: &[String],
    columns: &[Column],
) -> Result<Vec<Option<usize>>, Refused> {
    let is = |head: &str, known: &str| head.trim().eq_ignore_ascii_case(known);
    let mut places = Vec::new();
    let mut missing = Vec::new();
    for column in columns {
        let mut found = (0..heads.len()).filter(|at| is(&heads[*at], column.head));
        let place = found.next();
        if found.next().is_some() {
            let what = format!("the column “{}” stands there twice", column.head);
            return Err(Refused::of(file, what, "export the file again").on(1));
        }
        if place.is_none() && column.needed {
            missing.push(column.head);
        }
        places.push(place);
    }
    if missing.is_empty() {
        return Ok(places);
    }
    let other = [(';', "semicolons"), ('\t', "tabs"), ('|', "bars")];
    let parted = |sign: char| {
        let parts = |head: &String| {
            head.split(sign).any(|part| columns.iter().any(|c| is(part, c.head)))
        };
        heads.iter().filter(|head| head.contains(sign)).any(parts)
    };
    if let Some((_, called)) = other.into_iter().find(|(sign, _)| parted(*sign)) {
        let what = format!("its cells are parted by {called}, not by commas");
        return Err(Refused::of(file, what, "save it as CSV with commas").on(1));
    }
    let what = if heads.is_empty() {
        "the file is empty".to_owned()
    } else {
        let columns = if missing.len() == 1 { "column" } else { "columns" };
        format!("there is no {columns} “{}”", missing.join("”, “"))
    };
    Err(Refused::of(file, what, "export it with all its columns").on(1))
}

/// A text and how far it was read.
struct Parser<'a> {
    file: &'a str,
    text: &'a str,
    at: usize,
    line: u64,
}

impl Parser<'_> {
    fn byte(&self) -> Option<u8> {
        self.text.as_bytes().get(self.at).copied()
    }

    /// The next row with the line on which it begins; nothing at the end.
    fn record(&mut self) -> Result<Option<(u64, Vec<String>)>, Refused> {
        if self.byte().is_none() {
            return Ok(None);
        }
        let line = self.line;
        let mut cells = Vec::new();
        loop {
            let cell = if self.byte() == Some(b'"') { self.quoted()? } else { self.bare()? };
            cells.push(cell);
            match self.byte() {
                Some(b',') => self.at += 1,
                Some(b'\r' | b'\n') => {
                    self.end_of_line();
                    break;
                }
                Some(_) => {
                    let what = "something stands behind a closing quotation mark";
                    return Err(self.wrong(what));
                }
                None => break,
            }
        }
        Ok(Some((line, cells)))
    }

    fn bare(&mut self) -> Result<String, Refused> {
        let rest = &self.text[self.at..];
        let end = rest.find([',', '\r', '\n']).unwrap_or(rest.len());
        let cell = &rest[..end];
        if cell.contains('"') {
            let what = format!("there is a quotation mark inside of {}", quoted(cell));
            return Err(self.wrong(&what));
        }
        let cell = cell.to_owned();
        self.at += end;
        Ok(cell)
    }

    fn quoted(&mut self) -> Result<String, Refused> {
        let from = self.line;
        let mut cell = String::new();
        self.at += 1;
        loop {
            let rest = &self.text[self.at..];
            let Some(end) = rest.find('"') else {
                let what = "a quotation mark is opened and never closed";
                return Err(self.wrong(what).on(from));
            };
            cell.push_str(&rest[..end]);
            self.line += lines(&rest[..end]);
            self.at += end + 1;
            if self.byte() != Some(b'"') {
                return Ok(cell);
            }
            cell.push('"');
            self.at += 1;
        }
    }

    fn end_of_line(&mut self) {
        let both = self.text[self.at..].starts_with("\r\n");
        self.at += if both { 2 } else { 1 };
        self.line += 1;
    }

    fn wrong(&self, what: &str) -> Refused {
        Refused::of(self.file, what, "export the file again as CSV").on(self.line)
    }
}

/// Line ends of a text: `\r\n`, `\n` and a lone `\r` each are one.
fn lines(text: &str) -> u64 {
    let (returns, feeds) = (text.matches('\r').count(), text.matches('\n').count());
    (returns + feeds - text.matches("\r\n").count()) as u64
}

/// A table as it is read here: commas, `\r\n`, and quotation marks where they are needed.
pub(crate) fn write<'a, Cells>(heads: &[&str], rows: impl Iterator<Item = Cells>) -> Vec<u8>
where
    Cells: IntoIterator<Item = std::borrow::Cow<'a, str>>,
{
    let mut writer =
        csv::WriterBuilder::new().terminator(csv::Terminator::CRLF).from_writer(Vec::new());
    // Writing to memory does not fail.
    let _ = writer.write_record(heads);
    for row in rows {
        let cells: Vec<_> = row.into_iter().collect();
        let _ = writer.write_record(cells.iter().map(|cell| cell.as_bytes()));
    }
    writer.into_inner().unwrap_or_default()
}

#[cfg(test)]
mod tests;

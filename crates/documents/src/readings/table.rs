//! Text as rows of cells with their line numbers.

use csv::{ReaderBuilder, StringRecord, Trim};
use std::ops::Range;

/// One row of a file.
pub(crate) struct Row {
    /// Line of the file on which it starts, from 1.
    pub(crate) line: u64,
    /// Its cells, without the blanks around them.
    pub(crate) cells: Vec<String>,
    /// The bytes of the text on which it stands.
    span: Range<usize>,
    /// Whether quotation marks were read as ordinary signs.
    bare_quotes: bool,
}

impl Row {
    /// The cell of that column; a row that is too short has blank cells there.
    pub(crate) fn cell(&self, column: usize) -> &str {
        self.cells.get(column).map_or("", String::as_str)
    }

    /// Whether a cell has a quotation mark of which nobody knows whether it means inches or closes
    /// a cell.
    pub(crate) fn has_stray_quote(&self, column: usize) -> bool {
        self.bare_quotes && self.cell(column).contains('"')
    }

    /// Whether nothing stands in it.
    pub(crate) fn is_blank(&self) -> bool {
        self.cells.iter().all(String::is_empty)
    }
}

/// The signs that part cells, in the order in which a tie between them is settled.
pub(crate) const DELIMITERS: [u8; 4] = [b',', b';', b'\t', b'|'];

/// The delimiter that a first line such as `sep=;` names: some spreadsheets write one, and it
/// is no row.
pub(crate) fn named_delimiter(text: &str) -> Option<u8> {
    let first = text.split(['\r', '\n']).next()?.trim_matches(['"', ' ']);
    let sign = first.strip_prefix("sep=").or_else(|| first.strip_prefix("SEP="))?;
    DELIMITERS.into_iter().find(|&delimiter| sign.as_bytes() == [delimiter])
}

/// The first rows of a text, to see what they look like under a delimiter.
pub(crate) fn first_rows(text: &str, delimiter: u8, most: usize) -> Vec<Row> {
    Parting { text, first_line: 1, delimiter, quoting: true, most }.rows()
}

/// Parts a whole text into rows (RFC 4180 with any delimiter, ragged rows, any line ending).
pub(crate) fn rows(text: &str, delimiter: u8) -> Vec<Row> {
    first_rows(text, delimiter, usize::MAX)
}

/// Parts the lines of a row one by one, with quotation marks as ordinary signs: what a row means
/// in which a quotation mark was never closed.
pub(crate) fn line_by_line(text: &str, delimiter: u8, row: &Row) -> Vec<Row> {
    let text = text.get(row.span.clone()).unwrap_or_default();
    let (first_line, most) = (row.line, usize::MAX);
    Parting { text, first_line, delimiter, quoting: false, most }.rows()
}

/// One way of parting a text.
struct Parting<'a> {
    text: &'a str,
    /// Line of the file on which the text starts.
    first_line: u64,
    delimiter: u8,
    quoting: bool,
    most: usize,
}

impl Parting<'_> {
    fn rows(&self) -> Vec<Row> {
        let lines = LineStarts::of(self.text);
        let bytes = self.text.as_bytes();
        let mut reader = ReaderBuilder::new()
            .has_headers(false)
            .flexible(true)
            .trim(Trim::All)
            .quoting(self.quoting)
            .delimiter(self.delimiter)
            .from_reader(bytes);
        let mut record = StringRecord::new();
        let mut rows = Vec::new();
        let place = |byte: u64| usize::try_from(byte).unwrap_or(usize::MAX).min(bytes.len());
        // Reading from memory, and text that is valid UTF-8, leaves no error to happen.
        while rows.len() < self.most && reader.read_record(&mut record).unwrap_or(false) {
            let start = place(record.position().map_or(0, csv::Position::byte));
            // Blank lines are counted to the record that follows them.
            let blank = |byte: &&u8| matches!(byte, b'\n' | b'\r');
            let start = start + bytes[start..].iter().take_while(blank).count();
            rows.push(Row {
                line: self.first_line + lines.before(start),
                cells: record.iter().map(|cell| self.cell(cell)).collect(),
                span: start..place(reader.position().byte()),
                bare_quotes: !self.quoting,
            });
        }
        rows
    }

    fn cell(&self, cell: &str) -> String {
        let inside = cell.strip_prefix('"').and_then(|rest| rest.strip_suffix('"'));
        match inside {
            Some(inside) if !self.quoting => inside.trim().to_owned(),
            _ => cell.to_owned(),
        }
    }
}

/// Where the lines of a text start, counted as an editor counts them: `\r\n`, `\n` and a lone
/// `\r` each end a line.
struct LineStarts(Vec<usize>);

impl LineStarts {
    fn of(text: &str) -> Self {
        let bytes = text.as_bytes();
        let ends = (0..bytes.len()).filter(|&at| match bytes[at] {
            b'\n' => true,
            b'\r' => bytes.get(at + 1) != Some(&b'\n'),
            _ => false,
        });
        Self(std::iter::once(0).chain(ends.map(|at| at + 1)).collect())
    }

    /// How many line ends stand before that byte.
    fn before(&self, byte: usize) -> u64 {
        self.0.partition_point(|&start| start <= byte) as u64 - 1
    }
}

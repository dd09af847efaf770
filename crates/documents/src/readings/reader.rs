//! One table after another, down the rows of a file.

use super::codes::Codes;
use super::heading::Column;
use super::row::Taking;
use super::sheet::{Layout, Sheet};
use super::table::{Row, line_by_line};
use super::time::TimeColumn;
use barm_domain::reading::Rejected;

/// Where in the file the reading is, and under which headings.
pub(super) struct Reader<'a> {
    text: &'a str,
    delimiter: u8,
    codes: &'a Codes<'a>,
    sheet: Sheet,
    times: Option<(usize, TimeColumn)>,
}

impl<'a> Reader<'a> {
    /// At the first line of headings.
    pub(super) fn new(
        text: &'a str,
        delimiter: u8,
        codes: &'a Codes<'a>,
        sheet: Sheet,
    ) -> Self {
        Self { text, delimiter, codes, sheet, times: None }
    }

    /// Reads the rows under the headings.
    pub(super) fn rows(&mut self, rows: &[Row], taking: &mut Taking<'_>) {
        self.times = self.sheet.times(rows);
        taking.start(&self.sheet, self.times);
        for (place, row) in rows.iter().enumerate().filter(|(_, row)| !row.is_blank()) {
            match self.swallowed(row) {
                Some(lines) => {
                    taking.notes.push(format!(
                        "A quotation mark on line {} is not closed there, so {} lines from it on \
                         were read one by one.",
                        row.line,
                        lines.len()
                    ));
                    for line in lines.iter().filter(|line| !line.is_blank()) {
                        taking.row(line, &self.sheet, self.times);
                    }
                }
                None => self.row(row, &rows[place..], taking),
            }
        }
    }

    /// Lists the rows under the headings, each for that reason.
    pub(super) fn reject(&self, rows: &[Row], reason: &str, taking: &mut Taking<'_>) {
        for row in rows.iter().filter(|row| !row.is_blank()) {
            taking.reject_row(row, &self.sheet, reason);
        }
    }

    fn row(&mut self, row: &Row, from_here: &[Row], taking: &mut Taking<'_>) {
        match Sheet::of(row, self.codes) {
            Some(again) if again.columns == self.sheet.columns => {
                let reason =
                    format!("this line repeats the headings of line {}", self.sheet.line);
                taking.rejected.push(Rejected { line: row.line, reason });
            }
            Some(other) => {
                let line = row.line;
                taking.notes.push(format!("From line {line} on the columns are others."));
                self.sheet = other;
                self.times = self.sheet.times(from_here);
                taking.start(&self.sheet, self.times);
            }
            None => taking.row(row, &self.sheet, self.times),
        }
    }

    /// The single lines of a row whose cells run over several lines, if they are rows themselves:
    /// an inch mark at the start of a cell swallows all rows up to the next quotation mark.
    fn swallowed(&self, row: &Row) -> Option<Vec<Row>> {
        if !row.cells.iter().any(|cell| cell.contains(['\r', '\n'])) {
            return None;
        }
        let bag = self.sheet.place(|column| *column == Column::Bag);
        let whole = |line: &Row| {
            let known = bag.is_some_and(|at| self.codes.exact(line.cell(at)).is_some());
            line.cells.len() >= self.sheet.headings.len()
                && (known || self.sheet.layout == Layout::BagsAcross)
        };
        let lines = line_by_line(self.text, self.delimiter, row);
        let rows = lines.first().is_some_and(whole) && lines.iter().skip(1).any(whole);
        rows.then_some(lines)
    }
}

//! What the columns of a file hold.

use super::codes::Codes;
use super::heading::{Column, column};
use super::headless;
use super::table::{DELIMITERS, Row, first_rows};
use super::time::{TimeColumn, is_stopwatch_start};

/// How a file is laid out.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Layout {
    /// One row a reading.
    Long,
    /// One row a bag, one column a time.
    Wide,
    /// One row a time, one column a bag.
    BagsAcross,
    /// One row a bag at the breath meter, without heights.
    Metered,
}

/// The columns under one line of headings.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Sheet {
    /// The line of the headings.
    pub(super) line: u64,
    /// The headings as written.
    pub(super) headings: Vec<String>,
    /// What each column holds.
    pub(super) columns: Vec<Column>,
    /// The layout.
    pub(super) layout: Layout,
}

/// Rows that are looked at to find the headings.
const SEARCHED: usize = 60;

impl Sheet {
    /// The columns that a row names, if it is a row of headings.
    pub(super) fn of(row: &Row, codes: &Codes<'_>) -> Option<Self> {
        let stopwatch = row.cells.iter().any(|cell| is_stopwatch_start(cell));
        let colons = if stopwatch { TimeColumn::Minutes } else { TimeColumn::Either };
        let mut columns: Vec<Column> =
            row.cells.iter().map(|heading| column(heading, colons)).collect();
        keep_first(&mut columns, |column| matches!(column, Column::Bag));
        keep_first(&mut columns, |column| matches!(column, Column::Period));
        keep_first(&mut columns, |column| matches!(column, Column::Unit));
        keep_first(&mut columns, |column| matches!(column, Column::Meter));
        keep_first(&mut columns, |column| matches!(column, Column::Turn));
        keep_best_time(&mut columns);
        let has = |is: fn(&Column) -> bool| columns.iter().any(is);
        let layout = if has(|c| matches!(c, Column::Bag)) {
            let long = has(|c| matches!(c, Column::Time(_)))
                && has(|c| matches!(c, Column::Height(_)));
            let wide = has(|c| matches!(c, Column::At(..) | Column::Zero(_)));
            let metered = has(|c| matches!(c, Column::Meter));
            match (long, wide) {
                (true, _) => Layout::Long,
                (false, true) => Layout::Wide,
                (false, false) if metered => Layout::Metered,
                (false, false) => return None,
            }
        } else if has(|c| matches!(c, Column::Time(_))) {
            name_bags(&mut columns, &row.cells, codes);
            Layout::BagsAcross
        } else {
            return None;
        };
        if layout == Layout::BagsAcross
            && !columns.iter().any(|c| matches!(c, Column::OfBag(..)))
        {
            return None;
        }
        Some(Self { line: row.line, headings: row.cells.clone(), columns, layout })
    }

    /// The column that holds what `is` asks for.
    pub(super) fn place(&self, is: impl Fn(&Column) -> bool) -> Option<usize> {
        self.columns.iter().position(is)
    }

    /// How the times of a column of times are to be read, after a look at its cells.
    pub(super) fn times(&self, rows: &[Row]) -> Option<(usize, TimeColumn)> {
        let place = self.place(|column| matches!(column, Column::Time(_)))?;
        let Column::Time(kind) = self.columns[place] else { return None };
        let stopwatch = kind == TimeColumn::Either
            && rows.iter().any(|row| is_stopwatch_start(row.cell(place)));
        Some((place, if stopwatch { TimeColumn::Minutes } else { kind }))
    }

    fn known(&self) -> usize {
        self.columns.iter().filter(|column| **column != Column::Unused).count()
    }
}

/// The first row of headings among the first rows of a file, by its place among them.
pub(super) fn find(rows: &[Row], codes: &Codes<'_>) -> Option<(usize, Sheet)> {
    rows.iter()
        .take(SEARCHED)
        .enumerate()
        .find_map(|(place, row)| Sheet::of(row, codes).map(|sheet| (place, sheet)))
}

/// The delimiter under which the most headings are known, or, without any, under which the columns
/// tell what they hold.
pub(super) fn delimiter(text: &str, codes: &Codes<'_>, interval_min: f64) -> u8 {
    let known = |delimiter: u8| {
        find(&first_rows(text, delimiter, SEARCHED), codes)
            .map_or(0, |(_, sheet)| sheet.known())
    };
    let mut best = (DELIMITERS[0], 0);
    for delimiter in DELIMITERS {
        let known = known(delimiter);
        if known > best.1 {
            best = (delimiter, known);
        }
    }
    let tells = |delimiter: &u8| {
        headless::sheet(&first_rows(text, *delimiter, SEARCHED), codes, interval_min).is_some()
    };
    if best.1 == 0 {
        best.0 = DELIMITERS.into_iter().find(tells).unwrap_or(best.0);
    }
    best.0
}

/// Leaves only the first of the columns that `is` asks for.
fn keep_first(columns: &mut [Column], is: fn(&Column) -> bool) {
    for column in columns.iter_mut().filter(|column| is(column)).skip(1) {
        *column = Column::Unused;
    }
}

/// Leaves one column of times: minutes before seconds before either before times of day.
fn keep_best_time(columns: &mut [Column]) {
    let rank = |column: &Column| match column {
        Column::Time(TimeColumn::Minutes) => 0,
        Column::Time(TimeColumn::Seconds) => 1,
        Column::Time(TimeColumn::Either) => 2,
        Column::Time(TimeColumn::Clock) => 3,
        _ => 4,
    };
    let best = columns.iter().enumerate().min_by_key(|(_, column)| rank(column));
    let Some(best) = best.map(|(place, _)| place) else { return };
    for (place, column) in columns.iter_mut().enumerate() {
        if matches!(column, Column::Time(_)) && place != best {
            *column = Column::Unused;
        }
    }
}

/// Turns columns that are headed by a bag's code into columns of that bag.
fn name_bags(columns: &mut [Column], headings: &[String], codes: &Codes<'_>) {
    for (column, heading) in columns.iter_mut().zip(headings) {
        if matches!(column, Column::Unused | Column::At(..))
            && let Some(bag) = codes.exact(heading)
        {
            *column = Column::OfBag(bag, None);
        }
    }
}

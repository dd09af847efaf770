//! Minutes under the heading of heights, and heights under that of minutes.

use super::codes::Codes;
use super::evidence::Evidence;
use super::heading::Column;
use super::quoted::quoted;
use super::sheet::{Layout, Sheet};
use super::table::Row;

/// Two columns whose cells belong under each other's heading.
pub(super) struct Swapped {
    minute: String,
    height: String,
}

impl Swapped {
    /// Whether the two columns of a sheet are evidently swapped.
    ///
    /// Nothing hangs on it but how it is said: without a zero reading no bag could be compared.
    pub(super) fn find(
        rows: &[Row],
        sheet: &Sheet,
        codes: &Codes<'_>,
        interval_min: f64,
    ) -> Option<Self> {
        let heights = sheet.columns.iter().filter(|column| column.holds_heights()).count();
        if sheet.layout != Layout::Long || heights != 1 {
            return None;
        }
        let bag = sheet.place(|column| *column == Column::Bag)?;
        let minute = sheet.place(|column| matches!(column, Column::Time(_)))?;
        let height = sheet.place(|column| matches!(column, Column::Height(_)))?;
        let evidence = |column: usize| Evidence::of(rows, bag, column, codes, interval_min);
        // Headings of another kind further down would be judged by the wrong columns.
        let other = |row: &Row| {
            Sheet::of(row, codes).is_some_and(|again| again.columns != sheet.columns)
        };
        let swapped = evidence(minute).holds_heights()
            && evidence(height).counts_minutes()
            && !rows.iter().any(other);
        let heading = |place: usize| quoted(&sheet.headings[place]);
        swapped.then(|| Self { minute: heading(minute), height: heading(height) })
    }

    /// Why one row was not taken.
    pub(super) fn reason(&self) -> String {
        let Self { minute, height } = self;
        format!(
            "{minute} holds what looks like a height, and {height} what looks like a minute"
        )
    }

    /// What happened and what to do.
    pub(super) fn said(&self, rows: usize) -> String {
        let Self { minute, height } = self;
        format!(
            "The columns {minute} and {height} look swapped, so none of the {rows} rows was taken: \
             write each heading over its own numbers and read the file again."
        )
    }
}

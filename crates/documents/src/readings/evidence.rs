//! What a column of numbers holds, told from the numbers alone.

use super::codes::Codes;
use super::height::{HeightCell, height};
use super::table::Row;
use super::time::{TimeColumn, When, time};
use std::collections::BTreeMap;

/// What speaks for minutes and what for heights in one column.
#[derive(Debug, Default)]
pub(super) struct Evidence {
    /// Cells in which something stands.
    cells: usize,
    /// Those that may be minutes.
    minutes: usize,
    /// Those that may be heights.
    heights: usize,
    /// Those that name a unit of length.
    lengths: usize,
    /// Those whose number is a minute at which the plan has bags read.
    planned: usize,
    /// Bags with two numbers or more.
    bags: usize,
    /// Those among them that have a 0.
    with_zero: usize,
    /// Those among them that have a 0 and no number twice, as minutes must.
    counting: usize,
}

/// Share that is nearly all.
const NEARLY_ALL: f64 = 0.8;

impl Evidence {
    /// Looks at one column of the rows whose bag is one of the plan's.
    pub(super) fn of(
        rows: &[Row],
        bag_column: usize,
        column: usize,
        codes: &Codes<'_>,
        interval_min: f64,
    ) -> Self {
        let mut found = Self::default();
        let mut of_bags: BTreeMap<usize, Vec<f64>> = BTreeMap::new();
        for row in rows {
            let (Some(bag), cell) = (codes.exact(row.cell(bag_column)), row.cell(column))
            else {
                continue;
            };
            if cell.is_empty() {
                continue;
            }
            found.cells += 1;
            if let HeightCell::Height { assumed, .. } = height(cell, None) {
                found.heights += 1;
                found.lengths += usize::from(!assumed);
            }
            if let Some(When::Minute(minute)) = time(cell, TimeColumn::Minutes) {
                found.minutes += 1;
                found.planned += usize::from(is_multiple(minute, interval_min));
                of_bags.entry(bag).or_default().push(minute);
            }
        }
        for mut numbers in of_bags.into_values().filter(|numbers| numbers.len() > 1) {
            numbers.sort_by(f64::total_cmp);
            let zero = numbers[0].abs() < 1e-9;
            let once = numbers.windows(2).all(|pair| pair[1] - pair[0] > 1e-9);
            found.bags += 1;
            found.with_zero += usize::from(zero);
            found.counting += usize::from(zero && once);
        }
        found
    }

    /// Whether the column can only count the minutes of its bags: nearly each begins at 0, and
    /// none is at one minute twice.
    pub(super) fn counts_minutes(&self) -> bool {
        nearly_all(self.minutes, self.cells)
            && nearly_all(self.counting, self.bags)
            && !nearly_all(self.lengths, self.cells)
    }

    /// Whether the column can only hold heights: by their units, or because hardly a bag has a 0
    /// and the numbers keep to no timetable.
    pub(super) fn holds_heights(&self) -> bool {
        let hardly_zero = nearly_all(self.bags - self.with_zero, self.bags);
        nearly_all(self.heights, self.cells)
            && (nearly_all(self.lengths, self.cells)
                || (hardly_zero && self.planned < self.minutes))
    }
}

fn nearly_all(some: usize, all: usize) -> bool {
    all > 0 && some as f64 >= NEARLY_ALL * all as f64
}

fn is_multiple(minute: f64, interval_min: f64) -> bool {
    let steps = minute / interval_min;
    steps.is_finite() && (steps - steps.round()).abs() < 1e-6
}

//! Values with their place in the design, in the order of blocks and groups.

use crate::statistics::linear::{FitError, LARGEST};
use crate::statistics::sum::total;
use std::ops::Range;

/// Values, what each of them is made of, and who made them.
///
/// A group is a group within its block: the same number in two blocks means two groups.
#[derive(Debug, Clone)]
pub struct Records {
    /// Values less their block's mean (or as given, without blocks), over `unit`.
    pub(super) values: Vec<f64>,
    /// A power of two near the largest of the values (unit of the values).
    pub(super) unit: f64,
    /// Below this a standard deviation is rounding of the arithmetic (in `unit`).
    pub(super) rounding: f64,
    pub(super) columns: usize,
    pub(super) parts: Parts,
    /// Rows of each group.
    pub(super) groups: Vec<Range<usize>>,
    /// Groups of each block; one entry with all groups where blocks are not taken out.
    pub(super) blocks: Vec<Range<usize>>,
    /// Whether the mean of each block is taken out.
    pub(super) absorbed: bool,
}

/// The entries of the design that are not 0.
#[derive(Debug, Clone)]
pub(super) enum Parts {
    /// Each row is of one treatment.
    Treatment(Vec<usize>),
    /// Each row has a number in every column.
    Columns(Vec<Vec<f64>>),
}

/// One value with its treatment, block and group.
#[derive(Debug, Clone, Copy)]
pub(in crate::statistics) struct Place {
    pub(in crate::statistics) value: f64,
    pub(in crate::statistics) treatment: usize,
    pub(in crate::statistics) block: usize,
    pub(in crate::statistics) group: usize,
}

impl Records {
    /// Values of a design with `columns` of numbers; `blocks` are taken out where given, each with
    /// a mean of its own, as a column for each block would.
    ///
    /// # Errors
    /// [`FitError`] for no values, columns of another length, or numbers beyond [`LARGEST`].
    pub fn new(
        values: &[f64],
        columns: &[Vec<f64>],
        blocks: Option<&[usize]>,
        groups: &[usize],
    ) -> Result<Self, FitError> {
        let wanted = values.len();
        let lengths = columns
            .iter()
            .map(Vec::len)
            .chain([groups.len()])
            .chain(blocks.map(<[usize]>::len));
        for (column, found) in lengths.enumerate() {
            if found != wanted {
                return Err(FitError::Uneven { column, found, wanted });
            }
        }
        for column in columns {
            usable(column)?;
        }
        let block = |row: usize| blocks.map_or(0, |blocks| blocks[row]);
        let mut order: Vec<usize> = (0..wanted).collect();
        order.sort_by_key(|&row| (block(row), groups[row]));
        let parts = order.iter().map(|&row| columns.iter().map(|c| c[row]).collect()).collect();
        let places: Vec<Place> = order
            .iter()
            .map(|&row| Place {
                value: values[row],
                treatment: 0,
                block: block(row),
                group: groups[row],
            })
            .collect();
        usable(values)?;
        Self::sorted(&places, columns.len(), Parts::Columns(parts), blocks.is_some())
    }

    /// Values of so many treatments, numbered from 0; blocks are taken out.
    pub(in crate::statistics) fn of_treatments(
        places: &[Place],
        treatments: usize,
    ) -> Result<Self, FitError> {
        let values: Vec<f64> = places.iter().map(|place| place.value).collect();
        usable(&values)?;
        let mut places = places.to_vec();
        places.sort_by_key(|place| (place.block, place.group));
        let parts = Parts::Treatment(places.iter().map(|place| place.treatment).collect());
        Self::sorted(&places, treatments, parts, true)
    }

    fn sorted(
        places: &[Place],
        columns: usize,
        parts: Parts,
        absorbed: bool,
    ) -> Result<Self, FitError> {
        /// Share of the largest value that a spread must exceed to be one (1).
        const ROUNDING: f64 = 1e-12;
        /// Smallest unit, as a power of two: a reading doubt still has a square in it.
        const SMALLEST: i32 = -100;
        if places.is_empty() {
            return Err(FitError::Empty);
        }
        let groups = runs(places.len(), |row| (places[row].block, places[row].group));
        let blocks = runs(groups.len(), |group| places[groups[group].start].block);
        let mut values: Vec<f64> = places.iter().map(|place| place.value).collect();
        let level = values.iter().fold(0.0_f64, |most, v| most.max(v.abs()));
        if absorbed {
            for block in &blocks {
                let rows = groups[block.start].start..groups[block.end - 1].end;
                center(&mut values[rows]);
            }
        }
        let largest = values.iter().fold(0.0_f64, |most, v| most.max(v.abs()));
        let exponent = if largest > 0.0 { libm::frexp(largest).1.max(SMALLEST) } else { 0 };
        for value in &mut values {
            *value = libm::ldexp(*value, -exponent);
        }
        let rounding = ROUNDING * libm::ldexp(level, -exponent);
        let unit = libm::ldexp(1.0, exponent);
        Ok(Self { values, unit, rounding, columns, parts, groups, blocks, absorbed })
    }

    /// Number of values.
    pub fn count(&self) -> usize {
        self.values.len()
    }

    /// The treatment of a row; 0 where rows are numbers in columns.
    pub(super) fn treatment(&self, row: usize) -> usize {
        match &self.parts {
            Parts::Treatment(of) => of[row],
            Parts::Columns(_) => 0,
        }
    }

    /// Whether each row is of one treatment and nothing else.
    pub(super) fn of_one_treatment(&self) -> bool {
        matches!(self.parts, Parts::Treatment(_))
    }

    /// Adds what a row is made of to `sum`.
    pub(super) fn add_row(&self, row: usize, sum: &mut [f64]) {
        match &self.parts {
            Parts::Treatment(of) => sum[of[row]] += 1.0,
            Parts::Columns(rows) => {
                for (sum, part) in sum.iter_mut().zip(&rows[row]) {
                    *sum += part;
                }
            }
        }
    }

    /// The combination of a row's columns with these coefficients.
    pub(super) fn fitted(&self, row: usize, coefficients: &[f64]) -> f64 {
        match &self.parts {
            Parts::Treatment(of) => coefficients[of[row]],
            Parts::Columns(rows) => super::square::dot(&rows[row], coefficients),
        }
    }
}

fn usable(numbers: &[f64]) -> Result<(), FitError> {
    let beyond = |v: &f64| v.is_nan() || v.abs() > LARGEST;
    match numbers.iter().position(beyond) {
        Some(row) => Err(FitError::OutOfReach { row, value: numbers[row] }),
        None => Ok(()),
    }
}

/// Ranges of neighbors with the same key.
fn runs<K: PartialEq>(count: usize, key: impl Fn(usize) -> K) -> Vec<Range<usize>> {
    let mut runs: Vec<Range<usize>> = Vec::new();
    for at in 0..count {
        match runs.last_mut() {
            Some(last) if key(last.start) == key(at) => last.end = at + 1,
            _ => runs.push(at..at + 1),
        }
    }
    runs
}

/// Takes the mean off, without losing the digits that a common level would cost.
fn center(values: &mut [f64]) {
    let level = values.first().copied().unwrap_or(0.0);
    let mean = total(values.iter().map(|v| v - level)) / values.len().max(1) as f64;
    for value in values {
        *value = (*value - level) - mean;
    }
}

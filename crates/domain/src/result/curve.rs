//! The curve of one bag: rises above its own zero.

use super::Measured;
use crate::reading::Reading;
use barm_science::ruler;

/// Factor from a standard uncertainty to a 95 % interval (JCGM 100:2008 (GUM), 6.3.3; clause from
/// memory).
const COVERAGE: f64 = 2.0;

/// A reading this close to minute 0 (min) is a zero reading.
const AT_ZERO_MIN: f64 = 0.5;

/// A height above the bag's own zero.
#[derive(Debug, Clone, PartialEq)]
pub struct Rise {
    /// Minutes after the zero reading.
    pub minute: f64,
    /// Rise above the zero reading (mm) with the reading doubt, 95 %.
    pub rise_mm: Measured,
    /// Line of the file.
    pub line: u64,
    /// What was noted beside it.
    pub event: Option<String>,
}

/// What was read of one bag.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Curve {
    /// Height at the zero reading (mm), if there is one.
    pub zero_mm: Option<f64>,
    /// Rises after the zero reading, by minute; empty without a zero reading.
    pub rises: Vec<Rise>,
    /// How many readings there are, the zero reading included.
    pub readings: usize,
}

impl Curve {
    /// The curve of one bag from its readings.
    pub(super) fn of<'a>(readings: impl IntoIterator<Item = &'a Reading>) -> Self {
        let mut readings: Vec<&Reading> = readings.into_iter().collect();
        readings.sort_by(|a, b| a.minute.total_cmp(&b.minute));
        let count = readings.len();
        let zero = readings.first().filter(|first| first.minute.abs() < AT_ZERO_MIN);
        let Some(zero_mm) = zero.map(|zero| zero.height_mm) else {
            return Self { readings: count, ..Self::default() };
        };
        let rises = readings[1..]
            .iter()
            .map(|reading| Rise {
                minute: reading.minute,
                rise_mm: measured(reading.height_mm - zero_mm),
                line: reading.line,
                event: reading.event.clone(),
            })
            .collect();
        Self { zero_mm: Some(zero_mm), rises, readings: count }
    }

    /// Minute of the last reading after the zero reading.
    pub fn last_minute(&self) -> Option<f64> {
        self.rises.last().map(|rise| rise.minute)
    }

    /// Minutes and rises (mm) up to a minute, the zero reading first.
    pub(super) fn points(&self, until: f64) -> Vec<(f64, f64)> {
        let zero = self.zero_mm.map(|_| (0.0, 0.0));
        let rises = self.rises.iter().map(|rise| (rise.minute, rise.rise_mm.value));
        zero.into_iter().chain(rises).filter(|(minute, _)| *minute <= until).collect()
    }
}

/// A rise with what the ruler leaves open, 95 %.
pub(super) fn measured(rise_mm: f64) -> Measured {
    let half = COVERAGE * ruler::usual_difference_sd_mm();
    Measured { value: rise_mm, low: rise_mm - half, high: rise_mm + half }
}

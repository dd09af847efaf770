//! What is expected of one treatment in one question.

use super::Beyond;

/// Median and band, minute by minute.
#[derive(Debug, Clone, PartialEq)]
pub struct Curve {
    /// Median over the draws.
    pub median: Vec<f64>,
    /// 10th percentile.
    pub low: Vec<f64>,
    /// 90th percentile.
    pub high: Vec<f64>,
}

impl Curve {
    /// Median, low and high at the last minute.
    pub fn last(&self) -> (f64, f64, f64) {
        let end = |values: &[f64]| values.last().copied().unwrap_or(f64::NAN);
        (end(&self.median), end(&self.low), end(&self.high))
    }
}

/// The high side of what may happen, for cautions: 97.5th percentiles.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Upper {
    /// Ethanol at the last reading (% by volume of the liquid).
    pub ethanol_percent_last: f64,
    /// Hottest temperature of the bag's contents from the zero reading on (°C).
    pub hottest_celsius: f64,
}

/// What is expected of one treatment in one question.
#[derive(Debug, Clone, PartialEq)]
pub struct Entry {
    /// Id of the question, or [`crate::plan::CONTROLS`].
    pub question: String,
    /// Name of the treatment.
    pub treatment: String,
    /// Whether others of this question are compared with it.
    pub reference: bool,
    /// Whether it is a shared control.
    pub control: bool,
    /// What it is compared with in this question.
    pub beside: Option<String>,
    /// Rise above the bag's own zero (mm).
    pub rise_mm: Curve,
    /// Wet gas made, without the trapped air (mL).
    pub gas_ml: Curve,
    /// Ethanol in the whole bag (g).
    pub ethanol_g: Curve,
    /// Median temperature (°C).
    pub celsius: Vec<f64>,
    /// (Liquid + gas) over capacity at the last reading, 97.5th percentile (1).
    pub peak_fill: f64,
    /// Minute at which that reaches 0.8; nothing if 24 h pass below it.
    pub vent_by_min: Option<f64>,
    /// Minute at which the median difference in rise from `beside` reaches what is readable;
    /// nothing if it does not, or if `beside` has no forecast.
    pub readable_at_min: Option<u32>,
    /// Chance that two bags differ by that much at the last reading; nothing if `beside` has no
    /// forecast.
    pub chance_readable: Option<f64>,
    /// The high side of what may happen.
    pub upper: Upper,
    /// Laws of the bag model that it goes beyond, by the model's best guess.
    pub beyond: Vec<Beyond>,
}

impl Entry {
    /// Whether what it is compared with has no forecast, so that nothing can be said of the
    /// difference.
    pub const fn lacks_reference(&self) -> bool {
        self.beside.is_some() && self.chance_readable.is_none()
    }

    /// Minute of the last reading.
    pub fn last_minute(&self) -> u32 {
        u32::try_from(self.celsius.len().saturating_sub(1)).unwrap_or(u32::MAX)
    }
}

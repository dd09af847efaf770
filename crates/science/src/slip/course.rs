//! What is expected of a treatment, minute by minute.

/// Rise that is expected of a treatment, and how far it may be off.
#[derive(Debug, Clone, PartialEq)]
pub struct Course {
    /// Minutes after the zero reading, rising (min).
    minutes: Vec<f64>,
    /// Median rise at each (mm).
    median_mm: Vec<f64>,
    /// Standard deviation of the logarithm of the rise (1).
    log_sd: f64,
}

/// A median of less tells nothing of the spread of a rise as a factor (mm).
const TELLS_MM: f64 = 1.5;

/// Spread where no forecast is, or none that tells (1): a factor of about 2.5 each way.
const UNKNOWN_LOG_SD: f64 = 0.9;

/// 80 % of a normal distribution lie within so many standard deviations on both sides together.
const EIGHTY: f64 = 2.0 * 1.281_551_565_544_6;

impl Course {
    /// From the 10th percentile, the median and the 90th percentile of the rise (mm) by minute.
    pub fn of_band(band: impl IntoIterator<Item = (f64, f64, f64, f64)>) -> Self {
        let mut course =
            Self { minutes: Vec::new(), median_mm: Vec::new(), log_sd: UNKNOWN_LOG_SD };
        let mut spreads = Vec::new();
        for (minute, low, median, high) in band {
            course.minutes.push(minute);
            course.median_mm.push(median.max(0.0));
            if median >= TELLS_MM && low > 0.0 && high > low {
                spreads.push(libm::log(high / low) / EIGHTY);
            }
        }
        if course.minutes.len() < 2 {
            return Self::unknown();
        }
        spreads.sort_by(f64::total_cmp);
        if let Some(middle) = spreads.get(spreads.len() / 2) {
            course.log_sd = middle.clamp(0.1, 1.2);
        }
        course
    }

    /// Of a bag without a forecast: yeast that wakes for some minutes and then lifts a card by
    /// half a millimeter a minute or so (own judgement, no source).
    pub fn unknown() -> Self {
        let minutes: Vec<f64> = (0..=60).map(f64::from).collect();
        let rise = |minute: &f64| 0.6 * (minute - 4.0 * (1.0 - libm::exp(-minute / 4.0)));
        Self { median_mm: minutes.iter().map(rise).collect(), minutes, log_sd: UNKNOWN_LOG_SD }
    }

    /// Median rise at a minute (mm): nothing before the zero reading, and as at last after the end.
    pub fn median_mm(&self, minute: f64) -> f64 {
        let after = self.minutes.partition_point(|at| *at < minute);
        if after == 0 || minute <= 0.0 {
            return 0.0;
        }
        let high = after.min(self.minutes.len() - 1);
        let (from, to) = (self.minutes[high - 1], self.minutes[high]);
        let (low_mm, high_mm) = (self.median_mm[high - 1], self.median_mm[high]);
        if to > from {
            low_mm + (minute - from) / (to - from) * (high_mm - low_mm)
        } else {
            high_mm
        }
    }

    /// Standard deviation of the logarithm of the rise (1).
    pub fn log_sd(&self) -> f64 {
        self.log_sd
    }
}

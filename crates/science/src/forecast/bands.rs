//! Values by draw and minute, and their quantiles.

/// One quantity for every draw and every whole minute from 0 to the last.
#[derive(Debug, Clone, PartialEq)]
pub struct Series {
    minutes: usize,
    values: Vec<f64>,
}

/// Quantiles over the draws, one of each for every minute.
#[derive(Debug, Clone, PartialEq)]
pub struct Band {
    /// 10th percentile.
    pub low: Vec<f64>,
    /// Median.
    pub median: Vec<f64>,
    /// 90th percentile.
    pub high: Vec<f64>,
}

impl Series {
    pub(crate) fn filled(draws: usize, last_minute: u32, value: f64) -> Self {
        let minutes = last_minute as usize + 1;
        Self { minutes, values: vec![value; draws * minutes] }
    }

    /// Number of draws.
    pub fn draws(&self) -> usize {
        self.values.len() / self.minutes
    }

    /// Last minute.
    pub fn last_minute(&self) -> u32 {
        u32::try_from(self.minutes - 1).unwrap_or(u32::MAX)
    }

    /// One draw, minute by minute; empty for a draw that does not exist.
    pub fn draw(&self, draw: usize) -> &[f64] {
        self.values.get(draw * self.minutes..(draw + 1) * self.minutes).unwrap_or(&[])
    }

    pub(crate) fn draw_mut(&mut self, draw: usize) -> &mut [f64] {
        &mut self.values[draw * self.minutes..(draw + 1) * self.minutes]
    }

    /// All draws at one minute, in the order of the draws; empty past the last minute.
    pub fn minute(&self, minute: u32) -> Vec<f64> {
        let minute = minute as usize;
        if minute >= self.minutes {
            return Vec::new();
        }
        self.values.iter().skip(minute).step_by(self.minutes).copied().collect()
    }

    /// 10th, 50th and 90th percentiles at every minute.
    pub fn band(&self) -> Band {
        self.band_of(0.10, 0.90)
    }

    /// Percentiles at every minute for the shares `low` and `high`, with the median between.
    pub fn band_of(&self, low: f64, high: f64) -> Band {
        let mut band = Band { low: Vec::new(), median: Vec::new(), high: Vec::new() };
        for minute in 0..=self.last_minute() {
            let mut values = self.minute(minute);
            values.sort_by(f64::total_cmp);
            band.low.push(of_sorted(&values, low));
            band.median.push(of_sorted(&values, 0.5));
            band.high.push(of_sorted(&values, high));
        }
        band
    }
}

/// Quantile of `values` for the share `p`, interpolated between order statistics (type 7 of
/// R. J. Hyndman, Y. Fan (1996), "Sample quantiles in statistical packages", *Am. Stat.* 50,
/// 361-365); NaN for no values.
pub(super) fn quantile(values: &mut [f64], p: f64) -> f64 {
    values.sort_by(f64::total_cmp);
    of_sorted(values, p)
}

fn of_sorted(values: &[f64], p: f64) -> f64 {
    let Some(last) = values.len().checked_sub(1) else {
        return f64::NAN;
    };
    let place = p.clamp(0.0, 1.0) * last as f64;
    let below = place.floor() as usize;
    let above = (below + 1).min(last);
    values[below] + (place - place.floor()) * (values[above] - values[below])
}

//! One forecast less another, draw by draw.

use super::Forecast;
use super::bands::{Band, Series, quantile};

/// Two forecasts that cannot be subtracted.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
#[error(
    "these forecasts do not match: {draws} draws to minute {last_minute} against \
     {other_draws} draws to minute {other_last_minute}"
)]
pub struct Unlike {
    /// Draws of the first.
    pub draws: usize,
    /// Last minute of the first.
    pub last_minute: u32,
    /// Draws of the second.
    pub other_draws: usize,
    /// Last minute of the second.
    pub other_last_minute: u32,
}

/// Rise of one bag less rise of another (mm), draw by draw and minute by minute.
#[derive(Debug, Clone, PartialEq)]
pub struct Difference {
    rise_mm: Series,
}

impl Difference {
    /// The difference in rise (mm).
    pub const fn rise_mm(&self) -> &Series {
        &self.rise_mm
    }

    /// 10th, 50th and 90th percentiles of the difference (mm) at every minute.
    pub fn band(&self) -> Band {
        self.rise_mm.band()
    }

    /// First whole minute at which the median difference, up or down, reaches `readable_mm`.
    pub fn readable_at_min(&self, readable_mm: f64) -> Option<u32> {
        (0..=self.rise_mm.last_minute()).find(|&minute| {
            quantile(&mut self.rise_mm.minute(minute), 0.5).abs() >= readable_mm
        })
    }

    /// Chance that the two bags differ by at least `readable_mm`, up or down, at the last minute.
    pub fn chance_readable(&self, readable_mm: f64) -> f64 {
        let last = self.rise_mm.minute(self.rise_mm.last_minute());
        let apart = last.iter().filter(|rise| rise.abs() >= readable_mm).count();
        apart as f64 / last.len() as f64
    }
}

pub(super) fn difference(bag: &Forecast, reference: &Forecast) -> Result<Difference, Unlike> {
    let (ours, theirs) = (&bag.rise_mm, &reference.rise_mm);
    if ours.draws() != theirs.draws() || ours.last_minute() != theirs.last_minute() {
        return Err(Unlike {
            draws: ours.draws(),
            last_minute: ours.last_minute(),
            other_draws: theirs.draws(),
            other_last_minute: theirs.last_minute(),
        });
    }
    let mut rise_mm = ours.clone();
    for draw in 0..ours.draws() {
        for (mine, other) in rise_mm.draw_mut(draw).iter_mut().zip(theirs.draw(draw)) {
            *mine -= other;
        }
    }
    Ok(Difference { rise_mm })
}

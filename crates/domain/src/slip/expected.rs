//! Where the rise of a bag is expected.

/// Where the rise of a bag is expected at one minute after its zero reading.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Expected {
    /// The minute.
    pub minute: f64,
    /// Low end of the band (mm), 10th percentile.
    pub low_mm: f64,
    /// Median (mm).
    pub median_mm: f64,
    /// High end of the band (mm), 90th percentile.
    pub high_mm: f64,
}

impl Expected {
    /// What is expected at a minute, between the two that stand nearest; nothing outside of them.
    pub(super) fn at(band: &[Self], minute: f64) -> Option<Self> {
        let after = band.iter().position(|expected| expected.minute >= minute)?;
        let (before, after) = (&band[after.saturating_sub(1)], &band[after]);
        if minute < before.minute {
            return None;
        }
        let span = after.minute - before.minute;
        let share = if span > 0.0 { (minute - before.minute) / span } else { 0.0 };
        let between = |a: f64, b: f64| a + share * (b - a);
        Some(Self {
            minute,
            low_mm: between(before.low_mm, after.low_mm),
            median_mm: between(before.median_mm, after.median_mm),
            high_mm: between(before.high_mm, after.high_mm),
        })
    }
}

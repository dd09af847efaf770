//! How numbers are written in each unit: what a written number says of the unit.

/// What a height may have been written in, if not in millimeters.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Unit {
    /// Centimeters.
    Centimeters,
    /// Millimeters with the point lost, such as 120 for 12.0.
    PointLost,
    /// Inches (NIST SP 811: 1 in = 25.4 mm exactly).
    Inches,
    /// Eighths of an inch, counted on the ruler.
    Eighths,
}

impl Unit {
    /// All of them.
    pub const ALL: [Self; 4] =
        [Self::Centimeters, Self::PointLost, Self::Inches, Self::Eighths];

    /// Millimeters to one of it (mm).
    pub const fn factor(self) -> f64 {
        match self {
            Self::Centimeters => 10.0,
            Self::PointLost => 0.1,
            Self::Inches => 25.4,
            Self::Eighths => 25.4 / 8.0,
        }
    }

    /// Share of unit slips that are of this unit (1; own judgement).
    pub(super) const fn share(self) -> f64 {
        match self {
            Self::Centimeters => 0.5,
            Self::Inches => 0.2,
            Self::PointLost | Self::Eighths => 0.15,
        }
    }

    /// Probability of a number for one millimeter of height, and the variance that reading so adds
    /// (mm²); nothing for numbers that are not written so.
    pub(super) fn written(self, number: f64) -> Option<(f64, f64)> {
        let rounded = |step_mm: f64| (step_mm * step_mm - 1.0).max(0.0) / 12.0;
        match self {
            // 1.2, seldom 1 alone or 1.25.
            Self::Centimeters if is_multiple(number, 1.0) => Some((1.5, 4.0)),
            Self::Centimeters if is_multiple(number, 0.1) => Some((0.9, 0.0)),
            Self::Centimeters => is_multiple(number, 0.05).then_some((0.02, 0.0)),
            Self::PointLost if is_multiple(number, 10.0) => Some((0.8, 0.0)),
            Self::PointLost if is_multiple(number, 5.0) => Some((0.08, 0.0)),
            Self::PointLost => is_multiple(number, 1.0).then_some((0.01, 0.0)),
            // Sixteenths, to two places, or tenths.
            Self::Inches => {
                let sixteenths = (16.0 * number - (16.0 * number).round()).abs() < 0.1;
                let tenths = is_multiple(number, 0.1);
                match (sixteenths, tenths) {
                    (_, true) => Some((1.2, rounded(2.54))),
                    (true, false) => Some((0.7, rounded(25.4 / 16.0))),
                    (false, false) => is_multiple(number, 0.01).then_some((0.02, 0.0)),
                }
            }
            Self::Eighths => {
                is_multiple(number, 1.0).then_some((self.factor(), rounded(self.factor())))
            }
        }
    }

    /// How far off a height may be that was read so (mm): half of the finest mark.
    pub const fn half_mark_mm(self) -> f64 {
        match self {
            Self::Centimeters | Self::PointLost => 0.5,
            Self::Inches => 25.4 / 32.0,
            Self::Eighths => 25.4 / 16.0,
        }
    }
}

/// Probability of a number for one millimeter of height when millimeters are written: whole ones
/// as a rule, halves now and then, tenths hardly ever (own judgement).
pub(super) fn millimeters(number: f64) -> f64 {
    if is_multiple(number, 1.0) {
        0.95
    } else if is_multiple(number, 0.5) {
        0.04
    } else if is_multiple(number, 0.1) {
        0.001
    } else {
        0.0001
    }
}

fn is_multiple(number: f64, of: f64) -> bool {
    let times = number / of;
    (times - times.round()).abs() < 1e-6
}

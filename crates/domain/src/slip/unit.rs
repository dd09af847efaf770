//! Numbers that fit once they are taken for another unit.

use barm_science::slip::Unit;

/// What a height may have been written in, if not in millimeters.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum WrittenIn {
    /// Centimeters: ten times as much.
    Centimeters,
    /// Millimeters with the point lost, such as 120 for 12.0: a tenth.
    PointLost,
    /// Inches: 25.4 times as much (NIST SP 811: 1 in = 25.4 mm exactly).
    Inches,
    /// Eighths of an inch, counted on the ruler: 3.175 times as much.
    Eighths,
}

impl WrittenIn {
    /// All of them.
    pub const ALL: [Self; 4] =
        [Self::Centimeters, Self::PointLost, Self::Inches, Self::Eighths];

    /// As the science calls it.
    pub(super) const fn of(unit: Unit) -> Self {
        match unit {
            Unit::Centimeters => Self::Centimeters,
            Unit::PointLost => Self::PointLost,
            Unit::Inches => Self::Inches,
            Unit::Eighths => Self::Eighths,
        }
    }

    /// What a written number has to be multiplied with to be millimeters (1).
    pub const fn factor(self) -> f64 {
        match self {
            Self::Centimeters => 10.0,
            Self::PointLost => 0.1,
            Self::Inches => 25.4,
            Self::Eighths => 25.4 / 8.0,
        }
    }

    /// How far off a height may be that was read so (mm): half of the finest mark.
    pub(super) const fn half_mark_mm(self) -> f64 {
        match self {
            Self::Centimeters | Self::PointLost => 0.5,
            // Sixteenths of an inch.
            Self::Inches => 25.4 / 32.0,
            Self::Eighths => 25.4 / 16.0,
        }
    }

    /// Whether a number can have been written so: eighths are counted.
    fn can_be(self, wrote: f64) -> bool {
        self != Self::Eighths || (wrote - wrote.round()).abs() < 0.01
    }

    /// The word that stands in files and addresses.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Centimeters => "cm",
            Self::PointLost => "point-lost",
            Self::Inches => "in",
            Self::Eighths => "eighths",
        }
    }
}

/// What a number may mean (mm) so that it is in line, the nearest to `near_mm` first.
pub(super) fn meant(
    wrote_mm: f64,
    near_mm: f64,
    in_line: impl Fn(WrittenIn, f64) -> bool,
) -> Vec<(WrittenIn, f64)> {
    let mut meant: Vec<(WrittenIn, f64)> = WrittenIn::ALL
        .into_iter()
        .filter(|unit| unit.can_be(wrote_mm))
        .map(|unit| (unit, tenths(wrote_mm * unit.factor())))
        // Nothing is nothing in any unit.
        .filter(|(unit, mm)| (mm - wrote_mm).abs() > 0.01 && in_line(*unit, *mm))
        .collect();
    meant.sort_by(|(_, a), (_, b)| (a - near_mm).abs().total_cmp(&(b - near_mm).abs()));
    meant
}

/// To a tenth of a millimeter: no ruler tells more.
fn tenths(mm: f64) -> f64 {
    (10.0 * mm).round() / 10.0
}

//! What is true of every invented class. All of it is judgement, without a source: no bag was
//! measured.

/// Rise of a usual bag of the reference at the last reading (mm).
pub const LEVEL_MM: f64 = 20.0;

/// Standard deviation of bags that one group made alike in one period (mm), before reading.
pub const BAG_SD_MM: f64 = 3.0;

/// Standard deviation between periods (mm).
pub const PERIOD_SD_MM: f64 = 3.0;

/// Where spreads are unequal, every second treatment spreads by so many times that of the others (1).
pub const WIDE: f64 = 2.0;

/// Bags rise as 1 − exp(−(t/τ)²); τ (min).
pub const CURVE_MIN: f64 = 14.0;

/// How τ differs from bag to bag (1).
pub(super) const CURVE_SD: f64 = 0.05;

/// Minute of the last reading.
pub(super) const LAST_MIN: u32 = 24;

/// Minutes between readings.
pub(super) const INTERVAL_MIN: u32 = 4;

/// Height of a card at its zero reading, and how it differs (mm).
pub(super) const ZERO_MM: (f64, f64) = (8.0, 1.2);

/// A reading is made so long after its planned minute, earliest and latest (min).
pub(super) const AFTER_MIN: (f64, f64) = (0.0, 0.5);

/// A late one (min).
pub(super) const LATE_MIN: (f64, f64) = (1.1, 2.5);

/// A clock that begins late does so by so much (min).
pub(super) const START_MIN: (f64, f64) = (1.5, 4.0);

/// How fast a card falls where the seal leaks (mm/min).
pub(super) const LEAK_MM_MIN: f64 = 0.9;

/// What is left of the rise where the yeast is dead (1).
pub(super) const DEAD: f64 = 0.05;

/// How much more a heaped spoon makes (1).
pub(super) const HEAPED: f64 = 1.3;

//! What is left of an enzyme in a bottle that the teacher filled before school.
//!
//! # Law
//! ```text
//! delivered = units · 2^(−t/t_½) · exp(−k(T_room) t) · s
//! ```
//! *t* minutes since the solution was mixed; *k* the enzyme's loss by heat, next to nothing at room
//! temperature; *t_½* what dilution, glass and froth take (from memory; range a school day); *s* is one
//! for a bottle that was shaken, and otherwise the share that has not settled: powders are bulked with
//! what dissolves slowly, and the enzyme lies on the bottom with it.

use crate::fact::Fact;

/// Time in which a dilute solution at room temperature loses half of its activity (min).
pub const HALF_LIFE: Fact = Fact::memory(
    "enzyme.stock.half_life",
    480.0,
    "min",
    "some hours without stabilizer; made on the day it is used by common practice; from memory",
)
.within((180.0, 1440.0));

/// Share of a dose that a bottle delivers which was not shaken (1).
pub const UNSHAKEN: Fact = Fact::memory(
    "enzyme.stock.unshaken",
    0.7,
    "1",
    "what settles with the carrier stays behind; judgement",
)
.within((0.5, 0.9));

/// How much such doses differ from bag to bag (1), as the standard deviation of a logarithm.
pub const UNSHAKEN_SD: Fact = Fact::memory(
    "enzyme.stock.unshaken_sd",
    0.2,
    "1",
    "the first doses are thin, the last ones thick; judgement",
);

/// Facts of this module.
pub const FACTS: &[Fact] = &[HALF_LIFE, UNSHAKEN, UNSHAKEN_SD];

/// Share of the activity that is left (1) of a stock of that age (min), by its half-life (min).
pub fn left(age_min: f64, half_life: f64) -> f64 {
    libm::exp2(-age_min / half_life)
}

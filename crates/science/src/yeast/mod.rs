//! Baker's yeast: how much of it there is, how fast it works, and what holds it back.

pub mod hindrance;
pub mod loss;
pub mod repression;
pub mod storage;
pub mod sugars;
pub mod temperature;
pub mod waking;

use crate::fact::{Fact, Status};
use crate::setup::YeastKind;

const AACC: &str = "AACC Approved Method 89-01.01; T. Herrera et al., Arch. Biochem. Biophys. 63, \
     131 (1956)";
const RATE: &str = "blend of class tubes, a kitchen proof test and bread-dough gas (control strain \
     of Appl. Environ. Microbiol. 67, 4279 (2001): 11.5 mmol/(g.h) at 28.5 °C), worked back to \
     30 °C";

/// Carbon dioxide made per gram of awake dry yeast matter and hour at 30 °C with glucose or
/// sucrose ample (mmol/(g·h)).
pub const RATE_30C: Fact =
    Fact::derived("yeast.rate_30c", 10.0, "mmol/(g.h)", RATE).within((5.1, 19.5));

/// Standard deviation of the logarithm of [`RATE_30C`] from lot to lot (1): ln 1.5.
pub const RATE_LOG_SD: Fact = Fact::derived("yeast.rate_log_sd", 0.405, "1", RATE);

const fn kind_fact(
    name: &'static str,
    value: f64,
    low: f64,
    high: f64,
    status: Status,
    source: &'static str,
) -> Fact {
    Fact { name, value, unit: "1", range: Some((low, high)), status, source }
}

const ACTIVE_DRY_MATTER: Fact =
    kind_fact("yeast.dry_matter.active_dry", 0.92, 0.92, 0.94, Status::Sourced, AACC);
const INSTANT_MATTER: Fact =
    kind_fact("yeast.dry_matter.instant", 0.95, 0.94, 0.97, Status::Sourced, AACC);
const COMPRESSED_MATTER: Fact =
    kind_fact("yeast.dry_matter.compressed", 0.30, 0.26, 0.33, Status::Sourced, AACC);
/// Rate of active dry over instant yeast, per gram of dry matter (1).
pub const ACTIVE_DRY_VIGOR: Fact = kind_fact(
    "yeast.vigor.active_dry",
    0.8,
    0.6,
    0.95,
    Status::Memory,
    "active dry against instant yeast, per gram of dry matter, from memory",
);
const FULL_VIGOR: Fact = kind_fact(
    "yeast.vigor.instant_and_compressed",
    1.0,
    0.9,
    1.1,
    Status::Derived,
    "the kinds to which yeast.rate_30c refers",
);

/// Density of dry yeast matter in water (g/mL).
pub const DENSITY: Fact =
    Fact::memory("yeast.density", 1.4, "g/mL", "dry cell matter, from memory")
        .within((1.3, 1.45));

/// Facts of this module.
pub const FACTS: &[Fact] = &[
    RATE_30C,
    RATE_LOG_SD,
    ACTIVE_DRY_MATTER,
    INSTANT_MATTER,
    COMPRESSED_MATTER,
    ACTIVE_DRY_VIGOR,
    FULL_VIGOR,
    DENSITY,
];

/// Share of dry matter in yeast as bought (1).
pub const fn dry_matter(kind: YeastKind) -> f64 {
    match kind {
        YeastKind::ActiveDry => ACTIVE_DRY_MATTER.value,
        YeastKind::Instant => INSTANT_MATTER.value,
        YeastKind::Compressed => COMPRESSED_MATTER.value,
    }
}

/// Rate of a kind over the rate of instant yeast, per gram of dry matter (1).
pub const fn vigor(kind: YeastKind) -> f64 {
    match kind {
        YeastKind::ActiveDry => ACTIVE_DRY_VIGOR.value,
        YeastKind::Instant | YeastKind::Compressed => FULL_VIGOR.value,
    }
}

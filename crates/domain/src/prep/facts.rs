//! What the preparation takes for granted.

use barm_science::fact::{Fact, Status};

const fn practice(
    name: &'static str,
    value: f64,
    unit: &'static str,
    range: (f64, f64),
    source: &'static str,
) -> Fact {
    Fact { name, value, unit, range: Some(range), status: Status::Memory, source }
}

/// Time in which a lidded jug loses all but 37 % of its warmth above the room (min).
pub const JUG_TIME: Fact = practice(
    "prep.jug_time",
    75.0,
    "min",
    (60.0, 90.0),
    "common practice, no source: 1 to 2 L in a lidded plastic jug; fill yours and read it after \
     half an hour",
);
/// Minutes before the bell at which the water of a period is mixed (min).
pub const MIX_AHEAD: Fact = practice(
    "prep.mix_ahead",
    5.0,
    "min",
    (3.0, 10.0),
    "common practice, no source: during the changeover",
);
/// Minutes from one group's pouring to the next (min).
pub const WAVE: Fact = practice(
    "prep.wave",
    0.5,
    "min",
    (0.25, 1.0),
    "common practice, no source: groups start in waves 30 s apart",
);
/// How far the water may stray from the plan's temperature while it is poured (K).
pub const STRAY: Fact = practice(
    "prep.stray",
    1.0,
    "K",
    (0.5, 2.0),
    "common practice, no source: what a classroom thermometer tells apart",
);
/// Temperature of the hot water unless it is said (°C).
pub const HOT: Fact = practice(
    "prep.hot_water",
    60.0,
    "Cel",
    (45.0, 65.0),
    "common practice, no source: hot tap or thermos; read your own with a thermometer, and again \
     at ten o'clock",
);
/// Temperature of the cold water unless it is said (°C).
pub const COLD: Fact = practice(
    "prep.cold_water",
    15.0,
    "Cel",
    (5.0, 22.0),
    "common practice, no source: cold tap; read your own with a thermometer",
);
/// The hottest water that students handle (°C).
pub const HAND_LIMIT: Fact = practice(
    "prep.hand_limit",
    49.0,
    "Cel",
    (43.0, 49.0),
    "120 °F: US CPSC, Avoiding Tap Water Scalds, publication 5098, from memory; adult skin burns \
     within about 8 min at 49 °C (after Moritz & Henriques 1947, American Journal of Pathology \
     23, 695-720), a child's sooner",
);
/// How long a stock solution of an enzyme is used (min).
pub const STOCK_LIFE: Fact = practice(
    "prep.stock_life",
    240.0,
    "min",
    (120.0, 480.0),
    "common practice, no source: made on the day, made again at lunch",
);
/// Minutes before a period at which a stock solution for it is made (min).
pub const STOCK_AHEAD: Fact = practice(
    "prep.stock_ahead",
    30.0,
    "min",
    (15.0, 60.0),
    "common practice, no source: before the first bell",
);

/// Facts of the preparation.
pub const FACTS: &[Fact] =
    &[JUG_TIME, MIX_AHEAD, WAVE, STRAY, HOT, COLD, HAND_LIMIT, STOCK_LIFE, STOCK_AHEAD];

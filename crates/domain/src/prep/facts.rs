//! What the preparation takes for granted.

use barm_science::fact::Fact;

/// Time in which a lidded jug loses all but 37 % of its warmth above the room (min).
pub const JUG_TIME: Fact = Fact::memory(
    "prep.jug_time",
    75.0,
    "min",
    "common practice, no source: 1 to 2 L in a lidded plastic jug; fill yours and \
     read it after half an hour",
)
.within((60.0, 90.0));
/// Minutes before the bell at which the water of a period is mixed (min).
pub const MIX_AHEAD: Fact = Fact::memory(
    "prep.mix_ahead",
    5.0,
    "min",
    "common practice, no source: during the changeover",
)
.within((3.0, 10.0));
/// Minutes from one group's pouring to the next (min).
pub const WAVE: Fact = Fact::memory(
    "prep.wave",
    0.5,
    "min",
    "common practice, no source: groups start in waves 30 s apart",
)
.within((0.25, 1.0));
/// How far the water may stray from the plan's temperature while it is poured (K).
pub const STRAY: Fact = Fact::memory(
    "prep.stray",
    1.0,
    "K",
    "common practice, no source: what a classroom thermometer tells apart",
)
.within((0.5, 2.0));
/// Temperature of the hot water unless it is said (°C).
pub const HOT: Fact = Fact::memory(
    "prep.hot_water",
    60.0,
    "Cel",
    "common practice, no source: hot tap or thermos; read your own with a \
     thermometer, and again at ten o'clock",
)
.within((45.0, 65.0));
/// Temperature of the cold water unless it is said (°C).
pub const COLD: Fact = Fact::memory(
    "prep.cold_water",
    15.0,
    "Cel",
    "common practice, no source: cold tap; read your own with a thermometer",
)
.within((5.0, 22.0));
/// The hottest water that students handle (°C).
pub const HAND_LIMIT: Fact = Fact::memory(
    "prep.hand_limit",
    49.0,
    "Cel",
    "120 °F: US CPSC, Avoiding Tap Water Scalds, publication 5098, from memory; adult \
     skin burns within about 8 min at 49 °C (after Moritz & Henriques 1947, American \
     Journal of Pathology 23, 695-720), a child's sooner",
)
.within((43.0, 49.0));
/// How long a stock solution of an enzyme is used (min).
pub const STOCK_LIFE: Fact = Fact::memory(
    "prep.stock_life",
    240.0,
    "min",
    "common practice, no source: made on the day, made again at lunch",
)
.within((120.0, 480.0));
/// Minutes before a period at which a stock solution for it is made (min).
pub const STOCK_AHEAD: Fact = Fact::memory(
    "prep.stock_ahead",
    30.0,
    "min",
    "common practice, no source: before the first bell",
)
.within((15.0, 60.0));

/// Facts of the preparation.
pub const FACTS: &[Fact] =
    &[JUG_TIME, MIX_AHEAD, WAVE, STRAY, HOT, COLD, HAND_LIMIT, STOCK_LIFE, STOCK_AHEAD];

//! How dried yeast wakes, is hurt by cold water, and dies of heat.

use crate::exponential::exp;
use crate::fact::Fact;
use crate::monotone::MonotoneCurve;
use crate::setup::YeastKind;
use crate::units::Celsius;
use core::f64::consts::LN_10;

const WAKE: &str = "fitted to first visible gas in class tubes at 22 and 42 °C and to a kitchen \
     proof test; low confidence";

const fn wake_fact(name: &'static str, value: f64, unit: &'static str) -> Fact {
    Fact::derived(name, value, unit, WAKE)
}

const WAKE_LEAST: Fact = wake_fact("yeast.wake.least", 4.0, "min");
const WAKE_MORE: Fact = wake_fact("yeast.wake.more", 10.0, "min");
const WAKE_FROM: Fact = wake_fact("yeast.wake.from", 20.0, "Cel");
const WAKE_FADE: Fact = wake_fact("yeast.wake.fade", 12.0, "K");

const fn kind_fact(name: &'static str, value: f64, source: &'static str) -> Fact {
    Fact::memory(name, value, "1", source)
}

const INSTANT_WAKE: Fact = kind_fact(
    "yeast.wake.instant",
    0.8,
    "instant yeast is finer and wakes faster than active dry, from memory",
);
const COMPRESSED_AWAKE: Fact = kind_fact(
    "yeast.wake.compressed_awake",
    0.8,
    "compressed yeast is awake but has to adapt to sugar, from memory",
);
const INSTANT_COLD: Fact = kind_fact(
    "yeast.cold.instant_share",
    0.5,
    "instant yeast stands 21 to 43 °C water better (US patent 4,764,472); half the loss, from \
     memory",
);

const COLD: &str = "direction after T. Herrera et al., Arch. Biochem. Biophys. 63, 131 (1956): \
     cold wetting makes dried cells leak; values from memory";

const fn cold_fact(name: &'static str, value: f64) -> Fact {
    Fact::memory(name, value, "1", COLD)
}

const COLD_CELSIUS: [f64; 6] = [0.0, 5.0, 10.0, 15.0, 20.0, 30.0];
const COLD_LEFT: [Fact; 6] = [
    cold_fact("yeast.cold.0c", 0.5),
    cold_fact("yeast.cold.5c", 0.6),
    cold_fact("yeast.cold.10c", 0.75),
    cold_fact("yeast.cold.15c", 0.85),
    cold_fact("yeast.cold.20c", 0.95),
    cold_fact("yeast.cold.30c", 1.0),
];
static COLD_CURVE: MonotoneCurve<6> = {
    let mut left = [0.0; 6];
    let mut i = 0;
    while i < 6 {
        left[i] = COLD_LEFT[i].value;
        i += 1;
    }
    MonotoneCurve::new(COLD_CELSIUS, left)
};

/// Minutes at 60 °C that kill nine in ten growing cells (min).
pub const D60: Fact = Fact::memory(
    "yeast.death.d60",
    0.1,
    "min",
    "cells are 50 to 150 times weaker than spores (Put and De Jong 1982), from memory; \
         spores in E. A. Milani et al. (2015): 4.6 to 11.2 min",
)
.within((0.05, 0.3));

/// Kelvin by which those minutes change tenfold (K).
pub const DEATH_Z: Fact = Fact::sourced(
    "yeast.death.z",
    4.5,
    "K",
    "H. Elizondo, T. P. Labuza, Biotechnol. Bioeng. 16, 1245 (1974): 130 kcal/mol, that \
         is 3.8 K at 55 °C; FDA table for acid foods 4.4 to 5.6 K",
)
.within((3.8, 6.9));

/// Facts of this module.
pub const FACTS: &[Fact] = &[
    WAKE_LEAST,
    WAKE_MORE,
    WAKE_FROM,
    WAKE_FADE,
    INSTANT_WAKE,
    COMPRESSED_AWAKE,
    INSTANT_COLD,
    COLD_LEFT[0],
    COLD_LEFT[1],
    COLD_LEFT[2],
    COLD_LEFT[3],
    COLD_LEFT[4],
    COLD_LEFT[5],
    D60,
    DEATH_Z,
];

/// Time constant of waking in water, in minutes.
///
/// ```text
/// τ = 4 + 10 exp(−(t − 20)/12)      active dry; instant and compressed 0.8 of it
/// ```
///
/// # Range
/// 0 to 60 °C; low confidence.
pub fn wake_min(temperature: Celsius, kind: YeastKind) -> f64 {
    let t = temperature.liquid().0;
    let fade = libm::exp(-(t - WAKE_FROM.value) / WAKE_FADE.value);
    over_active_dry(kind) * (WAKE_LEAST.value + WAKE_MORE.value * fade)
}

/// Time constant of a kind's waking over that of active dry yeast (1).
pub const fn over_active_dry(kind: YeastKind) -> f64 {
    match kind {
        YeastKind::ActiveDry => 1.0,
        YeastKind::Instant | YeastKind::Compressed => INSTANT_WAKE.value,
    }
}

/// Share that is awake when it is wetted (1).
pub const fn awake_at_once(kind: YeastKind) -> f64 {
    match kind {
        YeastKind::ActiveDry | YeastKind::Instant => 0.0,
        YeastKind::Compressed => COMPRESSED_AWAKE.value,
    }
}

/// What cold water at wetting leaves of the activity for good (1).
///
/// # Source
/// Direction: Herrera et al. (1956), *Arch. Biochem. Biophys.* 63, 131. Values from memory.
pub fn left_by_cold_wetting(wetting: Celsius, kind: YeastKind) -> f64 {
    let loss = 1.0 - COLD_CURVE.at(wetting.0);
    match kind {
        YeastKind::ActiveDry => 1.0 - loss,
        YeastKind::Instant => 1.0 - INSTANT_COLD.value * loss,
        YeastKind::Compressed => 1.0,
    }
}

/// Minutes at a temperature that kill nine cells in ten (decimal reduction time).
///
/// ```text
/// D = D60 · 10^((60 − t)/z)      t in °C
/// ```
///
/// # Source
/// z from Elizondo and Labuza (1974), *Biotechnol. Bioeng.* 16, 1245; D60 from memory.
pub fn tenfold_kill_min(temperature: Celsius, d60_min: f64, z_kelvin: f64) -> f64 {
    LN_10 / kill_per_min(temperature, d60_min, z_kelvin)
}

/// Share of the cells that such a temperature kills in a minute (1/min): ln 10 / D.
pub fn kill_per_min(temperature: Celsius, d60_min: f64, z_kelvin: f64) -> f64 {
    LN_10 / d60_min * exp(LN_10 / z_kelvin * (temperature.liquid().0 - 60.0))
}

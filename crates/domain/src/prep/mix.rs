//! Hot and cold water mixed to a temperature.

use super::facts::{COLD, HOT, JUG_TIME};
use super::measure::{Measure, Unit};
use barm_science::units::Celsius;
use barm_science::water::{density_kg_per_m3, heat_capacity_j_per_kg_k};

/// The two waters that a teacher mixes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Sources {
    /// Hot water: tap, thermos or kettle (°C).
    pub hot_celsius: f64,
    /// Cold water: tap, or a jug that stood in the room (°C).
    pub cold_celsius: f64,
}

impl Default for Sources {
    /// A tap of 60 °C and one of 15 °C.
    fn default() -> Self {
        Self { hot_celsius: HOT.value, cold_celsius: COLD.value }
    }
}

/// What goes into the jug.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Mix {
    /// Hot and cold water.
    Parts {
        /// Hot water (mL).
        hot: Measure,
        /// Cold water (mL).
        cold: Measure,
    },
    /// The hot water is not hot enough for it: take hotter water, such as from a kettle, mixed down
    /// by the teacher.
    NeedsHotter,
    /// The cold water is not cold enough for it: chill it first.
    NeedsColder,
}

impl Sources {
    /// Whether both are water and the hot one is the hotter.
    pub fn can_be_mixed(&self) -> bool {
        let liquid = 0.0..=100.0;
        liquid.contains(&self.hot_celsius)
            && liquid.contains(&self.cold_celsius)
            && self.hot_celsius > self.cold_celsius
    }

    /// Hot and cold water for a jug of that volume (mL) at that temperature (°C), in a jug that
    /// takes no warmth itself (rinse it with warm water first).
    ///
    /// ```text
    /// m_hot · c · (t_hot − t) = m_cold · c' · (t − t_cold)      c, c' between those temperatures
    /// ```
    pub fn mix(&self, volume_ml: f64, celsius: f64) -> Mix {
        if celsius > self.hot_celsius {
            return Mix::NeedsHotter;
        }
        if celsius < self.cold_celsius {
            return Mix::NeedsColder;
        }
        let heat = |other: f64| {
            heat_capacity_j_per_kg_k(Celsius(f64::midpoint(other, celsius)))
                * (other - celsius).abs()
        };
        let (gives, takes) = (heat(self.hot_celsius), heat(self.cold_celsius));
        let hot_share = takes / (gives + takes);
        let mass = volume_ml * density_kg_per_m3(Celsius(celsius));
        let part = |share: f64, source: f64| {
            Measure::new(Unit::Milliliter, mass * share / density_kg_per_m3(Celsius(source)))
        };
        Mix::Parts {
            hot: part(hot_share, self.hot_celsius),
            cold: part(1.0 - hot_share, self.cold_celsius),
        }
    }
}

/// Temperature of a lidded jug after so many minutes in a room (°C).
///
/// ```text
/// t = t_room + (t_0 − t_room) · exp(−minutes / τ)      τ = 75 min
/// ```
///
/// Negative minutes look back: to what it must have been for `celsius` now.
pub fn jug_celsius(celsius: f64, room_celsius: f64, minutes: f64) -> f64 {
    room_celsius + (celsius - room_celsius) * libm::exp(-minutes / JUG_TIME.value)
}

/// Minutes until a lidded jug has changed by `kelvin`; endless if it never does.
pub fn jug_minutes(celsius: f64, room_celsius: f64, kelvin: f64) -> f64 {
    let over = (celsius - room_celsius).abs();
    if over <= kelvin {
        return f64::INFINITY;
    }
    JUG_TIME.value * libm::log(over / (over - kelvin))
}

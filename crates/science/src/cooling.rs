//! How a bag takes on the temperature of the room, a towel or a tray.

use crate::fact::Fact;
use crate::setup::{Bag, Lying};

/// Heat that leaves one face of a bag to room air, by convection and radiation (W/(m²·K)).
pub const TO_AIR: Fact = Fact::derived(
    "cooling.to_air",
    10.0,
    "W/(m2.K)",
    "free convection and radiation of a warm flat face in still air",
)
.within((8.0, 12.0));

/// Faces of a bag on a bench that give off heat: the lower one is wet, the upper one lies over
/// gas (1).
pub const WARM_FACES: Fact = Fact::derived(
    "cooling.warm_faces",
    1.15,
    "1",
    "makes the time constant of 50 mL in a sandwich bag 12.5 min, in the middle (by \
     ratio) of 8 to 20 min",
)
.within((1.0, 2.0));

/// Standard deviation of the logarithm of the loss from class to class (1).
pub const LOSS_LOG_SD: Fact = Fact::derived(
    "cooling.loss_log_sd",
    0.28,
    "1",
    "8 to 20 min for the time constant of a sandwich bag as the central 90 %",
)
.within((0.2, 0.4));

/// How many times slower a bag cools between folded towels (1).
pub const TOWEL: Fact = Fact::memory(
    "cooling.towel",
    3.5,
    "1",
    "time constant of 30 to 60 min wrapped in a towel, from memory",
)
.within((2.5, 5.0));

/// Heat that passes from a tray's water through the film into the bag (W/(m²·K)).
pub const FROM_TRAY: Fact = Fact::memory(
    "cooling.from_tray",
    100.0,
    "W/(m2.K)",
    "still water on both sides of a thin film, from memory",
)
.within((60.0, 200.0));

/// Share of a bag's upper face that gives off heat when it lies in a tray (1).
pub const TRAY_FACES: Fact =
    Fact::derived("cooling.tray_faces", 0.5, "1", "the upper face lies over gas")
        .within((0.3, 1.0));

/// Time constant of a tray of warm water some centimetres deep (min).
pub const TRAY_TIME: Fact = Fact::derived(
    "cooling.tray_time",
    90.0,
    "min",
    "4 cm of water losing 20 W/(m2.K) through both faces would take 140 min; \
     evaporation shortens it",
)
.within((60.0, 150.0));

/// Density of the film (kg/m³).
pub const FILM_DENSITY: Fact = Fact::memory(
    "cooling.film_density",
    920.0,
    "kg/m3",
    "low-density polyethylene, from memory",
)
.within((915.0, 925.0));

/// Heat capacity of the film (J/(g·K)).
pub const FILM_HEAT: Fact =
    Fact::memory("cooling.film_heat", 2.3, "J/(g.K)", "low-density polyethylene, from memory")
        .within((2.0, 2.5));

/// Heat capacity of dry food and yeast (J/(g·K)).
pub const SOLIDS_HEAT: Fact = Fact::memory(
    "cooling.solids_heat",
    1.5,
    "J/(g.K)",
    "sugar 1.24, starch and protein 1.5 to 1.8, from memory",
)
.within((1.2, 2.0));

/// Facts of this module.
pub const FACTS: &[Fact] = &[
    TO_AIR,
    WARM_FACES,
    LOSS_LOG_SD,
    TOWEL,
    FROM_TRAY,
    TRAY_FACES,
    TRAY_TIME,
    FILM_DENSITY,
    FILM_HEAT,
    SOLIDS_HEAT,
];

/// Heat capacity of a bag's two sheets of film, in J/K.
pub fn film_j_per_k(bag: &Bag) -> f64 {
    let grams = 2e-3 * bag.width_mm * bag.height_mm * bag.film_um * 1e-6 * FILM_DENSITY.value;
    grams * FILM_HEAT.value
}

/// How fast one bag changes its temperature, and towards what.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Cooling {
    room_celsius: f64,
    /// Share of the difference to the room that is made up each minute (1/min).
    to_room_per_min: f64,
    /// The same to a tray (1/min); zero without one.
    to_tray_per_min: f64,
    tray_at_zero_celsius: f64,
    tray_per_min: f64,
}

impl Cooling {
    /// A bag of heat capacity `j_per_k` that lies so; `loss` multiplies all that it loses to the
    /// air, `tray` the speed at which a tray cools.
    pub fn new(
        bag: &Bag,
        lying: Lying,
        room_celsius: f64,
        j_per_k: f64,
        loss: f64,
        tray: f64,
    ) -> Self {
        let per_min =
            |w_per_m2_k: f64| 60.0 * w_per_m2_k * bag.width_mm * bag.height_mm * 1e-6 / j_per_k;
        let to_air = loss * per_min(TO_AIR.value);
        let (to_room, to_tray, at_zero) = match lying {
            Lying::Bench => (WARM_FACES.value * to_air, 0.0, room_celsius),
            Lying::Towel => (WARM_FACES.value * to_air / TOWEL.value, 0.0, room_celsius),
            Lying::WarmTray { celsius } => {
                (TRAY_FACES.value * to_air, per_min(FROM_TRAY.value), celsius)
            }
        };
        Self {
            room_celsius,
            to_room_per_min: to_room,
            to_tray_per_min: to_tray,
            tray_at_zero_celsius: at_zero,
            tray_per_min: tray / TRAY_TIME.value,
        }
    }

    /// A bag that nothing warms or cools.
    pub const fn none() -> Self {
        Self {
            room_celsius: 0.0,
            to_room_per_min: 0.0,
            to_tray_per_min: 0.0,
            tray_at_zero_celsius: 0.0,
            tray_per_min: 0.0,
        }
    }

    /// Temperature of the tray `minute` minutes after the zero reading, in °C.
    ///
    /// Before the zero reading a cold tray was colder still; but water that is as cold as ice stays
    /// at 0 °C while there is ice in it.
    pub fn tray_celsius(&self, minute: f64) -> f64 {
        let over = self.tray_at_zero_celsius - self.room_celsius;
        (self.room_celsius + over * libm::exp(-self.tray_per_min * minute)).max(0.0)
    }

    /// Change of a bag's temperature at `celsius`, in K/min, without its own heat.
    ///
    /// ```text
    /// dT/dt = −(T − T_room)/τ − (T − T_tray)/τ_tray
    /// ```
    pub fn kelvin_per_min(&self, minute: f64, celsius: f64) -> f64 {
        let to_room = self.to_room_per_min * (self.room_celsius - celsius);
        if self.to_tray_per_min > 0.0 {
            to_room + self.to_tray_per_min * (self.tray_celsius(minute) - celsius)
        } else {
            to_room
        }
    }

    /// The warmest that the surroundings are from `minute` on, in °C.
    pub fn warmest_celsius(&self, minute: f64) -> f64 {
        if self.to_tray_per_min > 0.0 {
            self.room_celsius.max(self.tray_celsius(minute))
        } else {
            self.room_celsius
        }
    }

    /// What does not change in it, by name.
    pub(crate) const fn fixed(&self) -> [(&'static str, f64); 5] {
        [
            ("room_celsius", self.room_celsius),
            ("to_room_per_min", self.to_room_per_min),
            ("to_tray_per_min", self.to_tray_per_min),
            ("tray_at_zero_celsius", self.tray_at_zero_celsius),
            ("tray_per_min", self.tray_per_min),
        ]
    }

    /// Time constant towards the room, in minutes; endless for a bag that does not cool.
    pub fn time_constant_min(&self) -> f64 {
        1.0 / self.to_room_per_min
    }
}

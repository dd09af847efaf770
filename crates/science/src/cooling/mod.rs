//! How a bag takes on the temperature of the room, a towel or a tray.
//!
//! Explained in `docs/science/heat.md`.

mod faces;
mod mixing;

pub use faces::{
    ACROSS_BY_RADIATION, GAS_CONDUCTIVITY, STEAM_DIFFUSIVITY, TO_AIR, TO_BENCH, TURNING_DEPTH,
    VAPORIZATION, WET_FLOOR, WET_FLOOR_LOSS, steam_conductivity, upper_face, wet_share,
};
pub use mixing::{
    DISSOLVING_FRUCTOSE, DISSOLVING_GLUCOSE, DISSOLVING_SALT, DISSOLVING_SODA,
    DISSOLVING_SUCROSE, FILM_DENSITY, FILM_HEAT, GLUCOSE_HYDRATE, SOLIDS_HEAT, WETTING_STARCH,
    WETTING_YEAST, film_j_per_k, taken_by_100_g,
};

use crate::bag::{face_m2, simulated_capacity_ml};
use crate::exponential::exp;
use crate::fact::Fact;
use crate::setup::{Bag, Lying};
use crate::units::Celsius;

/// Standard deviation of the logarithm of the loss from class to class (1).
pub const LOSS_LOG_SD: Fact = Fact::derived(
    "cooling.loss_log_sd",
    0.35,
    "1",
    "7 to 22 min for the time constant of a sandwich bag as the central 90 %: 8 to 20 min by the air \
     alone, less on a bench of stone or resin, which takes up heat faster at first",
)
.within((0.25, 0.45));

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

/// Time constant of a tray of warm water some centimetres deep (min).
pub const TRAY_TIME: Fact = Fact::derived(
    "cooling.tray_time",
    90.0,
    "min",
    "4 cm of water losing 20 W/(m2.K) through both faces would take 140 min; \
     evaporation shortens it",
)
.within((60.0, 150.0));

/// Facts of this module.
pub const FACTS: &[Fact] = &[
    LOSS_LOG_SD,
    TOWEL,
    FROM_TRAY,
    TRAY_TIME,
    TO_AIR,
    TO_BENCH,
    WET_FLOOR,
    WET_FLOOR_LOSS,
    ACROSS_BY_RADIATION,
    GAS_CONDUCTIVITY,
    STEAM_DIFFUSIVITY,
    VAPORIZATION,
    TURNING_DEPTH,
    FILM_DENSITY,
    FILM_HEAT,
    SOLIDS_HEAT,
    DISSOLVING_SUCROSE,
    DISSOLVING_GLUCOSE,
    GLUCOSE_HYDRATE,
    DISSOLVING_FRUCTOSE,
    DISSOLVING_SALT,
    DISSOLVING_SODA,
    WETTING_YEAST,
    WETTING_STARCH,
];

/// What decides at a moment how fast a bag cools.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Inside {
    /// Temperature of the contents (°C).
    pub celsius: f64,
    /// Wet gas with the trapped air (mL).
    pub gas_ml: f64,
    /// Steam in it (Pa).
    pub steam_pa: f64,
}

/// How fast one bag changes its temperature, and towards what.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Cooling {
    room_celsius: f64,
    /// Loss of the whole face for each W/(m²·K) (1/min), the towel's share taken off.
    upper_per_min: f64,
    /// What the floor gives to bench or tray while all of it is wet (1/min).
    floor_per_min: f64,
    /// Whether the floor lies in a tray.
    in_tray: bool,
    tray_at_zero_celsius: f64,
    tray_per_min: f64,
    /// Depth of a millilitre of gas over the whole face (mm/mL).
    mm_per_ml: f64,
    /// Fill without gas (1), and what a millilitre adds to it (1/mL).
    fill_at_first: f64,
    fill_per_ml: f64,
}

impl Cooling {
    /// A bag with `contents_ml` of liquid and solids and a heat capacity of `j_per_k` that lies so;
    /// `loss` multiplies all that it loses to air and bench, `tray` the speed at which a tray cools.
    pub fn new(
        bag: &Bag,
        lying: Lying,
        room_celsius: f64,
        (contents_ml, j_per_k): (f64, f64),
        loss: f64,
        tray: f64,
    ) -> Self {
        let face_m2 = face_m2(bag);
        let capacity_ml = simulated_capacity_ml(bag);
        let per_min = 60.0 * face_m2 / j_per_k;
        let (upper, floor, at_zero) = match lying {
            Lying::Bench => (loss, loss * TO_BENCH.value, room_celsius),
            Lying::Towel => {
                let less = loss / TOWEL.value;
                (less, less * TO_BENCH.value, room_celsius)
            }
            Lying::WarmTray { celsius } => (loss, FROM_TRAY.value, celsius),
        };
        Self {
            room_celsius,
            upper_per_min: upper * per_min,
            floor_per_min: floor * per_min,
            in_tray: matches!(lying, Lying::WarmTray { .. }),
            tray_at_zero_celsius: at_zero,
            tray_per_min: tray / TRAY_TIME.value,
            mm_per_ml: 1e-3 / face_m2,
            fill_at_first: contents_ml / capacity_ml,
            fill_per_ml: 1.0 / capacity_ml,
        }
    }

    /// A bag that nothing warms or cools.
    pub const fn none() -> Self {
        Self {
            room_celsius: 0.0,
            upper_per_min: 0.0,
            floor_per_min: 0.0,
            in_tray: false,
            tray_at_zero_celsius: 0.0,
            tray_per_min: 0.0,
            mm_per_ml: 0.0,
            fill_at_first: 0.0,
            fill_per_ml: 0.0,
        }
    }

    /// Temperature of the tray `minute` minutes after the zero reading, in °C.
    ///
    /// Before the zero reading a cold tray was colder still; but water that is as cold as ice stays
    /// at 0 °C while there is ice in it.
    pub fn tray_celsius(&self, minute: f64) -> f64 {
        let over = self.tray_at_zero_celsius - self.room_celsius;
        (self.room_celsius + over * exp(-self.tray_per_min * minute)).max(0.0)
    }

    /// What a bag gives to what lies over it and under it, each as a share of its difference in
    /// temperature to that (1/min).
    fn per_min(&self, inside: &Inside) -> (f64, f64) {
        let steam = steam_conductivity(Celsius(inside.celsius), inside.steam_pa);
        let depth_mm = inside.gas_ml * self.mm_per_ml;
        let upper = upper_face(depth_mm, GAS_CONDUCTIVITY.value + steam);
        let fill = self.fill_at_first + inside.gas_ml * self.fill_per_ml;
        (self.upper_per_min * upper, self.floor_per_min * wet_share(fill))
    }

    /// Change of a bag's temperature, in K/min, without its own heat.
    ///
    /// ```text
    /// C dT/dt = −A U(δ, T) (T − T_room) − A w(f) U_b (T − T_under)      T_under: room, or the tray
    /// ```
    pub fn kelvin_per_min(&self, minute: f64, inside: &Inside) -> f64 {
        let (upper, floor) = self.per_min(inside);
        let to_room = self.room_celsius - inside.celsius;
        if self.in_tray {
            upper * to_room + floor * (self.tray_celsius(minute) - inside.celsius)
        } else {
            (upper + floor) * to_room
        }
    }

    /// The warmest that the surroundings are from `minute` on, in °C.
    pub fn warmest_celsius(&self, minute: f64) -> f64 {
        if self.in_tray {
            self.room_celsius.max(self.tray_celsius(minute))
        } else {
            self.room_celsius
        }
    }

    /// What does not change in it, by name.
    pub(crate) fn fixed(&self) -> [(&'static str, f64); 9] {
        [
            ("room_celsius", self.room_celsius),
            ("upper_per_min", self.upper_per_min),
            ("floor_per_min", self.floor_per_min),
            ("in_tray", f64::from(self.in_tray)),
            ("tray_at_zero_celsius", self.tray_at_zero_celsius),
            ("tray_per_min", self.tray_per_min),
            ("mm_per_ml", self.mm_per_ml),
            ("fill_at_first", self.fill_at_first),
            ("fill_per_ml", self.fill_per_ml),
        ]
    }

    /// Time constant of a bag as it is now, in minutes: towards the room, or towards tray and room
    /// together; endless for a bag that does not cool.
    pub fn time_constant_min(&self, inside: &Inside) -> f64 {
        let (upper, floor) = self.per_min(inside);
        1.0 / (upper + floor)
    }
}

//! Zip bags: the sizes sold, and how much a sealed one holds.

use crate::fact::{Fact, Status};
use crate::setup::Bag;

/// How the in-house bag shapes are cited wherever they are used.
pub const SIMULATION: &str =
    "own membrane simulation (2109 runs), not yet compared with a measured bag";

const fn size(name: &'static str, mm: f64, status: Status, source: &'static str) -> Fact {
    // Stock zip bags of 100 to 380 mm are sold as +6.4/−3.2 mm wide.
    Fact { name, value: mm, unit: "mm", range: Some((mm - 3.2, mm + 6.4)), status, source }
}

const RETAIL: &str = "retail pages: 6.5 x 5.875 in";
const QUART: &str = "retail pages: about 7 x 8 in; 7 x 7.69 in from memory";
const GALLON: &str = "retail pages: about 10 x 11 in; 10.56 x 10.75 in from memory";

const SNACK_WIDTH: Fact = size("bag.snack.width", 165.0, Status::Sourced, RETAIL);
const SNACK_HEIGHT: Fact =
    size("bag.snack.height", 83.0, Status::Memory, "3.25 in, from memory");
const SANDWICH_WIDTH: Fact = size("bag.sandwich.width", 165.0, Status::Sourced, RETAIL);
const SANDWICH_HEIGHT: Fact = size("bag.sandwich.height", 149.0, Status::Sourced, RETAIL);
const QUART_WIDTH: Fact = size("bag.quart.width", 178.0, Status::Sourced, QUART);
const QUART_HEIGHT: Fact = size("bag.quart.height", 196.0, Status::Memory, QUART);
const GALLON_WIDTH: Fact = size("bag.gallon.width", 268.0, Status::Memory, GALLON);
const GALLON_HEIGHT: Fact = size("bag.gallon.height", 273.0, Status::Memory, GALLON);

const THIN_FILM: Fact = Fact::sourced(
    "bag.film.thin",
    42.0,
    "um",
    "encyclopedia entry on zipper storage bags: small bags of 40 to 45 um",
)
.within((38.0, 45.0));

const THICK_FILM: Fact =
    Fact::memory("bag.film.freezer", 65.0, "um", "freezer grade, from memory")
        .within((60.0, 70.0));

/// Fill, as gas and liquid over the bag's own capacity, that a bag must not pass in class (1).
pub const WORKING_FILL: Fact = Fact::derived(
    "bag.working_fill",
    0.8,
    "1",
    "margin below drum-tight; capacities by Robin 2004 lie 4 to 6 % under the simulated \
         ones",
);

const ROBIN: &str = "A. C. Robin, Paper bag problem, Mathematics Today, June 2004, 104-107, via an encyclopedia";

const ROBIN_EDGE: Fact = Fact::sourced("bag.robin", 0.142, "1", ROBIN);

const fn simulated(name: &'static str, value: f64, unit: &'static str) -> Fact {
    Fact::derived(name, value, unit, SIMULATION)
}

const CAPACITY_EDGE: Fact = simulated("bag.capacity.edge", 0.1275, "1");
const THICKNESS_LOSS: Fact = simulated("bag.full_height.loss", 0.135, "1");
const THICKNESS_DECAY: Fact = simulated("bag.full_height.decay", 2.1, "1");

/// Facts of this module.
pub const FACTS: &[Fact] = &[
    SNACK_WIDTH,
    SNACK_HEIGHT,
    SANDWICH_WIDTH,
    SANDWICH_HEIGHT,
    QUART_WIDTH,
    QUART_HEIGHT,
    GALLON_WIDTH,
    GALLON_HEIGHT,
    THIN_FILM,
    THICK_FILM,
    WORKING_FILL,
    ROBIN_EDGE,
    CAPACITY_EDGE,
    THICKNESS_LOSS,
    THICKNESS_DECAY,
];

/// The zip bags that a grocery sells.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum StandardBag {
    /// Half a sandwich bag, 165 by 83 mm.
    Snack,
    /// 165 by 149 mm.
    Sandwich,
    /// 178 by 196 mm.
    Quart,
    /// 268 by 273 mm.
    Gallon,
}

impl StandardBag {
    /// All sizes, smallest first.
    pub const ALL: [Self; 4] = [Self::Snack, Self::Sandwich, Self::Quart, Self::Gallon];

    /// The word on the box.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Snack => "snack",
            Self::Sandwich => "sandwich",
            Self::Quart => "quart",
            Self::Gallon => "gallon",
        }
    }

    /// The bag of that name, in any case, with or without the word "bag".
    pub fn named(name: &str) -> Option<Self> {
        let name = name.trim().to_lowercase();
        let name = name.strip_suffix("bag").map_or(name.as_str(), str::trim_end);
        Self::ALL.into_iter().find(|bag| bag.name() == name)
    }

    /// The bag with its usual thin film. Measure the real one: 3 mm change the fullest reading
    /// by 4 mm.
    pub const fn bag(self) -> Bag {
        let (width, height) = match self {
            Self::Snack => (SNACK_WIDTH, SNACK_HEIGHT),
            Self::Sandwich => (SANDWICH_WIDTH, SANDWICH_HEIGHT),
            Self::Quart => (QUART_WIDTH, QUART_HEIGHT),
            Self::Gallon => (GALLON_WIDTH, GALLON_HEIGHT),
        };
        Bag { width_mm: width.value, height_mm: height.value, film_um: THIN_FILM.value }
    }

    /// The size sold that comes nearest to a bag, by the ratios of its long and of its short side.
    pub fn nearest(bag: &Bag) -> Self {
        let sides = |bag: &Bag| {
            let (short, aspect) = short_side_and_aspect(bag);
            (libm::log(short), libm::log(short * aspect))
        };
        let (short, long) = sides(bag);
        let off = |size: &Self| {
            let (other_short, other_long) = sides(&size.bag());
            libm::hypot(short - other_short, long - other_long)
        };
        let nearer = |a: &Self, b: &Self| off(a).total_cmp(&off(b));
        Self::ALL.into_iter().min_by(nearer).unwrap_or(Self::Sandwich)
    }

    /// The bag in freezer grade: the same size, thicker film.
    pub const fn freezer_bag(self) -> Bag {
        Bag { film_um: THICK_FILM.value, ..self.bag() }
    }
}

/// Short side, and long side over short side, of a bag: its size and its aspect (mm, 1).
pub(crate) fn short_side_and_aspect(bag: &Bag) -> (f64, f64) {
    let short = bag.width_mm.min(bag.height_mm);
    (short, bag.width_mm.max(bag.height_mm) / short)
}

/// Capacity of a sealed flat bag when drum-tight, in millilitres, on the safe side.
///
/// Used for warnings: it lies 4 to 6 % under the simulated capacity.
///
/// ```text
/// V = w³ ( a/π − 0.142 (1 − 10^(−a)) )      w short side, a long side over short side
/// ```
///
/// # Source
/// A. C. Robin (2004), Paper bag problem, *Mathematics Today*, June, 104–107.
pub fn robin_capacity_ml(bag: &Bag) -> f64 {
    pillow_ml(bag, ROBIN_EDGE.value)
}

/// Capacity of a sealed flat bag when drum-tight, in millilitres, as simulated.
///
/// The height of the card is scaled by this one. Robin's formula with another edge term, within
/// 0.4 % of the simulated sandwich, quart and gallon bags and 1.4 % of the snack bag.
///
/// # Source
/// [`SIMULATION`].
pub fn simulated_capacity_ml(bag: &Bag) -> f64 {
    pillow_ml(bag, CAPACITY_EDGE.value)
}

fn pillow_ml(bag: &Bag, edge: f64) -> f64 {
    let (short, aspect) = short_side_and_aspect(bag);
    let ends = 1.0 - libm::exp(-std::f64::consts::LN_10 * aspect);
    1e-3 * short * short * short * (aspect * std::f64::consts::FRAC_1_PI - edge * ends)
}

/// Thickness of a drum-tight sealed flat bag at its middle, in millimetres.
///
/// ```text
/// H = w ( 2/π − 0.135 exp(−2.1 (a − 1)) )
/// ```
///
/// # Accuracy
/// Within 0.6 % of the simulation.
/// # Source
/// [`SIMULATION`].
pub fn full_height_mm(bag: &Bag) -> f64 {
    let (short, aspect) = short_side_and_aspect(bag);
    let loss = THICKNESS_LOSS.value * libm::exp(-THICKNESS_DECAY.value * (aspect - 1.0));
    short * (std::f64::consts::FRAC_2_PI - loss)
}

/// Area of one face of a bag, in square metres.
pub const fn face_m2(bag: &Bag) -> f64 {
    bag.width_mm * bag.height_mm * 1e-6
}

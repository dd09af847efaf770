//! Starch granules by the plant they come from: at what temperature they cook, and how well an
//! enzyme bores into raw ones.
//!
//! # Law
//! ```text
//! x = (T − onset)/(end − onset), held to 0 and 1       F = x² (3 − 2x)
//! dR/dt = −g · max(0, R − R₀ (1 − F))                   per plant, R to cooked starch
//! ```
//! *F* is the share of a plant's granules that cook at a temperature *T* in plenty of water: none
//! under the onset, all over the end, and between them a bell of melting temperatures (a parabola,
//! whose sum it is). *R₀* is the raw starch put in, so what has cooked at the bag's warmest does not
//! cook again as it cools. Granules that enzymes have bored out count among those that melt first.
//!
//! Left out: dissolved sugar and salt raise the onset by some kelvin, shortage of water widens the
//! range, and swelling short of cooking already helps an enzyme.

use crate::fact::Fact;
use crate::setup::Grain;

const fn celsius(
    name: &'static str,
    value: f64,
    range: (f64, f64),
    source: &'static str,
) -> Fact {
    Fact::memory(name, value, "Cel", source).within(range)
}

const HANDBOOK: &str =
    "range under the microscope or by calorimetry (handbook tables, from memory)";
const RICE_SOURCE: &str = "11 varieties: onset 56 to 71, end 69 to 82 °C (calorimetry, as reported), \
     middle of them from memory";
const BREWING: &str = "brewers' texts 61 to 62, handbook 51 to 60 °C; from memory";

/// How the granules of one plant behave.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Granules {
    /// Temperature under which none cook (°C).
    pub onset: Fact,
    /// Temperature over which all do (°C).
    pub end: Fact,
    /// Rate of enzymes on raw ones over that on raw corn (1).
    pub attack: Fact,
}

macro_rules! granules {
    ($name:ident, $word:literal, $onset:expr, $end:expr, $source:expr; $attack:expr) => {
        const $name: Granules = Granules {
            onset: celsius(
                concat!("starch.", $word, ".onset"),
                $onset,
                ($onset - 4.0, $onset + 4.0),
                $source,
            ),
            end: celsius(
                concat!("starch.", $word, ".end"),
                $end,
                ($end - 5.0, $end + 5.0),
                $source,
            ),
            attack: Fact::memory(
                concat!("starch.", $word, ".attack"),
                $attack,
                "1",
                "judgement; order of plants in H. W. Leach, T. J. Schoch, Cereal Chem. 38, 34 (1961): \
                 tapioca, sorghum, corn, wheat, rice, potato; others by their kin",
            )
            .within((0.5 * $attack, 2.0 * $attack)),
        };
    };
}

granules!(WHEAT, "wheat", 52.0, 66.0, HANDBOOK; 0.9);
granules!(BARLEY, "barley", 52.0, 63.0, BREWING; 0.9);
granules!(OAT, "oat", 53.0, 62.0, HANDBOOK; 0.9);
granules!(RICE, "rice", 63.0, 77.0, RICE_SOURCE; 0.75);
granules!(CORN, "corn", 62.0, 75.0, HANDBOOK; 1.0);
granules!(SORGHUM, "sorghum", 67.0, 77.0, HANDBOOK; 1.2);
granules!(POTATO, "potato", 57.0, 68.0, HANDBOOK; 0.2);
granules!(TAPIOCA, "tapioca", 54.0, 68.0, HANDBOOK; 1.5);
granules!(PULSE, "pulse", 62.0, 76.0, HANDBOOK; 0.5);
granules!(UNKNOWN, "unknown", 56.0, 76.0, HANDBOOK; 0.8);

/// How fast granules cook once it is warm enough (1/min).
pub const RATE: Fact = Fact::memory(
    "starch.gelatinization_rate",
    1.0,
    "/min",
    "single granules melt within seconds, clumps and flour within minutes; judgement",
)
.within((0.3, 3.0));

/// How far lots and varieties differ in where they cook (K).
pub const SHIFT_SD: Fact = Fact::memory(
    "starch.gelatinization_shift_sd",
    2.5,
    "K",
    "onsets of one grain differ by 10 K between varieties; judgement",
);

/// Facts of this module.
pub const FACTS: &[Fact] = &[
    WHEAT.onset,
    WHEAT.end,
    WHEAT.attack,
    BARLEY.onset,
    BARLEY.end,
    BARLEY.attack,
    OAT.onset,
    OAT.end,
    OAT.attack,
    RICE.onset,
    RICE.end,
    RICE.attack,
    CORN.onset,
    CORN.end,
    CORN.attack,
    SORGHUM.onset,
    SORGHUM.end,
    SORGHUM.attack,
    POTATO.onset,
    POTATO.end,
    POTATO.attack,
    TAPIOCA.onset,
    TAPIOCA.end,
    TAPIOCA.attack,
    PULSE.onset,
    PULSE.end,
    PULSE.attack,
    UNKNOWN.onset,
    UNKNOWN.end,
    UNKNOWN.attack,
    RATE,
    SHIFT_SD,
];

/// How the granules of a plant behave; `None` for starch of an unknown plant.
pub const fn granules(grain: Option<Grain>) -> Granules {
    match grain {
        Some(Grain::Wheat) => WHEAT,
        Some(Grain::Barley) => BARLEY,
        Some(Grain::Oat) => OAT,
        Some(Grain::Rice) => RICE,
        Some(Grain::Corn) => CORN,
        Some(Grain::Sorghum) => SORGHUM,
        Some(Grain::Potato) => POTATO,
        Some(Grain::Tapioca) => TAPIOCA,
        Some(Grain::Pulse) => PULSE,
        None => UNKNOWN,
    }
}

/// Share of the granules that cook at a temperature (1), between an onset and an end (°C).
pub fn cooked_share(celsius: f64, onset: f64, end: f64) -> f64 {
    let x = ((celsius - onset) / (end - onset)).clamp(0.0, 1.0);
    x * x * (3.0 - 2.0 * x)
}

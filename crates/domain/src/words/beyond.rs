//! Laws that a bag goes beyond, in a teacher's words.

use super::Voice;
use super::number::short;
use crate::amount::show::both_degrees;
use crate::outlook::{Beyond, BeyondTogether};

/// What the range of a law is told in.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Measure {
    /// Degrees of the bag.
    Warmth,
    /// Degrees of the shelf on which yeast was kept.
    Shelf,
    /// Moles of dissolved particles in a liter.
    Particles,
    /// Acidity.
    Acid,
    /// Moles of salt in a kilogram of water.
    Salt,
    /// Ionic strength, moles in a kilogram.
    Ions,
    /// Share of steam in the gas.
    Steam,
    /// Share of the room that gas fills.
    Room,
    /// Months since the yeast was packed.
    Months,
    /// Minutes since a solution was made.
    Minutes,
    /// Share of raw starch in starch and water.
    Starch,
    /// Short side of a bag (mm).
    Side,
    /// Long side of a bag over its short side.
    Shape,
    /// Grams of sugar in a liter.
    Sugar,
    /// Moles of salt in a liter.
    SaltInLiter,
}

use Measure::{
    Acid, Ions, Minutes, Months, Particles, Room, Salt, SaltInLiter, Shape, Shelf, Side,
    Starch, Steam, Sugar, Warmth,
};

/// Each law with what it is about, as the start of a sentence that goes on with "is known". A law
/// without a row is told by what it is read at.
const ABOUT: &[(&str, &str, Measure)] = &[
    ("yeast.response", "How fast yeast works", Warmth),
    ("yeast.slow_loss", "How yeast tires in a warm bag", Warmth),
    ("yeast.osmotic", "How sugar and salt slow yeast", Particles),
    ("yeast.acidity", "How acid slows yeast", Acid),
    ("yeast.storage of dry yeast", "How dry yeast ages", Shelf),
    ("yeast.storage of compressed yeast", "How fresh yeast ages", Shelf),
    ("yeast.storage by age", "How old yeast weakens", Months),
    ("enzyme.heat of starch's enzymes", "How an enzyme that cuts starch works", Warmth),
    ("enzyme.heat of lactase and invertase", "How an enzyme that splits sugar works", Warmth),
    ("enzyme.acidity", "What acid does to an enzyme", Acid),
    ("enzyme.stock", "How an enzyme solution keeps", Minutes),
    ("starch.cooking", "How starch cooks", Starch),
    ("carbon_dioxide.salting by temperature", "How much gas salty water holds", Warmth),
    ("carbon_dioxide.salting by salt", "How much gas salty water holds", Salt),
    ("carbonate.activity", "How much gas soda and acid make", Ions),
    ("carbonate.constants", "How much gas soda and acid make", Warmth),
    ("permeation.activation", "How gas leaks through the film", Warmth),
    ("gas.most_steam", "How much room steamy gas takes", Steam),
    ("card_height.family", "How high gas lifts the card", Room),
    ("card_height.family by size", "How high gas lifts the card", Side),
    ("card_height.family by shape", "How high gas lifts the card", Shape),
    ("ethanol.water_gas_ratio", "How ethanol parts between liquid and gas", Warmth),
    ("meter.sugar_room", "How sugar drives ethanol into the gas", Sugar),
    ("meter.salting_out", "How salt drives ethanol into the gas", SaltInLiter),
];

/// Grams of table salt in a mole (IUPAC, from memory).
const SALT_G: f64 = 58.44;

fn degrees((low, high): (f64, f64)) -> String {
    let fahrenheit = |celsius: f64| short((celsius * 1.8 + 32.0).round());
    format!(
        "{} to {} °C ({} to {} °F)",
        short(low),
        short(high),
        fahrenheit(low),
        fahrenheit(high)
    )
}

fn percent(share: f64) -> String {
    format!("{} %", short(100.0 * share))
}

impl Measure {
    /// The range, as it goes on after "is known".
    fn range(self, holds: (f64, f64)) -> String {
        let most = holds.1;
        match self {
            Warmth => format!("from {}", degrees(holds)),
            Shelf => format!("on a shelf of {}", degrees(holds)),
            // Table salt parts in two.
            Particles => format!(
                "up to {} mol of dissolved particles in a liter, as of {:.0} g of salt",
                short(most),
                most / 2.0 * SALT_G
            ),
            Acid => format!("from pH {} to pH {}", short(holds.0), short(most)),
            Salt => {
                format!("up to {:.0} g of salt in a kilogram of water", most * SALT_G)
            }
            Ions => format!("up to an ionic strength of {} mol/kg", short(most)),
            Steam => format!("up to {} steam", percent(most)),
            Room => format!("until gas fills {} of the bag’s room", percent(most)),
            Months => format!("for {} months", short(most)),
            Minutes => format!("for {} hours", short(most / 60.0)),
            Starch => format!("up to {} raw starch in the water", percent(most)),
            Side => format!("for bags of {} to {} mm across", short(holds.0), short(most)),
            Shape => format!("for bags up to {} times as long as wide", short(most)),
            Sugar => format!("up to {most:.0} g of sugar in a liter"),
            SaltInLiter => format!("up to {:.0} g of salt in a liter", most * SALT_G),
        }
    }

    /// How far a bag gets, as a whole sentence without its end.
    fn reached(self, value: f64, above: bool) -> String {
        let way = if above { "up" } else { "down" };
        match self {
            Warmth => format!("This bag goes {way} to {}", both_degrees(value)),
            Shelf => format!("This yeast was kept at {}", both_degrees(value)),
            Particles => format!("This bag goes up to {} mol", short(value)),
            Acid => format!("This bag goes {way} to pH {}", short(value)),
            Salt | SaltInLiter => format!("This bag goes up to {:.0} g", value * SALT_G),
            Sugar => format!("This bag goes up to {value:.0} g"),
            Months => format!("This yeast is {} months old", short(value)),
            Minutes => format!("This solution is {} hours old", short(value / 60.0)),
            Side => format!("This bag has {} mm", short(value)),
            Shape => format!("This bag is {} times as long", short(value)),
            Ions => format!("This bag goes up to {value:.2} mol/kg"),
            Steam | Room | Starch => format!("This bag goes up to {}", percent(value)),
        }
    }
}

impl Voice {
    /// What a law is about, from where to where it is known, and how far a bag goes beyond it. Two
    /// short sentences.
    pub fn beyond(self, beyond: &Beyond) -> String {
        let Some((_, about, measure)) = ABOUT.iter().find(|(law, ..)| *law == beyond.law)
        else {
            let (low, high) = beyond.holds;
            let Beyond { quantity, unit, value, .. } = beyond;
            let space = if unit.is_empty() { "" } else { " " };
            return format!(
                "What the model does is known for a {quantity} of {low} to {high}{space}{unit}. This bag \
                 goes to {value:.3}; there it is a guess."
            );
        };
        let known = measure.range(beyond.holds);
        let reached = measure.reached(beyond.value, beyond.value > beyond.holds.1);
        let from = match beyond.from_min {
            minute if minute > 0.0 => format!(" from {} on", self.minute(minute)),
            _ => String::new(),
        };
        format!("{about} is known {known}. {reached}{from}; there it is a guess.")
    }

    /// The same for all treatments that go beyond a law, told of the one that goes farthest.
    pub fn beyond_together(self, beyond: &BeyondTogether) -> String {
        format!("{}: {}", beyond.treatments.join(", "), self.beyond(&beyond.farthest))
    }
}

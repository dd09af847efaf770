//! One row of the food table, and how it is written.

use super::{Allergen, FoodKind};
use crate::fact::{Fact, Status};
use crate::setup::{Composition, Grain, Portion};

/// A food of the table, per 100 g as used.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Food {
    /// Id used in plans, such as `maple_syrup`.
    pub id: &'static str,
    /// Name used in print, such as `maple syrup`.
    pub name: &'static str,
    /// Other names by which it is found.
    pub aliases: &'static [&'static str],
    /// USDA number (NDB) and description, if it is in that table.
    pub usda: Option<(&'static str, &'static str)>,
    /// What it comes as.
    pub kind: FoodKind,
    /// What it is made of (g per 100 g).
    pub composition: Composition,
    /// Mass of a level customary teaspoon (g), where one can be measured that way.
    pub grams_per_tsp: Option<f64>,
    /// What the mass of a teaspoon rests on, such as `1 cup 128 g / 48`; empty without one.
    pub spoon_source: &'static str,
    /// Mass of one packet or cake (g), where it is sold so.
    pub grams_per_piece: Option<f64>,
    /// How its numbers came to us.
    pub status: FoodStatus,
    /// The plant that its raw starch comes from, where granules of that plant are in the table.
    pub grain: Option<Grain>,
    /// Relative standard deviation of its carbohydrate from pack to pack (1).
    pub content_sd: f64,
    /// Major allergens that it is made from.
    pub allergens: &'static [Allergen],
    /// Major allergens that it often carries traces of.
    pub traces: &'static [Allergen],
    /// Names of its facts, in the order of [`Food::parts`], then teaspoon, piece and content.
    pub(super) fact_names: [&'static str; 19],
    /// Citation of the table; empty if it is not in one.
    pub(super) source: &'static str,
}

/// How the numbers of a food came to us.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct FoodStatus {
    /// Water.
    pub water: Status,
    /// Starch and dextrin.
    pub starch: Status,
    /// The single sugars.
    pub sugars: Status,
    /// Mass of a teaspoon.
    pub spoon: Status,
}

pub(super) const NONE: Composition = Composition::NONE;

/// Share of a flour's starch that the mill has damaged, so that enzymes reach it cold (1).
pub const DAMAGED_FLOUR: Fact = Fact::memory(
    "food.damaged_flour",
    0.065,
    "1",
    "5 to 8 % of the starch of bread flours, from memory",
)
.within((0.05, 0.08));

/// Share of purified corn starch that is damaged (1).
pub const DAMAGED_STARCH: Fact = Fact::memory(
    "food.damaged_starch",
    0.02,
    "1",
    "wet-milled starch is hardly damaged, from memory",
)
.within((0.01, 0.04));

/// Share of the starch of rolled oats and tapioca pearls that steam has cooked (1).
pub const STEAMED: Fact = Fact::memory(
    "food.steamed",
    0.2,
    "1",
    "steaming before rolling or pearling cooks the outside, from memory",
)
.within((0.1, 0.4));

/// Facts of this file; those of the single foods come from [`Food::facts`].
pub const FACTS: &[Fact] = &[DAMAGED_FLOUR, DAMAGED_STARCH, STEAMED];

impl Food {
    /// Every name by which the food is found: its id, its name and its other names.
    pub fn names(&self) -> impl Iterator<Item = &'static str> {
        [self.id, self.name].into_iter().chain(self.aliases.iter().copied())
    }

    /// Whether the food is made from an allergen.
    pub fn has(&self, allergen: Allergen) -> bool {
        self.allergens.contains(&allergen)
    }

    /// So many grams of it, measured with a relative standard deviation from bag to bag.
    pub const fn portion(&self, grams: f64, dosing_sd: f64) -> Portion {
        Portion {
            composition: self.composition,
            grams,
            dosing_sd,
            content_sd: self.content_sd,
            grain: self.grain,
        }
    }

    /// Its parts in fixed order: value, unit and how it came to us.
    fn parts(&self) -> [(f64, &'static str, Status); 16] {
        let c = &self.composition;
        let FoodStatus { water, starch, sugars, .. } = self.status;
        let salt = if self.usda.is_some() { Status::Derived } else { Status::Memory };
        let grams = "g/(100.g)";
        [
            (c.water, grams, water),
            (c.raw_starch, grams, starch),
            (c.cooked_starch, grams, starch),
            (c.dextrin, grams, starch),
            (c.maltotriose, grams, starch),
            (c.galactosides, grams, starch),
            (c.maltose, grams, sugars),
            (c.sucrose, grams, sugars),
            (c.lactose, grams, sugars),
            (c.galactose, grams, sugars),
            (c.glucose, grams, sugars),
            (c.fructose, grams, sugars),
            (c.salt, grams, salt),
            (c.acids.sum(), "mol/(100.g)", Status::Memory),
            (c.acids.ph, "1", Status::Memory),
            (c.bicarbonate, "mol/(100.g)", Status::Derived),
        ]
    }

    /// The numbers of this food that are not zero, as facts.
    pub fn facts(&self) -> impl Iterator<Item = Fact> {
        let of_table = |status| match status {
            Status::Sourced | Status::Derived if !self.source.is_empty() => self.source,
            _ => "typical value, from memory",
        };
        let parts = self
            .parts()
            .into_iter()
            .map(move |(value, unit, status)| (value, unit, status, of_table(status)));
        let spoon = (
            self.grams_per_tsp.unwrap_or_default(),
            "g/[tsp_us]",
            self.status.spoon,
            self.spoon_source,
        );
        let content = (
            self.content_sd,
            "1",
            Status::Memory,
            "judgement on how far packs, lots and ripeness differ, from memory",
        );
        let piece = (
            self.grams_per_piece.unwrap_or_default(),
            "g",
            Status::Sourced,
            "USDA SR28, WEIGHT: packets of 1 g, cakes of 17 g; packets of dry yeast say 7 g (1/4 oz)",
        );
        let rest = [spoon, piece, content];
        let names = self.fact_names.into_iter();
        names.zip(parts.chain(rest)).filter(|(_, (value, ..))| *value > 0.0).map(
            |(name, (value, unit, status, source))| Fact {
                name,
                value,
                unit,
                range: None,
                status,
                source,
            },
        )
    }
}

/// Writes one row of the table; what does not apply is left out.
///
/// The three words after `status` say how water, starch and sugars came to us.
macro_rules! food {
    ($id:ident, $name:literal, $kind:ident;
     $(also [$($alias:literal),*];)?
     $(usda $number:literal, $description:literal;)?
     $(spoon $grams:literal, $spoon:ident, $basis:literal;)?
     $(piece $piece:literal;)?
     $(grain $grain:ident;)?
     status $water:ident, $starch:ident, $sugars:ident;
     content_sd $content_sd:literal;
     $(allergens [$($allergen:ident),*];)?
     $(traces [$($trace:ident),*];)?
     {$($parts:tt)*}) => {
        Food {
            id: stringify!($id),
            name: $name,
            aliases: &[$($($alias),*)?],
            usda: food!(@maybe $(($number, $description))?),
            kind: $kind,
            composition: Composition { $($parts)* },
            grams_per_tsp: food!(@maybe $($grams)?),
            spoon_source: concat!($($basis)?),
            grams_per_piece: food!(@maybe $($piece)?),
            status: $crate::food::FoodStatus {
                water: $water,
                starch: $starch,
                sugars: $sugars,
                spoon: food!(@or Memory $($spoon)?),
            },
            grain: food!(@maybe $($crate::setup::Grain::$grain)?),
            content_sd: $content_sd,
            allergens: &[$($($allergen),*)?],
            traces: &[$($($trace),*)?],
            fact_names: food!(@names $id water raw_starch cooked_starch dextrin maltotriose
                galactosides maltose sucrose lactose galactose glucose fructose salt acid acid_ph bicarbonate teaspoon piece content_sd),
            source: concat!($(
                "USDA National Nutrient Database for Standard Reference, Release 28 (2015), NDB ",
                $number, ": ", $description
            )?),
        }
    };
    (@maybe) => { None };
    (@maybe $value:expr) => { Some($value) };
    (@or $default:ident) => { $default };
    (@or $default:ident $given:ident) => { $given };
    (@names $id:ident $($part:ident)*) => {
        [$(concat!("food.", stringify!($id), ".", stringify!($part))),*]
    };
}
pub(super) use food;

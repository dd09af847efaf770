//! A food as its nutrition label tells it, with what the label leaves open.

mod lines;

use crate::fact::Fact;
use crate::setup::Composition;
use lines::Lines;

const CFR: &str = "21 CFR 101.9(c)(6): total carbohydrate, fiber, total and added sugars to the \
     nearest gram, \"less than 1 g\" under one, zero under half; paragraph from memory";

/// Step to which a label rounds carbohydrate, fiber and sugars (g).
pub const STEP: Fact = Fact::memory("label.step", 1.0, "g", CFR);

/// Standard deviation of the true carbohydrate about the declared one, apart from rounding (1).
pub const DECLARED_SD: Fact = Fact::memory(
    "label.declared_sd",
    0.07,
    "1",
    "21 CFR 101.9(g): natural carbohydrate may fall to 80 % and sugars rise to 120 % of \
         what is declared, taken as about three standard deviations; from memory",
)
.within((0.04, 0.12));

/// What not knowing the kind of sugar adds (1).
pub const UNKNOWN_SUGAR_SD: Fact = Fact::memory(
    "label.unknown_sugar_sd",
    0.15,
    "1",
    "judgement: part of an unknown sugar may be lactose or maltose, which yeast leaves \
         alone within the hour",
);

/// Facts of this file.
pub const FACTS: &[Fact] = &[STEP, DECLARED_SD, UNKNOWN_SUGAR_SD];

/// One line of a label.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Declared {
    /// A whole number of grams (or more exact, where the maker says more).
    Grams(f64),
    /// "Less than 1 g".
    LessThanOne,
}

impl Declared {
    /// Best value in grams; "less than 1 g" stands for a half to one, since what is under a half
    /// may be called zero.
    const fn grams(self) -> f64 {
        match self {
            Self::LessThanOne => 0.75 * STEP.value,
            Self::Grams(grams) => grams,
        }
    }
}

/// What the starch of the food is, from the list of ingredients.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum LabelStarch {
    /// Flour, meal, raw starch: in granules, a little of it damaged by the mill.
    #[default]
    Raw,
    /// Cooked, baked, puffed, instant.
    Cooked,
    /// Maltodextrin, corn syrup solids, glucose syrup.
    Dextrin,
}

/// What the sugars of the food are that were not added.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum NaturalSugar {
    /// Not known: half sucrose, a quarter each glucose and fructose.
    #[default]
    Unknown,
    /// Cane, beet or maple: sucrose.
    Sucrose,
    /// Fruit or honey: glucose and fructose in equal parts.
    Fruit,
    /// Milk: lactose.
    Milk,
    /// Malt or cooked sweet potato: maltose.
    Malt,
    /// Dextrose: glucose.
    Dextrose,
}

/// A nutrition label, as far as it matters for yeast.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct NutritionLabel {
    /// Mass of a serving (g).
    pub serving_g: f64,
    /// Total carbohydrate in a serving.
    pub carbohydrate: Declared,
    /// Dietary fiber in a serving.
    pub fiber: Declared,
    /// Total sugars in a serving.
    pub sugars: Declared,
    /// Added sugars in a serving, taken as sucrose; `None` if the label has no such line.
    pub added_sugars: Option<Declared>,
    /// Sugar alcohols in a serving, which yeast leaves alone; `None` if not named.
    pub sugar_alcohols: Option<Declared>,
    /// Fat in a serving (g), if read.
    pub fat_g: Option<f64>,
    /// Protein in a serving (g), if read.
    pub protein_g: Option<f64>,
    /// Sodium in a serving (mg), if read; taken as table salt.
    pub sodium_mg: Option<f64>,
    /// What the starch is.
    pub starch: LabelStarch,
    /// What the sugars are that were not added.
    pub natural_sugar: NaturalSugar,
}

/// A food that a label describes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LabelFood {
    /// Composition (g per 100 g). Water is what is left when fat and protein are known, else 0.
    pub composition: Composition,
    /// Relative standard deviation of the carbohydrate that yeast or an enzyme can reach (1).
    pub content_sd: f64,
}

/// Least and largest serving that a label can have (g): a pinch of salt, a whole cake.
const SERVINGS_G: (f64, f64) = (0.1, 2000.0);

/// A label that cannot be right.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum LabelError {
    /// A serving of no mass.
    #[error(
        "a serving of {serving_g} g lies outside {} to {} g; copy the grams beside the serving size",
        SERVINGS_G.0, SERVINGS_G.1
    )]
    Serving {
        /// What was given (g).
        serving_g: f64,
    },
    /// A line that is negative or not a number.
    #[error(
        "{line} of {value} {unit} lies outside 0 to {most} {unit}; copy it from the label again"
    )]
    Line {
        /// Which line of the label.
        line: &'static str,
        /// What was given.
        value: f64,
        /// The most that a serving can hold.
        most: f64,
        /// The unit of both, as the label has it.
        unit: &'static str,
    },
    /// A part that is larger than what it is part of.
    #[error(
        "{part} ({part_g} g) exceeds {whole} ({whole_g} g), which it is part of; copy both from \
         the label again"
    )]
    PartExceedsWhole {
        /// The line that is too large.
        part: &'static str,
        /// Its value (g).
        part_g: f64,
        /// The line or lines it is part of.
        whole: &'static str,
        /// Their value (g).
        whole_g: f64,
    },
}

/// The food behind a label, with the uncertainty that rounding and tolerances leave.
///
/// ```text
/// starch = carbohydrate − fiber − sugars − sugar alcohols, at least 0
/// sd²    = 0.07² + (0.29 g · √lines / available)² + (0.15 if the kind of most sugar is unknown)²
/// ```
///
/// Added sugars count as sucrose, the others as [`NaturalSugar`] says. A part may exceed its whole
/// by what rounding can do.
///
/// # Source
/// 21 CFR 101.9(c)(6) and (g), paragraphs from memory.
/// # Errors
/// [`LabelError`] for a label that no food can have.
pub fn food(label: &NutritionLabel) -> Result<LabelFood, LabelError> {
    let lines = Lines::checked(label)?;
    let available = lines.sugars + lines.starch;
    // Starch carries the rounding of all lines, sugars of one.
    let rounding = if lines.starch > lines.sugars { 3.0_f64.sqrt() } else { 1.0 };
    let step = STEP.value / 12.0_f64.sqrt() * rounding;
    let rounding_sd = if available > 0.0 { step / available } else { 0.0 };
    let natural = lines.sugars - lines.added;
    let unknown =
        label.natural_sugar == NaturalSugar::Unknown && natural > 0.25 * available.max(0.01);
    let kind_sd = if unknown { UNKNOWN_SUGAR_SD.value } else { 0.0 };
    let content_sd = libm::hypot(libm::hypot(DECLARED_SD.value, rounding_sd), kind_sd).min(1.0);
    Ok(LabelFood { composition: lines.composition(label), content_sd })
}

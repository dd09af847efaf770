//! Questions, the treatments that answer them, and shared controls.

use super::recipe::{BagChoice, CardChoice, Extra, Lies};
use crate::amount::Amount;
use barm_science::setup::YeastKind;

/// The one thing that a question changes.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Variable {
    /// Which food.
    Food,
    /// How much food.
    FoodAmount,
    /// Which enzyme, or none.
    Enzyme,
    /// How much enzyme.
    EnzymeAmount,
    /// Which yeast.
    Yeast,
    /// How much yeast.
    YeastAmount,
    /// How much water.
    Water,
    /// Water temperature.
    WaterTemperature,
    /// What else goes in, such as salt, and how much.
    Extra,
    /// Which bag.
    Bag,
    /// Which card.
    Card,
    /// How the bag lies.
    Lies,
}

impl Variable {
    /// All variables, in the order in which they are offered.
    pub const ALL: [Self; 12] = [
        Self::Food,
        Self::FoodAmount,
        Self::Enzyme,
        Self::EnzymeAmount,
        Self::Yeast,
        Self::YeastAmount,
        Self::Water,
        Self::WaterTemperature,
        Self::Extra,
        Self::Bag,
        Self::Card,
        Self::Lies,
    ];

    /// The words used in plans.
    pub const fn words(self) -> &'static str {
        match self {
            Self::Food => "food",
            Self::FoodAmount => "food amount",
            Self::Enzyme => "enzyme",
            Self::EnzymeAmount => "enzyme amount",
            Self::Yeast => "yeast",
            Self::YeastAmount => "yeast amount",
            Self::Water => "water",
            Self::WaterTemperature => "water temperature",
            Self::Extra => "extra",
            Self::Bag => "bag",
            Self::Card => "card",
            Self::Lies => "lies",
        }
    }
}

/// What a treatment changes against the base recipe; `None` keeps the base's value.
///
/// `Some(None)` takes something out, such as `food = "none"`.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Difference {
    /// The bag.
    pub bag: Option<BagChoice>,
    /// The card.
    pub card: Option<CardChoice>,
    /// Water.
    pub water: Option<Amount>,
    /// Temperature of the water as poured (°C).
    pub water_celsius: Option<f64>,
    /// Yeast kind or none.
    pub yeast: Option<Option<YeastKind>>,
    /// How much yeast.
    pub yeast_amount: Option<Amount>,
    /// Food or none.
    pub food: Option<Option<String>>,
    /// How much food.
    pub food_amount: Option<Amount>,
    /// Enzyme or none.
    pub enzyme: Option<Option<String>>,
    /// How much enzyme.
    pub enzyme_amount: Option<Amount>,
    /// What else goes in, in place of the base's extras.
    pub extras: Option<Vec<Extra>>,
    /// How the bag lies.
    pub lies: Option<Lies>,
}

/// One treatment of a question.
#[derive(Debug, Clone, PartialEq)]
pub struct Treatment {
    /// Name, unique in the plan.
    pub name: String,
    /// The treatment it is compared with, where that is not the question's reference.
    pub beside: Option<String>,
    /// Bags of it on the whole, where that is not the question's count.
    pub replicates: Option<u32>,
    /// What it changes against the base recipe.
    pub difference: Difference,
}

/// A question with its one independent variable.
#[derive(Debug, Clone, PartialEq)]
pub struct Question {
    /// Short id, unique in the plan.
    pub id: String,
    /// The question in words.
    pub asks: String,
    /// The one thing it changes.
    pub variable: Variable,
    /// The second thing it changes, if it is declared crossed.
    pub crossed_with: Option<Variable>,
    /// Name of the treatment that the others are compared with.
    pub reference: Option<String>,
    /// Its own treatments.
    pub treatments: Vec<Treatment>,
    /// Names of treatments of other questions, or of controls, that serve here too.
    pub uses: Vec<String>,
    /// Bags of each treatment on the whole.
    pub replicates: u32,
}

/// A shared control: a treatment that stands in every period for all questions.
#[derive(Debug, Clone, PartialEq)]
pub struct Control {
    /// What it is.
    pub treatment: Treatment,
    /// Bags of it in each period, made by the teacher or an aide.
    pub per_period: u32,
}

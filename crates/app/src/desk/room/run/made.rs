//! What really went into a bag, beside what its plan says.

use super::act::{ActError, Wanted};
use barm_domain::amount::{Amount, celsius, show::both_degrees};
use barm_domain::plan::{Difference, Recipe};
use barm_domain::record::Made;

/// One thing that goes in.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Part {
    /// How warm the water was at pouring.
    Warmth,
    /// How much water.
    Water,
    /// How much yeast.
    Yeast,
    /// How much food.
    Food,
    /// How much enzyme.
    Enzyme,
}

impl Part {
    /// The name of its field.
    pub(crate) const fn field(self) -> &'static str {
        match self {
            Self::Warmth => "celsius",
            Self::Water => "water",
            Self::Yeast => "yeast",
            Self::Food => "food",
            Self::Enzyme => "enzyme",
        }
    }
}

/// One thing that goes in: as planned, and as it was where that is known to be other.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct WentIn {
    /// Which.
    pub(crate) part: Part,
    /// As planned.
    pub(crate) plan: String,
    /// As it was; empty if nobody said so.
    pub(crate) is: String,
}

/// The longest amount that is taken (characters).
const LONGEST: usize = 24;

/// Everything that goes into a bag.
pub(super) fn went_in(recipe: &Recipe, made: Option<&Made>) -> Vec<WentIn> {
    let warmth = made.and_then(|made| made.water_celsius);
    let other = made.and_then(|made| made.difference.as_deref());
    let is = |pick: fn(&Difference) -> Option<&Amount>| {
        other.and_then(pick).map_or_else(String::new, |amount| amount.written.clone())
    };
    let mut all = vec![
        WentIn {
            part: Part::Warmth,
            plan: both_degrees(recipe.water_celsius),
            is: warmth.map_or_else(String::new, degrees),
        },
        WentIn {
            part: Part::Water,
            plan: recipe.water.written.clone(),
            is: is(|other| other.water.as_ref()),
        },
    ];
    if recipe.yeast.is_some() {
        let plan = recipe.yeast_amount.written.clone();
        all.push(WentIn {
            part: Part::Yeast,
            plan,
            is: is(|other| other.yeast_amount.as_ref()),
        });
    }
    if let (Some(_), Some(amount)) = (&recipe.food, &recipe.food_amount) {
        let is = is(|other| other.food_amount.as_ref());
        all.push(WentIn { part: Part::Food, plan: amount.written.clone(), is });
    }
    if let (Some(_), Some(amount)) = (&recipe.enzyme, &recipe.enzyme_amount) {
        let is = is(|other| other.enzyme_amount.as_ref());
        all.push(WentIn { part: Part::Enzyme, plan: amount.written.clone(), is });
    }
    all
}

/// A temperature that was measured, as a thermometer shows it.
pub(crate) fn degrees(celsius: f64) -> String {
    format!("{} °C", (10.0 * celsius).round() / 10.0)
}

/// Reads what the form says; a blank field is as the plan says.
pub(super) fn read<'a>(typed: impl Fn(&str) -> &'a str) -> Result<Made, ActError> {
    let wrong = |said: &str, wanted| ActError::Number {
        said: said.chars().take(LONGEST).collect(),
        wanted,
    };
    let warmth = match typed(Part::Warmth.field()) {
        "" => None,
        said => {
            let read = celsius(said).ok().filter(|celsius| (0.0..=100.0).contains(celsius));
            Some(read.ok_or_else(|| wrong(said, Wanted::Warmth))?)
        }
    };
    let amount = |part: Part| match typed(part.field()) {
        "" => Ok(None),
        said => match Amount::parse(said) {
            // An amount is a number and a unit: no room for anybody's words.
            Ok(amount) if amount.written.chars().count() <= LONGEST => Ok(Some(amount)),
            _ => Err(wrong(said, Wanted::Amount)),
        },
    };
    let other = Difference {
        water: amount(Part::Water)?,
        yeast_amount: amount(Part::Yeast)?,
        food_amount: amount(Part::Food)?,
        enzyme_amount: amount(Part::Enzyme)?,
        ..Difference::default()
    };
    let difference = (other != Difference::default()).then(|| Box::new(other));
    Ok(Made { water_celsius: warmth, difference })
}

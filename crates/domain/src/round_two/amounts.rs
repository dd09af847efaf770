//! Another amount of something in a recipe, as a teacher would measure it out.

use crate::amount::show::Kitchen;
use crate::amount::{Amount, AmountKind, TEASPOON_ML};
use crate::plan::{Difference, Recipe, Treatment, Variable};

/// An amount that is written may miss the one that is meant by this share (1): spoons come in quarters.
const NEAR: f64 = 0.15;

/// Water is made no warmer than this (°C): yeast dies above 45 to 50 °C, and a jug cools in unlike ways.
const WARMEST: f64 = 45.0;

/// The things of which there may be another amount, in the order in which they are tried.
pub(super) const THINGS: [Variable; 4] = [
    Variable::FoodAmount,
    Variable::EnzymeAmount,
    Variable::YeastAmount,
    Variable::WaterTemperature,
];

/// How much of a thing a recipe has, in a unit of its own; nothing where it has none.
pub(super) fn amount_of(recipe: &Recipe, thing: Variable) -> Option<f64> {
    let value = |amount: &Amount| (amount.value > 0.0).then_some(amount.value);
    match thing {
        Variable::FoodAmount => {
            recipe.food.as_ref().and(recipe.food_amount.as_ref()).and_then(value)
        }
        Variable::EnzymeAmount => {
            recipe.enzyme.as_ref().and(recipe.enzyme_amount.as_ref()).and_then(value)
        }
        Variable::YeastAmount => recipe.yeast.and(value(&recipe.yeast_amount)),
        Variable::WaterTemperature => Some(recipe.water_celsius),
        _ => None,
    }
}

/// How much of a thing a recipe has, as it is written.
pub(super) fn written(recipe: &Recipe, thing: Variable) -> String {
    let text = |amount: &Option<Amount>| {
        amount.as_ref().map(|amount| amount.written.clone()).unwrap_or_default()
    };
    match thing {
        Variable::FoodAmount => text(&recipe.food_amount),
        Variable::EnzymeAmount => text(&recipe.enzyme_amount),
        Variable::YeastAmount => recipe.yeast_amount.written.clone(),
        Variable::WaterTemperature => degrees(recipe.water_celsius),
        _ => String::new(),
    }
}

fn degrees(celsius: f64) -> String {
    format!("{celsius:.0} °C")
}

/// The treatment with about so much of a thing (in the unit of [`amount_of`]) instead, and how much that
/// is as it is written; nothing where that cannot be measured out or is too much.
pub(super) fn with_amount(
    treatment: &Treatment,
    recipe: &Recipe,
    thing: Variable,
    wanted: f64,
) -> Option<(Treatment, String)> {
    let mut difference = treatment.difference.clone();
    let says = match thing {
        Variable::WaterTemperature => {
            let celsius = wanted.round();
            if celsius > WARMEST || (celsius - recipe.water_celsius).abs() < 2.0 {
                return None;
            }
            difference.water_celsius = Some(celsius);
            degrees(celsius)
        }
        _ => put(&mut difference, recipe, thing, wanted)?,
    };
    let name = format!("{}, {says}", treatment.name);
    let treatment = Treatment { name, beside: None, replicates: None, difference };
    Some((treatment, says))
}

fn put(
    difference: &mut Difference,
    recipe: &Recipe,
    thing: Variable,
    wanted: f64,
) -> Option<String> {
    let (now, place) = match thing {
        Variable::FoodAmount => (recipe.food_amount.as_ref()?, &mut difference.food_amount),
        Variable::EnzymeAmount => {
            (recipe.enzyme_amount.as_ref()?, &mut difference.enzyme_amount)
        }
        Variable::YeastAmount => (&recipe.yeast_amount, &mut difference.yeast_amount),
        _ => return None,
    };
    let amount = measured(now, wanted)?;
    let says = amount.written.clone();
    *place = Some(amount);
    Some(says)
}

/// About so much, written in the way in which `now` is.
fn measured(now: &Amount, wanted: f64) -> Option<Amount> {
    if !(wanted > 0.0 && wanted.is_finite()) {
        return None;
    }
    let text = match now.kind {
        AmountKind::Mass => format!("{} g", figures(wanted)),
        AmountKind::Volume => format!("{} mL", figures(wanted)),
        AmountKind::Spoon => {
            let kitchen = Kitchen::of_teaspoons(wanted / TEASPOON_ML)?;
            kitchen.to_string()
        }
        AmountKind::Drops => format!("{} drops", wanted.round()),
        AmountKind::Pieces => return None,
    };
    let amount = Amount::parse(&text).ok()?;
    let near = (amount.value / wanted - 1.0).abs() <= NEAR;
    let other = (amount.value / now.value - 1.0).abs() > NEAR;
    (near && other && amount.kind == now.kind).then_some(amount)
}

/// Two figures, as a balance shows them.
fn figures(value: f64) -> String {
    let places = if value >= 10.0 {
        0
    } else if value >= 1.0 {
        1
    } else {
        2
    };
    let text = format!("{value:.places$}");
    match text.contains('.') {
        true => text.trim_end_matches('0').trim_end_matches('.').to_owned(),
        false => text,
    }
}

#[cfg(test)]
mod tests {
    use super::measured;
    use crate::testing::amount;

    /// What is asked for is written as somebody would measure it, or not at all.
    #[test]
    fn amounts_are_written_as_they_are_measured() {
        let of = |now: &str, wanted: f64| {
            measured(&amount(now), wanted).map(|amount| amount.written)
        };
        assert_eq!(of("2 g", 4.0).as_deref(), Some("4 g"));
        assert_eq!(of("1.5 g", 2.27).as_deref(), Some("2.3 g"));
        assert_eq!(of("0.5 g", 0.25).as_deref(), Some("0.25 g"));
        assert_eq!(of("15 mL", 30.0).as_deref(), Some("30 mL"));
        // 1 tsp is 4.929 mL (US customary); an eighth of it no set of spoons has.
        assert_eq!(of("1/2 tsp", 4.929).as_deref(), Some("1 tsp"));
        assert_eq!(of("1/4 tsp", 0.6), None);
        assert_eq!(of("4 drops", 8.0).as_deref(), Some("8 drops"));
        assert_eq!(of("1 drops", 0.5), None);
        assert_eq!(of("2 g", 2.1), None);
        assert_eq!(of("2 g", f64::NAN), None);
    }
}

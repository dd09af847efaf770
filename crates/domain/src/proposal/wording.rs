//! The question of a proposal, in the plan's words.

use super::Level;
use crate::plan::Variable;

/// A question for the plan, made of what is changed and of its levels alone. What the group wrote
/// stays where it can be deleted; a plan stays.
#[must_use]
pub fn wording(variable: Variable, levels: &[Level]) -> String {
    let thing = match variable {
        Variable::Food => "the food",
        Variable::FoodAmount => "the amount of food",
        Variable::Enzyme => "the enzyme",
        Variable::EnzymeAmount => "the amount of enzyme",
        Variable::Yeast => "the kind of yeast",
        Variable::YeastAmount => "the amount of yeast",
        Variable::Water => "the amount of water",
        Variable::WaterTemperature => "the temperature of the water",
        Variable::Extra => "what else goes in",
        Variable::Bag => "the bag",
        Variable::Card => "the card",
        Variable::Lies => "where the bag lies",
    };
    let names: Vec<String> =
        levels.iter().map(|level| within_a_sentence(&level.name)).collect();
    match names.split_last() {
        None => format!("What difference does {thing} make?"),
        Some((only, [])) => format!("What difference does {thing} make: {only}?"),
        Some((last, before)) => {
            format!("What difference does {thing} make: {} or {last}?", before.join(", "))
        }
    }
}

fn within_a_sentence(name: &str) -> String {
    let mut letters = name.chars();
    letters
        .next()
        .map_or_else(String::new, |first| first.to_lowercase().chain(letters).collect())
}

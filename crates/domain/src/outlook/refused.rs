//! Why the bag model refuses a bag, in the words of a plan.

use barm_science::forecast::SetupError;

/// Beginnings of the bag model's names, and what stands in a plan instead. The first that fits counts.
const WORDS: [(&str, &str); 17] = [
    ("water_ml", "water"),
    ("water_celsius", "water_temperature"),
    ("room_celsius", "the temperature of the room"),
    ("pressure_pa", "the pressure of the air"),
    ("trapped_air_ml", "the air left in the bag"),
    ("wet_before_zero_min", "wet_before_zero"),
    ("bag.width_mm", "the first side of the bag"),
    ("bag.height_mm", "the second side of the bag"),
    ("bag.film_um", "the film of the bag"),
    ("card.length_mm", "the long side of the card"),
    ("card.width_mm", "the short side of the card"),
    ("card.grams", "the mass of the card"),
    ("lying.celsius", "the temperature of the warm tray"),
    ("yeast.", "yeast_amount"),
    ("enzymes[", "enzyme_amount"),
    ("contents", "all that goes into the bag, with the air left in it,"),
    ("last_minute", "the last reading"),
];

/// What a field of the bag model is called in a plan.
fn words(field: &str) -> String {
    if let Some(rest) = field.strip_prefix("foods[")
        && let Some((place, _)) = rest.split_once(']')
        && let Ok(place) = place.parse::<usize>()
    {
        return format!("the amount of food or extra number {}", place + 1);
    }
    let found = WORDS.iter().find(|(start, _)| field.starts_with(start));
    found.map_or(field, |(_, words)| words).to_owned()
}

/// The same as the error says, with the names that stand in a plan.
pub fn in_words(error: &SetupError) -> String {
    match error {
        SetupError::OutsideRange { field, value, unit, low, high } => {
            let field = words(field);
            let (value, unit, low, high) = (*value, *unit, *low, *high);
            SetupError::OutsideRange { field, value, unit, low, high }.to_string()
        }
        other => other.to_string(),
    }
}

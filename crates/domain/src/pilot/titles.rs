//! What people call the numbers of the model.

/// Names of numbers and what people call them.
const TITLES: &[(&str, &str)] = &[
    ("vigor", "strength of the yeast"),
    ("wake", "time that the yeast takes to wake"),
    ("steepness", "how steeply its pace rises with warmth"),
    ("optimum", "its best temperature, over the usual one"),
    ("heat", "how fast a bag loses heat"),
    ("tray", "how fast a tray cools"),
    ("release", "how fast gas leaves the liquid"),
    ("pocket", "gas that frees the liquid's surface"),
    ("film", "what passes through the film"),
    ("exponent", "how a card rises on its bag"),
    ("dead-share", "gas that does not lift the card"),
    ("capacity", "what a bag holds"),
    ("cold", "harm by cold water"),
    ("storage", "loss in store"),
    ("slow-loss", "loss in warm water"),
    ("d60", "death in hot water"),
    ("death", "death with heat"),
    ("half-glucose", "glucose that half feeds the yeast"),
    ("fructose-half", "fructose that half feeds the yeast"),
    ("fructose", "pace on fructose"),
    ("maltose", "pace on maltose"),
    ("half-maltose", "maltose that half feeds the yeast"),
    ("induction", "time to learn maltose"),
    ("maltotriose", "pace on maltotriose"),
    ("galactose", "pace on galactose"),
    ("galactose-induction", "time to learn galactose"),
    ("repression", "time to forget maltose"),
    ("reserve", "yeast's own reserves"),
    ("reserve-rate", "pace on its reserves"),
    ("half-reserve", "reserves that half feed the yeast"),
    ("invertase", "yeast's own invertase"),
    ("osmotic", "sugar and salt that slow the yeast"),
    ("ethanol", "alcohol that stops the yeast"),
    ("enzyme-half", "food that half feeds the enzymes"),
    ("raw-starch", "enzymes on raw starch"),
    ("enzyme-loss", "loss of enzymes in warm water"),
    ("co2-yield", "gas for the sugar"),
    ("ethanol-yield", "alcohol for the sugar"),
    ("own-heat", "heat of the yeast"),
    ("gelatinization", "warmth that cooks starch"),
    ("gelatinization-rate", "how fast starch cooks"),
    ("buffer", "acid that the yeast takes up"),
    ("stock", "time that a solution keeps"),
    ("unshaken", "what an unshaken bottle gives"),
];

/// What a number is called.
pub(crate) fn title(name: &str) -> String {
    if let Some((_, says)) = TITLES.iter().find(|(known, _)| *known == plain(name)) {
        return (*says).to_owned();
    }
    if let Some(kind) = name.strip_prefix("activity of ") {
        return format!("strength of the {kind}");
    }
    if name.starts_with("content ") {
        return "sugar and starch in the food".to_owned();
    }
    name.replace('-', " ")
}

/// A name without what it is a number of.
pub(super) fn plain(name: &str) -> &str {
    name.split(" of ").next().unwrap_or(name)
}

#[cfg(test)]
mod tests {
    use super::{TITLES, title};
    use barm_science::prior::standard;

    /// A new number of the model has no name for people yet.
    #[test]
    fn every_number_has_a_name() {
        for row in standard().iter().filter(|row| row.spread.day > 0.0) {
            assert!(TITLES.iter().any(|(name, _)| *name == row.name), "{}", row.name);
        }
        assert_eq!(title("vigor of instant yeast"), "strength of the yeast");
        assert_eq!(
            title("activity of fungal alpha amylase"),
            "strength of the fungal alpha amylase"
        );
    }
}

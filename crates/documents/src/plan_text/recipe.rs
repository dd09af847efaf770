//! Reads what goes into a bag: the base recipe and what a treatment changes.

use super::mistake::Wrong;
use super::notes::Notes;
use super::section::Section;
use super::words::{YEASTS, choose, nothing, within};
use barm_domain::amount::{Amount, AmountKind, celsius, minutes};
use barm_domain::cupboard::Cupboard;
use barm_domain::nearest::plain;
use barm_domain::plan::{BagChoice, CardChoice, Difference, Extra, Lies, Recipe, Timing};

/// Reads the keys of a recipe that are written in a table.
pub(super) fn difference(
    section: &mut Section<'_>,
    cupboard: &Cupboard<'_>,
    notes: &mut Notes<'_>,
) -> Difference {
    let amount = |text: &str| Amount::parse(text).map_err(Wrong::from);
    Difference {
        bag: section
            .read(notes, "bag", "\"snack\"", |t| BagChoice::parse(t).map_err(Wrong::from)),
        card: section
            .read(notes, "card", "\"3 x 5 in\"", |t| CardChoice::parse(t).map_err(Wrong::from)),
        water: section.read(notes, "water", "\"40 mL\"", water),
        water_celsius: section.read(notes, "water_temperature", "\"40 °C\"", |text| {
            within(celsius(text)?, 0.0..=100.0, "°C", text)
        }),
        yeast: section.read(notes, "yeast", "\"instant\"", |text| choose(text, YEASTS)),
        yeast_amount: section.read(notes, "yeast_amount", "\"2 g\"", amount),
        food: section.read(notes, "food", "\"none\"", |text| {
            unless_none(text, |text| cupboard.food(text).map_err(Wrong::from))
        }),
        food_amount: section.read(notes, "food_amount", "\"2 g\"", amount),
        enzyme: section.read(notes, "enzyme", "\"none\"", |text| {
            unless_none(text, |text| Cupboard::enzyme(text).map_err(Wrong::from))
        }),
        enzyme_amount: section.read(notes, "enzyme_amount", "\"2 mL\"", amount),
        extras: extras(section, cupboard, notes),
        lies: section
            .read(notes, "lies", "\"bench\"", |text| Lies::parse(text).map_err(Wrong::from)),
    }
}

fn unless_none(
    text: &str,
    find: impl FnOnce(&str) -> Result<String, Wrong>,
) -> Result<Option<String>, Wrong> {
    if plain(text) == "none" { Ok(None) } else { find(text).map(Some) }
}

fn water(text: &str) -> Result<Amount, Wrong> {
    let amount = Amount::parse(text)?;
    let lower = text.to_lowercase();
    match amount.kind {
        AmountKind::Mass if lower.contains("oz") || lower.contains("ounce") => Err(Wrong::new(
            format!("“{text}” of water can be a volume or a mass"),
            "write fl oz for a volume, or mL",
        )),
        AmountKind::Volume | AmountKind::Spoon | AmountKind::Mass => Ok(amount),
        AmountKind::Drops | AmountKind::Pieces => Err(Wrong::new(
            format!("“{text}” is not a volume, and water is measured by volume"),
            "write it like 40 mL or 1/4 cup",
        )),
    }
}

fn extras(
    section: &mut Section<'_>,
    cupboard: &Cupboard<'_>,
    notes: &mut Notes<'_>,
) -> Option<Vec<Extra>> {
    if !section.has("extra") {
        section.tables(notes, "extra", "");
        return None;
    }
    let path = section.field("extra");
    let mut extras = Vec::new();
    for mut extra in section.tables(notes, "extra", &path) {
        let item =
            extra.need(notes, "item", "\"salt\"", |t| cupboard.food(t).map_err(Wrong::from));
        let amount = extra.need(notes, "amount", "\"1/4 tsp\"", |text| {
            Amount::parse(text).map_err(Wrong::from)
        });
        extras.push(Extra {
            item: item.unwrap_or_default(),
            amount: amount.unwrap_or_else(nothing),
        });
        extra.finish(notes);
    }
    Some(extras)
}

/// Reads the base recipe and the timing, which stand in one table.
pub(super) fn base(
    section: &mut Section<'_>,
    cupboard: &Cupboard<'_>,
    notes: &mut Notes<'_>,
) -> (Recipe, Timing) {
    for (key, example) in [
        ("bag", "\"snack\""),
        ("water", "\"40 mL\""),
        ("water_temperature", "\"40 °C\""),
        ("yeast", "\"instant\""),
    ] {
        if !section.has(key) {
            section.missing(notes, key, example);
        }
    }
    let written = difference(section, cupboard, notes);
    if matches!(written.yeast, Some(Some(_))) && !section.has("yeast_amount") {
        section.missing(notes, "yeast_amount", "\"2 g\"");
    }
    let mut span = |key, example, least: f64, usual: Option<f64>| {
        let parse = |text: &str| within(minutes(text)?, least..=240.0, "min", text);
        match usual {
            Some(usual) => section.read(notes, key, example, parse).unwrap_or(usual),
            None => section.need(notes, key, example, parse).unwrap_or(1.0),
        }
    };
    let timing = Timing {
        interval_min: span("reading_interval", "\"4 min\"", 0.5, None),
        mixing_min: span("mixing", "\"14 min\"", 0.0, None),
        clearing_min: span("clearing", "\"6 min\"", 0.0, None),
        wet_before_zero_min: span("wet_before_zero", "\"3 min\"", 0.0, Some(3.0)),
    };
    (none().0.with(&written), timing)
}

/// What a base recipe is where it says nothing.
pub(super) fn none() -> (Recipe, Timing) {
    let recipe = Recipe {
        bag: standard_bag(),
        card: standard_card(),
        water: nothing(),
        water_celsius: 40.0,
        yeast: None,
        yeast_amount: nothing(),
        food: None,
        food_amount: None,
        enzyme: None,
        enzyme_amount: None,
        extras: Vec::new(),
        lies: Lies::Bench,
    };
    let timing = Timing {
        interval_min: 1.0,
        mixing_min: 0.0,
        clearing_min: 0.0,
        wet_before_zero_min: 0.0,
    };
    (recipe, timing)
}

fn standard_bag() -> BagChoice {
    let bag = barm_science::bag::StandardBag::Snack;
    BagChoice { written: bag.name().into(), bag: bag.bag() }
}

/// The card where a plan names none.
fn standard_card() -> CardChoice {
    CardChoice::parse("3 x 5 in").unwrap_or(CardChoice {
        written: "76.2 x 127 mm".into(),
        card: barm_science::setup::Card { length_mm: 127.0, width_mm: 76.2, grams: 1.84 },
    })
}

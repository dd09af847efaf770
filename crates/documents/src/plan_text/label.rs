//! Reads foods that are described by their nutrition label.

use super::mistake::Wrong;
use super::notes::Notes;
use super::section::Section;
use super::words::{STARCHES, SUGARS, choose};
use barm_domain::amount::{Amount, AmountKind};
use barm_domain::plan::LabelFood;
use barm_science::food::label::{Declared, LabelStarch, NaturalSugar, NutritionLabel, food};

pub(super) fn label_foods(top: &mut Section<'_>, notes: &mut Notes<'_>) -> Vec<LabelFood> {
    let mut foods = Vec::new();
    for mut section in top.tables(notes, "label_food", "label_food") {
        let name = section.need_name(notes, "name", "\"Breakfast rings\"");
        let label = label(&mut section, notes);
        let known = match food(&label) {
            Ok(known) => Some(known),
            Err(error) => {
                // A line that could not be read has been noted already.
                if section.all_read(notes) {
                    notes.wrong(section.path().to_owned(), Wrong::split(&error.to_string()));
                }
                None
            }
        };
        foods.push(LabelFood {
            name,
            label,
            grams_per_tsp: section.read(notes, "teaspoon", "\"2.5 g\"", mass),
            composition: known.map(|known| known.composition).unwrap_or_default(),
            content_sd: known.map(|known| known.content_sd).unwrap_or_default(),
            allergens: section.texts(notes, "allergens").unwrap_or_default(),
        });
        section.finish(notes);
    }
    foods
}

fn label(section: &mut Section<'_>, notes: &mut Notes<'_>) -> NutritionLabel {
    let none = Declared::Grams(0.0);
    NutritionLabel {
        serving_g: section.need(notes, "serving", "\"30 g\"", mass).unwrap_or(1.0),
        carbohydrate: section.need(notes, "carbohydrate", "\"24 g\"", declared).unwrap_or(none),
        fiber: section.read(notes, "fiber", "\"1 g\"", declared).unwrap_or(none),
        sugars: section.need(notes, "sugars", "\"9 g\"", declared).unwrap_or(none),
        added_sugars: section.read(notes, "added_sugars", "\"8 g\"", declared),
        sugar_alcohols: section.read(notes, "sugar_alcohols", "\"0 g\"", declared),
        fat_g: section.read(notes, "fat", "\"1 g\"", mass),
        protein_g: section.read(notes, "protein", "\"3 g\"", mass),
        sodium_mg: section
            .read(notes, "sodium", "\"190 mg\"", |text| Ok(milligrams(mass(text)?))),
        starch: section
            .need(notes, "starch", "\"cooked\"", |text| choose(text, STARCHES))
            .unwrap_or(LabelStarch::Raw),
        natural_sugar: section
            .read(notes, "natural_sugar", "\"unknown\"", |text| choose(text, SUGARS))
            .unwrap_or(NaturalSugar::Unknown),
    }
}

/// Grams in milligrams, to a microgram: a label says no more, and 190 mg stay 190 mg.
fn milligrams(grams: f64) -> f64 {
    (grams * 1e6).round() / 1e3
}

fn mass(text: &str) -> Result<f64, Wrong> {
    let amount = Amount::parse(text)?;
    if amount.kind == AmountKind::Mass {
        return Ok(amount.value);
    }
    Err(Wrong::new(format!("“{text}” is not a mass"), "write it in grams, such as 30 g"))
}

/// A line of a label: grams, or `less than 1 g`.
fn declared(text: &str) -> Result<Declared, Wrong> {
    let lower = text.to_lowercase();
    let less = lower.strip_prefix('<').or_else(|| lower.strip_prefix("less than"));
    match less {
        Some(rest) if (mass(rest)? - 1.0).abs() < 1e-9 => Ok(Declared::LessThanOne),
        Some(_) => Err(Wrong::new(
            format!("“{text}” is not what a label says"),
            "write the grams, or less than 1 g",
        )),
        None => mass(text).map(Declared::Grams),
    }
}

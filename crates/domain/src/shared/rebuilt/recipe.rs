//! The recipe of a shared treatment as plans write it.

use crate::amount::Amount;
use crate::plan::{BagChoice, CardChoice, Extra, Lies, Recipe};
use crate::shared::{Item, Lying, Measure, Part, Rows, TreatmentRow};
use barm_science::bag::StandardBag;

/// The recipe of a treatment; or why no plan can say it.
pub(super) fn recipe(rows: &Rows, row: &TreatmentRow) -> Result<Recipe, String> {
    let amount = |value: f64, unit: &str| {
        Amount::parse(&format!("{value} {unit}")).map_err(|error| error.to_string())
    };
    let sizes = |one: f64, other: f64| format!("{one} x {other} mm");
    let card = sizes(row.card_length_mm, row.card_width_mm);
    let mut recipe = Recipe {
        bag: bag(row)?,
        card: CardChoice::parse(&card).map_err(|error| error.to_string())?,
        water: amount(row.water_ml, "mL")?,
        water_celsius: row.water_celsius,
        yeast: row.yeast,
        yeast_amount: amount(row.yeast_g, "g")?,
        food: None,
        food_amount: None,
        enzyme: None,
        enzyme_amount: None,
        extras: Vec::new(),
        lies: match (row.lying, row.tray_celsius) {
            (Lying::Tray, Some(celsius)) => Lies::WarmTray(celsius),
            (Lying::Towel, _) => Lies::Towel,
            (Lying::Bench | Lying::Tray, _) => Lies::Bench,
        },
    };
    for one in rows.ingredients_of(row.code) {
        if one.item == Item::OWN_LABEL {
            return Err("has a food that only its label told, which is not shared".into());
        }
        let (item, of) = (one.item.id().to_owned(), amount(one.amount, one.measure.written())?);
        match one.part {
            Part::Enzyme if recipe.enzyme.is_some() => {
                return Err("has more than one enzyme, which no plan can say".into());
            }
            Part::Enzyme => {
                (recipe.enzyme, recipe.enzyme_amount) = (Some(item), Some(of));
            }
            Part::Food if recipe.food.is_none() && one.measure == Measure::Gram => {
                (recipe.food, recipe.food_amount) = (Some(item), Some(of));
            }
            Part::Food | Part::Extra => recipe.extras.push(Extra { item, amount: of }),
        }
    }
    Ok(recipe)
}

/// The bag, by its trade name where it has the size of one.
fn bag(row: &TreatmentRow) -> Result<BagChoice, String> {
    let same = |one: f64, other: f64| (one - other).abs() < 0.01;
    let sold = StandardBag::ALL.into_iter().find(|sold| {
        let bag = sold.bag();
        same(bag.width_mm, row.bag_width_mm) && same(bag.height_mm, row.bag_height_mm)
    });
    let written = match sold {
        Some(sold) => sold.name().to_owned(),
        None => format!("{} x {} mm", row.bag_width_mm, row.bag_height_mm),
    };
    BagChoice::parse(&written).map_err(|error| error.to_string())
}

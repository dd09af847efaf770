//! Bags as they were made and read.

use super::bags::PilotBag;
use super::fault::{PilotFault, is_zero};
use super::lots::YeastLot;
use super::protocol::Protocol;
use super::readings::{Made, PilotReadings};
use crate::bench;
use crate::plan::{Day, Lies, Plan, Recipe};
use barm_science::fit::day::BagSeen;
use barm_science::forecast::possible;
use barm_science::setup::Setup;

/// Each bag that was read, under its letter, as it was made.
pub(super) fn seen(
    plan: &Plan,
    protocol: &Protocol,
    day: &Day,
    readings: &PilotReadings,
    yeast: &YeastLot,
    wrong: &mut Vec<PilotFault>,
) -> Vec<(String, BagSeen)> {
    let mut all = Vec::new();
    for read in &readings.bags {
        let Some(bag) = protocol.bag(&read.bag) else { continue };
        let made = readings.made.iter().find(|made| made.bag.eq_ignore_ascii_case(&read.bag));
        let line = made.map_or(0, |made| made.line);
        let recipe = recipe(bag, made);
        let setup = match bench::setup(plan, &recipe, day) {
            Ok(setup) => known_spoon(setup, &recipe, yeast),
            Err(error) => {
                wrong.push(PilotFault::new(line, error.problem, error.fix));
                continue;
            }
        };
        if let Err(error) = possible(&setup) {
            let fix = "look at the unit and the decimal point";
            wrong.push(PilotFault::new(line, format!("bag {}: {error}", bag.letter), fix));
            continue;
        }
        let zeros = read.heights.iter().filter(|one| is_zero(one.value.minute));
        let Some(zero) = zeros.map(|one| one.value.height_mm).next() else { continue };
        let later = read.heights.iter().filter(|one| one.value.minute > 0.0);
        let mut rises: Vec<(f64, f64)> =
            later.map(|one| (one.value.minute, one.value.height_mm - zero)).collect();
        rises.sort_by(|a, b| a.0.total_cmp(&b.0));
        all.push((bag.letter.clone(), BagSeen { setup, period: 1, group: 1, readings: rises }));
    }
    all
}

/// The recipe of a bag as it was made.
fn recipe(bag: &PilotBag, made: Option<&Made>) -> Recipe {
    let mut recipe = bag.recipe.clone();
    let Some(made) = made else { return recipe };
    if let Some(yeast) = &made.yeast {
        recipe.yeast_amount = yeast.clone();
    }
    if let Some(food) = &made.food {
        recipe.food_amount = Some(food.clone());
    }
    if let Some(water) = &made.water {
        recipe.water = water.clone();
    }
    if let Some(celsius) = made.water_celsius {
        recipe.water_celsius = celsius;
    }
    if let Some(celsius) = made.tray_celsius {
        recipe.lies = Lies::WarmTray(celsius);
    }
    recipe
}

/// The setup with what is known of a level spoon of this yeast.
fn known_spoon(mut setup: Setup, recipe: &Recipe, lot: &YeastLot) -> Setup {
    if let Some(spoon) = lot.teaspoon {
        spoon.measure(&recipe.yeast_amount, &mut setup);
    }
    setup
}

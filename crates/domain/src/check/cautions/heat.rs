//! Hot water, warm trays, kettles and cooked starch (S03, S04, S20, S30).

use super::choices::Choices;
use super::rule::{CautionRule, Said};
use super::scald::burns_within;
use super::wording::{list, span};
use crate::amount::show::both_degrees;
use crate::bench::tools::POURING_SD;
use crate::finding::Field;
use crate::plan::{Lies, Variable};
use barm_science::food::FoodKind;

/// Hotter things are not handed out (°C); common practice, no source.
pub(super) const HANDLING_LIMIT_C: f64 = 43.0;
/// No student carries hotter water (°C): 120 °F, US Consumer Product Safety Commission,
/// publication 5098, from memory.
const CARRYING_LIMIT_C: f64 = 49.0;
/// A tray at this temperature or above burns hands that stay in it (°C): the first row of the
/// scald table.
const BATH_LIMIT_C: f64 = 45.0;
/// From the median to the 97.5th percentile of a normal distribution, in standard deviations.
const TO_UPPER: f64 = 1.96;

const SCALD_SOURCE: &str = "A. R. Moritz and F. C. Henriques, Studies of thermal injury II, Am. J. Pathol. 23, 695 (1947), \
     as restated by a trade page; US Consumer Product Safety Commission, publication 5098, from \
     memory; the shorter time is printed";

pub(super) const SCALD: CautionRule = CautionRule {
    code: "S03",
    hazard: "scald from hot water",
    trigger: "water or a tray is above 43 °C, or a kettle is on the list",
    source: SCALD_SOURCE,
    local: true,
    look: scald,
};

fn scald(choices: &Choices<'_>) -> Option<Said> {
    let poured = choices
        .made
        .iter()
        .map(|made| (made.recipe.water_celsius, made.at(Variable::WaterTemperature)));
    let hottest = poured.chain(trays(choices)).max_by(|a, b| a.0.total_cmp(&b.0));
    let hot = hottest.filter(|(celsius, _)| *celsius > HANDLING_LIMIT_C);
    let kettle = choices.plan.equipment.kettles.is_some_and(|kettles| kettles > 0);
    let carry = format!(
        "Only the teacher pours from the kettle or hot tap and mixes down to the target. Use a jug \
         with a lid. No student carries water above {}. Children burn faster than the times \
         printed here, which are for adults.",
        both_degrees(CARRYING_LIMIT_C)
    );
    if let Some((celsius, at)) = hot {
        let upper = celsius + TO_UPPER * POURING_SD.value;
        let seconds = burns_within(upper)?;
        let message = format!(
            "Water here is meant to be at {} and may come out at {}, which burns skin within {}.",
            both_degrees(celsius),
            both_degrees(upper),
            span(seconds)
        );
        return Some(Said::new(message, carry).at(at));
    }
    let seconds = kettle.then(|| burns_within(100.0))??;
    let message =
        format!("Water from the kettle on your list burns skin within {}.", span(seconds));
    Some(Said::new(message, carry).at(Field("equipment.kettles".into())))
}

/// Trays of warm water, with their places.
fn trays(choices: &Choices<'_>) -> impl Iterator<Item = (f64, Field)> {
    choices.made.iter().filter_map(|made| match made.recipe.lies {
        Lies::WarmTray(celsius) => Some((celsius, made.at(Variable::Lies))),
        Lies::Bench | Lies::Towel => None,
    })
}

pub(super) const LONG_CONTACT: CautionRule = CautionRule {
    code: "S04",
    hazard: "hands in a hot bath",
    trigger: "bags lie in a tray of water at 45 °C or above",
    source: SCALD_SOURCE,
    local: true,
    look: long_contact,
};

fn long_contact(choices: &Choices<'_>) -> Option<Said> {
    let (celsius, at) = trays(choices)
        .max_by(|a, b| a.0.total_cmp(&b.0))
        .filter(|(celsius, _)| *celsius >= BATH_LIMIT_C)?;
    let upper = celsius + TO_UPPER * POURING_SD.value;
    let message = format!(
        "The tray may be as hot as {}, and hands held in it burn within {}.",
        both_degrees(upper),
        span(burns_within(upper)?)
    );
    let fix = "Lift bags with tongs or in a wire basket, and keep hands out of the tray. Or run \
               the tray cooler.";
    Some(Said::new(message, fix).at(at))
}

pub(super) const POWER: CautionRule = CautionRule {
    code: "S20",
    hazard: "electricity near water",
    trigger: "a kettle is on the list, or bags lie in a tray that is kept warm",
    source: "US electrical code and workplace rules on ground-fault protection, from memory",
    local: true,
    look: power,
};

fn power(choices: &Choices<'_>) -> Option<Said> {
    let kettle = choices.plan.equipment.kettles.is_some_and(|kettles| kettles > 0);
    let tray = trays(choices).next();
    let (what, at) = match (kettle, tray) {
        (true, _) => ("kettle", Field("equipment.kettles".into())),
        (false, Some((_, at))) => ("heated tray", at),
        (false, None) => return None,
    };
    let message = format!("A {what} plugged in close to water can give a shock.");
    let fix = "Plug it into an outlet with ground-fault protection (GFCI). Keep it on the \
               teacher's bench, with the cord out of reach and away from water.";
    Some(Said::new(message, fix).at(at))
}

pub(super) const COOKED_STARCH: CautionRule = CautionRule {
    code: "S30",
    hazard: "hot starch paste",
    trigger: "a food in a bag is a wet mash whose starch is cooked, or a label food whose starch \
              is cooked",
    source: "common practice, no source; times of S03",
    local: true,
    look: cooked_starch,
};

fn cooked_starch(choices: &Choices<'_>) -> Option<Said> {
    let cooked: Vec<_> = choices
        .foods
        .iter()
        .filter(|used| {
            let parts = &used.food.composition;
            // Flakes and flours are cooked too, but are bought dry; nobody knows of a label food
            // whether it comes dry from a pack or hot from a stove.
            let wet = matches!(used.food.kind, Some(FoodKind::Mash) | None);
            used.in_bag && wet && parts.cooked_starch > parts.raw_starch
        })
        .collect();
    let first = cooked.first()?;
    let names: Vec<&str> = cooked.iter().map(|used| used.food.name.as_str()).collect();
    let message =
        format!("Hot starch sticks to skin and burns it, and {} may be hot.", list(&names));
    let fix = format!(
        "The teacher cooks it before class and hands it out below {}. No student cooks it.",
        both_degrees(HANDLING_LIMIT_C)
    );
    Some(Said::new(message, fix).at(first.at.clone()))
}

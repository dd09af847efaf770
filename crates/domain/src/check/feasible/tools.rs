//! Enough rulers, goggles, thermometers, balances and meters, as far as the plan counts them.

use crate::amount::AmountKind;
use crate::finding::{Finding, Severity};
use crate::plan::{Period, Plan};

/// Minutes that one bag keeps a breath meter busy: blank, push, wait, note; common practice.
pub(crate) const METER_MIN: f64 = 1.0;

const PRACTICE: &str = "common practice, no source";
const GOGGLES: &str = "NSTA, Eye Protection and Safer Practices FAQ";

pub(super) fn findings(plan: &Plan) -> Vec<Finding> {
    let mut found = Vec::new();
    let has = &plan.equipment;
    let groups = plan.periods.iter().map(|period| period.groups).max().unwrap_or(0);
    let students = plan.periods.iter().map(|period| period.students).max().unwrap_or(0);
    if let Some(rulers) = has.rulers.filter(|rulers| *rulers < groups) {
        found.push(warning(
            "few-rulers",
            format!("There are {rulers} rulers for {groups} groups."),
            "Find one ruler for each group, or print the height gauge.",
            "equipment.rulers",
        ));
    }
    if let Some(goggles) = has.goggles.filter(|goggles| *goggles < students) {
        let finding = Finding::new(
            Severity::Fault,
            "few-goggles",
            format!("There are {goggles} goggles for {students} students."),
            "Get goggles for each person in the room before the day.",
        );
        found.push(finding.at("equipment.goggles").says(GOGGLES));
    }
    if has.thermometers == Some(0) {
        found.push(warning(
            "no-thermometer",
            "With no gauge of heat, nobody can tell how warm the water is.".into(),
            "Get at least one thermometer, with no glass and no mercury in it.",
            "equipment.thermometers",
        ));
    }
    if has.balances == Some(0) && weighs(plan) {
        found.push(warning(
            "no-balance",
            "The plan gives grams, and there is nothing to weigh them on.".into(),
            "Borrow a balance that shows 0.1 g, or weigh out the trays at home.",
            "equipment.balances",
        ));
    }
    found.extend(meters(plan));
    found
}

fn weighs(plan: &Plan) -> bool {
    plan.treatments().any(|(_, treatment)| {
        let recipe = plan.recipe(treatment);
        let food = recipe.food_amount.filter(|_| recipe.food.is_some());
        let yeast = recipe.yeast.map(|_| recipe.yeast_amount);
        food.into_iter().chain(yeast).any(|amount| amount.kind == AmountKind::Mass)
    })
}

/// Whether one class's bags can pass the meters while they are read.
fn meters(plan: &Plan) -> Option<Finding> {
    let meters = plan.equipment.meters.filter(|meters| *meters > 0)?;
    let bags =
        |period: &Period| plan.bags.iter().filter(|bag| bag.period == period.name).count();
    let period = plan.periods.iter().max_by_key(|period| bags(period))?;
    let minutes = METER_MIN * bags(period) as f64 / f64::from(meters);
    let window = f64::from(plan.last_reading_min(period));
    (minutes > window).then(|| {
        let message = format!(
            "One by one, the bags of period “{}” keep the meter busy for {minutes:.0} min, and there are {window:.0}.",
            period.name
        );
        let fix = "Meter one bag of each kind, or borrow another meter.";
        warning("few-meters", message, fix, "equipment.meters")
    })
}

fn warning(code: &'static str, message: String, fix: &str, at: &str) -> Finding {
    Finding::new(Severity::Warning, code, message, fix).at(at).says(PRACTICE)
}

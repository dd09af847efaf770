//! Enough rulers, goggles, thermometers, balances and meters, as far as the plan counts them.

use crate::amount::AmountKind;
use crate::finding::{Finding, Severity};
use crate::plan::{Period, Plan, PlannedBag};
use crate::schedule::at_meter;
use std::cmp::Reverse;
use std::collections::BTreeSet;

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

/// Whether the meters see what there is to compare: each bag has one turn, after its last reading, and
/// the schedule knows which have one.
fn meters(plan: &Plan) -> Option<Finding> {
    let meters = plan.equipment.meters?;
    let periods = plan.periods.iter().filter_map(|period| Turns::of(plan, period));
    let all = periods.filter(|turns| turns.seen.len() < turns.kinds.len());
    let worst = all.max_by_key(|turns| {
        (!turns.compare(plan), turns.kinds.len() - turns.seen.len(), Reverse(turns.place))
    })?;
    let (few, of) = (worst.runs, worst.bags);
    let name = &plan.periods[worst.place].name;
    let has = if few == 1 { "has" } else { "have" };
    let with = if meters == 1 { "one meter".to_owned() } else { format!("{meters} meters") };
    let bags = format!("With {with}, {few} of the {of} bags of period “{name}” {has} a turn");
    let fix = "Borrow another meter, or plan more minutes for clearing away; `barm schedule` says whose turn it is.";
    if worst.compare(plan) {
        let (missing, kinds) = (worst.kinds.len() - worst.seen.len(), worst.kinds.len());
        let has = if missing == 1 { "has" } else { "have" };
        let message = format!(
            "{bags} after the last reading; {missing} of {kinds} kinds of bag {has} none."
        );
        let finding = Finding::new(Severity::Note, "few-meters", message, fix);
        return Some(finding.at("equipment.meters").says(PRACTICE));
    }
    let message = format!("{bags}, and no two of them are compared.");
    Some(warning("few-meters", message, fix, "equipment.meters"))
}

/// The turns at the meter that the schedule of a period has.
struct Turns<'a> {
    /// Place of the period in the plan.
    place: usize,
    bags: usize,
    runs: usize,
    /// Kinds of bag that there are, and those with a turn.
    kinds: BTreeSet<&'a str>,
    seen: BTreeSet<&'a str>,
}

impl<'a> Turns<'a> {
    fn of(plan: &'a Plan, period: &Period) -> Option<Self> {
        let runs = at_meter(plan, period)?;
        let own: Vec<&PlannedBag> =
            plan.bags.iter().filter(|bag| bag.period == period.name).collect();
        let seen = own.iter().filter(|bag| runs.contains(&bag.code));
        Some(Self {
            place: plan.periods.iter().position(|one| one.name == period.name)?,
            bags: own.len(),
            runs: runs.len(),
            seen: seen.map(|bag| bag.treatment.as_str()).collect(),
            kinds: own.iter().map(|bag| bag.treatment.as_str()).collect(),
        })
    }

    /// Whether a treatment that is no control has a turn, and so has what it is compared with.
    fn compare(&self, plan: &Plan) -> bool {
        plan.questions.iter().any(|question| {
            plan.answering(question).into_iter().any(|treatment| {
                let beside = plan.beside(question, treatment);
                let seen = |name: &str| self.seen.contains(name);
                let own = !plan.is_control(&treatment.name) && seen(&treatment.name);
                own && beside.is_some_and(seen)
            })
        })
    }
}

fn warning(code: &'static str, message: String, fix: &str, at: &str) -> Finding {
    Finding::new(Severity::Warning, code, message, fix).at(at).says(PRACTICE)
}

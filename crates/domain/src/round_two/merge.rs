//! One plan for the bags of two rounds: every period of each round is a block of its own.

use super::refused::NotPooled;
use crate::check::changes;
use crate::plan::{Plan, Question, Treatment};
use crate::reading::{Reading, SetAside};
use std::collections::BTreeSet;

/// The plan of both rounds. Questions are those of round one, in its order, then those that only round two
/// asks; a treatment has one name in both.
pub(super) fn merged(first: &Plan, second: &Plan) -> Result<Plan, NotPooled> {
    if (first.readable_mm - second.readable_mm).abs() > 1e-9 {
        let (first_mm, second_mm) = (first.readable_mm, second.readable_mm);
        return Err(NotPooled::OtherReadable { first_mm, second_mm });
    }
    let codes: BTreeSet<&str> = first.bags.iter().map(|bag| bag.code.as_str()).collect();
    if let Some(bag) = second.bags.iter().find(|bag| codes.contains(bag.code.as_str())) {
        return Err(NotPooled::SameCode { code: bag.code.clone() });
    }
    let again = |question: &Question| first.questions.iter().any(|one| one.id == question.id);
    if !second.questions.iter().any(again) {
        return Err(NotPooled::NothingInCommon);
    }
    same_recipes(first, second)?;
    let mut both = first.clone();
    both.bags.clear();
    both.periods.clear();
    for (round, plan) in [(1, first), (2, second)] {
        for bag in &plan.bags {
            let mut bag = bag.clone();
            bag.period = block(round, &bag.period);
            both.bags.push(bag);
        }
        for period in &plan.periods {
            let mut period = period.clone();
            period.name = block(round, &period.name);
            both.periods.push(period);
        }
    }
    both.group_settings.clear();
    for question in &second.questions {
        add(&mut both, second, question)?;
    }
    for rule in &second.set_aside_rules {
        if both.set_aside_rules.iter().all(|known| known.id != rule.id) {
            both.set_aside_rules.push(rule.clone());
        }
    }
    Ok(both)
}

/// The name of a period among those of both rounds.
fn block(round: u8, period: &str) -> String {
    format!("round {round}, period {period}")
}

/// Treatments of one name must be made alike.
fn same_recipes(first: &Plan, second: &Plan) -> Result<(), NotPooled> {
    for (_, treatment) in second.treatments() {
        let Some(before) = first.treatment(&treatment.name) else { continue };
        let (old, new) = (first.recipe(before), second.recipe(treatment));
        let foods = |plan: &Plan, id: &Option<String>| {
            let own = plan.label_foods.iter().find(|food| Some(&food.name) == id.as_ref());
            own.cloned()
        };
        // However it is written: what counts is what would be in the bag.
        let same = changes(first, &old, &new).is_empty();
        if !same || foods(first, &old.food) != foods(second, &new.food) {
            return Err(NotPooled::OtherRecipe { name: treatment.name.clone() });
        }
    }
    Ok(())
}

/// Adds what round two asks to what both ask.
fn add(both: &mut Plan, second: &Plan, question: &Question) -> Result<(), NotPooled> {
    let at = both.questions.iter().position(|one| one.id == question.id);
    let beside: Vec<(String, Option<String>)> = second
        .answering(question)
        .into_iter()
        .map(|one| (one.name.clone(), second.beside(question, one).map(str::to_owned)))
        .collect();
    let Some(at) = at else {
        let mut fresh = question.clone();
        let foreign = |one: &Treatment| both.treatment(&one.name).is_some();
        let (known, own) = fresh.treatments.into_iter().partition(foreign);
        fresh.treatments = own;
        fresh.uses.extend(names(known).filter(|name| fresh.reference.as_ref() != Some(name)));
        both.questions.push(fresh);
        return Ok(());
    };
    for (name, reference) in beside {
        let Some(reference) = reference else { continue };
        let asked = &both.questions[at];
        match both.treatment(&name).and_then(|one| both.beside(asked, one)) {
            Some(before) if before == reference => {}
            Some(_) => {
                let question = question.id.clone();
                return Err(NotPooled::OtherReference { question, treatment: name });
            }
            None => {
                let fresh = second.treatment(&name).filter(|_| both.treatment(&name).is_none());
                let beside =
                    (asked.reference.as_ref() != Some(&reference)).then_some(reference);
                match fresh.cloned() {
                    Some(fresh) => {
                        let fresh = Treatment { beside, ..fresh };
                        both.questions[at].treatments.push(fresh);
                    }
                    None => both.questions[at].uses.push(name),
                }
            }
        }
    }
    Ok(())
}

fn names(treatments: Vec<Treatment>) -> impl Iterator<Item = String> {
    treatments.into_iter().map(|one| one.name)
}

/// What was read and set aside in both rounds.
pub(super) fn together(
    first: (&[Reading], &[SetAside]),
    second: (&[Reading], &[SetAside]),
) -> (Vec<Reading>, Vec<SetAside>) {
    ([first.0, second.0].concat(), [first.1, second.1].concat())
}

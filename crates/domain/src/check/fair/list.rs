//! Is the bag list in step with the rest of the plan?

use super::replicate::planned;
use crate::code::BagCode;
use crate::finding::{Finding, Severity};
use crate::plan::{CONTROLS, Plan, PlannedBag};
use std::collections::BTreeSet;

pub(super) fn findings(plan: &Plan) -> Vec<Finding> {
    if plan.bags.is_empty() {
        let finding = Finding::new(
            Severity::Note,
            "no-bag-list",
            "The plan does not say yet who makes which bag.",
            "Have the bag list written, or write it by hand.",
        );
        return vec![finding.at("bag_list")];
    }
    let mut found = names(plan);
    found.extend(codes(plan));
    found.extend(places(plan));
    found.extend(counts(plan));
    found
}

fn fault(code: &'static str, bag: usize, key: &str, message: String, fix: &str) -> Finding {
    Finding::new(Severity::Fault, code, message, fix).at(format!("bag[{bag}].{key}"))
}

fn names(plan: &Plan) -> Vec<Finding> {
    let mut found = Vec::new();
    for (b, bag) in plan.bags.iter().enumerate() {
        let code = &bag.code;
        match plan.period(&bag.period) {
            None => found.push(fault(
                "unknown-period",
                b,
                "period",
                format!(
                    "Bag {code} is for period “{}”, which the plan does not have.",
                    bag.period
                ),
                "Name a period of the plan, or take the bag out.",
            )),
            Some(period) if bag.group > period.groups => found.push(fault(
                "unknown-group",
                b,
                "group",
                format!(
                    "Bag {code} is for group {} of period “{}”, which has {} groups.",
                    bag.group, period.name, period.groups
                ),
                "Name a group of that period, or raise its number of groups.",
            )),
            Some(_) => {}
        }
        if !answers(plan, bag) {
            found.push(fault(
                "unknown-treatment",
                b,
                "treatment",
                format!(
                    "Bag {code} is to hold “{}”, which “{}” does not ask for.",
                    bag.treatment, bag.question
                ),
                "Name a treatment of that question, or take the bag out.",
            ));
        }
    }
    found
}

/// Whether a bag holds something that its question asks for.
fn answers(plan: &Plan, bag: &PlannedBag) -> bool {
    if bag.question == CONTROLS {
        return plan.is_control(&bag.treatment);
    }
    let question = plan.questions.iter().find(|question| question.id == bag.question);
    question.is_some_and(|q| plan.answering(q).iter().any(|t| t.name == bag.treatment))
}

fn codes(plan: &Plan) -> Vec<Finding> {
    let mut found = Vec::new();
    let mut seen: BTreeSet<String> = BTreeSet::new();
    let retired: BTreeSet<String> =
        plan.retired_codes.iter().map(|code| as_printed(code)).collect();
    for (b, bag) in plan.bags.iter().enumerate() {
        let code = as_printed(&bag.code);
        if bag.code.parse::<BagCode>().is_err() {
            found.push(fault(
                "wrong-code",
                b,
                "code",
                format!("“{}” is not a bag code: one of its signs must be wrong.", bag.code),
                "Copy the code from the label, or have a new one made.",
            ));
        } else if retired.contains(&code) {
            found.push(fault(
                "used-code",
                b,
                "code",
                format!("The code {code} was once that of a bag that is gone."),
                "Have a new code made, so that no two bags are ever mixed up.",
            ));
        }
        if !seen.insert(code.clone()) {
            found.push(fault(
                "same-code",
                b,
                "code",
                format!("Two bags have the code {code}."),
                "Have a new code made for one of them.",
            ));
        }
    }
    found
}

/// A code as it stands on the label, however it was typed.
fn as_printed(code: &str) -> String {
    code.parse::<BagCode>().map_or_else(|_| code.to_owned(), |code| code.to_string())
}

fn places(plan: &Plan) -> Option<Finding> {
    let mut seen: BTreeSet<(&str, u32, u32)> = BTreeSet::new();
    let (b, bag) = plan
        .bags
        .iter()
        .enumerate()
        .find(|(_, bag)| !seen.insert((&bag.period, bag.group, bag.place)))?;
    Some(fault(
        "same-place",
        b,
        "place",
        format!(
            "Two bags of group {} in period “{}” have place {}.",
            bag.group, bag.period, bag.place
        ),
        "Give each bag of a group a place of its own.",
    ))
}

/// Fewer bags than the questions and controls ask for. More may be: groups make reference bags of
/// their own.
fn counts(plan: &Plan) -> Vec<Finding> {
    let missing = plan.treatments().filter_map(|(_, treatment)| {
        let listed = plan.bags.iter().filter(|bag| bag.treatment == treatment.name).count();
        let wanted = planned(plan, &treatment.name);
        let short = listed < wanted as usize;
        short.then(|| {
            Finding::new(
                Severity::Warning,
                "missing-bags",
                format!(
                    "The list has {listed} bags of “{}”, and you want {wanted}.",
                    treatment.name
                ),
                "Add the bags to the list, or ask for fewer.",
            )
            .at("bag_list")
        })
    });
    missing.collect()
}

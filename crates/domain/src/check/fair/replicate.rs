//! More than one bag of each kind.

use crate::check::place;
use crate::finding::{Finding, Severity};
use crate::plan::{CONTROLS, Plan};

const POWER: &str = "two-sample t test, two-sided 5 %: three bags each find a gap of 3 standard \
     deviations with chance 0.78, and one of 2 with 0.46";

/// Bags of a kind with which only a big effect shows.
const FEW: u32 = 3;

pub(super) fn findings(plan: &Plan) -> Vec<Finding> {
    let mut names: Vec<&str> = Vec::new();
    for question in &plan.questions {
        for treatment in plan.answering(question) {
            if !names.contains(&treatment.name.as_str()) {
                names.push(&treatment.name);
            }
        }
    }
    let counted: Vec<(&str, u32)> = names.into_iter().map(|n| (n, bags_of(plan, n))).collect();
    let mut found: Vec<Finding> = counted
        .iter()
        .filter(|(_, bags)| *bags < 2)
        .map(|(name, bags)| {
            let message = if *bags == 0 {
                format!("There is no bag of “{name}” at all.")
            } else {
                format!("There is just one bag of “{name}”, so nobody knows if it was luck.")
            };
            let fix = "Plan at least two bags of each kind, and better four or more.";
            Finding::new(Severity::Fault, "no-replicate", message, fix)
                .at(place::treatment(plan, name))
        })
        .collect();
    let few: Vec<&str> = counted
        .iter()
        .filter(|(_, bags)| (2..=FEW).contains(bags))
        .map(|(name, _)| *name)
        .collect();
    if let Some(first) = few.first() {
        found.push(
            Finding::new(
                Severity::Note,
                "few-replicates",
                format!("With two or three bags of “{first}” you will see just a big change."),
                "Share one question with other periods to get more bags of each kind.",
            )
            .at(place::treatment(plan, first))
            .says(POWER),
        );
    }
    found
}

/// Bags of a treatment: those of the bag list, or those that are planned if there is none.
pub(super) fn bags_of(plan: &Plan, name: &str) -> u32 {
    if plan.bags.is_empty() {
        return planned(plan, name);
    }
    let listed = plan.bags.iter().filter(|bag| bag.treatment == name).count();
    u32::try_from(listed).unwrap_or(u32::MAX)
}

/// Bags of a treatment that the questions and controls ask for.
pub(super) fn planned(plan: &Plan, name: &str) -> u32 {
    let periods = u32::try_from(plan.periods.len()).unwrap_or(u32::MAX);
    plan.treatments().find(|(_, treatment)| treatment.name == name).map_or(
        0,
        |(question, treatment)| {
            if question == CONTROLS {
                let control = plan.controls.iter().find(|c| c.treatment.name == name);
                return control.map_or(0, |c| c.per_period.saturating_mul(periods));
            }
            let question = plan.questions.iter().find(|q| q.id == question);
            treatment.replicates.or(question.map(|q| q.replicates)).unwrap_or(0)
        },
    )
}

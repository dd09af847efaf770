//! Levels of the variable that can be told apart.

use super::change::changes;
use crate::check::place;
use crate::finding::{Finding, Severity};
use crate::plan::{Plan, Question};

pub(super) fn findings(plan: &Plan) -> Vec<Finding> {
    let mut found = Vec::new();
    for (q, question) in plan.questions.iter().enumerate() {
        let answering = plan.answering(question);
        if answering.len() < 2 {
            found.push(
                Finding::new(
                    Severity::Fault,
                    "one-level",
                    "A test needs at least two kinds of bag, and this one has just one.",
                    format!("Add a bag with another {}.", question.variable.words()),
                )
                .at(format!("question[{q}]")),
            );
        }
        found.extend(twins(plan, question));
    }
    found
}

/// Two treatments under one question that are made alike and are not compared with each other,
/// which has a finding of its own.
fn twins(plan: &Plan, question: &Question) -> Option<Finding> {
    let answering = plan.answering(question);
    let compared = |one: &str, other: &str| {
        let beside = |name: &str| {
            plan.treatment(name).and_then(|t| plan.beside(question, t)).map(str::to_owned)
        };
        beside(one).as_deref() == Some(other) || beside(other).as_deref() == Some(one)
    };
    for (t, treatment) in answering.iter().enumerate() {
        for earlier in &answering[..t] {
            let alike =
                changes(plan, &plan.recipe(treatment), &plan.recipe(earlier)).is_empty();
            if alike && !compared(&treatment.name, &earlier.name) {
                let (name, other) = (&treatment.name, &earlier.name);
                return Some(
                    Finding::new(
                        Severity::Fault,
                        "levels-not-distinct",
                        format!("“{name}” and “{other}” are made in the same way."),
                        "Change one of them, or count them as one kind of bag.",
                    )
                    .at(place::treatment(plan, name)),
                );
            }
        }
    }
    None
}

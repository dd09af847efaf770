//! Recipes that can be weighed and measured out.

use crate::bench;
use crate::check::{place, refused};
use crate::finding::{Finding, Severity};
use crate::plan::Plan;
use barm_science::forecast::possible;

pub(super) fn findings(plan: &Plan) -> Vec<Finding> {
    let Some(day) = plan.days.first() else {
        let finding = Finding::new(
            Severity::Fault,
            "no-day",
            "The plan has no school day, so nobody knows how warm the room is.",
            "Add a [[day]] with its room and altitude.",
        );
        return vec![finding.at("day")];
    };
    let mut found: Vec<Finding> = Vec::new();
    for (_, treatment) in plan.treatments() {
        let error = match bench::setup(plan, &plan.recipe(treatment), day) {
            Err(error) => error,
            Ok(setup) => {
                let impossible = possible(&setup).err();
                found.extend(impossible.map(|error| refused(plan, &treatment.name, &error)));
                continue;
            }
        };
        let at = match error.key {
            "altitude" => "day[0].altitude".to_owned(),
            key => place::key(plan, treatment, key),
        };
        let message = format!(
            "“{}” can not be made as it is written: {}.",
            treatment.name, error.problem
        );
        found.push(
            Finding::new(Severity::Fault, "cannot-make", message, sentence(&error.fix)).at(at),
        );
    }
    found
}

/// Starts with a capital and ends with a full stop.
fn sentence(text: &str) -> String {
    let mut letters = text.chars();
    let mut said: String =
        letters.next().map(|c| c.to_uppercase().collect()).unwrap_or_default();
    said.push_str(letters.as_str());
    if !said.ends_with(['.', '?', '!']) {
        said.push('.');
    }
    said
}

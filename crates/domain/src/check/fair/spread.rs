//! Treatments that stand or fall with one group or one period.

use crate::finding::{Finding, Severity};
use crate::plan::{Plan, PlannedBag, Question, Treatment};
use std::collections::BTreeSet;

const BLOCKS: &str = "NIST/SEMATECH e-Handbook of Statistical Methods, section 5.3.3.2: block what \
     you can, randomize what you cannot";

pub(super) fn findings(plan: &Plan) -> Vec<Finding> {
    let mut found: Vec<Finding> = Vec::new();
    for question in &plan.questions {
        for treatment in plan.answering(question) {
            let finding = confounded(plan, question, treatment);
            let said = |f: &Finding| found.iter().any(|said| said.message == f.message);
            found.extend(finding.filter(|finding| !said(finding)));
        }
    }
    found
}

fn bags<'p>(plan: &'p Plan, name: &str) -> Vec<(usize, &'p PlannedBag)> {
    plan.bags.iter().enumerate().filter(|(_, bag)| bag.treatment == name).collect()
}

fn confounded(plan: &Plan, question: &Question, treatment: &Treatment) -> Option<Finding> {
    let name = &treatment.name;
    let reference = plan.beside(question, treatment)?;
    let (own, others) = (bags(plan, name), bags(plan, reference));
    // Fewer than two bags of a kind, or no reference, is said elsewhere.
    if own.len() < 2 || others.is_empty() {
        return None;
    }
    let at = format!("bag[{}]", own[0].0);
    let periods: BTreeSet<&str> = own.iter().map(|(_, bag)| bag.period.as_str()).collect();
    let shared = others.iter().any(|(_, bag)| periods.contains(bag.period.as_str()));
    if !shared {
        return Some(
            Finding::new(
                Severity::Fault,
                "apart",
                format!("No period has both “{name}” and “{reference}”, so the hour may be what differs."),
                format!("Make both in the same period: move some bags of “{reference}”."),
            )
            .at(at)
            .says(BLOCKS),
        );
    }
    let groups: BTreeSet<(&str, u32)> =
        own.iter().map(|(_, bag)| (bag.period.as_str(), bag.group)).collect();
    let [(period, group)] = Vec::from_iter(groups)[..] else { return None };
    let has_both = others.iter().any(|(_, bag)| bag.period == period && bag.group == group);
    (!has_both).then(|| {
        Finding::new(
            Severity::Fault,
            "one-group",
            format!("One group makes every bag of “{name}” and none of “{reference}”."),
            format!("Split the bags of “{name}” over groups, or have that group make both."),
        )
        .at(at)
        .says(BLOCKS)
    })
}

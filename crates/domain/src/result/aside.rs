//! Bags set aside: only by a rule that the plan agreed on before the day.

use crate::nearest::{nearest, plain};
use crate::plan::Plan;
use crate::reading::{Rejected, SetAside};
use std::collections::BTreeMap;

/// Bags set aside, each with the name of its rule; wishes that no rule covers are rejected.
///
/// A bag is never set aside for its height alone: whether a rule looks at heights is for the
/// plan to say beforehand.
pub(super) fn accept(
    plan: &Plan,
    wishes: &[SetAside],
    rejected: &mut Vec<Rejected>,
) -> BTreeMap<String, String> {
    let mut accepted = BTreeMap::new();
    for wish in wishes {
        match rule(plan, wish) {
            Ok(rule) => {
                accepted.entry(wish.bag.clone()).or_insert_with(|| rule.to_owned());
            }
            Err(reason) => rejected.push(Rejected { line: wish.line, reason }),
        }
    }
    accepted
}

fn rule<'a>(plan: &'a Plan, wish: &SetAside) -> Result<&'a str, String> {
    if plan.bags.iter().all(|bag| bag.code != wish.bag) {
        return Err(format!("{} is no bag of this plan, so it cannot be set aside", wish.bag));
    }
    let written = plain(&wish.rule);
    if let Some(rule) = plan.set_aside_rules.iter().find(|rule| plain(&rule.id) == written) {
        return Ok(&rule.id);
    }
    let ids = || plan.set_aside_rules.iter().map(|rule| rule.id.as_str());
    let known: Vec<&str> = ids().collect();
    let fix = match (nearest(&wish.rule, ids()), known.is_empty()) {
        (Some(meant), _) => format!("did you mean \"{meant}\"?"),
        (None, true) => "the plan has no such rules, so every bag counts".to_owned(),
        (None, false) => format!("the plan's rules are: {}", known.join(", ")),
    };
    let shown: String = wish.rule.chars().filter(|c| !c.is_control()).take(40).collect();
    Err(format!("{} was not set aside: \"{shown}\" is no rule of the plan; {fix}", wish.bag))
}

//! What the versions of a plan know: which bags and which rules there are.

use crate::code::BagCode;
use crate::plan::Plan;
use std::collections::BTreeSet;

/// The bags and rules of all versions of a plan. A bag that left the newest version may have been
/// sealed under an older one, and stays what it was.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Known {
    /// Codes of all bags.
    pub bags: BTreeSet<BagCode>,
    /// Names of the rules by which a bag may be set aside.
    pub rules: BTreeSet<String>,
}

impl Known {
    /// What all these versions know together.
    #[must_use]
    pub fn of<'p>(versions: impl IntoIterator<Item = &'p Plan>) -> Self {
        let mut known = Self::default();
        for plan in versions {
            known
                .bags
                .extend(plan.bags.iter().filter_map(|bag| bag.code.parse::<BagCode>().ok()));
            known.rules.extend(plan.set_aside_rules.iter().map(|rule| rule.id.clone()));
        }
        known
    }
}

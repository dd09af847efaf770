//! What the versions of a plan know: which bags, rules and treatments there are.

use super::bound::older_name;
use crate::code::BagCode;
use crate::plan::Plan;
use std::collections::{BTreeMap, BTreeSet};

/// The bags, rules and treatments of all versions of a plan. A bag that left the newest version may
/// have been sealed under an older one, and stays what it was.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Known {
    /// Codes of all bags, and whose they are by their label.
    pub bags: BTreeMap<BagCode, Home>,
    /// Names of the rules by which a bag may be set aside.
    pub rules: BTreeSet<String>,
    /// Names of all treatments.
    pub treatments: BTreeSet<String>,
}

/// The group that a bag belongs to by its label.
#[derive(Debug, Clone, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct Home {
    /// Name of the period.
    pub period: String,
    /// Number within the period; 0 is the teacher's bench.
    pub group: u32,
}

impl Known {
    /// What all these versions know together; where two place a bag differently, the one that
    /// comes last is right.
    #[must_use]
    pub fn of<'p>(versions: impl IntoIterator<Item = &'p Plan>) -> Self {
        let mut known = Self::default();
        for plan in versions {
            for bag in &plan.bags {
                let Ok(code) = bag.code.parse::<BagCode>() else { continue };
                let home = Home { period: bag.period.clone(), group: bag.group };
                known.bags.insert(code, home);
            }
            known.rules.extend(plan.set_aside_rules.iter().map(|rule| rule.id.clone()));
            known.treatments.extend(plan.treatments().map(|(_, of)| of.name.clone()));
        }
        known
    }

    /// Whether any version has a treatment that is called so, be it by the name that tells it from
    /// a newer one.
    pub(super) fn has_treatment(&self, called: &str) -> bool {
        let older = older_name(called);
        self.treatments.contains(called)
            || older.is_some_and(|(name, _)| self.treatments.contains(name))
    }

    /// Knows what another knows too; nothing is forgotten.
    pub fn learn(&mut self, more: Self) {
        self.bags.extend(more.bags);
        self.rules.extend(more.rules);
        self.treatments.extend(more.treatments);
    }
}

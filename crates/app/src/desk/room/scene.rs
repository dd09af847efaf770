//! What a page's view is made from.

use super::Kind;
use crate::desk::Outlook;
use barm_domain::code::BagCode;
use barm_domain::plan::Plan;
use barm_domain::record::{Ledger, Standing};
use std::collections::BTreeMap;
use std::sync::Arc;

/// An investigation at one moment. Whoever holds it must not wait for anything.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Scene<'a> {
    /// Its number.
    pub(crate) investigation: i64,
    /// What it is.
    pub(crate) kind: Kind,
    /// The newest version of the plan.
    pub(crate) plan: &'a Arc<Plan>,
    /// Its number; 0 if no version was saved yet.
    pub(crate) version: u32,
    /// All versions that can be read.
    pub(crate) plans: &'a BTreeMap<u32, Arc<Plan>>,
    /// The record.
    pub(crate) ledger: &'a Ledger,
    /// What every treatment of the newest version is expected to do, once it was worked out.
    /// For the teacher only.
    pub(crate) outlook: Option<&'a Outlook>,
}

impl<'a> Scene<'a> {
    /// What the record adds up to.
    pub(crate) const fn standing(&self) -> &'a Standing {
        self.ledger.standing()
    }

    /// The plan under which a bag was sealed; the newest, while it is not.
    pub(crate) fn plan_of(&self, bag: BagCode) -> &'a Plan {
        let sealed = self.standing().bags.get(&bag).and_then(|bag| bag.sealed);
        let bound = sealed.and_then(|(_, version)| self.plans.get(&version));
        bound.unwrap_or(self.plan)
    }

    /// Whether what stands here never happened in a class.
    pub(crate) fn made_up(&self) -> bool {
        self.kind != Kind::Real
    }
}

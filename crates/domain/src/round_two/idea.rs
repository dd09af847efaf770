//! What a class could make next, before anybody knows what it would bring.

use crate::outlook::HeldBackBy;
use crate::plan::{Treatment, Variable};
use barm_science::statistics::verdict::Code;

/// A treatment beside what it is compared with.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub struct Pair {
    /// Id of the question.
    pub question: String,
    /// The treatment.
    pub treatment: String,
    /// What it is compared with.
    pub reference: String,
}

/// Why a class could make it.
#[derive(Debug, Clone, PartialEq)]
pub enum Reason {
    /// Round one left these open; the verdicts of the pairs, in their order.
    Open {
        /// What was told of each.
        verdicts: Vec<Code>,
    },
    /// A treatment did best, and lies between two amounts that were tried.
    Between {
        /// The treatment that did best.
        best: String,
        /// What there is another amount of.
        thing: Variable,
        /// How much the best has, as written.
        from: String,
        /// How much the new one has, as written.
        to: String,
    },
    /// A treatment did best, and nobody tried more of it, or less.
    Beyond {
        /// The treatment that did best.
        best: String,
        /// What there is another amount of.
        thing: Variable,
        /// How much the best has, as written.
        from: String,
        /// How much the new one has, as written.
        to: String,
    },
    /// Something held a treatment's bags back, and there is more of it.
    HeldBack {
        /// The treatment.
        treatment: String,
        /// What held it back.
        by: HeldBackBy,
        /// What there is more of.
        thing: Variable,
        /// How much it had, as written.
        from: String,
        /// How much the new one has, as written.
        to: String,
    },
}

/// A second round that could be made.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Idea {
    /// Why.
    pub(super) reason: Reason,
    /// What is compared.
    pub(super) pairs: Vec<Pair>,
    /// A treatment that round one did not have, with the variable in which it differs.
    pub(super) fresh: Option<(Treatment, Variable)>,
    /// Bags of each treatment.
    pub(super) each: u32,
}

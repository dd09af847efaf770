//! What groups propose to make, judged as a plan is, and approved into the plan.
//!
//! A proposal is written as a form or a line of a file holds it ([`Written`]), read against the
//! plan and the cupboard that the teacher opened ([`Proposal`]), and judged with the same checks as
//! a plan. What a group is told of it is a question of its own ([`Ask`]), never the answer, and
//! never anything that rests on a forecast.

mod approve;
mod ask;
mod coverage;
mod judge;
mod level;
mod opened;
mod wording;
mod written;

pub use approve::{ApproveError, approve};
pub use ask::{Ask, asks};
pub use coverage::{Covered, coverage, partners, same_question};
pub use judge::{Judged, judge, trial};
pub use opened::{Opened, enzyme_given, opened};
pub use wording::wording;
pub use written::Written;

use crate::plan::{Difference, Variable};

/// What a group proposes to make.
#[derive(Debug, Clone, PartialEq)]
pub struct Proposal {
    /// Name of its period.
    pub period: String,
    /// Its number within the period, from 1.
    pub group: u32,
    /// The question in the plan's words, never in the group's: see [`wording()`].
    pub asks: String,
    /// The one thing it changes.
    pub variable: Variable,
    /// What it changes it to.
    pub levels: Vec<Level>,
    /// What they are compared with, if it says so.
    pub beside: Option<Beside>,
    /// Bags of each level.
    pub bags: u32,
}

/// One way of making a bag in a proposal.
#[derive(Debug, Clone, PartialEq)]
pub struct Level {
    /// What it is called.
    pub name: String,
    /// What it changes against the plan's base recipe.
    pub difference: Difference,
}

/// What levels are compared with.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Beside {
    /// One of the levels, by its place from 0.
    Level(usize),
    /// A treatment of the plan, such as a shared control.
    Treatment(String),
}

/// Most bags of one level that one group makes.
pub const MOST_BAGS: u32 = 4;
/// Most levels of one proposal.
pub const MOST_LEVELS: usize = 6;

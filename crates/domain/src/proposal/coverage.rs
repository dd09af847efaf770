//! What a class's proposals cover together.

use super::{Beside, Proposal};
use crate::plan::{Difference, Variable};

/// One question and the groups that ask it.
#[derive(Debug, Clone, PartialEq)]
pub struct Covered {
    /// The thing that is changed.
    pub variable: Variable,
    /// What it is changed to.
    pub levels: Vec<String>,
    /// Period and number of each group.
    pub groups: Vec<(String, u32)>,
    /// Bags of each level, all groups together.
    pub bags: u32,
}

/// Whether two proposals ask the same: what they change, to what, and beside what.
pub fn same_question(one: &Proposal, other: &Proposal) -> bool {
    one.variable == other.variable
        && compared(one) == compared(other)
        && one.levels.len() == other.levels.len()
        && one.levels.iter().all(|level| {
            other.levels.iter().any(|second| second.difference == level.difference)
        })
}

/// What levels are compared with, however the level is called.
fn compared(proposal: &Proposal) -> Option<Result<&Difference, &str>> {
    Some(match proposal.beside.as_ref()? {
        Beside::Level(place) => Ok(&proposal.levels.get(*place)?.difference),
        Beside::Treatment(name) => Err(name),
    })
}

/// Groups elsewhere that ask the same.
pub fn partners<'a>(proposal: &Proposal, all: &'a [Proposal]) -> Vec<&'a Proposal> {
    all.iter()
        .filter(|other| {
            (&other.period, other.group) != (&proposal.period, proposal.group)
                && same_question(proposal, other)
        })
        .collect()
}

/// Every question that is asked, the one that most groups ask first.
pub fn coverage(all: &[Proposal]) -> Vec<Covered> {
    let mut seen: Vec<(&Proposal, Covered)> = Vec::new();
    for proposal in all {
        let group = (proposal.period.clone(), proposal.group);
        match seen.iter_mut().find(|(first, _)| same_question(first, proposal)) {
            Some((_, covered)) => {
                covered.groups.push(group);
                covered.bags += proposal.bags;
            }
            None => seen.push((
                proposal,
                Covered {
                    variable: proposal.variable,
                    levels: proposal.levels.iter().map(|level| level.name.clone()).collect(),
                    groups: vec![group],
                    bags: proposal.bags,
                },
            )),
        }
    }
    let mut covered: Vec<Covered> = seen.into_iter().map(|(_, covered)| covered).collect();
    covered.sort_by_key(|one| std::cmp::Reverse(one.groups.len()));
    covered
}

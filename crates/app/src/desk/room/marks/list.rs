//! All groups with what they are given so far.

use super::kept::{given, rubric};
use crate::desk::DeskError;
use crate::desk::room::claims::claimed;
use crate::desk::room::{Kind, Room};
use barm_domain::marks::{Given, Rubric};

/// The list of marks.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct MarksView {
    /// Number of the investigation.
    pub(crate) id: i64,
    /// What it is.
    pub(crate) kind: Kind,
    /// Its title.
    pub(crate) title: String,
    /// What is marked.
    pub(crate) rubric: Rubric,
    /// Period by period: its name, and each group.
    pub(crate) periods: Vec<(String, Vec<Standing>)>,
}

/// How far a group is marked.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Standing {
    /// The group's number.
    pub(crate) group: u32,
    /// Whether it handed in a claim.
    pub(crate) claimed: bool,
    /// Strands that are not marked yet.
    pub(crate) open: usize,
    /// Levels added up, beside the most there are, once none is open.
    pub(crate) sum: Option<(usize, usize)>,
}

/// The list of marks of an investigation. Waits for the disk.
pub(crate) fn marks_view(room: &Room) -> Result<MarksView, DeskError> {
    let rubric = rubric(room)?;
    let words = room.all_words()?;
    let (given, claimed) = (given(&words), claimed(&words));
    let (title, periods) = room.read(|scene| {
        let periods = scene.plan.periods.iter().map(|one| (one.name.clone(), one.groups));
        (scene.plan.title.clone(), periods.collect::<Vec<_>>())
    });
    let none = Given::default();
    let of_period = |(name, groups): (String, u32)| {
        let standing = |group| {
            let who = (name.clone(), group);
            let own = given.get(&who).unwrap_or(&none);
            let (open, sum) = (own.open(&rubric).len(), own.sum(&rubric));
            Standing { group, claimed: claimed.contains_key(&who), open, sum }
        };
        let all = (1..=groups).map(standing).collect();
        (name, all)
    };
    let periods = periods.into_iter().map(of_period).collect();
    Ok(MarksView { id: room.id, kind: room.kind, title, rubric, periods })
}

//! One group's page for marking: what it handed in, what the data say, its bags, and what it is given.

use super::kept::{given, rubric};
use crate::desk::room::claims::{OfGroup, claim_of, own_curves};
use crate::desk::room::proposals::Group;
use crate::desk::room::roster::students_of;
use crate::desk::room::{Kind, Room};
use crate::desk::{Catalog, DeskError, Wording};
use barm_domain::marks::{Given, Offered, Rubric, offered};
use barm_domain::plan::Period;
use barm_domain::result::BagResult;
use barm_domain::roster::Shown;

/// Remarks that are offered again for each strand at most.
const OFFERED: usize = 4;

/// The page on which a group is marked.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct MarkView {
    /// Number of the investigation.
    pub(crate) id: i64,
    /// What it is.
    pub(crate) kind: Kind,
    /// Its title.
    pub(crate) title: String,
    /// The group.
    pub(crate) group: Group,
    /// Its place among all groups of the day, from 1, and how many there are.
    pub(crate) place: (usize, usize),
    /// The group before it, and the one after.
    pub(crate) beside: Beside,
    /// What is marked.
    pub(crate) rubric: Rubric,
    /// Who is in it, and whether absent, if the teacher put students into groups.
    pub(crate) students: Vec<(Shown, bool)>,
    /// Its claim with what the data say, if it handed one in.
    pub(crate) claim: Option<OfGroup>,
    /// Its bags.
    pub(crate) bags: Vec<OwnBag>,
    /// Their curves as a picture, by their labels, if something was read.
    pub(crate) curves: Option<String>,
    /// What it is given so far.
    pub(crate) given: Given,
    /// Remarks to be used again, strand by strand.
    pub(crate) offered: Vec<Vec<Offered>>,
}

/// A bag of the group.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct OwnBag {
    /// Its code.
    pub(crate) code: String,
    /// Its treatment.
    pub(crate) treatment: String,
    /// Minutes and rises (mm).
    pub(crate) rises: Vec<(f64, f64)>,
    /// The rule by which it is set aside.
    pub(crate) set_aside: Option<String>,
}

/// The group before one, and the one after.
pub(crate) type Beside = (Option<Group>, Option<Group>);

/// The place of a group among all of the day, from 1, how many there are, and which stand beside it; nothing if there is
/// no such group.
pub(crate) fn beside(room: &Room, group: &Group) -> Option<(usize, usize, Beside)> {
    let groups: Vec<Group> = room.read(|scene| {
        let of = |one: &Period| {
            let name = one.name.clone();
            (1..=one.groups).map(move |group| (name.clone(), group)).collect::<Vec<Group>>()
        };
        scene.plan.periods.iter().flat_map(of).collect()
    });
    let at = groups.iter().position(|one| one == group)?;
    let before = at.checked_sub(1).and_then(|before| groups.get(before)).cloned();
    Some((at + 1, groups.len(), (before, groups.get(at + 1).cloned())))
}

/// The marking page of a group; nothing if there is no such group. Waits for the disk.
pub(crate) fn mark_view(
    room: &Room,
    w: Wording,
    group: &Group,
) -> Result<Option<MarkView>, DeskError> {
    let Some((at, of, beside)) = beside(room, group) else { return Ok(None) };
    let title = room.read(|scene| scene.plan.title.clone());
    let rubric = rubric(room)?;
    let words = room.all_words()?;
    let all = given(&words);
    let own = all.get(group).cloned().unwrap_or_default();
    let offered = rubric.strands.iter().map(|strand| {
        let (level, words) = (own.levels.get(&strand.id), own.remarks.get(&strand.id));
        let others = all.iter().filter(|(who, _)| *who != group).map(|(_, given)| given);
        offered(others, &strand.id, level.copied(), (words.map(String::as_str), OFFERED))
    });
    let offered = offered.collect();
    let found = room.found();
    let (plan, result) = (&found.plan, &found.result);
    let claim = claim_of(&words, w, plan, result, group);
    let own_bag = |one: &&BagResult| one.bag.period == group.0 && one.bag.group == group.1;
    let mine = result.bags.iter().filter(own_bag);
    let bags = mine.map(|one| OwnBag {
        code: one.bag.code.clone(),
        treatment: one.bag.treatment.clone(),
        rises: one.curve.rises.iter().map(|rise| (rise.minute, rise.rise_mm.value)).collect(),
        set_aside: one.set_aside.clone(),
    });
    Ok(Some(MarkView {
        id: room.id,
        kind: room.kind,
        title,
        group: group.clone(),
        place: (at, of),
        beside,
        rubric,
        students: students_of(&words, group),
        claim,
        bags: bags.collect(),
        curves: own_curves(room, group, Catalog::of("en")),
        given: own,
        offered,
    }))
}

//! The teacher's page of claims: each beside what the data say of it.

use super::group::{About, about};
use super::peers::dealt;
use super::{HandedClaim, TypedClaim, Wrote, claimed, reviews, says};
use crate::desk::room::all_words::AllWords;
use crate::desk::room::proposals::Group;
use crate::desk::room::results::{not_run, only_run};
use crate::desk::room::{Kind, Room};
use crate::desk::{DeskError, Wording};
use barm_domain::claim::{Claim, facts};
use barm_domain::plan::Plan;
use barm_domain::result::ClassResult;

/// The page of claims.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct ClaimsView {
    /// Number of the investigation.
    pub(crate) id: i64,
    /// What it is.
    pub(crate) kind: Kind,
    /// Its title.
    pub(crate) title: String,
    /// Period by period.
    pub(crate) periods: Vec<OfPeriod>,
}

/// The claims of one period.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct OfPeriod {
    /// Name of the period.
    pub(crate) name: String,
    /// Those that were handed in.
    pub(crate) claims: Vec<OfGroup>,
    /// Groups that handed in none.
    pub(crate) missing: Vec<u32>,
    /// Whether groups read each other's.
    pub(crate) opened: bool,
}

/// One group's claim.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct OfGroup {
    /// The group's number.
    pub(crate) group: u32,
    /// The claim.
    pub(crate) claim: TypedClaim,
    /// The question in words.
    pub(crate) asks: String,
    /// What the treatment stands beside.
    pub(crate) beside: String,
    /// What the data say of it, a sentence each.
    pub(crate) facts: Vec<String>,
    /// What others wrote of it.
    pub(crate) heard: Vec<Wrote>,
}

/// The claims of an investigation. Waits for the disk and works out results.
pub(crate) fn claims_view(room: &Room, w: Wording) -> Result<ClaimsView, DeskError> {
    let found = room.found();
    let (plan, mut result) = (&found.plan, found.result.clone());
    only_run(&mut result, &room.read(|scene| not_run(scene, plan)));
    let about = about(plan);
    let words = room.all_words()?;
    let (claimed, written) = (claimed(&words), reviews(&words));
    let mut periods = Vec::new();
    for period in &plan.periods {
        let own = |group: u32| claimed.get(&(period.name.clone(), group));
        let groups = 1..=period.groups;
        let missing = groups.clone().filter(|group| own(*group).is_none()).collect();
        let claims = groups.filter_map(|group| {
            let who = (period.name.clone(), group);
            let mut one = of_group(w, plan, &result, &about, (&who, own(group)?));
            let heard = written.iter().filter(|one| one.period == who.0 && one.writer == group);
            one.heard = heard.cloned().collect();
            Some(one)
        });
        periods.push(OfPeriod {
            name: period.name.clone(),
            claims: claims.collect(),
            missing,
            opened: !dealt(room, &period.name)?.is_empty(),
        });
    }
    Ok(ClaimsView { id: room.id, kind: room.kind, title: plan.title.clone(), periods })
}

fn of_group(
    w: Wording,
    plan: &Plan,
    result: &ClassResult,
    about: &[About],
    (who, handed): (&Group, &HandedClaim),
) -> OfGroup {
    let claim = &handed.claim;
    let there = about.iter().find(|one| one.is_of(claim));
    // A plan that was changed since may no longer ask what the claim answers.
    let facts = match Claim::read(plan, &claim.typed()) {
        Ok(claim) => {
            let facts = facts(plan, result, &claim, (who.0.as_str(), who.1));
            facts.iter().map(|fact| says(w, plan, fact)).collect()
        }
        Err(faults) => faults.iter().map(ToString::to_string).collect(),
    };
    OfGroup {
        group: who.1,
        claim: claim.clone(),
        asks: there.map_or_else(String::new, |one| one.asks.clone()),
        beside: there.map_or_else(String::new, |one| one.beside.clone()),
        facts,
        heard: Vec::new(),
    }
}

/// One group's claim with what the data say of it, if it handed one in.
pub(crate) fn claim_of(
    written: &AllWords,
    w: Wording,
    plan: &Plan,
    result: &ClassResult,
    group: &Group,
) -> Option<OfGroup> {
    let claimed = claimed(written);
    let one = claimed.get(group);
    one.map(|handed| of_group(w, plan, result, &about(plan), (group, handed)))
}

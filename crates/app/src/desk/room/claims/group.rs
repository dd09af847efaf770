//! A group's page for its claim.

use super::peers::{Dealt, dealt};
use super::{TypedClaim, claimed, hand_in_claim, reviews};
use crate::desk::DeskError;
use crate::desk::room::bench::own_labels;
use crate::desk::room::marks::{HandedOut, newest_copy};
use crate::desk::room::opened::results_are_open;
use crate::desk::room::proposals::Group;
use crate::desk::room::{Kind, Room, Scene};
use barm_domain::claim::{Claim, ClaimFault};
use barm_domain::plan::Plan;
use jiff::Timestamp;

/// What a group's claim page shows. It has no place for a verdict, for a forecast, or for whose claim it reads.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct ClaimView {
    /// Name of the period.
    pub(crate) period: String,
    /// The group's number.
    pub(crate) group: u32,
    /// Whether nothing here counts.
    pub(crate) kind: Kind,
    /// What can be claimed about.
    pub(crate) about: Vec<About>,
    /// What the group wrote, or nothing yet.
    pub(crate) wrote: TypedClaim,
    /// What has to be mended before it can be handed in.
    pub(crate) faults: Vec<ClaimFault>,
    /// Whether what stands there is handed in.
    pub(crate) handed_in: bool,
    /// Claims that the group is to read, without names.
    pub(crate) others: Vec<Other>,
    /// What others wrote of its own.
    pub(crate) heard: Vec<(String, String)>,
    /// Its marks, once the teacher handed them out.
    pub(crate) marks: Option<HandedOut>,
}

/// A treatment that a question compares with something.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct About {
    /// Id of the question.
    pub(crate) question: String,
    /// The question in words.
    pub(crate) asks: String,
    /// The treatment.
    pub(crate) treatment: String,
    /// What it stands beside.
    pub(crate) beside: String,
}

impl About {
    /// Whether a claim is about just that.
    pub(super) fn is_of(&self, claim: &TypedClaim) -> bool {
        self.question == claim.question && self.treatment == claim.treatment
    }
}

/// A claim of somebody else's.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Other {
    /// The claim.
    pub(crate) claim: TypedClaim,
    /// What it stands beside.
    pub(crate) beside: String,
    /// What this group wrote of it: what convinces, and what it would ask.
    pub(crate) wrote: (String, String),
}

/// The claim page of a group: with what it typed just now, handed in if that was asked for and nothing is wrong with
/// it; or with what it handed in. Waits for the disk.
pub(crate) fn claim_view(
    room: &Room,
    group: &Group,
    typed: Option<(TypedClaim, bool)>,
    now: Timestamp,
) -> Result<ClaimView, DeskError> {
    // By what labels say: what a bag is in truth, if it is something else, is the teacher's.
    let (plan, about) = room.read(|scene| (scene.plan.clone(), of_group(scene, group)));
    let mut faults = Vec::new();
    let mut open = None;
    if let Some((mut typed, hands_in)) = typed {
        if !about.iter().any(|one| one.is_of(&typed)) {
            typed.treatment.clear();
        }
        match Claim::read(&plan, &typed.typed()) {
            Ok(_) if hands_in => hand_in_claim(room, group, typed, now)?,
            Ok(_) => open = Some(typed),
            Err(found) => {
                faults = if typed.is_blank() && !hands_in { Vec::new() } else { found };
                open = Some(typed);
            }
        }
    }
    let words = room.all_words()?;
    let mut claimed = claimed(&words);
    let own = claimed.get(group).map(|handed| handed.claim.clone());
    let all = self::about(&plan);
    let beside = |claim: &TypedClaim| {
        let one = all.iter().find(|one| one.is_of(claim));
        one.map_or_else(String::new, |one| one.beside.clone())
    };
    let written = reviews(&words);
    let mine = |reader: u32, writer: u32| {
        let same = |one: &&super::Wrote| {
            one.period == group.0 && one.reader == reader && one.writer == writer
        };
        written.iter().find(same)
    };
    let mut others = Vec::new();
    let own_deal = dealt(room, &group.0)?.into_iter().filter(|one| one.reader == group.1);
    for Dealt { reader, writer } in own_deal {
        let Some(handed) = claimed.remove(&(group.0.clone(), writer)) else { continue };
        let wrote = mine(reader, writer);
        let wrote = wrote.map(|one| (one.convinces.clone(), one.asks.clone()));
        let beside = beside(&handed.claim);
        others.push(Other { claim: handed.claim, beside, wrote: wrote.unwrap_or_default() });
    }
    let heard = written.iter().filter(|one| one.period == group.0 && one.writer == group.1);
    Ok(ClaimView {
        period: group.0.clone(),
        group: group.1,
        kind: room.kind,
        handed_in: open.is_none() && own.is_some(),
        wrote: open.or(own).unwrap_or_default(),
        about,
        faults,
        others,
        heard: heard.map(|one| (one.convinces.clone(), one.asks.clone())).collect(),
        marks: newest_copy(&words, group),
    })
}

/// What a group can claim about: the treatments of its own bags; all of them once it may read what the class found,
/// or if it has no bags.
fn of_group(scene: &Scene<'_>, (period, group): &Group) -> Vec<About> {
    let own = own_labels(scene, period, *group);
    let all = own.is_empty() || results_are_open(scene, period, *group);
    let mut about = about(scene.plan);
    about.retain(|one| all || own.contains(&one.treatment));
    about
}

/// Everything that can be claimed about, question by question.
pub(super) fn about(plan: &Plan) -> Vec<About> {
    let of = |question: &barm_domain::plan::Question| -> Vec<About> {
        let answering = plan.answering(question).into_iter();
        answering
            .filter_map(|treatment| {
                let beside = plan.beside(question, treatment)?;
                Some(About {
                    question: question.id.clone(),
                    asks: question.asks.clone(),
                    treatment: treatment.name.clone(),
                    beside: beside.to_owned(),
                })
            })
            .collect()
    };
    plan.questions.iter().flat_map(of).collect()
}

//! What groups claim, what others of their period ask about it, and what the data say of it.
//!
//! Claims and what others wrote of them are words of children: they lie where words can be deleted, apart from the
//! record. No fact that stands beside a claim is a mark.

mod beside;
mod group;
mod home;
mod peers;
mod teacher;

pub(crate) use beside::says;
pub(crate) use group::{About, ClaimView, Other, claim_view};
pub(crate) use home::{HomeBag, HomeView, home_view, own_curves};
pub(crate) use peers::{close_peers, open_peers, review};
pub(crate) use teacher::{ClaimsView, OfGroup, OfPeriod, claim_of, claims_view};

use super::proposals::Group;
use super::{Room, Scope};
use crate::desk::{DeskError, doors};
use barm_domain::claim;
use jiff::Timestamp;
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

const CLAIMED: &str = "claim";
const REVIEWED: &str = "claim-review";

/// A claim as a group typed it.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
pub(crate) struct TypedClaim {
    /// Id of the question.
    pub(crate) question: String,
    /// The treatment.
    pub(crate) treatment: String,
    /// The word of a direction.
    pub(crate) says: String,
    /// By how much.
    pub(crate) by: String,
    /// What was seen.
    pub(crate) evidence: String,
    /// Why that answers the question.
    pub(crate) reasoning: String,
}

impl TypedClaim {
    /// As the plan reads it.
    fn typed(&self) -> claim::Typed<'_> {
        claim::Typed {
            question: &self.question,
            treatment: &self.treatment,
            says: &self.says,
            by: &self.by,
            evidence: &self.evidence,
            reasoning: &self.reasoning,
        }
    }

    /// Whether nothing is written.
    fn is_blank(&self) -> bool {
        let texts = [&self.says, &self.by, &self.evidence, &self.reasoning];
        texts.into_iter().all(String::is_empty)
    }
}

/// A claim as it lies on disk.
#[derive(Serialize, Deserialize)]
struct Kept {
    at: i64,
    period: String,
    group: u32,
    claim: TypedClaim,
}

/// What one group wrote of another's claim, as it lies on disk.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub(crate) struct Wrote {
    at: i64,
    /// Period of both.
    pub(crate) period: String,
    /// Who read it.
    pub(crate) reader: u32,
    /// Whose claim it is.
    pub(crate) writer: u32,
    /// What convinced the reader.
    pub(crate) convinces: String,
    /// What the reader would ask.
    pub(crate) asks: String,
}

/// A claim that was handed in.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct HandedClaim {
    /// As it was typed.
    pub(crate) claim: TypedClaim,
    /// When.
    pub(crate) at: Timestamp,
}

/// The newest claim of every group that handed one in. Waits for the disk.
pub(crate) fn claimed(room: &Room) -> Result<BTreeMap<Group, HandedClaim>, DeskError> {
    let mut newest: BTreeMap<Group, HandedClaim> = BTreeMap::new();
    for kept in kept::<Kept>(room, CLAIMED)? {
        let at = Timestamp::from_millisecond(kept.at).unwrap_or_default();
        let group = (kept.period, kept.group);
        if newest.get(&group).is_none_or(|known| known.at <= at) {
            newest.insert(group, HandedClaim { claim: kept.claim, at });
        }
    }
    Ok(newest)
}

/// The newest that each group wrote of each claim it read, by period, reader and writer. Waits for the disk.
pub(crate) fn reviews(room: &Room) -> Result<Vec<Wrote>, DeskError> {
    let mut newest: BTreeMap<(String, u32, u32), Wrote> = BTreeMap::new();
    for wrote in kept::<Wrote>(room, REVIEWED)? {
        let key = (wrote.period.clone(), wrote.reader, wrote.writer);
        if newest.get(&key).is_none_or(|known| known.at <= wrote.at) {
            newest.insert(key, wrote);
        }
    }
    Ok(newest.into_values().collect())
}

/// Keeps a claim that a group hands in. Waits for the disk.
pub(crate) fn hand_in_claim(
    room: &Room,
    group: &Group,
    claim: TypedClaim,
    now: Timestamp,
) -> Result<(), DeskError> {
    let (at, (period, number)) = (now.as_millisecond(), group.clone());
    keep(room, CLAIMED, &Kept { at, period, group: number, claim })?;
    heard(room, group);
    Ok(())
}

fn kept<K: for<'de> Deserialize<'de>>(room: &Room, kind: &str) -> Result<Vec<K>, DeskError> {
    let all = room.store.all_words(room.id)?.into_iter();
    let own = all.filter(|(_, known, _)| known == kind);
    Ok(own.filter_map(|(_, _, text)| serde_json::from_str(&text).ok()).collect())
}

fn keep(room: &Room, kind: &str, what: &impl Serialize) -> Result<(), DeskError> {
    let text = serde_json::to_string(what).map_err(|_| DeskError::Stopped)?;
    room.store.keep_words(room.id, doors::words_key()?, kind, &text)?;
    Ok(())
}

/// The teacher's pages hear of it, and those of the group.
fn heard(room: &Room, group: &Group) {
    let own = Scope::Group { period: group.0.clone(), group: group.1 };
    room.pulse.beat(|scope| *scope == Scope::Teacher || *scope == own);
}

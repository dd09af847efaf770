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

use super::Room;
use super::all_words::{AllWords, Dated, of_a_group};
use super::proposals::Group;
use crate::desk::DeskError;
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

of_a_group!(Kept);

impl Dated for Wrote {
    /// Period, reader, writer.
    type Of = (String, u32, u32);

    fn at(&self) -> i64 {
        self.at
    }

    fn of(&self) -> Self::Of {
        (self.period.clone(), self.reader, self.writer)
    }
}

/// The newest claim of every group that handed one in.
pub(crate) fn claimed(written: &AllWords) -> BTreeMap<Group, HandedClaim> {
    let handed = |(group, kept): (Group, Kept)| {
        let at = Timestamp::from_millisecond(kept.at).unwrap_or_default();
        (group, HandedClaim { claim: kept.claim, at })
    };
    written.newest(CLAIMED).into_iter().map(handed).collect()
}

/// The newest that each group wrote of each claim it read, by period, reader and writer.
pub(crate) fn reviews(written: &AllWords) -> Vec<Wrote> {
    written.newest(REVIEWED).into_values().collect()
}

/// Keeps a claim that a group hands in. Waits for the disk.
pub(crate) fn hand_in_claim(
    room: &Room,
    group: &Group,
    claim: TypedClaim,
    now: Timestamp,
) -> Result<(), DeskError> {
    let (at, (period, number)) = (now.as_millisecond(), group.clone());
    room.keep_written(CLAIMED, &Kept { at, period, group: number, claim })?;
    room.tell_of(group);
    Ok(())
}

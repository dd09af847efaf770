//! Groups read each other's claims, without names: who reads whose, and what was written of it.

use super::{REVIEWED, Wrote, claimed};
use crate::desk::room::Room;
use crate::desk::room::proposals::Group;
use crate::desk::{DeskError, doors};
use barm_domain::claim::{MOST_CHARACTERS, deal};
use jiff::Timestamp;
use serde::{Deserialize, Serialize};

/// How many claims each group reads (own rule: two are read in ten minutes).
const EACH: usize = 2;

/// A claim that a group is to read.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Dealt {
    /// The group that reads.
    pub(crate) reader: u32,
    /// The group whose claim it is.
    pub(crate) writer: u32,
}

/// As it lies on disk: who had handed in when it was opened, and the seed.
#[derive(Serialize, Deserialize)]
struct KeptDeal {
    groups: Vec<u32>,
    seed: u64,
}

fn named(room: &Room, period: &str) -> String {
    format!("claims-read-{}-{period}", room.id)
}

/// Deals the claims that a period has handed in so far to its groups; those that wrote one read. Gives how many there
/// are; with fewer than two nothing is opened. Waits for the disk.
pub(crate) fn open_peers(room: &Room, period: &str) -> Result<usize, DeskError> {
    let claimed = claimed(&room.all_words()?);
    let groups: Vec<u32> =
        claimed.keys().filter(|(of, _)| of == period).map(|(_, group)| *group).collect();
    let count = groups.len();
    if count >= 2 {
        let seed = u64::try_from(doors::words_key()?.0 >> 64).unwrap_or_default();
        let text = serde_json::to_string(&KeptDeal { groups, seed })
            .map_err(|_| DeskError::Stopped)?;
        room.store.keep_setting(&named(room, period), &text)?;
        room.touch(None);
    }
    Ok(count)
}

/// Takes the claims back from readers; what they wrote stays. Waits for the disk.
pub(crate) fn close_peers(room: &Room, period: &str) -> Result<(), DeskError> {
    room.store.drop_setting(&named(room, period))?;
    room.touch(None);
    Ok(())
}

/// Who reads whose claim in a period; nobody while it is not opened. Waits for the disk.
pub(super) fn dealt(room: &Room, period: &str) -> Result<Vec<Dealt>, DeskError> {
    let kept = room.store.setting(&named(room, period))?;
    let Some(kept) = kept.and_then(|text| serde_json::from_str::<KeptDeal>(&text).ok()) else {
        return Ok(Vec::new());
    };
    let dealt = deal(kept.groups.len(), EACH, kept.seed).into_iter();
    let of = |place: usize| kept.groups[place];
    Ok(dealt.map(|one| Dealt { reader: of(one.reader), writer: of(one.writer) }).collect())
}

/// Keeps what a group wrote of the so manyth claim that it reads. Gives false if it reads none there. Waits for the disk.
pub(crate) fn review(
    room: &Room,
    group: &Group,
    place: usize,
    (convinces, asks): (&str, &str),
    now: Timestamp,
) -> Result<bool, DeskError> {
    let mut own = dealt(room, &group.0)?.into_iter().filter(|one| one.reader == group.1);
    let Some(Dealt { reader, writer }) = own.nth(place) else { return Ok(false) };
    let short = |text: &str| text.trim().chars().take(MOST_CHARACTERS).collect();
    let wrote = Wrote {
        at: now.as_millisecond(),
        period: group.0.clone(),
        reader,
        writer,
        convinces: short(convinces),
        asks: short(asks),
    };
    room.keep_written(REVIEWED, &wrote)?;
    room.tell_of(group);
    room.tell_of(&(group.0.clone(), writer));
    Ok(true)
}

//! The heights of one bag: zero reading and readings, corrected and chosen between.
//!
//! Every height belongs to a slot: the zero reading, or one planned minute. Two entries in one slot
//! that say something else are rivals, and both stay until the teacher corrects one of them. That
//! correction is the choice: everything written for the slot before it is put aside, also what a
//! device that was cut off brings in later. What is written after it is a rival anew.

use super::Refusals;
use crate::record::{Entry, Height, Key, Mended, Refused, What, Who};
use jiff::Timestamp;
use std::collections::BTreeMap;

/// The heights that count.
pub(super) struct Heights {
    pub(super) zero: Option<Height>,
    pub(super) other_zeros: Vec<Height>,
    pub(super) readings: Vec<Height>,
}

/// The height that an entry says, if it says one.
pub(super) const fn height_written(what: &What) -> Option<f64> {
    match what {
        What::Zero { height_mm }
        | What::Reading { height_mm, .. }
        | What::Correction { height_mm, .. } => Some(*height_mm),
        _ => None,
    }
}

/// Where a height belongs.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Slot {
    Zero,
    Planned(u32),
    /// Between planned minutes; has no rivals.
    Between(Key),
}

/// Work in hand.
struct Gathering<'e> {
    /// Heights that count so far, by the key of their first entry.
    heights: BTreeMap<Key, (Slot, Height)>,
    /// First entries that do not count, with their time and why.
    refused: BTreeMap<Key, (Timestamp, Refused)>,
    /// Corrections with the key of the first entry that they reach.
    corrections: Vec<(&'e Entry, Key)>,
    /// The last choice in each slot: who chose, when, and the height chosen.
    choices: BTreeMap<Slot, (Key, Timestamp, Key)>,
}

impl Heights {
    /// Gathers the heights of a bag; `unfit` says why an entry cannot count whatever the others
    /// say.
    pub(super) fn of(
        entries: &[Entry],
        unfit: impl Fn(&Entry) -> Option<Refused>,
        refusals: &mut Refusals,
    ) -> Self {
        let mut gathering = Gathering {
            heights: BTreeMap::new(),
            refused: BTreeMap::new(),
            corrections: Vec::new(),
            choices: BTreeMap::new(),
        };
        gathering.take_first_entries(entries, &unfit);
        gathering.take_corrections(entries, &unfit, refusals);
        let mut zeros = gathering.settled(|slot| slot == Slot::Zero).into_iter();
        let zero = zeros.next();
        let other_zeros = zeros.collect();
        gathering.refuse_before(zero.as_ref().map(|zero| zero.measured));
        let readings = gathering.settled(|slot| slot != Slot::Zero);
        gathering.tell(refusals);
        Self { zero, other_zeros, readings }
    }
}

impl<'e> Gathering<'e> {
    fn take_first_entries(
        &mut self,
        entries: &'e [Entry],
        unfit: &impl Fn(&Entry) -> Option<Refused>,
    ) {
        for entry in entries {
            let (slot, planned, height_mm) = match entry.what {
                What::Zero { height_mm } => (Slot::Zero, None, height_mm),
                What::Reading { planned, height_mm } => {
                    let slot = planned.map_or(Slot::Between(entry.key), Slot::Planned);
                    (slot, planned, height_mm)
                }
                _ => continue,
            };
            if let Some(reason) = unfit(entry) {
                self.refused.insert(entry.key, (entry.measured, reason));
                continue;
            }
            let height = Height {
                key: entry.key,
                measured: entry.measured,
                planned,
                height_mm,
                who: entry.who.clone(),
                mended: Vec::new(),
                rival: false,
            };
            self.heights.insert(entry.key, (slot, height));
        }
    }

    fn take_corrections(
        &mut self,
        entries: &'e [Entry],
        unfit: &impl Fn(&Entry) -> Option<Refused>,
        refusals: &mut Refusals,
    ) {
        let points: BTreeMap<Key, Key> = entries
            .iter()
            .filter_map(|entry| match entry.what {
                What::Correction { of, .. } => Some((entry.key, of)),
                _ => None,
            })
            .collect();
        for entry in entries {
            let What::Correction { of, height_mm } = entry.what else { continue };
            if let Some(reason) = unfit(entry) {
                refusals.add(entry, reason);
                continue;
            }
            let root = root(of, &points);
            let known = self.heights.contains_key(&root) || self.refused.contains_key(&root);
            if !known {
                refusals.add(entry, Refused::NothingToCorrect { of });
                continue;
            }
            self.corrections.push((entry, root));
            let Some((slot, height)) = self.heights.get_mut(&root) else { continue };
            height.mended.push(Mended {
                height_mm: height.height_mm,
                by: entry.key,
                at: entry.measured,
            });
            height.height_mm = height_mm;
            if entry.who == Who::Teacher {
                self.choices.insert(*slot, (entry.key, entry.measured, root));
            }
        }
    }

    /// Readings cannot count without a zero reading, or before it.
    fn refuse_before(&mut self, zero: Option<Timestamp>) {
        let refused = &mut self.refused;
        self.heights.retain(|key, (_, height)| {
            let reason = match zero {
                None => Refused::NoZeroYet,
                Some(zero) if height.measured < zero => Refused::BeforeZero,
                Some(_) => return true,
            };
            refused.insert(*key, (height.measured, reason));
            false
        });
    }

    /// Takes out the heights of these slots, settled where the teacher chose, by time.
    fn settled(&mut self, here: impl Fn(Slot) -> bool) -> Vec<Height> {
        let mut slots: BTreeMap<Slot, Vec<Height>> = BTreeMap::new();
        self.heights.retain(|_, (slot, height)| {
            let taken = here(*slot);
            if taken {
                slots.entry(*slot).or_default().push(height.clone());
            }
            !taken
        });
        let mut all = Vec::new();
        for (slot, mut heights) in slots {
            heights.sort_by_key(|height| (height.measured, height.key));
            if let Some((by, at, chosen)) = self.choices.get(&slot).copied() {
                self.put_aside(&mut heights, by, at, chosen);
            }
            let differ = heights.windows(2).any(|pair| differ(&pair[0], &pair[1]));
            for height in &mut heights {
                height.rival = differ;
            }
            all.extend(heights);
        }
        all.sort_by_key(|height| (height.measured, height.key));
        all
    }

    /// Puts aside what was written in a slot before the choice.
    fn put_aside(&mut self, heights: &mut Vec<Height>, by: Key, at: Timestamp, chosen: Key) {
        let stays = |height: &Height| height.key == chosen || height.measured > at;
        if heights.iter().all(|height| height.key != chosen) {
            return;
        }
        let (stay, aside): (Vec<Height>, Vec<Height>) =
            std::mem::take(heights).into_iter().partition(stays);
        *heights = stay;
        for rival in &aside {
            self.refused.insert(rival.key, (rival.measured, Refused::NotChosen { by }));
        }
        if let Some(chosen) = heights.iter_mut().find(|height| height.key == chosen) {
            // Before what the choice itself replaced, so that this stays the last.
            let own = chosen.mended.iter().position(|mended| mended.by == by);
            let own = own.unwrap_or(chosen.mended.len());
            let history =
                aside.iter().map(|rival| Mended { height_mm: rival.height_mm, by, at });
            chosen.mended.splice(own..own, history);
        }
    }

    /// Says what does not count; a correction shares the lot of what it corrects.
    fn tell(self, refusals: &mut Refusals) {
        for (entry, root) in self.corrections {
            if let Some((_, reason)) = self.refused.get(&root) {
                refusals.add(entry, reason.clone());
            }
        }
        let first = self.refused.into_iter();
        refusals.0.extend(first.map(|(key, (at, reason))| (at, key, reason)));
    }
}

/// Whether two heights say something else.
fn differ(a: &Height, b: &Height) -> bool {
    (a.height_mm - b.height_mm).abs() > 0.0
}

/// The first entry that a chain of corrections reaches; a chain that bites its own tail ends
/// somewhere in it, at a correction, which is no height's first entry.
fn root(of: Key, points: &BTreeMap<Key, Key>) -> Key {
    let mut root = of;
    for _ in 0..points.len() {
        match points.get(&root) {
            Some(next) => root = *next,
            None => break,
        }
    }
    root
}

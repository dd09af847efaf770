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
pub(super) enum Slot {
    Zero,
    Planned(u32),
    /// Between planned minutes; has no rivals.
    Between(Key),
}

/// Work in hand.
pub(super) struct Gathering<'e> {
    /// Heights that count so far, in the order of their time and key.
    pub(super) heights: Vec<(Slot, Height)>,
    /// First entries that do not count, with their time and why.
    pub(super) refused: BTreeMap<Key, (Timestamp, Refused)>,
    /// Corrections with the key of the first entry that they reach.
    corrections: Vec<(&'e Entry, Key)>,
    /// The last choice in each slot: who chose, when, and the height chosen.
    pub(super) choices: BTreeMap<Slot, (Key, Timestamp, Key)>,
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
            heights: Vec::with_capacity(entries.len()),
            refused: BTreeMap::new(),
            corrections: Vec::new(),
            choices: BTreeMap::new(),
        };
        gathering.take_first_entries(entries, &unfit);
        gathering.take_corrections(entries, &unfit, refusals);
        gathering.settle(|slot| slot == Slot::Zero);
        gathering.refuse_before_zero();
        gathering.settle(|slot| slot != Slot::Zero);
        let (zeros, readings): (Vec<_>, Vec<_>) =
            std::mem::take(&mut gathering.heights).into_iter().partition(is_zero);
        let mut zeros = zeros.into_iter().map(|(_, height)| height);
        let zero = zeros.next();
        let other_zeros = zeros.collect();
        let readings = readings.into_iter().map(|(_, height)| height).collect();
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
            self.heights.push((slot, height));
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
        if points.is_empty() {
            return;
        }
        let places: BTreeMap<Key, usize> =
            (0..).zip(&self.heights).map(|(place, (_, height))| (height.key, place)).collect();
        for entry in entries {
            let What::Correction { of, height_mm } = entry.what else { continue };
            if let Some(reason) = unfit(entry) {
                refusals.add(entry, reason);
                continue;
            }
            let root = root(of, &points);
            let place = places.get(&root);
            if place.is_none() && !self.refused.contains_key(&root) {
                refusals.add(entry, Refused::NothingToCorrect { of });
                continue;
            }
            self.corrections.push((entry, root));
            let Some((slot, height)) = place.and_then(|at| self.heights.get_mut(*at)) else {
                continue;
            };
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
    fn refuse_before_zero(&mut self) {
        let zero = self.heights.iter().find(|one| is_zero(one));
        let zero = zero.map(|(_, height)| height.measured);
        let refused = &mut self.refused;
        self.heights.retain(|(slot, height)| {
            let reason = match zero {
                _ if *slot == Slot::Zero => return true,
                None => Refused::NoZeroYet,
                Some(zero) if height.measured < zero => Refused::BeforeZero,
                Some(_) => return true,
            };
            refused.insert(height.key, (height.measured, reason));
            false
        });
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

fn is_zero((slot, _): &(Slot, Height)) -> bool {
    *slot == Slot::Zero
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

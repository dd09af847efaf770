//! Heights that say something else for one slot, and what the teacher chose between them.

use super::heights::{Gathering, Slot};
use crate::record::{Key, Mended, Refused};
use jiff::Timestamp;
use std::collections::{BTreeMap, BTreeSet};

impl Gathering<'_> {
    /// Settles these slots: puts aside where the teacher chose, marks what nobody has decided.
    pub(super) fn settle(&mut self, here: impl Fn(Slot) -> bool) {
        let mut slots: BTreeMap<Slot, Vec<usize>> = BTreeMap::new();
        for (place, (slot, _)) in self.heights.iter().enumerate() {
            if here(*slot) && !matches!(slot, Slot::Between(_)) {
                slots.entry(*slot).or_default().push(place);
            }
        }
        let mut aside = BTreeSet::new();
        for (slot, mut places) in slots {
            if let Some((by, at, chosen)) = self.choices.get(&slot).copied() {
                aside.extend(self.put_aside(&mut places, by, at, chosen));
            }
            let differ = places.windows(2).any(|pair| self.differ(pair[0], pair[1]));
            for place in places {
                self.heights[place].1.rival = differ;
            }
        }
        let mut place = 0..;
        self.heights.retain(|_| place.next().is_none_or(|place| !aside.contains(&place)));
    }

    /// Puts aside what was written in a slot before the choice; gives the places of that.
    fn put_aside(
        &mut self,
        places: &mut Vec<usize>,
        by: Key,
        at: Timestamp,
        chosen: Key,
    ) -> Vec<usize> {
        let height = |place: usize| &self.heights[place].1;
        let Some(own) = places.iter().copied().find(|place| height(*place).key == chosen)
        else {
            return Vec::new();
        };
        let stays = |place: &usize| *place == own || height(*place).measured > at;
        let (stay, aside): (Vec<usize>, Vec<usize>) =
            std::mem::take(places).into_iter().partition(stays);
        *places = stay;
        let mut history = Vec::new();
        for place in &aside {
            let rival = &self.heights[*place].1;
            self.refused.insert(rival.key, (rival.measured, Refused::NotChosen { by }));
            history.push(Mended { height_mm: rival.height_mm, by, at });
        }
        // Before what the choice itself replaced, so that this stays the last.
        let mended = &mut self.heights[own].1.mended;
        let before = mended.iter().position(|mended| mended.by == by);
        let before = before.unwrap_or(mended.len());
        mended.splice(before..before, history);
        aside
    }

    /// Whether two heights say something else.
    fn differ(&self, a: usize, b: usize) -> bool {
        (self.heights[a].1.height_mm - self.heights[b].1.height_mm).abs() > 0.0
    }
}

//! A day's bags and readings, set in order.

use super::counting::counting;
use super::curves::{Around, Kind, Seen};
use super::{BagSeen, DayError};
use crate::forecast::SetupError;
use crate::householder::length;
use crate::prior::{Key, Prior};
use crate::side_by_side::each;
use core::ops::Range;

/// A day to be fitted.
pub(super) struct Day<'a> {
    pub(super) bags: &'a [BagSeen],
    pub(super) prior: &'a Prior,
    pub(super) kinds: Vec<Kind>,
    /// Kind of each bag, and the place in the kind's minutes of each of its readings that count.
    pub(super) of: Vec<(usize, Vec<usize>)>,
    /// The same of all its readings.
    all_of: Vec<Vec<usize>>,
    /// Bags in the order of period and group, each with the place of its first reading.
    pub(super) order: Vec<(usize, usize)>,
    /// The day's numbers: those known together first, in the order in which they are.
    pub(super) keys: Vec<Key>,
    pub(super) readings: Vec<f64>,
}

impl<'a> Day<'a> {
    pub(super) fn new(bags: &'a [BagSeen], prior: &'a Prior) -> Result<Self, DayError> {
        let mut same: Vec<(usize, Vec<usize>)> = Vec::new();
        for (place, bag) in bags.iter().enumerate() {
            for &(minute, rise_mm) in &bag.readings {
                if !(minute > 0.0 && minute.is_finite() && rise_mm.is_finite()) {
                    return Err(DayError::Reading { bag: place, minute, rise_mm });
                }
            }
            crate::forecast::possible(&bag.setup)?;
            match same.iter_mut().find(|(first, _)| bags[*first].setup == bag.setup) {
                Some((_, all)) => all.push(place),
                None => same.push((place, vec![place])),
            }
        }
        let mut kinds = Vec::new();
        let mut of = vec![(0, Vec::new()); bags.len()];
        let mut all_of = vec![Vec::new(); bags.len()];
        let mut seen = vec![Vec::new(); bags.len()];
        for (first, places) in same {
            let all = places.iter().flat_map(|place| &bags[*place].readings);
            let mut minutes: Vec<f64> = all.map(|(minute, _)| *minute).collect();
            minutes.sort_by(f64::total_cmp);
            minutes.dedup();
            let kind = Kind::new(bags[first].setup.clone(), minutes, prior);
            let at = |reading: &(f64, f64)| kind.minute(reading.0);
            for place in places {
                let counting = counting(&bags[place].readings, kind.full_rise_mm(prior));
                of[place] = (kinds.len(), counting.iter().filter_map(at).collect());
                all_of[place] = bags[place].readings.iter().filter_map(at).collect();
                seen[place] = counting.into_iter().map(|(_, rise)| rise).collect();
            }
            kinds.push(kind);
        }
        let mut keys = prior.joint.keys.clone();
        number_the_day(&mut kinds, &mut keys);
        let mut order: Vec<usize> = (0..bags.len()).collect();
        order.sort_by_key(|place| (bags[*place].period, bags[*place].group, *place));
        let mut readings = Vec::new();
        let order = order.into_iter().map(|place| {
            let first = readings.len();
            readings.append(&mut seen[place]);
            (place, first)
        });
        let order = order.collect();
        if readings.is_empty() {
            return Err(DayError::NoReadings);
        }
        Ok(Self { bags, prior, kinds, of, all_of, order, keys, readings })
    }

    /// Minutes of a bag's readings that count.
    pub(super) fn minutes(&self, bag: usize) -> impl Iterator<Item = f64> {
        let (kind, places) = &self.of[bag];
        places.iter().map(|place| self.kinds[*kind].minutes[*place])
    }

    /// How many readings of each bag count, bag by bag.
    pub(super) fn counts(&self) -> Vec<usize> {
        self.of.iter().map(|(_, minutes)| minutes.len()).collect()
    }

    /// Rise that is expected at every reading, bag by bag, whether it counts or not.
    pub(super) fn expected(&self, seen: &[Seen]) -> Vec<Vec<f64>> {
        let of_bag = |((kind, _), minutes): (&(usize, Vec<usize>), &Vec<usize>)| {
            minutes.iter().map(|minute| seen[*kind].rises[*minute]).collect()
        };
        self.of.iter().zip(&self.all_of).map(of_bag).collect()
    }

    /// Places of a bag's readings among all, by its place in [`Self::order`].
    pub(super) fn rows(&self, (place, first): (usize, usize)) -> Range<usize> {
        first..first + self.of[place].1.len()
    }

    /// The day's deviates from independent ones.
    pub(super) fn deviates(&self, independent: &[f64]) -> Vec<f64> {
        let known = |at| self.prior.joint.deviate(at, |of: usize| independent[of]);
        let mut all = independent.to_vec();
        for (at, deviate) in all.iter_mut().enumerate().take(self.prior.joint.keys.len()) {
            *deviate = known(at);
        }
        all
    }

    /// The way of length 1 in independent deviates along which a number of the day moves by one standard deviation
    /// of what is known of it beforehand, with those that go along.
    pub(super) fn along_number(&self, number: usize) -> Vec<f64> {
        let mut way = vec![0.0; self.keys.len()];
        match self.prior.joint.root.get(number) {
            Some(row) => way[..row.len()].copy_from_slice(row),
            None => way[number] = 1.0,
        }
        let long = length(&way);
        way.iter_mut().for_each(|part| *part /= long);
        way
    }

    /// Turns columns of slopes with the day's deviates into columns with independent ones.
    pub(super) fn turned(&self, by_deviate: &[Vec<f64>]) -> Vec<Vec<f64>> {
        let root = &self.prior.joint.root;
        let mut turned = by_deviate.to_vec();
        for (column, out) in turned.iter_mut().enumerate().take(root.len()) {
            let parts = root.iter().map(|row| row[column]);
            *out = sum_of(parts.zip(by_deviate));
        }
        turned
    }

    /// Covariance of the day's deviates from that of independent ones: T C Tᵀ.
    pub(super) fn covariance(&self, independent: &[Vec<f64>]) -> Vec<Vec<f64>> {
        let half = self.along(independent);
        let count = half.len();
        let across: Vec<Vec<f64>> =
            (0..count).map(|at| half.iter().map(|row| row[at]).collect()).collect();
        self.along(&across)
    }

    /// Rows of T times rows.
    fn along(&self, rows: &[Vec<f64>]) -> Vec<Vec<f64>> {
        let mut all = rows.to_vec();
        for (root, out) in self.prior.joint.root.iter().zip(&mut all) {
            *out = sum_of(root.iter().copied().zip(rows));
        }
        all
    }

    /// What the model says of each kind of bag around a place, by the effects that are live; what is not of
    /// the day from a look before, if there is one.
    pub(super) fn look(
        &self,
        around: &Around,
        live: &[Vec<bool>],
        before: Option<&[Seen]>,
    ) -> Result<Vec<Seen>, SetupError> {
        let one = |at: usize| {
            self.kinds[at].look(self.prior, around, &live[at], before.map(|seen| &seen[at]))
        };
        each(self.kinds.len(), one).into_iter().collect()
    }

    /// Slopes of all readings with each of the day's deviates.
    pub(super) fn columns(&self, seen: &[Seen]) -> Vec<Vec<f64>> {
        let column = |number: usize| {
            let of_kind = |kind: usize| {
                let places = &self.kinds[kind].places;
                let at = places.iter().position(|place| *place == number)?;
                Some(seen[kind].slopes[at].as_slice())
            };
            let mut column = vec![0.0; self.readings.len()];
            self.spread(of_kind, &mut column);
            column
        };
        (0..self.keys.len()).map(column).collect()
    }

    /// Readings less what is expected of them (mm), with the rises of each kind of bag.
    pub(super) fn off<'v>(&self, rises: impl Fn(usize) -> &'v [f64]) -> Vec<f64> {
        let mut off = vec![0.0; self.readings.len()];
        self.spread(|kind| Some(rises(kind)), &mut off);
        for (value, reading) in off.iter_mut().zip(&self.readings) {
            *value = reading - *value;
        }
        off
    }

    /// Readings less what is expected of them where the day's deviates are these (mm), if what is
    /// expected beyond the best guess stays what it was when it was `seen`.
    pub(super) fn off_mm(
        &self,
        deviates: &[f64],
        seen: &[Seen],
    ) -> Result<Vec<f64>, SetupError> {
        let mut all = Vec::with_capacity(seen.len());
        for (kind, seen) in self.kinds.iter().zip(seen) {
            let mut rises = kind.rises(self.prior, deviates)?;
            rises.iter_mut().zip(&seen.beyond).for_each(|(rise, beyond)| *rise += beyond);
            all.push(rises);
        }
        Ok(self.off(|kind| &all[kind]))
    }

    /// Writes values of kinds at the readings of their bags.
    fn spread<'v>(&self, of_kind: impl Fn(usize) -> Option<&'v [f64]>, out: &mut [f64]) {
        for bag in &self.order {
            let (kind, minutes) = &self.of[bag.0];
            let own = &mut out[self.rows(*bag)];
            match of_kind(*kind) {
                Some(values) => {
                    own.iter_mut()
                        .zip(minutes)
                        .for_each(|(out, minute)| *out = values[*minute]);
                }
                None => own.fill(0.0),
            }
        }
    }
}

/// Parts of lists, added up.
fn sum_of<'v>(parts: impl Iterator<Item = (f64, &'v Vec<f64>)>) -> Vec<f64> {
    let mut sum: Vec<f64> = Vec::new();
    for (part, list) in parts {
        sum.resize(list.len(), 0.0);
        for (sum, value) in sum.iter_mut().zip(list) {
            *sum += part * value;
        }
    }
    sum
}

/// Gives every number of the day a place, the same for all kinds that have it.
fn number_the_day(kinds: &mut [Kind], keys: &mut Vec<Key>) {
    for kind in kinds {
        let own: Vec<Key> = kind.of_the_day().map(|effect| effect.key).collect();
        let place = |key: Key| {
            keys.iter().position(|one| *one == key).unwrap_or_else(|| {
                keys.push(key);
                keys.len() - 1
            })
        };
        kind.places = own.into_iter().map(place).collect();
    }
}

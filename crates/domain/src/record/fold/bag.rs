//! One bag.

use super::heights::{Heights, height_written};
use super::{Refusals, Stretches};
use crate::code::BagCode;
use crate::record::{Bag, Entry, Known, Made, Refused, Tapped, Truth, What, Who};
use std::collections::BTreeMap;
use std::sync::Arc;

/// What a bag's entries rest on besides themselves.
pub(in crate::record) struct Seen<'a> {
    /// What the versions of the plan know.
    pub(in crate::record) known: &'a Known,
    /// When groups work with numbers that are not their own, by period and number.
    pub(in crate::record) stand_ins: &'a BTreeMap<(Arc<str>, u32), Stretches>,
}

impl Seen<'_> {
    /// Whether a height that was written there and then stands in for a group's own.
    fn stands_in(&self, entry: &Entry) -> bool {
        match &entry.who {
            Who::Program => true,
            Who::Group { period, group } => {
                let at = entry.measured;
                let within =
                    |(from, to): &(_, Option<_>)| *from <= at && to.is_none_or(|to| at < to);
                let stretches = self.stand_ins.get(&(period.clone(), *group));
                stretches.is_some_and(|stretches| stretches.iter().any(within))
            }
            Who::Teacher | Who::Aide | Who::Import => false,
        }
    }
}

/// The bag, unless the plan does not have it, and what does not count.
pub(in crate::record) fn bag(
    code: BagCode,
    entries: &[Entry],
    seen: &Seen<'_>,
) -> (Option<Bag>, Refusals) {
    let mut refusals = Refusals::default();
    if !seen.known.bags.contains_key(&code) {
        for entry in entries {
            refusals.add(entry, Refused::NoSuchBag { code: code.to_string() });
        }
        return (None, refusals);
    }
    let mut bag = Bag { last: entries.last().map(|entry| entry.measured), ..Bag::default() };
    bag.decide(entries, seen.known, &mut refusals);
    let lost = bag.lost;
    let after_loss = |entry: &Entry| lost.is_some_and(|lost| entry.measured > lost);
    for entry in entries {
        if happens_to_a_bag(&entry.what) && after_loss(entry) {
            refusals.add(entry, Refused::AfterLoss);
        } else {
            bag.happen(entry, &mut refusals);
        }
    }
    let unfit = |entry: &Entry| {
        let height = height_written(&entry.what)?;
        if !height.is_finite() {
            Some(Refused::NotANumber)
        } else if matches!(entry.what, What::Correction { .. }) {
            None
        } else if seen.stands_in(entry) {
            Some(Refused::StandIn)
        } else if after_loss(entry) {
            Some(Refused::AfterLoss)
        } else {
            None
        }
    };
    let heights = Heights::of(entries, unfit, &mut refusals);
    bag.zero = heights.zero;
    bag.other_zeros = heights.other_zeros;
    bag.readings = heights.readings;
    (Some(bag), refusals)
}

/// Whether it happens to the bag itself and so cannot happen to a lost one; heights are judged
/// where they are gathered, decisions about the bag can be made any time.
const fn happens_to_a_bag(what: &What) -> bool {
    matches!(
        what,
        What::Made(_) | What::Sealed { .. } | What::Meter { .. } | What::Odd(_) | What::Vented
    )
}

impl Bag {
    /// Decisions about the bag: set aside, lost, taken back, set right.
    fn decide(&mut self, entries: &[Entry], known: &Known, refusals: &mut Refusals) {
        let mut aside_since = None;
        for entry in entries {
            let at = entry.measured;
            match &entry.what {
                What::SetAside { rule } if known.rules.contains(rule) => {
                    self.set_aside = Some(rule.clone());
                    aside_since = Some(at);
                }
                What::SetAside { rule } => {
                    refusals.add(entry, Refused::NoSuchRule { rule: rule.clone() });
                }
                What::Lost if self.lost.is_some() => refusals.add(entry, Refused::AfterLoss),
                What::Lost => self.lost = Some(at),
                What::TakenBack => {
                    if aside_since.is_some() && aside_since >= self.lost {
                        aside_since = None;
                        self.set_aside = None;
                    } else if self.lost.is_some() {
                        self.lost = None;
                    } else {
                        refusals.add(entry, Refused::NotSetAside);
                    }
                }
                What::SetRight(truth) => match unknown_treatment(truth, known) {
                    Some(treatment) => {
                        refusals.add(entry, Refused::NoSuchTreatment { treatment });
                    }
                    // Back to what the label says.
                    None if truth.treatment.is_none() && truth.group.is_none() => {
                        self.truth = None;
                    }
                    None => self.truth = Some(truth.clone()),
                },
                _ => {}
            }
        }
    }

    /// What happens to the bag itself.
    fn happen(&mut self, entry: &Entry, refusals: &mut Refusals) {
        let at = entry.measured;
        match &entry.what {
            What::Made(made) if made.water_celsius.is_some_and(|c| !c.is_finite()) => {
                refusals.add(entry, Refused::NotANumber);
            }
            What::Made(made) => self.fill_in(made),
            What::Sealed { .. } if self.sealed.is_some() => {
                refusals.add(entry, Refused::AlreadySealed);
            }
            What::Sealed { plan } => self.sealed = Some((at, *plan)),
            What::Meter { percent, turn } if percent.is_finite() => {
                self.meter.push((at, *percent, *turn));
            }
            What::Meter { .. } => refusals.add(entry, Refused::NotANumber),
            What::Odd(odd) => {
                let (key, odd, who) = (entry.key, *odd, entry.who.clone());
                self.odd.push(Tapped { key, at, odd, who });
            }
            What::OddBack { of } => {
                let group = matches!(entry.who, Who::Group { .. });
                let own = |tap: &Tapped| !group || tap.who == entry.who;
                match self.odd.iter().position(|tap| tap.key == *of && own(tap)) {
                    Some(place) => drop(self.odd.remove(place)),
                    None => refusals.add(entry, Refused::NotTapped),
                }
            }
            What::Vented if self.vented.is_some() => {
                refusals.add(entry, Refused::AlreadyVented);
            }
            What::Vented => self.vented = Some(at),
            What::Zero { .. }
            | What::Reading { .. }
            | What::Correction { .. }
            | What::SetRight(_)
            | What::SetAside { .. }
            | What::TakenBack
            | What::Lost => {}
            What::Guess { .. }
            | What::Here { .. }
            | What::StandIn(_)
            | What::Began
            | What::Stopped
            | What::WentOn
            | What::LastReading { .. }
            | What::Jug { .. }
            | What::Blank { .. }
            | What::Ended
            | What::PlanSaved { .. }
            | What::Opened { .. }
            | What::Closed { .. } => refusals.add(entry, Refused::WrongSubject),
        }
    }
}

impl Bag {
    /// What was found out later stands beside what was known; nothing at all is as planned.
    fn fill_in(&mut self, made: &Made) {
        if *made == Made::default() {
            self.made = None;
            return;
        }
        let own = self.made.get_or_insert_default();
        own.water_celsius = made.water_celsius.or(own.water_celsius);
        if made.difference.is_some() {
            own.difference.clone_from(&made.difference);
        }
    }
}

fn unknown_treatment(truth: &Truth, known: &Known) -> Option<String> {
    truth.treatment.clone().filter(|treatment| !known.has_treatment(treatment))
}

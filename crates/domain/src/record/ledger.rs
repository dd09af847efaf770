//! The record in memory: entries by subject, and the state they add up to.

use super::fold::{self, FirstZero, Refusals, Seen, Stretches, Whole};
use super::{Bag, Bound, Entry, GroupStanding, Home, Key, Known, Standing, Subject, What, Who};
use crate::code::BagCode;
use crate::plan::Plan;
use jiff::Timestamp;
use std::cmp::Ordering;
use std::collections::BTreeMap;
use std::sync::Arc;

/// All entries of an investigation with their [`Standing`], kept true as entries are added.
///
/// Adding an entry works out only what it can change: its own subject, and the group of a bag,
/// whose guess is locked by the bag's zero reading. The result is what [`super::replay()`] gives
/// for all entries together.
#[derive(Debug, Clone, Default)]
pub struct Ledger {
    known: Known,
    /// Entries by subject, each in the order of their time and key.
    entries: BTreeMap<Subject, Vec<Entry>>,
    /// Where the entry with a key lies.
    keys: BTreeMap<Key, Subject>,
    /// When anything last arrived from a group.
    heard: BTreeMap<(String, u32), Timestamp>,
    /// When groups work with numbers that are not their own.
    stand_ins: BTreeMap<(Arc<str>, u32), Stretches>,
    /// What does not count, by subject.
    refused: BTreeMap<Subject, Refusals>,
    standing: Standing,
}

impl Ledger {
    /// An empty record.
    #[must_use]
    pub fn new(known: Known) -> Self {
        Self { known, ..Self::default() }
    }

    /// A record of these entries.
    #[must_use]
    pub fn of(known: Known, entries: impl IntoIterator<Item = Entry>) -> Self {
        let mut ledger = Self::new(known);
        for entry in entries {
            ledger.file(entry);
        }
        ledger.work_out_all();
        ledger
    }

    /// Learns what another version of the plan knows. Entries that did not count for want of it
    /// count from now on.
    pub fn learn(&mut self, known: Known) {
        self.known.learn(known);
        self.work_out_all();
    }

    /// What every bag is, with all versions of the plan by number; from now on each belongs where
    /// it was sealed. To be asked again after anything that [`Ledger::may_bind`] says.
    pub fn bind(&mut self, saved: &BTreeMap<u32, Arc<Plan>>, newest: &Arc<Plan>) -> Bound {
        let bound = Bound::of(saved, newest, self);
        let homes: Vec<_> = bound.homes().collect();
        let mut moved = false;
        for (code, home) in homes {
            if self.known.bags.get(&code) != Some(&home) {
                self.known.bags.insert(code, home);
                moved = true;
            }
        }
        if moved {
            self.work_out_all();
        }
        bound
    }

    /// Whether an entry may change what a bag is held to, or what it is in truth.
    pub const fn may_bind(what: &What) -> bool {
        matches!(
            what,
            What::Sealed { .. }
                | What::Zero { .. }
                | What::Correction { .. }
                | What::SetRight(_)
                | What::SetAside { .. }
                | What::TakenBack
        )
    }

    /// The version of the plan that was the newest at a time, if one was saved by then.
    pub fn version_at(&self, at: Timestamp) -> Option<u32> {
        let saved = self.entries_of(&Subject::Investigation).iter();
        saved
            .take_while(|entry| entry.measured <= at)
            .filter_map(|entry| match entry.what {
                What::PlanSaved { version } => Some(version),
                _ => None,
            })
            .max()
    }

    /// Adds an entry; `false` if its key is known, and then nothing is added.
    pub fn add(&mut self, entry: Entry) -> bool {
        self.add_and_recall(entry).is_some()
    }

    /// Adds an entry and gives what it has replaced; nothing if its key is known, and then nothing
    /// is added.
    pub fn add_and_recall(&mut self, entry: Entry) -> Option<Replaced> {
        let subject = entry.subject.clone();
        let stands_in = matches!(subject, Subject::Group { .. })
            && matches!(entry.what, What::StandIn(_) | What::TakenBack);
        let group = sender(&entry);
        match self.file(entry) {
            Filed::Known => return None,
            // Never in a store, where a key is written once.
            Filed::Replaced => {
                self.work_out_all();
                return None;
            }
            Filed::Added => {}
        }
        if stands_in {
            // Heights of any bag may have come from that group.
            self.work_out_all();
            return Some(Replaced::default());
        }
        let bag = self.work_out(&subject);
        if let Subject::Bag(code) = &subject {
            self.work_out_group_of(*code);
        }
        if let Some(group) = group {
            let heard = self.heard.get(&group).copied();
            self.standing.groups.entry(group).or_default().heard = heard;
        }
        self.gather_refused();
        Some(Replaced { bag })
    }

    /// What the entries add up to.
    pub const fn standing(&self) -> &Standing {
        &self.standing
    }

    /// What the entries add up to, the entries themselves let go.
    pub fn into_standing(self) -> Standing {
        self.standing
    }

    /// What the versions of the plan know.
    pub const fn known(&self) -> &Known {
        &self.known
    }

    /// The entries about a subject, in the order of their time.
    pub fn entries_of(&self, subject: &Subject) -> &[Entry] {
        self.entries.get(subject).map_or(&[], Vec::as_slice)
    }

    /// Whether an entry with this key is on record.
    pub fn knows(&self, key: Key) -> bool {
        self.keys.contains_key(&key)
    }

    /// Puts an entry in its place.
    fn file(&mut self, entry: Entry) -> Filed {
        let mut filed = Filed::Added;
        if let Some(subject) = self.keys.get(&entry.key) {
            let Some(entries) = self.entries.get_mut(subject) else { return Filed::Known };
            let Some(at) = entries.iter().position(|other| other.key == entry.key) else {
                return Filed::Known;
            };
            if earlier(&entry, &entries[at]) != Ordering::Less {
                return Filed::Known;
            }
            let old = entries.remove(at);
            if entries.is_empty() {
                self.entries.remove(&old.subject);
            }
            filed = Filed::Replaced;
        }
        self.keys.insert(entry.key, entry.subject.clone());
        hear(&mut self.heard, &entry);
        let entries = self.entries.entry(entry.subject.clone()).or_default();
        let place = (entry.measured, entry.key);
        let at = entries.partition_point(|other| (other.measured, other.key) < place);
        entries.insert(at, entry);
        filed
    }

    /// Works out everything anew.
    fn work_out_all(&mut self) {
        self.standing = Standing::default();
        self.refused.clear();
        self.heard.clear();
        self.stand_ins.clear();
        for (subject, entries) in &self.entries {
            for entry in entries {
                hear(&mut self.heard, entry);
            }
            if let Subject::Group { period, group } = subject {
                self.stand_ins
                    .insert((period.as_str().into(), *group), fold::stands_in(entries));
            }
        }
        let (bags, others): (Vec<Subject>, Vec<Subject>) = self
            .entries
            .keys()
            .cloned()
            .partition(|subject| matches!(subject, Subject::Bag(_)));
        // Bags first: guesses rest on their zero readings.
        for subject in bags.iter().chain(&others) {
            self.work_out(subject);
        }
        for (group, heard) in &self.heard {
            self.standing.groups.entry(group.clone()).or_default().heard = Some(*heard);
        }
        self.gather_refused();
    }

    /// Works out one subject anew; gives the bag as it was, if it is a bag.
    fn work_out(&mut self, subject: &Subject) -> Option<Bag> {
        let mut was = None;
        let entries = self.entries.get(subject).map_or(&[][..], Vec::as_slice);
        let refused = match subject {
            Subject::Investigation => {
                let (Whole { open, plan_version }, refused) = fold::whole(entries);
                self.standing.open = open;
                self.standing.plan_version = plan_version;
                refused
            }
            Subject::Period(name) => {
                let (period, refused) = fold::period(entries);
                self.standing.periods.insert(name.clone(), period);
                refused
            }
            Subject::Group { period, group } => {
                let place = (period.clone(), *group);
                let (standing, refused) = fold::group(entries, self.first_zero(&place));
                let heard = self.heard.get(&place).copied();
                let standing = GroupStanding { heard, ..standing };
                self.standing.groups.insert(place, standing);
                refused
            }
            Subject::Bag(code) => {
                let seen = Seen { known: &self.known, stand_ins: &self.stand_ins };
                let (bag, refused) = fold::bag(*code, entries, &seen);
                if let Some(bag) = bag {
                    was = self.standing.bags.insert(*code, bag);
                }
                refused
            }
        };
        self.refused.insert(subject.clone(), refused);
        was
    }

    /// Works out the group that a bag belongs to, if anything is on record of it.
    fn work_out_group_of(&mut self, code: BagCode) {
        let Some(Home { period, group }) = self.known.bags.get(&code).cloned() else { return };
        let subject = Subject::Group { period, group };
        if self.entries.contains_key(&subject) {
            self.work_out(&subject);
        }
    }

    /// The earliest zero reading of a group's bags.
    fn first_zero(&self, (period, group): &(String, u32)) -> Option<FirstZero> {
        let own = self.standing.bags.iter().filter(|(code, _)| {
            let home = self.known.bags.get(code);
            home.is_some_and(|home| home.period == *period && home.group == *group)
        });
        let zeros = own.filter_map(|(code, bag)| {
            let measured = bag.zero.as_ref()?.measured;
            let entries = self.entries_of(&Subject::Bag(*code));
            let zeros = entries.iter().filter(|entry| matches!(entry.what, What::Zero { .. }));
            Some(FirstZero { measured, arrived: zeros.map(|entry| entry.arrived).min()? })
        });
        zeros.reduce(|a, b| FirstZero {
            measured: a.measured.min(b.measured),
            arrived: a.arrived.min(b.arrived),
        })
    }

    /// Lists what does not count, by time. There is little of it.
    fn gather_refused(&mut self) {
        let mut all: Vec<_> = self.refused.values().flat_map(|refused| &refused.0).collect();
        all.sort_by_key(|(at, key, _)| (*at, *key));
        self.standing.refused =
            all.into_iter().map(|(_, key, reason)| (*key, reason.clone())).collect();
    }
}

/// What stood before an entry was added.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Replaced {
    /// The bag that the entry is about, if it is about one of which something was on record.
    pub bag: Option<Bag>,
}

/// What became of an entry.
enum Filed {
    Added,
    Known,
    /// Another with the same key gave way to it.
    Replaced,
}

/// The group that sent an entry.
fn sender(entry: &Entry) -> Option<(String, u32)> {
    match &entry.who {
        Who::Group { period, group } => Some((period.to_string(), *group)),
        Who::Teacher | Who::Aide | Who::Import | Who::Program => None,
    }
}

fn hear(heard: &mut BTreeMap<(String, u32), Timestamp>, entry: &Entry) {
    if let Some(group) = sender(entry) {
        let last = heard.entry(group).or_insert(entry.arrived);
        *last = entry.arrived.max(*last);
    }
}

/// Which of two entries with one key counts: the one that arrived first. The rest of the order
/// only makes the choice the same in whatever order they come.
fn earlier(a: &Entry, b: &Entry) -> Ordering {
    let plain = |entry: &Entry| format!("{:?}", entry.what);
    (a.arrived, a.measured, &a.subject, &a.who)
        .cmp(&(b.arrived, b.measured, &b.subject, &b.who))
        .then_with(|| plain(a).cmp(&plain(b)))
}

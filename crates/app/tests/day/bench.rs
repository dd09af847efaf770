//! A group's device: keeps what it has typed until the server says that it is on disk.

use crate::line::Line;
use crate::school::School;
use crate::typed;
use barm_domain::code::BagCode;
use barm_domain::plan::Plan;
use barm_domain::record::Key;
use barm_domain::rehearsal::{Device, Does, Step};
use jiff::Timestamp;
use serde_json::{Value, json};
use std::collections::{BTreeMap, VecDeque};

/// A device, and what it holds.
pub(crate) struct Bench {
    period: usize,
    label: String,
    /// Not acknowledged yet, in the order in which it was typed.
    pub(crate) waiting: VecDeque<(Key, Value)>,
    /// Acknowledged, with how often.
    pub(crate) saved: BTreeMap<Key, u32>,
    /// Everything that was acknowledged, to be sent once more by and by.
    past: Vec<(Key, Value)>,
    line: Option<(u16, Line)>,
}

impl Bench {
    /// A device that holds all that its group types in a period.
    pub(crate) fn holding(
        plan: &Plan,
        period: usize,
        bell: Timestamp,
        device: &Device,
    ) -> Self {
        let name = &plan.periods[period].name;
        let mut own =
            plan.bags.iter().filter(|bag| bag.period == *name && bag.group == device.group);
        let waiting = device.steps.iter().map(|step| typed_at(bell, step)).collect();
        Self {
            period,
            label: own.next().expect("a group has bags").code.clone(),
            waiting,
            saved: BTreeMap::new(),
            past: Vec::new(),
            line: None,
        }
    }

    /// Sends the next thing, joining first if it must. Says whether the server answered.
    pub(crate) fn send(&mut self, port: u16) -> bool {
        let Some((key, entry)) = self.waiting.front().cloned() else { return false };
        let mut sent = vec![entry.clone()];
        // Every seventh time it has not heard the last answer, and sends that entry once more.
        let again = self.past.last().filter(|_| self.past.len() % 7 == 3).cloned();
        sent.extend(again.iter().map(|(_, entry)| entry.clone()));
        let Some(line) = self.line(port) else { return false };
        let body = json!({ "entries": sent }).to_string();
        let Ok(answer) = line.script("/bench/entries", &body) else {
            self.line = None;
            return false;
        };
        assert_eq!(answer.status, 200, "{}", answer.body);
        let said: Value = serde_json::from_str(&answer.body).expect("JSON");
        assert_eq!(said["refused"], json!([]), "{entry}");
        let saved: Vec<Key> = said["saved"]
            .as_array()
            .expect("a list")
            .iter()
            .map(|key| key.as_str().and_then(|key| key.parse().ok()).expect("a key"))
            .collect();
        assert!(saved.contains(&key), "it acknowledges what was sent");
        let told: Vec<Key> = again.iter().map(|(key, _)| *key).chain([key]).collect();
        assert!(saved.iter().all(|key| told.contains(key)), "and nothing else");
        for key in saved {
            *self.saved.entry(key).or_default() += 1;
        }
        self.waiting.pop_front();
        self.past.push((key, entry));
        true
    }

    /// Its line to the server, joined.
    pub(crate) fn joined(&mut self, port: u16) -> &mut Line {
        self.line(port).expect("the server answers")
    }

    /// The next thing that it holds was acknowledged.
    pub(crate) fn acknowledged(&mut self) {
        let (key, entry) = self.waiting.pop_front().expect("it holds something");
        *self.saved.entry(key).or_default() += 1;
        self.past.push((key, entry));
    }

    fn line(&mut self, port: u16) -> Option<&mut Line> {
        if self.line.as_ref().is_none_or(|(to, _)| *to != port) {
            let mut line = Line::to(port);
            line.get("/join").ok()?;
            let sent = [("period", School::code(self.period)), ("group", &self.label)];
            let joined = line.form("/join", &sent).ok()?;
            assert_eq!(joined.status, 303, "it lets the group in: {}", joined.body);
            self.line = Some((port, line));
        }
        self.line.as_mut().map(|(_, line)| line)
    }
}

/// When a step was typed.
pub(crate) fn moment(bell: Timestamp, step: &Step) -> Timestamp {
    bell + jiff::SignedDuration::from_secs(step.at_s.into())
}

/// The key of a step, and the entry as a page sends it.
fn typed_at(bell: Timestamp, step: &Step) -> (Key, Value) {
    let at = moment(bell, step).as_millisecond();
    let key = Key::new(u64::try_from(at).expect("after 1970"), step.random);
    (key, typed::entry(&key.to_string(), at, 0, step, 1))
}

/// What a script says of each bag: height by moment, the zero reading first.
pub(crate) fn heights(
    bell: Timestamp,
    device: &Device,
) -> BTreeMap<BagCode, Vec<(Timestamp, f64)>> {
    let mut all: BTreeMap<BagCode, Vec<(Timestamp, f64)>> = BTreeMap::new();
    for step in &device.steps {
        let (Some(bag), Does::Zero(mm) | Does::Reading(_, mm)) = (step.bag, &step.does) else {
            continue;
        };
        all.entry(bag).or_default().push((moment(bell, step), *mm));
    }
    all
}

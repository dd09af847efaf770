//! A file of readings, and what of it would be added to the record.

use super::clock;
use super::judge::with;
use crate::desk::room::Scene;
use crate::desk::room::benches::name;
use barm_documents::readings::{self, ReadingsFile};
use barm_domain::code::BagCode;
use barm_domain::paper::{Added, OnPaper, Outcome, When, added};
use barm_domain::record::{Entry, Key, Odd, Subject, What, Who};
use barm_domain::schedule::schedule;
use jiff::Timestamp;
use std::collections::BTreeSet;

/// What a file would do to the record.
#[derive(Debug, Clone, PartialEq, Default)]
pub(crate) struct FileLook {
    /// What has to be said of the file as a whole.
    pub(crate) above_all: Option<String>,
    /// Heights that would be added: bag and minutes, a line a bag.
    pub(crate) new: Vec<(String, Vec<String>)>,
    /// How many those are.
    pub(crate) count: usize,
    /// How many are on record already.
    pub(crate) there: usize,
    /// Heights that say something else than the record.
    pub(crate) contradictions: Vec<Contradiction>,
    /// Bags that it sets aside, and by which rule.
    pub(crate) set_aside: Vec<(String, String)>,
    /// Odd things that it tells, such as a leak: bag and word.
    pub(crate) odd: Vec<(String, &'static str)>,
    /// Notes in words, which stay in the file.
    pub(crate) notes_left: usize,
    /// What would be added and not count: bag, and why.
    pub(crate) not_counted: Vec<(String, String)>,
    /// What is not taken: line and reason.
    pub(crate) rejected: Vec<(u64, String)>,
    /// How the file was read, where a person should know.
    pub(crate) notes: Vec<String>,
}

/// A height of the file beside that of the record.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Contradiction {
    /// Its place in the file, from 0: what is sent to take it.
    pub(crate) place: usize,
    /// The bag as people say it.
    pub(crate) bag: String,
    /// The minute.
    pub(crate) minute: String,
    /// What counts on record now (mm).
    pub(crate) was_mm: f64,
    /// What the file says (mm).
    pub(crate) file_mm: f64,
}

/// A reading this near to a planned minute is the one for it (min; own rule: half the usual
/// interval of four minutes, less a margin for a late one).
const NEAR_MIN: f64 = 1.5;

const METER_STAYS: &str = "What the breath meter showed is not taken from here: note it on the run page, at \
                           the meter’s line.";

/// What a file would do. `seed` is the first of the keys that its entries would have.
pub(crate) fn look_at_file(
    scene: &Scene<'_>,
    bytes: &[u8],
    seed: Key,
    now: Timestamp,
) -> FileLook {
    let taken = Taken::from(scene, bytes, seed, now);
    let mut look = FileLook {
        above_all: taken.file.above_all.clone(),
        notes: taken.file.notes.clone(),
        notes_left: taken.notes_left,
        ..FileLook::default()
    };
    if !taken.file.meter.is_empty() || !taken.file.blanks.is_empty() {
        look.notes.push(METER_STAYS.to_owned());
    }
    for (place, (one, told)) in taken.paper.iter().zip(&taken.added).enumerate() {
        let bag = name(one.bag);
        match told.outcome {
            Outcome::New => look.add_new(bag, minute(&one.when)),
            Outcome::There => look.there += 1,
            Outcome::Chooses => look.add_new(bag, minute(&one.when)),
            Outcome::Corrects { was_mm } => look.contradictions.push(Contradiction {
                place,
                bag,
                minute: minute(&one.when),
                was_mm,
                file_mm: one.height_mm,
            }),
            Outcome::NoZero | Outcome::NoSuchBag => {
                let line = taken.file.readings.get(place).map_or(0, |reading| reading.line);
                let why = if told.outcome == Outcome::NoZero {
                    format!("{bag} has no zero reading, in this file or on record")
                } else {
                    format!("no bag of the plan is called {bag}")
                };
                look.rejected.push((line, why));
            }
        }
    }
    for entry in &taken.others {
        let Subject::Bag(code) = &entry.subject else { continue };
        match &entry.what {
            What::SetAside { rule } => look.set_aside.push((name(*code), rule.clone())),
            What::Odd(odd) => look.odd.push((name(*code), odd.word())),
            _ => {}
        }
    }
    let entries = taken.entries(&BTreeSet::new());
    let after = with(scene.ledger, &entries);
    for (key, reason) in &after.standing().refused {
        let ours = entries.iter().find(|entry| entry.key == *key);
        if let Some(Subject::Bag(code)) = ours.map(|entry| &entry.subject) {
            look.not_counted.push((name(*code), reason.to_string()));
        }
    }
    let rules = &scene.ledger.known().rules;
    let unknown = taken.file.set_aside.iter().filter(|aside| !rules.contains(&aside.rule));
    look.rejected.extend(unknown.map(|aside| {
        let rule: String = aside.rule.chars().take(40).collect();
        (aside.line, format!("the plan has no rule “{rule}” by which a bag is set aside"))
    }));
    let rejected = taken.file.rejected.iter();
    look.rejected.extend(rejected.map(|one| (one.line, one.reason.clone())));
    look.rejected.sort();
    look
}

/// The entries of a file: all that is new, and of what contradicts the record that at these
/// places.
pub(crate) fn from_file(
    scene: &Scene<'_>,
    bytes: &[u8],
    seed: Key,
    take: &BTreeSet<usize>,
    now: Timestamp,
) -> Vec<Entry> {
    Taken::from(scene, bytes, seed, now).entries(take)
}

impl FileLook {
    fn add_new(&mut self, bag: String, minute: String) {
        self.count += 1;
        match self.new.iter_mut().find(|(of, _)| *of == bag) {
            Some((_, minutes)) => minutes.push(minute),
            None => self.new.push((bag, vec![minute])),
        }
    }

    /// Whether there is anything to add.
    pub(crate) fn adds(&self) -> bool {
        self.count + self.set_aside.len() + self.odd.len() + self.contradictions.len() > 0
    }
}

fn minute(when: &When) -> String {
    match when {
        When::Zero(_) => "zero".to_owned(),
        When::Planned(minute) => minute.to_string(),
        When::Minute { planned: Some(planned), .. } => planned.to_string(),
        When::Minute { minute, planned: None } => format!("{minute:.1}"),
    }
}

/// The planned minute that a reading is for.
const fn planned_minute(when: &When) -> Option<u32> {
    match when {
        When::Zero(_) => Some(0),
        When::Planned(minute) => Some(*minute),
        When::Minute { planned, .. } => *planned,
    }
}

/// A file with what it means for the record.
struct Taken {
    file: ReadingsFile,
    /// One for each reading of the file.
    paper: Vec<OnPaper>,
    /// One for each of those.
    added: Vec<Added>,
    /// Odd things and bags that are set aside.
    others: Vec<Entry>,
    notes_left: usize,
}

impl Taken {
    fn from(scene: &Scene<'_>, bytes: &[u8], seed: Key, now: Timestamp) -> Self {
        let file = readings::read(bytes, scene.plan);
        let planned = Planned { scene, file: &file };
        let mut paper: Vec<OnPaper> = Vec::new();
        for (place, reading) in file.readings.iter().enumerate() {
            let Ok(bag) = reading.bag.parse::<BagCode>() else { continue };
            let when = planned.when(bag, &reading.bag, reading.minute, now);
            // Two readings near one planned minute: the second is one between.
            let slot = planned_minute(&when);
            let twice = slot.is_some()
                && paper.iter().any(|one| one.bag == bag && planned_minute(&one.when) == slot);
            let between = When::Minute { minute: reading.minute, planned: None };
            let when = if twice { between } else { when };
            let key = Key(seed.0.wrapping_add(2 * place as u128));
            paper.push(OnPaper { key, bag, when, height_mm: reading.height_mm });
        }
        let added = added(scene.ledger, scene.version, &paper, now);
        let first_free = Key(seed.0.wrapping_add(2 * paper.len() as u128));
        let (others, notes_left) = others(scene, &file, &paper, &added, first_free, now);
        Self { file, paper, added, others, notes_left }
    }

    fn entries(&self, take: &BTreeSet<usize>) -> Vec<Entry> {
        let mut entries = Vec::new();
        for (place, told) in self.added.iter().enumerate() {
            let corrects = matches!(told.outcome, Outcome::Corrects { .. });
            if !corrects || take.contains(&place) {
                entries.extend(told.entries.iter().cloned());
            }
        }
        entries.extend(self.others.iter().cloned());
        entries
    }
}

/// Where the readings of a file belong.
struct Planned<'a> {
    scene: &'a Scene<'a>,
    file: &'a ReadingsFile,
}

impl Planned<'_> {
    fn when(&self, bag: BagCode, code: &str, minute: f64, now: Timestamp) -> When {
        if minute.abs() < 1e-9 {
            return When::Zero(self.zero(bag, code).unwrap_or(now));
        }
        let off = |planned: &u32| (f64::from(*planned) - minute).abs();
        let minutes = self.minutes(bag).into_iter();
        let near = minutes.min_by(|a, b| off(a).total_cmp(&off(b)));
        match near.filter(|planned| off(planned) < NEAR_MIN) {
            Some(planned) if off(&planned) < 1e-9 => When::Planned(planned),
            planned => When::Minute { minute, planned },
        }
    }

    /// Planned minutes of a bag's period.
    fn minutes(&self, bag: BagCode) -> Vec<u32> {
        let home = self.scene.ledger.known().bags.get(&bag);
        let Some(period) = home.and_then(|home| self.scene.plan.period(&home.period)) else {
            return Vec::new();
        };
        let day = self.scene.standing().periods.get(&period.name);
        schedule(self.scene.plan, period, day).minutes
    }

    /// When a bag started: as the file says, else as the schedule does.
    fn zero(&self, bag: BagCode, code: &str) -> Option<Timestamp> {
        let home = self.scene.ledger.known().bags.get(&bag)?;
        let period = self.scene.plan.period(&home.period)?;
        let near = clock::planned_zero(self.scene, period, home.group)?;
        let written = self.file.zero_times.iter().find(|zero| zero.bag == code);
        let at = written.and_then(|zero| {
            clock::at(self.scene, period, zero.seconds, zero.half_known, near)
        });
        Some(at.unwrap_or(near))
    }
}

/// Odd things and bags set aside, as far as the record does not say so yet; and how many notes are
/// neither.
fn others(
    scene: &Scene<'_>,
    file: &ReadingsFile,
    paper: &[OnPaper],
    added: &[Added],
    first_free: Key,
    now: Timestamp,
) -> (Vec<Entry>, usize) {
    let mut others: Vec<Entry> = Vec::new();
    let mut notes_left = 0;
    let known = |others: &[Entry], bag: BagCode, what: &What| {
        let standing = scene.standing().bags.get(&bag);
        let on_record = standing.is_some_and(|standing| match what {
            What::Odd(odd) => standing.odd.iter().any(|tap| tap.odd == *odd),
            What::SetAside { rule } => standing.set_aside.as_ref() == Some(rule),
            _ => false,
        });
        let here = |other: &Entry| other.subject == Subject::Bag(bag) && other.what == *what;
        on_record || others.iter().any(here)
    };
    let mut add = |bag: BagCode, what: What, measured: Timestamp| {
        if !known(&others, bag, &what) {
            let key = Key(first_free.0.wrapping_add(others.len() as u128));
            let subject = Subject::Bag(bag);
            others.push(Entry { key, subject, what, measured, arrived: now, who: Who::Import });
        }
    };
    for (place, reading) in file.readings.iter().enumerate() {
        let Some(event) = &reading.event else { continue };
        match (paper.get(place), odd(event)) {
            (Some(one), Some(odd)) => {
                let at = added.get(place).and_then(|told| Some(told.entries.last()?.measured));
                add(one.bag, What::Odd(odd), at.unwrap_or(now));
            }
            _ => notes_left += 1,
        }
    }
    for remark in &file.remarks {
        match (remark.bag.parse(), odd(&remark.says)) {
            (Ok(bag), Some(odd)) => add(bag, What::Odd(odd), now),
            _ => notes_left += 1,
        }
    }
    // A word that names no rule stays in the file: the record holds nobody's own words.
    let rules = &scene.ledger.known().rules;
    for aside in file.set_aside.iter().filter(|aside| rules.contains(&aside.rule)) {
        if let Ok(bag) = aside.bag.parse() {
            add(bag, What::SetAside { rule: aside.rule.clone() }, now);
        }
    }
    (others, notes_left)
}

/// The odd thing that a note names in so many words.
fn odd(note: &str) -> Option<Odd> {
    let note = note.trim().to_lowercase().replace(' ', "-");
    Odd::ALL.into_iter().find(|odd| odd.word() == note)
}

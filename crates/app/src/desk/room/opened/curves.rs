//! How the cards of the class rise, for a group to which the teacher opened it.

use super::seen::{Eyes, treatment};
use crate::desk::paper::look;
use crate::desk::room::Scene;
use crate::desk::room::foretold::{BandRow, Foretelling};
use crate::desk::room::wall::mean;
use barm_documents::chart::{CurvesChart, Frame, Look, Reading, Sheaf, Strand, Words};
use barm_domain::record::Home;

/// Curves of bags made alike, own ones and others'.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct ClassCurves {
    /// Whether they are of all periods.
    pub(crate) day: bool,
    pub(super) sheaves: Vec<Sheaf>,
    /// What was foretold of them; nothing before it is opened.
    pub(super) foretold: Foretelling,
}

/// How high the bags of a treatment stand, in words.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Range {
    /// The treatment.
    pub(crate) treatment: String,
    /// Bags.
    pub(crate) bags: usize,
    /// The minute of the last point of their mean; 0 before the first reading.
    pub(crate) minute: f64,
    /// The smallest and the largest rise near that minute (mm).
    pub(crate) mm: (f64, f64),
}

/// The curves that a group may see.
pub(super) fn of_class(scene: &Scene<'_>, eyes: &Eyes) -> ClassCurves {
    let kinds = rises(scene, |home, name| eyes.see_curve(home, name));
    let interval = scene.plan.timing.interval_min;
    let sheaf = |(look, name, bags): (_, _, Vec<Rises>)| sheaf(look, name, &bags, interval);
    let foretold = eyes.see_bands().then(|| {
        let seen = scene.standing().bags.keys().filter_map(|code| {
            let home = scene.ledger.known().bags.get(code)?;
            let name = scene.treatment_of(*code).filter(|name| eyes.see_curve(home, name))?;
            Some((*code, name))
        });
        Foretelling::of(scene, seen)
    });
    ClassCurves {
        day: eyes.of_the_day(),
        sheaves: kinds.into_iter().map(sheaf).collect(),
        foretold: foretold.unwrap_or_default(),
    }
}

type Rises = Vec<(f64, f64)>;

/// The rises of all bags that count and that somebody may see, by treatment in the order of looks.
fn rises(
    scene: &Scene<'_>,
    may: impl Fn(&Home, &str) -> bool,
) -> Vec<(Look, String, Vec<Rises>)> {
    let mut kinds: Vec<(Look, String, Vec<Rises>)> = Vec::new();
    for (code, bag) in &scene.standing().bags {
        let Some(home) = scene.ledger.known().bags.get(code) else { continue };
        let Some(name) = treatment(scene, *code).filter(|name| may(home, name)) else {
            continue;
        };
        let rises = bag.rises();
        if bag.set_aside.is_some() || rises.len() < 2 {
            continue;
        }
        match kinds.iter_mut().find(|(_, known, _)| *known == name) {
            Some((_, _, bags)) => bags.push(rises),
            None => kinds.push((look(scene.plan, &name), name, vec![rises])),
        }
    }
    kinds.sort_by(|a, b| (a.0, &a.1).cmp(&(b.0, &b.1)));
    kinds
}

/// The curves of one treatment with their mean.
pub(super) fn sheaf(look: Look, name: String, bags: &[Rises], interval_min: f64) -> Sheaf {
    let all: Vec<&[(f64, f64)]> = bags.iter().map(Vec::as_slice).collect();
    let mean = mean(&all, interval_min);
    let line = |rises: &Rises| -> Vec<Reading> {
        let point = |(minute, rise): &(f64, f64)| Reading {
            minute: *minute,
            rise: *rise,
            doubtful: false,
        };
        rises.iter().map(point).collect()
    };
    Sheaf { name, look, bags: bags.iter().map(line).collect(), mean }
}

impl ClassCurves {
    /// The treatments that are drawn.
    pub(super) fn names(&self) -> impl Iterator<Item = &str> {
        self.sheaves.iter().map(|sheaf| sheaf.name.as_str())
    }

    /// Drawn for a narrow screen; `name` says what a treatment is called there.
    pub(crate) fn svg(
        &self,
        title: &str,
        words: Words,
        name: impl Fn(&str) -> String,
    ) -> String {
        let named = |sheaf: &Sheaf| Sheaf { name: name(&sheaf.name), ..sheaf.clone() };
        let sheaves: Vec<Sheaf> = self.sheaves.iter().map(named).collect();
        let frame = Frame::phone(words);
        let bands = self.foretold.strands(&self.sheaves);
        let named = |band: Strand| Strand { name: name(&band.name), ..band };
        let bands: Vec<Strand> = bands.into_iter().map(named).collect();
        CurvesChart { title, sheaves: &sheaves, bands: &bands }.svg(&frame)
    }

    /// Whether nothing was read yet.
    pub(crate) fn is_empty(&self) -> bool {
        self.sheaves.is_empty()
    }

    /// What was foretold, beside what was read; nothing before it is opened.
    pub(crate) fn bands(&self) -> Vec<BandRow> {
        self.foretold.beside(&self.sheaves)
    }

    /// The same in numbers, a line a treatment.
    pub(crate) fn ranges(&self) -> Vec<Range> {
        self.sheaves.iter().map(range).collect()
    }
}

fn range(sheaf: &Sheaf) -> Range {
    let minute = sheaf.mean.last().map_or(0.0, |(minute, _)| *minute);
    let nearest = sheaf.bags.iter().filter_map(|bag| {
        let off = |one: &Reading| (one.minute - minute).abs();
        bag.iter().min_by(|a, b| off(a).total_cmp(&off(b))).map(|one| one.rise)
    });
    let (low, high) = nearest.fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), rise| {
        (low.min(rise), high.max(rise))
    });
    Range { treatment: sheaf.name.clone(), bags: sheaf.bags.len(), minute, mm: (low, high) }
}

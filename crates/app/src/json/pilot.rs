//! `barm pilot --json`.

use super::{FORMAT, real};
use crate::desk::{Kept, Lesson, Pilot};
use barm_domain::finding::Finding;
use barm_domain::pilot::{Change, Known, PilotBag, Role, Step, Unit};
use serde::Serialize;
use std::path::Path;

#[derive(Serialize)]
pub(crate) struct Protocol<'a> {
    format: u32,
    steps: Vec<Todo<'a>>,
    bags: Vec<Bag<'a>>,
    syringe_ml: &'a [f64],
    cooling_min: &'a [u32],
    spoons: u32,
    ethanol_percent: &'a [f64],
    cautions: Vec<Caution<'a>>,
    in_use: Option<String>,
}

#[derive(Serialize)]
struct Todo<'a> {
    minute: u32,
    part: Option<&'static str>,
    says: &'a str,
}

#[derive(Serialize)]
struct Bag<'a> {
    bag: &'a str,
    tells: &'static str,
    enzyme: Option<&'a str>,
    minutes: &'a [u32],
}

#[derive(Serialize)]
struct Caution<'a> {
    code: &'static str,
    message: &'a str,
    fix: &'a str,
}

/// What to do in a pilot.
pub(crate) fn protocol<'a>(pilot: &'a Pilot, known: &Known) -> Protocol<'a> {
    let protocol = &pilot.protocol;
    Protocol {
        format: FORMAT,
        steps: pilot.steps.iter().map(todo).collect(),
        bags: protocol.bags.iter().map(bag).collect(),
        syringe_ml: protocol.syringe.as_ref().map_or(&[], |syringe| &syringe.volumes_ml),
        cooling_min: &protocol.dummy.minutes,
        spoons: protocol.spoons.map_or(0, |spoons| spoons.count),
        ethanol_percent: protocol.meter.as_ref().map_or(&[], |meter| &meter.strengths),
        cautions: pilot.cautions.iter().map(caution).collect(),
        in_use: known.says(),
    }
}

fn todo(step: &Step) -> Todo<'_> {
    let part = step.part.map(barm_domain::pilot::Part::word);
    Todo { minute: step.minute, part, says: &step.says }
}

fn bag(bag: &PilotBag) -> Bag<'_> {
    let (tells, enzyme) = match &bag.role {
        Role::Yeast => ("yeast", None),
        Role::Carrier(key) => ("carrier", Some(key.as_str())),
        Role::Enzyme(key) => ("enzyme", Some(key.as_str())),
    };
    Bag { bag: &bag.letter, tells, enzyme, minutes: &bag.minutes }
}

fn caution(finding: &Finding) -> Caution<'_> {
    Caution { code: finding.code, message: &finding.message, fix: &finding.fix }
}

#[derive(Serialize)]
pub(crate) struct Learned<'a> {
    format: u32,
    date: String,
    measured: Vec<&'static str>,
    changes: Vec<Changed<'a>>,
    unmoved: &'a [String],
    noise: Option<f64>,
    bags: Vec<BagSeen<'a>>,
    treatments: Vec<Treatment<'a>>,
    stored: bool,
    file: Option<String>,
}

#[derive(Serialize)]
pub(super) struct Changed<'a> {
    what: &'a str,
    unit: &'static str,
    before: Range,
    after: Range,
    left: Option<f64>,
}

#[derive(Serialize)]
struct Range {
    best: Option<f64>,
    low: Option<f64>,
    high: Option<f64>,
}

#[derive(Serialize)]
struct BagSeen<'a> {
    bag: &'a str,
    minutes: Vec<f64>,
    rise_mm: Vec<f64>,
    before_mm: Vec<Range>,
    after_mm: Vec<Range>,
}

#[derive(Serialize)]
struct Treatment<'a> {
    treatment: &'a str,
    question: &'a str,
    before_mm: Range,
    after_mm: Range,
}

fn range([best, low, high]: [f64; 3]) -> Range {
    Range { best: real(best), low: real(low), high: real(high) }
}

fn last((best, low, high): (f64, f64, f64)) -> Range {
    range([best, low, high])
}

const fn unit(unit: Unit) -> &'static str {
    match unit {
        Unit::Times => "times usual",
        Unit::Grams => "g",
        Unit::Milliliters => "mL",
        Unit::Kelvin => "K",
        Unit::Percent => "%",
        Unit::Plain => "1",
    }
}

pub(super) fn changed(change: &Change) -> Changed<'_> {
    Changed {
        what: &change.title,
        unit: unit(change.unit),
        before: range(change.before),
        after: range(change.after),
        left: real(change.left),
    }
}

/// What a pilot taught.
pub(crate) fn lesson(lesson: &Lesson) -> Learned<'_> {
    let taught = &lesson.taught;
    let file = match &lesson.kept {
        Kept::Written(path) | Kept::AlreadyThere(path) | Kept::Yours(path) => Some(path),
        Kept::NotAsked => None,
    };
    let bags = taught.bags.iter().map(|bag| {
        let at = |curve: &barm_domain::outlook::Curve| {
            let minute = |minute: f64| {
                let at = (minute.round() as usize).min(curve.median.len().saturating_sub(1));
                range([curve.median[at], curve.low[at], curve.high[at]])
            };
            bag.seen.iter().map(|(one, _)| minute(*one)).collect()
        };
        BagSeen {
            bag: &bag.letter,
            minutes: bag.seen.iter().map(|(minute, _)| *minute).collect(),
            rise_mm: bag.seen.iter().map(|(_, rise)| *rise).collect(),
            before_mm: at(&bag.before),
            after_mm: at(&bag.after),
        }
    });
    let treatments = lesson.outlooks.iter().flat_map(|(before, after)| {
        before.entries.iter().zip(&after.entries).map(|(was, is)| Treatment {
            treatment: &was.treatment,
            question: &was.question,
            before_mm: last(was.rise_mm.last()),
            after_mm: last(is.rise_mm.last()),
        })
    });
    Learned {
        format: FORMAT,
        date: taught.date.to_string(),
        measured: taught.parts.iter().map(|part| part.word()).collect(),
        changes: taught.changes.iter().map(changed).collect(),
        unmoved: &taught.unmoved,
        noise: taught.noise,
        bags: bags.collect(),
        treatments: treatments.collect(),
        stored: matches!(lesson.kept, Kept::Written(_) | Kept::AlreadyThere(_)),
        file: file.map(|path| Path::display(path).to_string()),
    }
}

//! What the edited plan may do, in three steps: the line of what is being edited at once, then its
//! band, then all the others.

use super::verdict::{Verdict, verdicts};
use super::{Said, foresight, late, said, sentence};
use crate::desk::paper::strand;
use crate::desk::{Wording, beyond, beyond_says, say};
use barm_documents::chart::{ForecastChart, Frame, Moment, Strand};
use barm_documents::plan_text;
use barm_domain::check;
use barm_domain::finding::Severity;
use barm_domain::outlook::{Entry, Look, OutlookError, Treated, gather};
use barm_domain::pilot::Known;
use barm_domain::plan::{Plan, Question, Treatment};
use rayon::prelude::*;
use std::sync::Arc;

/// How far to look in one step.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum Step {
    /// The line of the treatment that is being edited.
    Line,
    /// Its band.
    Band,
    /// All treatments, and what follows from them.
    All,
}

/// Draws of the first line: enough for a median within about half a millimeter.
const QUICK: usize = 48;

/// What was foreseen in one step.
#[derive(Debug)]
pub(crate) struct Foreseen {
    /// One chart for each question; that of the edited treatment first.
    pub(crate) charts: Vec<Chart>,
    /// Shows, may not show, bag holds; only of the last step.
    pub(crate) verdicts: Option<Vec<Verdict>>,
    /// Laws of the bag model that some bag goes beyond, a line each; only of the last step.
    pub(crate) beyond: Vec<String>,
    /// Findings that rest on the forecast; only of the last step.
    pub(crate) late: Vec<Said>,
    /// Why nothing can be foreseen.
    pub(crate) trouble: Option<String>,
}

impl Foreseen {
    /// How many faults rest on the forecast.
    pub(crate) fn faults(&self) -> usize {
        self.late.iter().filter(|late| late.severity == Severity::Fault).count()
    }
}

/// The chart of one question.
#[derive(Debug)]
pub(crate) struct Chart {
    /// The question.
    pub(crate) asks: String,
    /// For a wide page, as SVG.
    pub(crate) wide: String,
    /// For a phone, as SVG.
    pub(crate) narrow: String,
    /// What it shows, in words.
    pub(crate) says: String,
}

/// Looks ahead, by the lots that are known, for a text that is being edited at `focus`, a field of the
/// form.
pub(crate) fn foresee(
    w: Wording,
    text: &str,
    known: &Known,
    focus: &str,
    step: Step,
) -> Foreseen {
    let mut foreseen = Foreseen {
        charts: Vec::new(),
        verdicts: None,
        beyond: Vec::new(),
        late: Vec::new(),
        trouble: None,
    };
    let read = plan_text::read_with_old_list(text.as_bytes());
    let Some(plan) = read.plan.filter(|_| read.mistakes.is_empty()) else {
        foreseen.trouble = Some(say!(w, "plan-waits"));
        return foreseen;
    };
    let plan = Plan { known: known.clone(), ..plan };
    let edited = edited(&plan, focus);
    let full = Look::default();
    let quick = Look { draws: QUICK, ..full };
    let all: Vec<&Treatment> = plan.treatments().map(|(_, treatment)| treatment).collect();
    let worked = |treatment: &&Treatment| -> Result<Option<Arc<Treated>>, OutlookError> {
        let is_edited = edited.is_none_or(|edited| edited.name == treatment.name);
        match step {
            Step::All => foresight::forecast(&plan, treatment, full).map(Some),
            Step::Band if is_edited => foresight::forecast(&plan, treatment, full).map(Some),
            Step::Line if is_edited => match foresight::known(&plan, treatment, full) {
                Some(known) => Ok(Some(known)),
                None => foresight::forecast(&plan, treatment, quick).map(Some),
            },
            _ => Ok(foresight::known(&plan, treatment, full)),
        }
    };
    let treated = all.par_iter().map(worked).collect::<Result<Vec<_>, _>>();
    let treated: Vec<Treated> = match treated {
        Ok(treated) => treated.into_iter().flatten().map(|one| (*one).clone()).collect(),
        Err(error) => {
            foreseen.trouble = Some(sentence(&error.to_string()));
            return foreseen;
        }
    };
    let entries = gather(&plan, &treated);
    let rough: Vec<&str> = treated
        .iter()
        .filter(|one| one.forecast.fill_at_last().len() < full.draws)
        .map(|one| one.treatment.as_str())
        .collect();
    foreseen.charts = charts(w, &plan, &entries, &rough, edited);
    if step == Step::All {
        foreseen.verdicts = Some(verdicts(w, &plan, &entries));
        foreseen.beyond = beyond_says(&plan, &beyond(&entries));
        let found = check::check(&plan, &entries);
        foreseen.late = late(&found).cloned().map(said::of_finding).collect();
    }
    foreseen
}

/// The treatment that a field belongs to; the first of the plan for what concerns all.
fn edited<'p>(plan: &'p Plan, focus: &str) -> Option<&'p Treatment> {
    let number = |text: &str| text.split(']').next().and_then(|n| n.parse::<usize>().ok());
    if let Some(rest) = focus.strip_prefix("control[") {
        return plan.controls.get(number(rest)?).map(|control| &control.treatment);
    }
    let own = focus.strip_prefix("question[").and_then(|rest| {
        let question = plan.questions.get(number(rest)?)?;
        let treatment = rest.split_once(".treatment[").and_then(|(_, rest)| number(rest));
        question.treatments.get(treatment.unwrap_or(0))
    });
    own.or_else(|| plan.questions.iter().find_map(|question| question.treatments.first()))
}

/// One chart for each question, that of the edited treatment first.
fn charts(
    w: Wording,
    plan: &Plan,
    entries: &[Entry],
    rough: &[&str],
    edited: Option<&Treatment>,
) -> Vec<Chart> {
    let mut questions: Vec<&Question> = plan.questions.iter().collect();
    let has = |question: &Question| {
        edited.is_some_and(|edited| {
            plan.answering(question).iter().any(|treatment| treatment.name == edited.name)
        })
    };
    questions.sort_by_key(|question| !has(question));
    let charts =
        questions.into_iter().filter_map(|question| chart(w, plan, entries, rough, question));
    charts.collect()
}

/// The chart of one question; nothing if none of its treatments is known yet.
pub(in crate::desk) fn chart(
    w: Wording,
    plan: &Plan,
    entries: &[Entry],
    rough: &[&str],
    question: &Question,
) -> Option<Chart> {
    let own = entries.iter().filter(|entry| entry.question == question.id);
    let strands: Vec<Strand> = own
        .map(|entry| {
            let strand = strand(plan, entry);
            // A quick line has no band yet: what it has would be too narrow.
            if rough.contains(&entry.treatment.as_str()) { line_of(strand) } else { strand }
        })
        .collect();
    if strands.is_empty() {
        return None;
    }
    let last = f64::from(plan.common_last_reading_min());
    let bell = plan.periods.iter().map(|period| period.length_min - plan.timing.mixing_min);
    let chart = ForecastChart {
        title: &say!(w, "plan-chart"),
        strands: &strands,
        last_reading: last,
        bell: bell.min_by(f64::total_cmp),
    };
    Some(Chart {
        asks: question.asks.clone(),
        wide: chart.svg(&Frame::screen(660.0)),
        narrow: chart.svg(&Frame::screen(330.0)),
        says: chart.description(&Frame::screen(660.0)),
    })
}

fn line_of(strand: Strand) -> Strand {
    let flat = |m: Moment| Moment { low: m.median, high: m.median, ..m };
    Strand { moments: strand.moments.into_iter().map(flat).collect(), ..strand }
}

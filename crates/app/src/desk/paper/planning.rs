//! Planning sheets: the planning page on paper, with as much of the answer as a group is given.

use super::bench_card::{known, questions};
use super::seats::{Bench, Seat, letter, seats};
use super::{face, look, student_imprint};
use crate::desk::DeskError;
use crate::desk::print::Job;
use crate::desk::room::Kind;
use crate::desk::room::proposals::{Typed, together};
use barm_documents::sheet::{
    self, PlanningKind, PlanningLevel, PlanningQuestion, PlanningSheet, PlanningSheets,
    PlanningVariable,
};
use barm_domain::plan::{Inquiry, PlannedBag, Question};

/// Lines for kinds of bag, as many as the page has fields.
const KINDS: u32 = 4;

/// The planning sheets as a PDF.
pub(crate) fn planning_pdf(job: &Job<'_>) -> Result<Vec<u8>, DeskError> {
    let all = seats(job, "planning-name", Bench::Not);
    let sheets = PlanningSheets {
        imprint: student_imprint(job, "PLAN"),
        title: job.plan.title.clone(),
        sheets: all.iter().map(|seat| planning_sheet(job, seat)).collect(),
    };
    Ok(sheet::planning_pdf(&sheets, face(job))?)
}

fn planning_sheet(job: &Job<'_>, seat: &Seat<'_>) -> PlanningSheet {
    let (plan, words) = (job.plan, job.wish.words);
    let group = (seat.period.name.clone(), seat.group);
    let blank = Typed::default().row(&group);
    let view = together(plan, Kind::Real, &group, blank, false, None);
    let own = questions(plan, &seat.bags);
    let asks = match seat.inquiry {
        Inquiry::Open => Vec::new(),
        _ if own.is_empty() => vec![plan.big_question.clone()],
        _ => own.iter().map(|question| question.asks.clone()).collect(),
    };
    let given = match (seat.plans(), own.as_slice()) {
        (true, _) => Vec::new(),
        (false, []) => vec![given(job, seat, &view.variables, None)],
        (false, own) => {
            own.iter().map(|one| given(job, seat, &view.variables, Some(*one))).collect()
        }
    };
    PlanningSheet {
        head: seat.head.clone(),
        given,
        known: match seat.inquiry {
            Inquiry::Confirmation => known(words, &own),
            _ => Vec::new(),
        },
        cupboard: view.cupboard.iter().map(|one| one.name(words)).collect(),
        asks,
        variables: view.variables.iter().map(|name| variable(job, name)).collect(),
        kinds: KINDS,
        controls: view.controls.iter().map(|name| words.treatment(name)).collect(),
        same: view.same.iter().map(|one| one.says(words)).collect(),
        example: view.example.map(|(food, much)| (food.name(words), words.amount(&much))),
        big_question: view.big_question,
    }
}

/// What a thing that may be changed is called.
fn variable(job: &Job<'_>, name: &str) -> String {
    job.wish.words.say(&format!("together-{}", name.replace(' ', "-")))
}

/// What the plan gives to a group for one of its questions; for a group whose bags answer none, all
/// its bags under the question of the class.
fn given(
    job: &Job<'_>,
    seat: &Seat<'_>,
    variables: &[&'static str],
    question: Option<&Question>,
) -> PlanningQuestion {
    let plan = job.plan;
    let answers = |bag: &&&PlannedBag| question.is_none_or(|one| one.id == bag.question);
    let mut kinds: Vec<&str> = Vec::new();
    for bag in seat.bags.iter().filter(answers) {
        if !kinds.contains(&bag.treatment.as_str()) {
            kinds.push(&bag.treatment);
        }
    }
    let beside = |name: &str| plan.beside(question?, plan.treatment(name)?);
    let compared: Vec<(&str, Option<&str>)> =
        kinds.iter().map(|name| (*name, beside(name))).collect();
    let reference = |name: &str| compared.iter().any(|(_, beside)| *beside == Some(name));
    let levels = compared.iter().filter(|(name, _)| !reference(name));
    let mut variables = variables.to_vec();
    let changed = question.map(|one| one.variable.words());
    variables.extend(changed.filter(|changed| !variables.contains(changed)));
    PlanningQuestion {
        asks: question.map_or_else(|| plan.big_question.clone(), |one| one.asks.clone()),
        variables: variables
            .iter()
            .map(|name| PlanningVariable {
                name: variable(job, name),
                ticked: changed == Some(*name),
            })
            .collect(),
        levels: levels
            .map(|(name, beside)| PlanningLevel {
                kind: kind(job, seat, name),
                beside: beside.map(|name| kind(job, seat, name)),
            })
            .collect(),
    }
}

/// A kind of bag with the letters of the group's bags of it.
fn kind(job: &Job<'_>, seat: &Seat<'_>, treatment: &str) -> PlanningKind {
    let words = job.wish.words;
    let own = seat.bags.iter().filter(|bag| bag.treatment == treatment);
    let letters: Vec<String> = own.map(|bag| letter(bag)).collect();
    PlanningKind {
        name: words.treatment(treatment),
        look: look(job.plan, treatment),
        bags: match letters.as_slice() {
            [] => String::new(),
            some => words.say_with("planning-bags", &[("bags", &some.join(", "))]),
        },
    }
}

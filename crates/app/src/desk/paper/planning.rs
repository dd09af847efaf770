//! Planning sheets: the planning page on paper, with as much of the answer as a group is given.

use super::bench_card::{known, questions};
use super::seats::{Bench, Seat, seats};
use super::{face, look, student_imprint};
use crate::desk::DeskError;
use crate::desk::print::Job;
use crate::desk::room::Kind;
use crate::desk::room::proposals::{PlanTogetherView, Typed, together};
use barm_documents::catalog::Catalog;
use barm_documents::sheet::{
    self, PlanningLevel, PlanningSheet, PlanningSheets, PlanningVariable,
};
use barm_domain::plan::{Inquiry, PlannedBag, Question, Variable};

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
    let given = if seat.plans() { Given::default() } else { Given::of(job, seat, &own) };
    let asks = match seat.inquiry {
        Inquiry::Open => Vec::new(),
        _ if own.is_empty() => vec![plan.big_question.clone()],
        _ => own.iter().map(|question| question.asks.clone()).collect(),
    };
    let ticked = |variable: &str| given.variables.iter().any(|own| own.words() == variable);
    let variable = |name: &&str| PlanningVariable {
        name: words.say(&format!("together-{}", name.replace(' ', "-"))),
        ticked: ticked(name),
    };
    PlanningSheet {
        head: seat.head.clone(),
        known: match seat.inquiry {
            Inquiry::Confirmation => known(words, &own),
            _ => Vec::new(),
        },
        asks,
        variables: view.variables.iter().map(variable).collect(),
        kinds: if given.levels.is_empty() { KINDS } else { 0 },
        levels: given.levels,
        beside: given.beside,
        bags: given.bags,
        cupboard: view.cupboard.iter().map(|food| words.cupboard(food)).collect(),
        same: same(words, &view),
        big_question: view.big_question,
        controls: view.controls.iter().map(|name| words.treatment(name)).collect(),
    }
}

/// What all bags of the class have, in the words of the page.
fn same(words: &Catalog, view: &PlanTogetherView) -> Vec<String> {
    let said = view.same.iter().filter(|(_, amount)| !amount.is_empty());
    said.map(|(variable, amount)| match variable {
        Variable::Bag => format!("{}: {}", words.say("together-same-bag"), words.bag(amount)),
        other => {
            let name = words.say(&format!("together-{}", other.words().replace(' ', "-")));
            format!("{name}: {}", words.amount(amount))
        }
    })
    .collect()
}

/// What a group that follows the plan finds written on its sheet.
#[derive(Default)]
struct Given {
    variables: Vec<Variable>,
    levels: Vec<PlanningLevel>,
    beside: Vec<String>,
    bags: u32,
}

impl Given {
    /// From the group's own bags: what is compared with something is a kind, what it is compared
    /// with stands beside it.
    fn of(job: &Job<'_>, seat: &Seat<'_>, questions: &[&Question]) -> Self {
        let (plan, words) = (job.plan, job.wish.words);
        let variables = questions.iter().map(|question| question.variable).collect();
        let mut given = Self { variables, ..Self::default() };
        let reference = |name: &str| {
            let all = || questions.iter();
            all().any(|question| question.reference.as_deref() == Some(name))
                || (!questions.is_empty() && plan.is_control(name))
        };
        let mut counts: Vec<(&str, u32)> = Vec::new();
        for PlannedBag { treatment, .. } in seat.bags.iter().copied() {
            match counts.iter_mut().find(|(name, _)| name == treatment) {
                Some((_, count)) => *count += 1,
                None => counts.push((treatment, 1)),
            }
        }
        for (name, count) in counts {
            if reference(name) {
                given.beside.push(words.treatment(name));
            } else {
                given.bags = given.bags.max(count);
                let look = look(plan, name);
                given.levels.push(PlanningLevel { name: words.treatment(name), look });
            }
        }
        if given.beside.is_empty() {
            let references = questions.iter().filter_map(|one| one.reference.as_deref());
            given.beside = references.map(|name| words.treatment(name)).collect();
            given.beside.dedup();
        }
        given
    }
}

//! The investigation on one page.

use super::super::clock::Hours;
use super::super::hour::Hour;
use super::super::looks;
use super::super::todo;
use crate::desk::print::Job;
use barm_documents::sheet::{Asked, Dated, Entry, Named, Overview, PeriodRow};
use barm_domain::agenda::{self, When};
use barm_domain::finding::Severity;
use barm_domain::plan::{CONTROLS, Period, Plan, Question, Treatment};
use barm_domain::prep::Prep;
use barm_domain::schedule::schedule;

pub(super) fn overview(job: &Job<'_>, prep: &Prep) -> Overview {
    let plan = job.plan;
    let big =
        if plan.big_question.trim() == plan.title.trim() { "" } else { &plan.big_question };
    let mut questions: Vec<Asked> =
        plan.questions.iter().map(|question| asked(plan, question)).collect();
    if !plan.controls.is_empty() {
        questions.push(Asked {
            asks: "Shared controls".to_owned(),
            changes: "a bag of each in every period, on your bench".to_owned(),
            treatments: plan.controls.iter().map(|c| named(plan, &c.treatment)).collect(),
        });
    }
    Overview {
        big_question: big.to_owned(),
        questions,
        periods: job.periods().map(|period| row(plan, period, job.wish.size.into())).collect(),
        dates: dates(plan, prep),
        standards: plan.standards.iter().filter_map(standard).collect(),
        first: first(job),
    }
}

fn asked(plan: &Plan, question: &Question) -> Asked {
    let crossed = question.crossed_with.map(|other| format!(", over each {}", other.words()));
    Asked {
        asks: question.asks.clone(),
        changes: format!(
            "changes the {}{}",
            question.variable.words(),
            crossed.unwrap_or_default()
        ),
        treatments: plan.answering(question).into_iter().map(|t| named(plan, t)).collect(),
    }
}

fn named(plan: &Plan, treatment: &Treatment) -> Named {
    Named { name: treatment.name.clone(), look: looks::look(plan, &treatment.name) }
}

/// A standard is claimed only with the student product that shows it.
fn standard(standard: &barm_domain::plan::Standard) -> Option<Entry> {
    let shown_by = standard.shown_by.as_ref()?;
    Some(Entry { head: standard.code.clone(), says: shown_by.clone() })
}

fn row(plan: &Plan, period: &Period, hours: Hours) -> PeriodRow {
    let hour = Hour::of(plan, period, &schedule(plan, period, None));
    let bags = plan.bags.iter().filter(|bag| bag.period == period.name).count();
    let clock = |minute: f64| hours.at_minute(period.start, minute);
    PeriodRow {
        period: period.name.clone(),
        day: if plan.days.len() > 1 { period.day.clone() } else { String::new() },
        clock: hours.between(period.start, period.length_min),
        students: period.students.to_string(),
        groups: period.groups.to_string(),
        bags: bags.to_string(),
        zero: clock(hour.first_zero),
        last: clock(hour.last_read),
        vent: clock(hour.open),
    }
}

/// What lasts a day: everything before and after the hours of the class.
fn dates(plan: &Plan, prep: &Prep) -> Vec<Dated> {
    let tasks = agenda::agenda(plan, prep);
    let dated = |task: &agenda::Task| match &task.when {
        When::On(date) => Some(Dated {
            date: date.strftime("%a %b %-d").to_string(),
            what: todo::title(plan, prep, &task.what),
        }),
        When::At { .. } => None,
    };
    let mut rows: Vec<Dated> = tasks.iter().filter_map(dated).collect();
    for day in &plan.days {
        let date = day.date.strftime("%a %b %-d").to_string();
        let at = rows.len().saturating_sub(1);
        rows.insert(at, Dated { date, what: format!("{}: the class day", day.name) });
    }
    rows
}

/// What must be mended before anything is bought.
fn first(job: &Job<'_>) -> Vec<String> {
    let faults = job.found().iter().filter(|one| one.severity == Severity::Fault);
    let faults: Vec<String> = faults.map(|one| one.message.clone()).collect();
    let more = faults.len().saturating_sub(4);
    let mut first: Vec<String> = faults.into_iter().take(4).collect();
    if more > 0 {
        first.push(format!("And {more} more; check the plan."));
    }
    if job.plan.bags.iter().all(|bag| bag.question == CONTROLS) {
        first.push("The bag list holds no bag of a group yet.".to_owned());
    }
    first
}

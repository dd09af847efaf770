//! Checks that what refers to a name finds it.

use super::mistake::Wrong;
use super::names::{treatment_names, unique};
use super::notes::Notes;
use barm_domain::nearest::{nearest, plain};
use barm_domain::plan::{CONTROLS, Plan, Question};

/// Notes every reference that leads nowhere; those of the bag list are passed over where the list
/// `may_be_old`.
pub(super) fn check(plan: &Plan, may_be_old: bool, notes: &mut Notes<'_>) {
    class(plan, notes);
    questions(plan, notes);
    bags_are_apart(plan, notes);
    if !may_be_old {
        bags(plan, notes);
    }
}

fn class(plan: &Plan, notes: &mut Notes<'_>) {
    let days = || plan.days.iter().map(|day| day.name.as_str());
    for (i, period) in plan.periods.iter().enumerate() {
        known(notes, || format!("period[{i}].day"), "day", &period.day, days());
    }
    if plan.periods.len() > usize::from(barm_domain::code::MOST) {
        let wrong = Wrong::new("a plan holds at most 99 periods", "make a second plan");
        notes.wrong("period[99]".into(), wrong);
    }
    let periods = || plan.periods.iter().map(|period| period.name.as_str());
    for (i, group) in plan.group_settings.iter().enumerate() {
        known(notes, || format!("group[{i}].period"), "period", &group.period, periods());
        group_exists(plan, &group.period, group.group, || format!("group[{i}].number"), notes);
    }
}

fn group_exists(
    plan: &Plan,
    period: &str,
    group: u32,
    field: impl FnOnce() -> String,
    notes: &mut Notes<'_>,
) {
    if let Some(period) = plan.period(period)
        && group > period.groups
    {
        let what = format!(
            "period {} has {} groups, and this is group {group}",
            period.name, period.groups
        );
        notes.wrong(
            field(),
            Wrong::new(what, "take a group of the period, or raise its groups"),
        );
    }
}

fn questions(plan: &Plan, notes: &mut Notes<'_>) {
    let all = treatment_names(plan);
    let names = || all.iter().map(|(name, ..)| name.as_str());
    for (q, question) in plan.questions.iter().enumerate() {
        let field = |key: &str| format!("question[{q}].{key}");
        if plain(&question.id) == CONTROLS {
            let what =
                format!("“{}” is what the bags of shared controls stand under", question.id);
            notes.wrong(field("id"), Wrong::new(what, "give the question another id"));
        }
        if question.crossed_with == Some(question.variable) {
            let what = "a question cannot be crossed with its own variable";
            notes.wrong(
                field("crossed_with"),
                Wrong::new(what, "name the second variable, or take the line out"),
            );
        }
        if let Some(reference) = &question.reference {
            known(notes, || field("reference"), "treatment", reference, names());
        }
        for (u, used) in question.uses.iter().enumerate() {
            known(notes, || field(&format!("uses[{u}]")), "treatment", used, names());
            if question.treatments.iter().any(|treatment| &treatment.name == used) {
                let what = format!("“{used}” is this question's own treatment");
                notes.wrong(
                    field(&format!("uses[{u}]")),
                    Wrong::new(what, "take it out of uses"),
                );
            }
        }
        for (t, treatment) in question.treatments.iter().enumerate() {
            let field = || format!("question[{q}].treatment[{t}].beside");
            let Some(beside) = &treatment.beside else { continue };
            known(notes, field, "treatment", beside, names());
            if *beside == treatment.name {
                let what = "a treatment cannot be compared with itself";
                notes
                    .wrong(field(), Wrong::new(what, "name the treatment it is compared with"));
            }
        }
        if question.treatments.is_empty() && question.uses.is_empty() {
            let what = "the question has no treatments";
            notes.wrong(
                format!("question[{q}]"),
                Wrong::new(what, "add [[question.treatment]] below it"),
            );
        }
    }
}

fn bags_are_apart(plan: &Plan, notes: &mut Notes<'_>) {
    let codes = plan
        .bags
        .iter()
        .enumerate()
        .map(|(i, bag)| (bag.code.clone(), format!("bag[{i}].code")));
    let retired = plan.retired_codes.iter().enumerate();
    let retired = retired.map(|(i, code)| (code.clone(), format!("bag_list.retired[{i}]")));
    unique(notes, "a bag with the code", codes.chain(retired));
    unique(
        notes,
        "a bag at",
        plan.bags.iter().enumerate().filter(|(_, bag)| !bag.period.is_empty()).map(
            |(i, bag)| {
                let place = format!(
                    "place {} of group {} in period {}",
                    bag.place, bag.group, bag.period
                );
                (place, format!("bag[{i}].place"))
            },
        ),
    );
}

fn bags(plan: &Plan, notes: &mut Notes<'_>) {
    let periods = || plan.periods.iter().map(|period| period.name.as_str());
    let questions = || plan.questions.iter().map(|q| q.id.as_str()).chain([CONTROLS]);
    for (i, bag) in plan.bags.iter().enumerate() {
        known(notes, || format!("bag[{i}].period"), "period", &bag.period, periods());
        group_exists(plan, &bag.period, bag.group, || format!("bag[{i}].group"), notes);
        known(notes, || format!("bag[{i}].question"), "question", &bag.question, questions());
        let field = || format!("bag[{i}].treatment");
        if bag.question == CONTROLS {
            let names = || plan.controls.iter().map(|control| control.treatment.name.as_str());
            known(notes, field, "control", &bag.treatment, names());
        } else if let Some(question) = plan.questions.iter().find(|q| q.id == bag.question) {
            known(
                notes,
                field,
                "treatment of this question",
                &bag.treatment,
                answering(plan, question).iter().copied(),
            );
        }
    }
}

/// Names of the treatments of which a question can have bags.
fn answering<'p>(plan: &'p Plan, question: &'p Question) -> Vec<&'p str> {
    plan.answering(question).into_iter().map(|treatment| treatment.name.as_str()).collect()
}

/// Notes that `name` is not among `names`.
fn known<'n>(
    notes: &mut Notes<'_>,
    field: impl FnOnce() -> String,
    what: &str,
    name: &str,
    names: impl Iterator<Item = &'n str> + Clone,
) {
    if name.is_empty() || names.clone().any(|other| other == name) {
        return;
    }
    let fix = match nearest(name, names.clone().filter(|n| !n.is_empty())) {
        Some(meant) => format!("did you mean {meant}?"),
        None => {
            let all: Vec<&str> = names.filter(|n| !n.is_empty()).take(20).collect();
            if all.is_empty() {
                format!("add the {what}")
            } else {
                format!("write one of: {}", all.join(", "))
            }
        }
    };
    notes.wrong(field(), Wrong::new(format!("there is no {what} called “{name}”"), fix));
}

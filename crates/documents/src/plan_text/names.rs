//! Checks that names are unique.

use super::mistake::Wrong;
use super::notes::Notes;
use barm_domain::cupboard::Cupboard;
use barm_domain::finding::Field;
use barm_domain::nearest::plain;
use barm_domain::plan::{CONTROLS, Plan};
use std::collections::BTreeMap;

/// Notes every name that stands twice.
///
/// Empty names are passed over: they have been noted as missing.
pub(super) fn check(plan: &Plan, notes: &mut Notes<'_>) {
    for (table, what) in [("day", "days"), ("period", "periods"), ("question", "questions")] {
        if counted(plan, table) == 0 {
            let fix = format!("add at least one [[{table}]]");
            notes.wrong(table.into(), Wrong::new(format!("the plan has no {what}"), fix));
        }
    }
    unique(
        notes,
        "a day called",
        plan.days.iter().enumerate().map(|(i, d)| (d.name.clone(), format!("day[{i}].name"))),
    );
    unique(
        notes,
        "a period called",
        plan.periods
            .iter()
            .enumerate()
            .map(|(i, p)| (p.name.clone(), format!("period[{i}].name"))),
    );
    unique(
        notes,
        "a question called",
        plan.questions
            .iter()
            .enumerate()
            .map(|(i, q)| (q.id.clone(), format!("question[{i}].id"))),
    );
    unique(
        notes,
        "a rule called",
        plan.set_aside_rules
            .iter()
            .enumerate()
            .map(|(i, r)| (r.id.clone(), format!("set_aside[{i}].rule"))),
    );
    unique(
        notes,
        "a treatment called",
        treatment_names(plan).into_iter().map(|(name, field, _)| (name, field)),
    );
    unique(
        notes,
        "a setting for group",
        plan.group_settings.iter().enumerate().filter(|(_, g)| !g.period.is_empty()).map(
            |(i, g)| {
                (format!("{} of period {}", g.group, g.period), format!("group[{i}].number"))
            },
        ),
    );
    foods(plan, notes);
}

fn counted(plan: &Plan, table: &str) -> usize {
    match table {
        "day" => plan.days.len(),
        "period" => plan.periods.len(),
        _ => plan.questions.len(),
    }
}

pub(super) fn unique(
    notes: &mut Notes<'_>,
    a: &str,
    names: impl Iterator<Item = (String, String)>,
) {
    let mut seen: BTreeMap<String, String> = BTreeMap::new();
    for (name, field) in names {
        if name.is_empty() {
            continue;
        }
        if let Some(first) = seen.get(&plain(&name)) {
            let wrong = Wrong::new(
                format!("there is already {a} “{name}”: {}", Field(first.clone())),
                "change one of the two",
            );
            notes.wrong(field, wrong);
        } else {
            seen.insert(plain(&name), field);
        }
    }
}

/// Name, field of the name, and question of every treatment and control.
pub(super) fn treatment_names(plan: &Plan) -> Vec<(String, String, &str)> {
    let own = plan.questions.iter().enumerate().flat_map(|(q, question)| {
        question.treatments.iter().enumerate().map(move |(t, treatment)| {
            (
                treatment.name.clone(),
                format!("question[{q}].treatment[{t}].name"),
                question.id.as_str(),
            )
        })
    });
    let shared = plan.controls.iter().enumerate().map(|(c, control)| {
        (control.treatment.name.clone(), format!("control[{c}].name"), CONTROLS)
    });
    own.chain(shared).collect()
}

fn foods(plan: &Plan, notes: &mut Notes<'_>) {
    let names = plan.label_foods.iter().enumerate();
    unique(
        notes,
        "a food called",
        names.map(|(i, food)| (food.name.clone(), format!("label_food[{i}].name"))),
    );
    for (i, food) in plan.label_foods.iter().enumerate() {
        if Cupboard::is_built_in(&food.name) {
            let what = format!("“{}” is the name of a built-in food", food.name);
            let fix = "give yours another name, such as the one on the box";
            notes.wrong(format!("label_food[{i}].name"), Wrong::new(what, fix));
        }
    }
}

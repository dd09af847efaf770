//! Writes the base recipe, questions with their treatments, and shared controls.

use super::literal::{self, quantity, text, texts};
use super::page::Page;
use super::words::{YEASTS, nothing, word_for};
use barm_domain::cupboard::Cupboard;
use barm_domain::plan::{Difference, Extra, Plan, Treatment};

pub(super) fn base(plan: &Plan, page: &mut Page) {
    let note = "What every bag is unless its treatment says otherwise.";
    page.chapter(note, "[base]");
    let cupboard = Cupboard::with(&plan.label_foods);
    let base = &plan.base;
    page.noted(
        "bag",
        text(&base.bag.written),
        "snack, sandwich, quart, gallon, or the size inside: \"165 x 83 mm\"",
    );
    page.key("card", text(&base.card.written));
    page.key("water", text(&base.water.written));
    page.noted(
        "water_temperature",
        quantity(base.water_celsius, "°C"),
        "as poured into the bag",
    );
    page.noted(
        "yeast",
        text(word_for(base.yeast, YEASTS)),
        "instant, active dry, compressed or none",
    );
    if base.yeast.is_some() || base.yeast_amount != nothing() {
        page.key("yeast_amount", text(&base.yeast_amount.written));
    }
    let none = || text("none");
    page.key("food", base.food.as_deref().map_or_else(none, |id| literal::food(&cupboard, id)));
    page.maybe("food_amount", base.food_amount.as_ref().map(|amount| text(&amount.written)));
    page.key("enzyme", base.enzyme.as_deref().map_or_else(none, literal::enzyme));
    page.maybe(
        "enzyme_amount",
        base.enzyme_amount.as_ref().map(|amount| text(&amount.written)),
    );
    if !base.extras.is_empty() {
        page.key("extra", extras(&cupboard, &base.extras));
    }
    page.noted("lies", literal::lies(base.lies), "bench, towel or \"warm tray 40 °C\"");
    let timing = &plan.timing;
    let minutes = |minutes| quantity(minutes, "min");
    page.key("reading_interval", minutes(timing.interval_min));
    page.noted("mixing", minutes(timing.mixing_min), "from the bell to the zero reading");
    page.noted(
        "clearing",
        minutes(timing.clearing_min),
        "venting and wiping before the closing bell",
    );
    page.noted(
        "wet_before_zero",
        minutes(timing.wet_before_zero_min),
        "from wetting the yeast to the zero reading",
    );
}

fn extras(cupboard: &Cupboard<'_>, extras: &[Extra]) -> String {
    let written: Vec<String> = extras
        .iter()
        .map(|extra| {
            let item = literal::food(cupboard, &extra.item);
            format!("{{ item = {item}, amount = {} }}", text(&extra.amount.written))
        })
        .collect();
    format!("[{}]", written.join(", "))
}

pub(super) fn questions(plan: &Plan, page: &mut Page) {
    let cupboard = Cupboard::with(&plan.label_foods);
    for (index, question) in plan.questions.iter().enumerate() {
        if index == 0 {
            let note = "Questions. Each changes one thing, its variable. A treatment says only what \
                        it changes against\n[base]. reference is what the others are compared with; \
                        a treatment that is compared with\nsomething else names it under beside. uses \
                        takes in treatments that stand elsewhere.";
            page.chapter(note, "[[question]]");
        } else {
            page.header("[[question]]");
        }
        page.key("id", text(&question.id));
        page.key("asks", text(&question.asks));
        page.key("variable", text(question.variable.words()));
        page.maybe("crossed_with", question.crossed_with.map(|other| text(other.words())));
        page.maybe("reference", question.reference.as_deref().map(text));
        if !question.uses.is_empty() {
            page.key("uses", texts(question.uses.iter().map(String::as_str)));
        }
        page.noted(
            "replicates",
            question.replicates.to_string(),
            "bags of each treatment, over all periods",
        );
        for treatment in &question.treatments {
            page.header("[[question.treatment]]");
            page.key("name", text(&treatment.name));
            changes(treatment, &cupboard, page);
        }
    }
}

pub(super) fn controls(plan: &Plan, page: &mut Page) {
    let cupboard = Cupboard::with(&plan.label_foods);
    for (index, control) in plan.controls.iter().enumerate() {
        if index == 0 {
            let note = "Shared controls, made at the teacher's bench in every period: yeast alone, \
                        enzyme without food\n(powders carry sugar), food without yeast.";
            page.chapter(note, "[[control]]");
        } else {
            page.header("[[control]]");
        }
        page.key("name", text(&control.treatment.name));
        changes(&control.treatment, &cupboard, page);
        page.key("per_period", control.per_period.to_string());
    }
}

/// What a treatment changes against the base recipe.
fn changes(treatment: &Treatment, cupboard: &Cupboard<'_>, page: &mut Page) {
    page.maybe("beside", treatment.beside.as_deref().map(text));
    page.maybe("replicates", treatment.replicates.map(|count| count.to_string()));
    // Taken apart so that a new field cannot be forgotten here.
    let Difference {
        bag,
        card,
        water,
        water_celsius,
        yeast,
        yeast_amount,
        food,
        food_amount,
        enzyme,
        enzyme_amount,
        extras: also,
        lies,
    } = &treatment.difference;
    let none = || text("none");
    page.maybe("bag", bag.as_ref().map(|bag| text(&bag.written)));
    page.maybe("card", card.as_ref().map(|card| text(&card.written)));
    page.maybe("water", water.as_ref().map(|amount| text(&amount.written)));
    page.maybe("water_temperature", water_celsius.map(|celsius| quantity(celsius, "°C")));
    page.maybe("yeast", yeast.map(|kind| text(word_for(kind, YEASTS))));
    page.maybe("yeast_amount", yeast_amount.as_ref().map(|amount| text(&amount.written)));
    let food = food.as_ref().map(|food| food.as_deref());
    page.maybe("food", food.map(|id| id.map_or_else(none, |id| literal::food(cupboard, id))));
    page.maybe("food_amount", food_amount.as_ref().map(|amount| text(&amount.written)));
    let enzyme = enzyme.as_ref().map(|enzyme| enzyme.as_deref());
    page.maybe("enzyme", enzyme.map(|key| key.map_or_else(none, literal::enzyme)));
    page.maybe("enzyme_amount", enzyme_amount.as_ref().map(|amount| text(&amount.written)));
    page.maybe("extra", also.as_ref().map(|also| extras(cupboard, also)));
    page.maybe("lies", lies.map(literal::lies));
}

//! Writes a plan with notes for the person who will edit it.

use super::literal::{self, quantity, text, texts};
use super::page::Page;
use super::upgrade::{FORMAT, READABLE_DIFFERENCE};
use super::words::{STARCHES, SUGARS, word_for};
use super::write_recipe;
use barm_domain::cupboard::Cupboard;
use barm_domain::plan::{Circumstance, LabelFood, Plan, Round};

const HEAD: &str = "\
A plan for Barm. Lines that start with # are notes for people; edit everything else freely.
Write amounts as you would say them: \"1 tsp\", \"1/4 tsp\", \"2.5 g\", \"60 mL\", \"105 °F\", \"1 in\",
\"3 min 30 s\". A spoon is level; the 5 mL spoon of nutrition labels is written \"1 label tsp\".
After every change run `barm check` on this file: it names the line of every slip.";

/// Writes a plan as a new file with notes.
///
/// Reading it gives the same plan again.
pub fn write_new(plan: &Plan) -> String {
    let mut page = Page::default();
    page.note(HEAD);
    page.gap();
    page.key("format", FORMAT.to_string());
    page.key("title", text(&plan.title));
    page.maybe("school", plan.school.as_deref().map(text));
    if plan.invented {
        page.note("The school, the groups and every reading are made up; every page says so.");
    }
    page.key("invented", plan.invented.to_string());
    page.key("big_question", text(&plan.big_question));
    page.key("grade", plan.grade.to_string());
    page.noted(
        "inquiry",
        text(plan.inquiry.word()),
        "confirmation, structured, guided or open",
    );
    if plan.round != Round::Only {
        page.noted(
            "round",
            text(plan.round.words()),
            "only, first of two (judged more strictly) or second of two (judged with the first)",
        );
    }
    page.noted(
        READABLE_DIFFERENCE,
        quantity(plan.readable_mm, "mm"),
        "smallest difference in rise that counts",
    );
    page.noted(
        "spare",
        literal::share(plan.spare),
        "on top of everything that is bought or mixed",
    );
    let known = Circumstance::ALL.map(Circumstance::words).join(", ");
    page.note(&format!("What else is true of the day: {known}."));
    page.key(
        "circumstances",
        texts(plan.circumstances.iter().map(|circumstance| circumstance.words())),
    );
    class(plan, &mut page);
    agreements(plan, &mut page);
    write_recipe::base(plan, &mut page);
    write_recipe::questions(plan, &mut page);
    write_recipe::controls(plan, &mut page);
    for (index, food) in plan.label_foods.iter().enumerate() {
        label_food(food, index == 0, &mut page);
    }
    supply(plan, &mut page);
    bags(plan, &mut page);
    page.done()
}

/// Opens a list of tables: the note stands above the first of them only.
fn open(page: &mut Page, index: usize, note: &str, header: &str) {
    if index == 0 { page.chapter(note, header) } else { page.header(header) }
}

fn class(plan: &Plan, page: &mut Page) {
    for (index, standard) in plan.standards.iter().enumerate() {
        let note = "Standards, in the wording of your state. Without shown_by (the student product \
                    that shows it)\na standard is not claimed.";
        open(page, index, note, "[[standard]]");
        page.key("code", text(&standard.code));
        page.key("wording", text(&standard.wording));
        page.maybe("shown_by", standard.shown_by.as_deref().map(text));
    }
    for (index, day) in plan.days.iter().enumerate() {
        let note = "School days. In place of altitude you may write pressure = \"85.6 kPa\", read in \
                    the room\nand not reduced to sea level.";
        open(page, index, note, "[[day]]");
        page.key("name", text(&day.name));
        page.key("date", day.date.to_string());
        page.key("zone", text(&day.zone));
        page.noted("room", quantity(day.room_celsius, "°C"), "room temperature");
        let (key, value) = literal::place(day.place);
        page.key(key, value);
    }
    for (index, period) in plan.periods.iter().enumerate() {
        let note = "Periods, in order. Their numbers (their order, where a name is no number) stand in \
                    the bag codes: P1, P2 …";
        open(page, index, note, "[[period]]");
        page.key("name", text(&period.name));
        page.key("day", text(&period.day));
        page.key("start", literal::time(period.start));
        page.key("length", quantity(period.length_min, "min"));
        page.key("students", period.students.to_string());
        page.key("groups", period.groups.to_string());
        page.maybe("grade", period.grade.map(|grade| grade.to_string()));
        page.maybe("inquiry", period.inquiry.map(|inquiry| text(inquiry.word())));
    }
    for (index, group) in plan.group_settings.iter().enumerate() {
        let note = "Groups that differ from their period. A label is a number or an invented word, \
                    never a child's name.";
        open(page, index, note, "[[group]]");
        page.key("period", text(&group.period));
        page.key("number", group.group.to_string());
        page.maybe("label", group.label.as_deref().map(text));
        page.maybe("grade", group.grade.map(|grade| grade.to_string()));
        page.maybe("inquiry", group.inquiry.map(|inquiry| text(inquiry.word())));
    }
}

fn agreements(plan: &Plan, page: &mut Page) {
    for (index, rule) in plan.set_aside_rules.iter().enumerate() {
        let note = "Rules, agreed before the day, by which a bag is set aside. Results are shown \
                    with and without.";
        open(page, index, note, "[[set_aside]]");
        page.key("rule", text(&rule.id));
        page.key("says", text(&rule.says));
    }
    for (index, answered) in plan.answered.iter().enumerate() {
        let note =
            "Cautions that you have answered; `barm check` then shows your answer with them.";
        open(page, index, note, "[[answered]]");
        page.key("caution", text(&answered.caution));
        page.key("answer", text(&answered.answer));
    }
}

fn label_food(food: &LabelFood, first: bool, page: &mut Page) {
    let note = "Foods described from their nutrition label, line by line. starch: raw (flour), cooked \
                (flakes,\nbread) or dextrin. natural_sugar: what was not added: unknown, sucrose, \
                fruit, milk, malt or dextrose.";
    open(page, usize::from(!first), note, "[[label_food]]");
    let label = &food.label;
    page.key("name", text(&food.name));
    page.key("serving", quantity(label.serving_g, "g"));
    page.key("carbohydrate", literal::declared(label.carbohydrate));
    page.key("fiber", literal::declared(label.fiber));
    page.key("sugars", literal::declared(label.sugars));
    page.maybe("added_sugars", label.added_sugars.map(literal::declared));
    page.maybe("sugar_alcohols", label.sugar_alcohols.map(literal::declared));
    page.maybe("fat", label.fat_g.map(|grams| quantity(grams, "g")));
    page.maybe("protein", label.protein_g.map(|grams| quantity(grams, "g")));
    page.maybe("sodium", label.sodium_mg.map(|mg| quantity(mg, "mg")));
    page.key("starch", text(word_for(label.starch, STARCHES)));
    page.key("natural_sugar", text(word_for(label.natural_sugar, SUGARS)));
    page.maybe("teaspoon", food.grams_per_tsp.map(|grams| quantity(grams, "g")));
    page.key("allergens", texts(food.allergens.iter().map(String::as_str)));
}

fn supply(plan: &Plan, page: &mut Page) {
    let cupboard = Cupboard::with(&plan.label_foods);
    for (index, material) in plan.materials.iter().enumerate() {
        let note = "Packs that you can buy. Add your store's price = \"$5.49\" and what is there \
                    already, in_stock = \"20 g\".\nAn item may stand here in more than one size.";
        open(page, index, note, "[[material]]");
        page.key("item", literal::material(&cupboard, &material.item));
        page.key("pack", text(&material.pack.written));
        page.maybe("price", material.price.map(literal::price));
        page.maybe("in_stock", material.in_stock.as_ref().map(|amount| text(&amount.written)));
    }
    page.chapter(
        "How many there are for one class; leave out what you do not count.",
        "[equipment]",
    );
    let equipment = &plan.equipment;
    for (key, count) in [
        ("thermometers", equipment.thermometers),
        ("meters", equipment.meters),
        ("rulers", equipment.rulers),
        ("kettles", equipment.kettles),
        ("balances", equipment.balances),
        ("goggles", equipment.goggles),
    ] {
        page.maybe(key, count.map(|count| count.to_string()));
    }
}

fn bags(plan: &Plan, page: &mut Page) {
    let note = "The bag list. You may move bags or change their treatment. A code is made once and \
                never given to\nanother bag: when you take a bag out, move its code to retired. Group \
                0 is the teacher's bench.";
    page.chapter(note, "[bag_list]");
    page.line("bags = [");
    for bag in &plan.bags {
        page.line(&format!(
            "  {{ code = {}, period = {}, group = {}, place = {}, question = {}, treatment = {}, \
             replicate = {} }},",
            text(&bag.code),
            text(&bag.period),
            bag.group,
            bag.place,
            text(&bag.question),
            text(&bag.treatment),
            bag.replicate,
        ));
    }
    page.line("]");
    page.key("retired", texts(plan.retired_codes.iter().map(String::as_str)));
}

//! The form: fields in the order of a method, each a value of the plan's own text.

use super::field::{FormField, Input};
use crate::desk::{Wording, say};
use barm_documents::plan_text::Draft;
use barm_domain::finding::Field;
use barm_domain::plan::{Inquiry, Variable};

/// A section of the form.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Section {
    /// Its head.
    pub(crate) head: String,
    /// Its tables.
    pub(crate) tables: Vec<Table>,
    /// A list to which one can add: its place, and what the button says.
    pub(crate) add: Vec<(String, String)>,
}

/// Fields that belong together, such as those of one treatment.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Table {
    /// Its head, if it has one.
    pub(crate) head: String,
    /// Its fields.
    pub(crate) fields: Vec<FormField>,
    /// Its place, if it can be taken out, and what the button says.
    pub(crate) out: Option<(String, String)>,
}

/// Keys of a recipe with what they are called, in the order of a method.
const RECIPE: [&str; 11] = [
    "food",
    "food_amount",
    "enzyme",
    "enzyme_amount",
    "yeast",
    "yeast_amount",
    "water",
    "water_temperature",
    "bag",
    "card",
    "lies",
];

/// What a field of a recipe is called.
fn recipe_label(w: Wording, key: &str) -> String {
    match key {
        "food" => say!(w, "form-food"),
        "food_amount" => say!(w, "form-food-amount"),
        "enzyme" => say!(w, "form-enzyme"),
        "enzyme_amount" => say!(w, "form-enzyme-amount"),
        "yeast" => say!(w, "form-yeast"),
        "yeast_amount" => say!(w, "form-yeast-amount"),
        "water" => say!(w, "form-water"),
        "water_temperature" => say!(w, "form-water-temperature"),
        "bag" => say!(w, "form-bag"),
        "card" => say!(w, "form-card"),
        _ => say!(w, "form-lies"),
    }
}

fn choices(words: &[&str]) -> Input {
    Input::Choice(words.iter().map(|word| ((*word).to_owned(), (*word).to_owned())).collect())
}

fn input(key: &str) -> Input {
    match key {
        "inquiry" => choices(&Inquiry::ALL.map(Inquiry::word)),
        "variable" => choices(&Variable::ALL.map(Variable::words)),
        "yeast" => choices(&["instant", "active dry", "compressed", "none"]),
        "date" => Input::Date,
        "title" | "big_question" | "asks" => Input::Line,
        _ => Input::Short,
    }
}

struct Writer<'d> {
    w: Wording,
    draft: &'d mut Draft,
}

impl Writer<'_> {
    fn value(&mut self, name: &str) -> Option<String> {
        self.draft.value(&Field(name.to_owned()))
    }

    /// A field, written or not.
    fn field(&mut self, name: String, label: String) -> FormField {
        let value = self.value(&name).unwrap_or_default();
        let key = name.rsplit('.').next().unwrap_or(&name);
        let mut input = input(key);
        // A word that is none of the choices must still be seen, so that it can be mended.
        if let Input::Choice(choices) = &mut input
            && choices.iter().all(|(choice, _)| *choice != value)
        {
            let word =
                if value.is_empty() { say!(self.w, "form-not-said") } else { value.clone() };
            choices.insert(0, (value.clone(), word));
        }
        FormField { name, label, value, input, said: Vec::new() }
    }

    fn fields<const N: usize>(
        &mut self,
        table: &str,
        keys: [(&str, String); N],
    ) -> Vec<FormField> {
        let dot = if table.is_empty() { "" } else { "." };
        let field = |(key, label)| self.field(format!("{table}{dot}{key}"), label);
        keys.into_iter().map(field).collect()
    }

    /// The recipe keys that a treatment writes, and those of its question's variables.
    fn recipe(&mut self, table: &str, variables: &[String]) -> Vec<FormField> {
        let wanted = |key: &str| {
            variables.iter().any(|variable| match variable.as_str() {
                "food" => key == "food",
                "enzyme" => ["enzyme", "enzyme_amount"].contains(&key),
                other => other.replace(' ', "_") == key,
            })
        };
        let mut fields = Vec::new();
        for key in RECIPE {
            let name = format!("{table}.{key}");
            if wanted(key) || self.value(&name).is_some() {
                fields.push(self.field(name, recipe_label(self.w, key)));
            }
        }
        for place in 0..self.draft.count(&format!("{table}.extra")) {
            let extra = format!("{table}.extra[{place}]");
            let keys = [
                ("item", say!(self.w, "form-also")),
                ("amount", say!(self.w, "form-also-amount")),
            ];
            fields.extend(self.fields(&extra, keys));
        }
        fields
    }
}

/// The sections of the form, in the order of a method.
pub(super) fn sections(w: Wording, draft: &mut Draft) -> Vec<Section> {
    let mut form = Writer { w, draft };
    let questions = form.draft.count("question");
    let about = [
        ("title", say!(w, "form-title")),
        ("big_question", say!(w, "form-big-question")),
        ("grade", say!(w, "form-grade")),
        ("inquiry", say!(w, "form-inquiry")),
    ];
    let mut asked = plain(form.fields("", about));
    for q in 0..questions {
        let fields = form.fields(&format!("question[{q}]"), [("asks", say!(w, "form-asks"))]);
        asked.insert(q, table(String::new(), fields));
    }
    let base = [&RECIPE[0..2], &RECIPE[2..4], &RECIPE[4..6], &RECIPE[6..8], &RECIPE[8..]];
    let base = base.map(|keys| {
        let field = |key: &&str| form.field(format!("base.{key}"), recipe_label(w, key));
        table(String::new(), keys.iter().map(field).collect())
    });
    let times = [
        ("reading_interval", say!(w, "form-interval")),
        ("mixing", say!(w, "form-mixing")),
        ("clearing", say!(w, "form-clearing")),
        ("wet_before_zero", say!(w, "form-wet")),
    ];
    let times = form.fields("base", times);
    let tools = [
        ("thermometers", say!(w, "form-thermometers")),
        ("meters", say!(w, "form-meters")),
        ("rulers", say!(w, "form-rulers")),
        ("kettles", say!(w, "form-kettles")),
        ("balances", say!(w, "form-balances")),
        ("goggles", say!(w, "form-goggles")),
    ];
    let tools = form.fields("equipment", tools);
    vec![
        section(say!(w, "form-question"), asked),
        changes(&mut form, questions),
        section(say!(w, "form-same"), base.to_vec()),
        section(say!(w, "form-times"), plain(times)),
        controls(&mut form),
        day(&mut form),
        section(say!(w, "form-tools"), plain(tools)),
    ]
}

fn section(head: String, tables: Vec<Table>) -> Section {
    Section { head, tables, add: Vec::new() }
}

fn table(head: String, fields: Vec<FormField>) -> Table {
    Table { head, fields, out: None }
}

fn plain(fields: Vec<FormField>) -> Vec<Table> {
    vec![table(String::new(), fields)]
}

fn changes(form: &mut Writer<'_>, questions: usize) -> Section {
    let w = form.w;
    let mut all = section(say!(w, "form-changes"), Vec::new());
    for q in 0..questions {
        let own = format!("question[{q}]");
        let keys = [
            ("variable", say!(w, "form-one-thing")),
            ("reference", say!(w, "form-compared")),
            ("replicates", say!(w, "form-replicates")),
        ];
        let head = if questions > 1 {
            form.value(&format!("{own}.asks")).unwrap_or_default()
        } else {
            String::new()
        };
        let more = if head.is_empty() {
            say!(w, "form-add-kind")
        } else {
            say!(w, "form-add-kind-to", asks = head.as_str())
        };
        all.tables.push(table(head, form.fields(&own, keys)));
        let variables: Vec<String> = ["variable", "crossed_with"]
            .iter()
            .filter_map(|key| form.value(&format!("{own}.{key}")))
            .collect();
        for t in 0..form.draft.count(&format!("{own}.treatment")) {
            let place = format!("{own}.treatment[{t}]");
            let mut fields = form.fields(&place, [("name", say!(w, "form-name"))]);
            fields.extend(form.recipe(&place, &variables));
            let name = form.value(&format!("{place}.name")).unwrap_or_default();
            let out = Some((place, say!(w, "form-out", name = name)));
            all.tables.push(Table { head: String::new(), fields, out });
        }
        all.add.push((format!("{own}.treatment"), more));
    }
    all
}

fn controls(form: &mut Writer<'_>) -> Section {
    let w = form.w;
    let mut all = section(say!(w, "form-controls"), Vec::new());
    for c in 0..form.draft.count("control") {
        let place = format!("control[{c}]");
        let keys = [("name", say!(w, "form-name")), ("per_period", say!(w, "form-per-period"))];
        let mut fields = form.fields(&place, keys);
        fields.extend(form.recipe(&place, &[]));
        let name = form.value(&format!("{place}.name")).unwrap_or_default();
        all.tables.push(Table {
            head: String::new(),
            fields,
            out: Some((place, say!(w, "form-out", name = name))),
        });
    }
    all.add.push(("control".to_owned(), say!(w, "form-add-control")));
    all
}

fn day(form: &mut Writer<'_>) -> Section {
    let w = form.w;
    let mut all = section(say!(w, "form-when"), Vec::new());
    for d in 0..form.draft.count("day") {
        let place = format!("day[{d}]");
        let height = if form.value(&format!("{place}.pressure")).is_some() {
            ("pressure", say!(w, "form-pressure"))
        } else {
            ("altitude", say!(w, "form-altitude"))
        };
        let keys = [
            ("name", say!(w, "form-day")),
            ("date", say!(w, "form-date")),
            ("zone", say!(w, "form-zone")),
            ("room", say!(w, "form-room")),
            height,
        ];
        all.tables.push(table(String::new(), form.fields(&place, keys)));
    }
    for p in 0..form.draft.count("period") {
        let place = format!("period[{p}]");
        let keys = [
            ("name", say!(w, "form-period")),
            ("start", say!(w, "form-start")),
            ("length", say!(w, "form-length")),
            ("students", say!(w, "form-students")),
            ("groups", say!(w, "form-groups")),
        ];
        let fields = form.fields(&place, keys);
        let name = form.value(&format!("{place}.name")).unwrap_or_default();
        let out = Some((place, say!(w, "form-out-period", name = name)));
        all.tables.push(Table { head: String::new(), fields, out });
    }
    all.add.push(("period".to_owned(), say!(w, "form-add-period")));
    all
}

/// Adds to a list what makes sense there.
pub(super) fn add(w: Wording, draft: &mut Draft, list: &str) -> bool {
    let number = draft.count(list) + 1;
    let mut value = |field: String| draft.value(&Field(field)).unwrap_or_default();
    if list == "period" {
        let last = format!("period[{}]", number.saturating_sub(2));
        let keys = ["day", "start", "length", "students", "groups"];
        let values = keys.map(|key| value(format!("{last}.{key}")));
        let name = number.to_string();
        let mut all: Vec<(&str, &str)> = vec![("name", &name)];
        all.extend(keys.into_iter().zip(values.iter().map(String::as_str)));
        return draft.add(list, &all);
    }
    if list == "control" {
        let name = say!(w, "form-new-control", number = number.to_string());
        return draft.add(list, &[("name", &name), ("per_period", "1")]);
    }
    if list.ends_with(".treatment") {
        let name = say!(w, "form-new-kind", number = number.to_string());
        return draft.add(list, &[("name", &name)]);
    }
    false
}

/// Takes a table out of its list; with a period, what is said of its groups.
pub(super) fn out(draft: &mut Draft, table: &str) -> bool {
    let name = draft.value(&Field(format!("{table}.name")));
    if !draft.take_out(table) {
        return false;
    }
    if table.starts_with("period[") {
        for place in (0..draft.count("group")).rev() {
            let group = format!("group[{place}]");
            if draft.value(&Field(format!("{group}.period"))) == name {
                draft.take_out(&group);
            }
        }
    }
    true
}

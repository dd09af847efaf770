//! The form: fields in the order of a method, each a value of the plan's own text.

use super::field::{FormField, Input};
use barm_documents::plan_text::Draft;
use barm_domain::finding::Field;
use barm_domain::plan::{Inquiry, Variable};

/// A section of the form.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Section {
    /// Its head.
    pub(crate) head: &'static str,
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
const RECIPE: &[(&str, &str)] = &[
    ("food", "Food"),
    ("food_amount", "How much food"),
    ("enzyme", "Enzyme"),
    ("enzyme_amount", "How much enzyme"),
    ("yeast", "Yeast"),
    ("yeast_amount", "How much yeast"),
    ("water", "Water"),
    ("water_temperature", "Water, how warm"),
    ("bag", "Bag"),
    ("card", "Card"),
    ("lies", "Lies on"),
];

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
    draft: &'d mut Draft,
}

impl Writer<'_> {
    fn value(&mut self, name: &str) -> Option<String> {
        self.draft.value(&Field(name.to_owned()))
    }

    /// A field, written or not.
    fn field(&mut self, name: String, label: &str) -> FormField {
        let value = self.value(&name).unwrap_or_default();
        let key = name.rsplit('.').next().unwrap_or(&name);
        let mut input = input(key);
        // A word that is none of the choices must still be seen, so that it can be mended.
        if let Input::Choice(choices) = &mut input
            && choices.iter().all(|(choice, _)| *choice != value)
        {
            let word = if value.is_empty() { "not said".to_owned() } else { value.clone() };
            choices.insert(0, (value.clone(), word));
        }
        FormField { name, label: label.to_owned(), value, input, said: Vec::new() }
    }

    fn fields(&mut self, table: &str, keys: &[(&str, &str)]) -> Vec<FormField> {
        let dot = if table.is_empty() { "" } else { "." };
        keys.iter()
            .map(|(key, label)| self.field(format!("{table}{dot}{key}"), label))
            .collect()
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
        for (key, label) in RECIPE {
            let name = format!("{table}.{key}");
            if wanted(key) || self.value(&name).is_some() {
                fields.push(self.field(name, label));
            }
        }
        for place in 0..self.draft.count(&format!("{table}.extra")) {
            let extra = format!("{table}.extra[{place}]");
            fields
                .extend(self.fields(&extra, &[("item", "Also"), ("amount", "How much of it")]));
        }
        fields
    }
}

/// The sections of the form, in the order of a method.
pub(super) fn sections(draft: &mut Draft) -> Vec<Section> {
    let mut w = Writer { draft };
    let questions = w.draft.count("question");
    let mut asked = plain(w.fields(
        "",
        &[
            ("title", "Title"),
            ("big_question", "The class’s big question"),
            ("grade", "Grade"),
            ("inquiry", "How much is left to the students"),
        ],
    ));
    for q in 0..questions {
        let fields =
            w.fields(&format!("question[{q}]"), &[("asks", "What do we want to find out?")]);
        asked.insert(q, table(String::new(), fields));
    }
    let base = [&RECIPE[0..2], &RECIPE[2..4], &RECIPE[4..6], &RECIPE[6..8], &RECIPE[8..]];
    let base = base.map(|keys| table(String::new(), w.fields("base", keys)));
    let times = [
        ("reading_interval", "Read every"),
        ("mixing", "From the bell to the zero reading"),
        ("clearing", "To clear up before the bell"),
        ("wet_before_zero", "From wetting the yeast to zero"),
    ];
    let times = w.fields("base", &times);
    let tools = ["thermometers", "meters", "rulers", "kettles", "balances", "goggles"];
    let tools = tools.map(|key| (key, key)).map(|(key, word)| {
        let label = word[..1].to_uppercase() + &word[1..];
        w.field(format!("equipment.{key}"), &label)
    });
    vec![
        section("Question", asked),
        changes(&mut w, questions),
        section("What stays the same", base.to_vec()),
        section("Times", plain(times)),
        controls(&mut w),
        day(&mut w),
        section("Tools for one class", plain(tools.to_vec())),
    ]
}

fn section(head: &'static str, tables: Vec<Table>) -> Section {
    Section { head, tables, add: Vec::new() }
}

fn table(head: String, fields: Vec<FormField>) -> Table {
    Table { head, fields, out: None }
}

fn plain(fields: Vec<FormField>) -> Vec<Table> {
    vec![table(String::new(), fields)]
}

fn changes(w: &mut Writer<'_>, questions: usize) -> Section {
    let mut all = section("What changes", Vec::new());
    for q in 0..questions {
        let own = format!("question[{q}]");
        let keys = [
            ("variable", "One thing"),
            ("reference", "Compared with"),
            ("replicates", "Bags of each kind"),
        ];
        let head = if questions > 1 {
            w.value(&format!("{own}.asks")).unwrap_or_default()
        } else {
            String::new()
        };
        all.tables.push(table(head, w.fields(&own, &keys)));
        let variables: Vec<String> = ["variable", "crossed_with"]
            .iter()
            .filter_map(|key| w.value(&format!("{own}.{key}")))
            .collect();
        for t in 0..w.draft.count(&format!("{own}.treatment")) {
            let place = format!("{own}.treatment[{t}]");
            let mut fields = w.fields(&place, &[("name", "Name")]);
            fields.extend(w.recipe(&place, &variables));
            let name = w.value(&format!("{place}.name")).unwrap_or_default();
            let out = Some((place, format!("Take out {name}")));
            all.tables.push(Table { head: String::new(), fields, out });
        }
        all.add.push((format!("{own}.treatment"), "Add a kind of bag".to_owned()));
    }
    all
}

fn controls(w: &mut Writer<'_>) -> Section {
    let mut all = section("Controls on your bench", Vec::new());
    for c in 0..w.draft.count("control") {
        let place = format!("control[{c}]");
        let mut fields =
            w.fields(&place, &[("name", "Name"), ("per_period", "Bags in each period")]);
        fields.extend(w.recipe(&place, &[]));
        let name = w.value(&format!("{place}.name")).unwrap_or_default();
        all.tables.push(Table {
            head: String::new(),
            fields,
            out: Some((place, format!("Take out {name}"))),
        });
    }
    all.add.push(("control".to_owned(), "Add a control".to_owned()));
    all
}

fn day(w: &mut Writer<'_>) -> Section {
    let mut all = section("When and where", Vec::new());
    for d in 0..w.draft.count("day") {
        let place = format!("day[{d}]");
        let height = if w.value(&format!("{place}.pressure")).is_some() {
            ("pressure", "Air pressure in the room")
        } else {
            ("altitude", "Height above the sea")
        };
        let keys = [
            ("name", "Day"),
            ("date", "Date"),
            ("zone", "Time zone"),
            ("room", "Room"),
            height,
        ];
        all.tables.push(table(String::new(), w.fields(&place, &keys)));
    }
    for p in 0..w.draft.count("period") {
        let place = format!("period[{p}]");
        let keys = [
            ("name", "Period"),
            ("start", "Begins"),
            ("length", "Length"),
            ("students", "Students"),
            ("groups", "Groups"),
        ];
        let fields = w.fields(&place, &keys);
        let name = w.value(&format!("{place}.name")).unwrap_or_default();
        let out = Some((place, format!("Take out period {name}")));
        all.tables.push(Table { head: String::new(), fields, out });
    }
    all.add.push(("period".to_owned(), "Add a period".to_owned()));
    all
}

/// Adds to a list what makes sense there.
pub(super) fn add(draft: &mut Draft, list: &str) -> bool {
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
        let name = format!("Control {number}");
        return draft.add(list, &[("name", &name), ("per_period", "1")]);
    }
    if list.ends_with(".treatment") {
        let name = format!("New kind {number}");
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

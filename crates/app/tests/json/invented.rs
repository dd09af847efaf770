//! The invented plan: what the program answers on it, and what it says read past the program.

use crate::program;
use serde_json::Value;
use std::collections::BTreeSet;
use std::fs;
use std::sync::OnceLock;

/// What the program answers on the invented plan; it must end well and say nothing else.
pub(crate) fn answer_text(arguments: &[&str]) -> String {
    let (out, err) = program::run(&program::invented(), arguments).ended(0);
    assert_eq!(err, "", "a log holds answers only");
    for word in ["NaN", "Infinity", ":inf", ":-inf"] {
        assert!(!out.contains(word), "{word} in {arguments:?}");
    }
    out
}

pub(crate) fn answer(arguments: &[&str]) -> Value {
    let out = answer_text(arguments);
    assert_eq!(out.lines().count(), 1, "one answer, one line");
    serde_json::from_str(&out).expect("JSON")
}

pub(crate) fn prediction() -> &'static Value {
    static ANSWER: OnceLock<Value> = OnceLock::new();
    ANSWER.get_or_init(|| answer(&["predict", "plan.toml", "--json", "--draws", "64"]))
}

/// A treatment of the invented plan that [`without_one`] gives more water than its bag holds.
pub(crate) const SOAKED: &str = "Oat flour";

/// The forecast of the invented plan with a treatment that has none.
pub(crate) fn without_one() -> &'static Value {
    static ANSWER: OnceLock<Value> = OnceLock::new();
    ANSWER.get_or_init(|| {
        let folder = tempfile::tempdir().expect("a folder");
        program::soak(folder.path(), SOAKED);
        let arguments = ["predict", "plan.toml", "--json", "--draws", "64"];
        let (out, _) = program::run(folder.path(), &arguments).ended(1);
        serde_json::from_str(&out).expect("JSON")
    })
}

pub(crate) fn power() -> &'static Value {
    static ANSWER: OnceLock<Value> = OnceLock::new();
    ANSWER.get_or_init(|| answer(&["power", "plan.toml", "--json", "--classes", "4"]))
}

/// The same with a treatment that cannot be followed.
pub(crate) fn power_without_one() -> &'static Value {
    static ANSWER: OnceLock<Value> = OnceLock::new();
    ANSWER.get_or_init(|| {
        let folder = tempfile::tempdir().expect("a folder");
        program::soak(folder.path(), SOAKED);
        let arguments = ["power", "plan.toml", "--json", "--classes", "4"];
        let (out, _) = program::run(folder.path(), &arguments).ended(1);
        serde_json::from_str(&out).expect("JSON")
    })
}

pub(crate) fn analysis() -> &'static Value {
    static ANSWER: OnceLock<Value> = OnceLock::new();
    ANSWER.get_or_init(|| answer(&["analyze", "plan.toml", "readings.csv", "--json"]))
}

/// A treatment of the invented plan that [`too_warm`] gives hotter water than yeast's law is known for.
pub(crate) const HEATED: &str = "Maple syrup";

/// Two kinds of bags on a breath meter, the second with a slip.
const METER: &str = "\nbag,period,minute,turn,meter (%)\nclean air,1,,1,0.01\nP1-02A-8,1,24,2,0.05\n\
                     P1-01C-8,1,24,3,0.02\nP1-03A-4,1,24,4,3\n";

/// What the program answers on the invented plan with a treatment that goes beyond what is known: its
/// forecast, and the analysis of the invented readings.
pub(crate) fn too_warm() -> &'static [Value; 2] {
    static ANSWER: OnceLock<[Value; 2]> = OnceLock::new();
    ANSWER.get_or_init(|| {
        let folder = tempfile::tempdir().expect("a folder");
        program::heat(folder.path(), HEATED);
        let readings = program::invented().join("readings.csv");
        let readings = fs::read_to_string(readings).expect("the readings") + METER;
        fs::write(folder.path().join("readings.csv"), readings).expect("written");
        let of = |arguments: &[&str]| {
            let (out, _) = program::run(folder.path(), arguments).ended(0);
            serde_json::from_str(&out).expect("JSON")
        };
        [
            of(&["predict", "plan.toml", "--json", "--draws", "64"]),
            of(&["analyze", "plan.toml", "readings.csv", "--json"]),
        ]
    })
}

/// A bag that leaks in [`with_day`].
pub(crate) const LEAKING: &str = "P1-01A-C";

/// The readings with a bag that loses more of its rise from minute to minute.
fn leaking(readings: &str) -> String {
    let mut zero = 0.0;
    let line = |line: &str| {
        let cells: Vec<&str> = line.split(',').collect();
        let [LEAKING, minute, height, rest @ ..] = cells.as_slice() else {
            return line.to_owned();
        };
        let [minute, height] =
            [minute, height].map(|cell| cell.parse::<f64>().expect("a number"));
        if minute < 0.5 {
            zero = height;
        }
        let left = zero + ((height - zero) * (1.0 - 0.035 * minute)).round();
        format!("{LEAKING},{minute},{left},{}", rest.join(","))
    };
    readings.lines().map(line).collect::<Vec<_>>().join("\n")
}

/// The analysis of the invented day, on which a bag leaks, with what it teaches.
pub(crate) fn with_day() -> &'static Value {
    static ANSWER: OnceLock<Value> = OnceLock::new();
    ANSWER.get_or_init(|| {
        let folder = tempfile::tempdir().expect("a folder");
        let of = |name: &str| fs::read_to_string(program::invented().join(name)).expect(name);
        fs::write(folder.path().join("plan.toml"), of("plan.toml")).expect("written");
        let readings = leaking(&of("readings.csv"));
        fs::write(folder.path().join("readings.csv"), readings).expect("written");
        let arguments = ["analyze", "plan.toml", "readings.csv", "--json", "--day"];
        let (out, _) = program::run(folder.path(), &arguments).ended(0);
        serde_json::from_str(&out).expect("JSON")
    })
}

/// What a class could make after the invented day.
pub(crate) fn proposals() -> &'static Value {
    static ANSWER: OnceLock<Value> = OnceLock::new();
    ANSWER.get_or_init(|| answer(&["round-two", "plan.toml", "readings.csv", "--json"]))
}

/// The first period of the invented day, which leaves much open, with a second round; and a row for a bag that that
/// round does not have.
pub(crate) fn both_rounds() -> &'static Value {
    static ANSWER: OnceLock<Value> = OnceLock::new();
    ANSWER.get_or_init(|| {
        let folder = tempfile::tempdir().expect("a folder");
        let plan = program::invented().join("plan.toml");
        fs::copy(plan, folder.path().join("plan.toml")).expect("the plan");
        let day = program::first_period();
        fs::write(folder.path().join("readings.csv"), day).expect("written");
        let take =
            ["round-two", "plan.toml", "readings.csv", "--take", "1", "--to", "second.toml"];
        program::run(folder.path(), &take).ended(0);
        let second = fs::read_to_string(folder.path().join("second.toml")).expect("the plan");
        let second: toml::Table = second.parse().expect("TOML");
        let list = second["bag_list"].as_table().expect("a bag list");
        let mut readings = "bag,minute,height (mm)\nP1-01A-C,0,5\n".to_owned();
        for (at, bag) in tables(list, "bags").into_iter().enumerate() {
            for minute in [0, 4, 8, 12, 16, 20, 24] {
                let rise = (1 + at % 3) * minute / 8;
                readings.push_str(&format!("{},{minute},{}\n", word(bag, "code"), 5 + rise));
            }
        }
        fs::write(folder.path().join("second.csv"), readings).expect("written");
        let pool =
            ["round-two", "plan.toml", "readings.csv", "--pool", "second.toml", "second.csv"];
        let (out, err) =
            program::run(folder.path(), &[&pool[..], &["--json"]].concat()).ended(0);
        assert_eq!(err, "");
        serde_json::from_str(&out).expect("JSON")
    })
}

pub(crate) fn check() -> &'static Value {
    static ANSWER: OnceLock<Value> = OnceLock::new();
    ANSWER.get_or_init(|| answer(&["check", "plan.toml", "--json"]))
}

pub(crate) fn prep() -> &'static Value {
    static ANSWER: OnceLock<Value> = OnceLock::new();
    ANSWER.get_or_init(|| answer(&["prep", "plan.toml", "--json"]))
}

pub(crate) fn schedule() -> &'static Value {
    static ANSWER: OnceLock<Value> = OnceLock::new();
    ANSWER.get_or_init(|| answer(&["schedule", "plan.toml", "--json"]))
}

pub(crate) fn protocol() -> &'static Value {
    static ANSWER: OnceLock<Value> = OnceLock::new();
    ANSWER.get_or_init(|| answer(&["pilot", "plan.toml", "--json"]))
}

/// What a pilot of the invented plan taught.
pub(crate) fn lesson() -> &'static Value {
    static ANSWER: OnceLock<Value> = OnceLock::new();
    ANSWER.get_or_init(|| {
        let folder = tempfile::tempdir().expect("a folder");
        let file = folder.path().join("pilot.csv");
        let readings = crate::pilot_school::readings(&crate::pilot_school::plan());
        fs::write(&file, readings).expect("written");
        let file = file.to_str().expect("a name");
        answer(&["pilot", "plan.toml", file, "--json", "--dry-run"])
    })
}

pub(crate) fn facts() -> &'static Value {
    static ANSWER: OnceLock<Value> = OnceLock::new();
    ANSWER.get_or_init(|| answer(&["facts", "--json"]))
}

/// The invented plan as plain TOML, read past the program.
pub(crate) fn plan() -> toml::Table {
    let text = fs::read_to_string(program::invented().join("plan.toml")).expect("the plan");
    text.parse().expect("the plan is TOML")
}

pub(crate) fn tables<'a>(table: &'a toml::Table, key: &str) -> Vec<&'a toml::Table> {
    let list = table.get(key).and_then(toml::Value::as_array).into_iter().flatten();
    list.filter_map(toml::Value::as_table).collect()
}

pub(crate) fn word<'a>(table: &'a toml::Table, key: &str) -> &'a str {
    table.get(key).and_then(toml::Value::as_str).unwrap_or_else(|| panic!("no “{key}”"))
}

pub(crate) fn bag_codes() -> BTreeSet<String> {
    let plan = plan();
    let list = plan["bag_list"].as_table().expect("a bag list");
    tables(list, "bags").iter().map(|bag| word(bag, "code").to_owned()).collect()
}

/// Who does what on the invented day.
pub(crate) fn assignment() -> &'static Value {
    static ANSWER: OnceLock<Value> = OnceLock::new();
    ANSWER.get_or_init(|| answer(&["assign", "plan.toml", "wishes.csv", "--json"]))
}

/// The invented day with a group that is set to what no group of its period may do.
pub(crate) fn clash() -> &'static Value {
    static ANSWER: OnceLock<Value> = OnceLock::new();
    ANSWER.get_or_init(|| {
        let folder = tempfile::tempdir().expect("a folder");
        let plan = program::invented().join("plan.toml");
        fs::copy(plan, folder.path().join("plan.toml")).expect("the plan");
        let wishes = "period,group,set,question,most\n1,3,enzyme,,\n1,4,food,,\n1,,,enzyme,0\n";
        fs::write(folder.path().join("wishes.csv"), wishes).expect("written");
        let arguments = ["assign", "plan.toml", "wishes.csv", "--json"];
        let (out, _) = program::run(folder.path(), &arguments).ended(1);
        serde_json::from_str(&out).expect("JSON")
    })
}

/// How far the words can be trusted, by very few classes.
pub(crate) fn trust() -> &'static Value {
    static ANSWER: OnceLock<Value> = OnceLock::new();
    ANSWER.get_or_init(|| answer(&["trust", "--json", "--classes", "2"]))
}

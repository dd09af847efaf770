//! A class whose every secret carries a mark, and everybody who may try to see them.

use super::class::{ANSWERED, Class, DURING_2, HERE, NETWORK, plan_text};
use super::students::{tables, zip};
use crate::desk::doors::JoinKey;
use crate::desk::room::Kind;
use crate::desk::room::proposals::{Row, hand_in, send_back};
use crate::desk::room::roster::{
    ListRow, SavedList, TypedRow, roster_view, save_list, take_roster,
};
use crate::desk::{Outlook, Wording};
use crate::web::routes::Role;
use barm_domain::code::BagCode;
use barm_domain::outlook::{Curve, Entry as Foreseen, Upper};
use barm_domain::proposal::Written;
use barm_domain::record::{Key, Subject, Truth, What, Who, WordsKey};
use jiff::civil::date;

/// Something that must not come out, and to whom it may.
pub(super) struct Mark {
    pub(super) what: &'static str,
    pub(super) text: String,
    /// Whether this caller may receive it.
    pub(super) may: fn(&Visitor) -> bool,
}

/// Somebody who calls everything.
#[derive(Debug, Clone)]
pub(super) struct Visitor {
    pub(super) name: &'static str,
    pub(super) role: Role,
    pub(super) period: &'static str,
    pub(super) group: u32,
    pub(super) cookie: (&'static str, String),
    pub(super) from: &'static str,
}

pub(super) const NOBODY: u32 = 99;

fn visitor(
    name: &'static str,
    role: Role,
    (period, group): (&'static str, u32),
    cookie: (&'static str, String),
) -> Visitor {
    let from = if role == Role::Teacher { HERE } else { NETWORK };
    Visitor { name, role, period, group, cookie, from }
}

pub(super) fn teacher(who: &Visitor) -> bool {
    who.role == Role::Teacher
}

pub(super) fn bag(class: &Class, period: &str, group: u32) -> BagCode {
    class.room.read(|scene| {
        let bags = &scene.plan.bags;
        let own = bags.iter().find(|bag| bag.period == period && bag.group == group);
        own.expect("a bag").code.parse().expect("a code")
    })
}

/// Heights that a group writes down. One decimal place, as pages show it.
fn measure(class: &Class, period: &str, group: u32, zero: f64, later: f64, guess: f64) {
    let code = bag(class, period, group);
    let who = || Who::Group { period: period.into(), group };
    let subject = Subject::Group { period: period.into(), group };
    let words =
        WordsKey(code.to_string().bytes().fold(7, |key, byte| key * 256 + u128::from(byte)));
    let text = format!("MARKWORDS{period}{group} because I say so");
    let store = class.web.shelf.keep_words(class.room.id, words, "guess", &text);
    store.expect("kept");
    let kept = class.web.shelf.words(words).expect("read");
    assert!(
        kept.is_some_and(|kept| kept.contains("MARKWORDS")),
        "it lies where it could be read"
    );
    let guess = What::Guess { expects: vec![(code, guess)], because: Some(words) };
    class.note(subject, who(), guess);
    class.note(Subject::Bag(code), who(), What::Zero { height_mm: zero });
    let reading = What::Reading { planned: Some(4), height_mm: later };
    class.note(Subject::Bag(code), who(), reading);
}

/// A forecast whose every number stands out.
pub(super) fn forecast(class: &Class) {
    let same = |value: f64| Curve {
        median: vec![value; 30],
        low: vec![value + 1.0; 30],
        high: vec![value + 2.0; 30],
    };
    let entries = class.room.read(|scene| {
        scene
            .plan
            .treatments()
            .map(|(question, treatment)| Foreseen {
                question: question.to_owned(),
                treatment: treatment.name.clone(),
                reference: false,
                control: false,
                beside: None,
                rise_mm: same(73_911.0),
                gas_ml: same(73_921.0),
                ethanol_g: same(73_931.0),
                celsius: vec![73_941.0; 30],
                peak_fill: 73_951.0,
                vent_by_min: Some(73_961.0),
                readable_at_min: Some(73_971),
                chance_readable: Some(0.739_81),
                upper: Upper { ethanol_percent_last: 73_991.0, hottest_celsius: 74_001.0 },
                beyond: Vec::new(),
            })
            .collect()
    });
    class.room.expect(Outlook { entries, treated: Vec::new(), failed: Vec::new() });
}

/// Whether a text holds a mark as a word of its own.
pub(super) fn holds(text: &str, mark: &str) -> bool {
    text.match_indices(mark).any(|(at, _)| {
        let edge = |c: Option<char>| !c.is_some_and(|c| c.is_ascii_alphanumeric());
        edge(text[..at].chars().next_back()) && edge(text[at + mark.len()..].chars().next())
    })
}

pub(super) fn marks(class: &Class, visitors: &[Visitor]) -> Vec<Mark> {
    let mut marks = Vec::new();
    let mut mark = |what, text: &str, may: fn(&Visitor) -> bool| {
        marks.push(Mark { what, text: text.to_owned(), may });
    };
    for number in
        ["7391", "7392", "7393", "7394", "7395", "7396", "7397", "7398", "7399", "7400"]
    {
        for last in 1..=3 {
            mark("a forecast", &format!("{number}{last}"), teacher);
        }
    }
    mark("a forecast", "0.73981", teacher);
    mark("what the teacher answered", ANSWERED, teacher);
    mark("what the teacher calls a lot", "MARKLOT", teacher);
    for text in ["MARKASKS12", "MARKKEEPS12", "MARKEXPECTS12", "MARKBECAUSE12", "MARKBACK12"] {
        mark("what group 2 proposes, and the answer", text, |who| {
            teacher(who) || who.period == "1" && who.group == 2
        });
    }
    for text in ["MARKASKS21", "MARKKEEPS21", "MARKEXPECTS21", "MARKBECAUSE21", "MARKBACK21"] {
        mark("what a group of period 2 proposes, and the answer", text, |who| {
            teacher(who) || who.period == "2" && who.group == 1
        });
    }
    mark("a student of a roster", "MARKSTUDENT", teacher);
    mark("what a bag is in truth", TRUTH, teacher);
    mark("by which rule a bag is set aside", RULE, teacher);
    mark("a rule", "MARKSAYS", teacher);
    mark("the meter", "7.773", teacher);
    mark("a jug", "43.7", teacher);
    mark("words of group 2", "MARKWORDS12", |who| {
        teacher(who) || who.period == "1" && who.group == 2
    });
    mark("words of another period", "MARKWORDS21", |who| {
        teacher(who) || who.period == "2" && who.group == 1
    });
    for height in ["62.7", "87.4", "24.7", "113.9"] {
        mark("group 2 of period 1", height, |who| {
            teacher(who) || who.period == "1" && (who.group == 2 || who.role == Role::Round)
        });
    }
    for height in ["63.3", "88.6", "25.3", "114.8"] {
        mark("group 1 of period 2", height, |who| {
            teacher(who) || who.period == "2" && (who.group == 1 || who.role == Role::Round)
        });
    }
    let (one, two) = (class.codes("1"), class.codes("2"));
    for (number, code) in &one.groups {
        match number {
            1 => mark("group code", code, |who| {
                teacher(who) || who.period == "1" && who.group == 1
            }),
            2 => mark("group code", code, |who| {
                teacher(who) || who.period == "1" && who.group == 2
            }),
            _ => mark("group code", code, teacher),
        }
    }
    for (number, code) in &two.groups {
        match number {
            1 => mark("group code", code, |who| {
                teacher(who) || who.period == "2" && who.group == 1
            }),
            _ => mark("group code", code, teacher),
        }
    }
    mark("period code", &one.period, |who| teacher(who) || who.period == "1");
    mark("period code", &two.period, |who| teacher(who) || who.period == "2");
    mark("walk-round code", &one.round, teacher);
    mark("walk-round code", &two.round, teacher);
    mark("wall code", &one.wall, |who| teacher(who) || who.role == Role::Wall);
    mark("wall code", &two.wall, teacher);
    mark("aide code", &one.aide, teacher);
    for visitor in visitors.iter().filter(|visitor| !visitor.cookie.1.is_empty()) {
        marks.push(Mark { what: "a token", text: visitor.cookie.1.clone(), may: |_| false });
    }
    marks.push(Mark { what: "a hash", text: "$argon2".into(), may: |_| false });
    marks
}

/// A treatment that no visitor's group makes.
const TRUTH: &str = "MARKTRUTH";
/// A rule by which bags are set aside.
const RULE: &str = "markrule";

/// The invented plan with marks in what only the teacher may know.
fn marked_plan() -> String {
    let text = plan_text();
    let marked = text
        .replace("\"Nonfat dry milk + lactase\"", &format!("\"{TRUTH}\""))
        .replace("rule = \"moved\"", &format!("rule = \"{RULE}\""))
        .replace("The card was pressed", "MARKSAYS the card was pressed");
    assert_eq!(marked.matches("MARKSAYS").count(), 1);
    assert!(marked.contains(&format!("rule = \"{RULE}\"")));
    assert!(marked.matches(TRUTH).count() > 8);
    marked
}

/// What groups of two periods propose, the answers to them, and what the teacher noted of bags.
fn secrets(class: &Class) {
    for (period, group) in [("1", 2), ("2", 1)] {
        let mark = |what: &str| format!("MARK{what}{period}{group}");
        let written = Written {
            period: period.into(),
            group,
            asks: mark("ASKS"),
            changes: "food".into(),
            levels: vec!["honey".into(), "white sugar".into()],
            keeps: mark("KEEPS"),
            beside: "No food".into(),
            bags: 2,
        };
        let row = Row { line: 0, written, expects: mark("EXPECTS"), because: mark("BECAUSE") };
        let now = class.web.now();
        hand_in(&class.room, &row, now).expect("handed in");
        let own = (period.to_owned(), group);
        send_back(&class.room, &own, &mark("BACK"), now).expect("sent back");
        let subject = || Subject::Bag(bag(class, period, group));
        let truth = Truth { treatment: Some(TRUTH.into()), group: None };
        class.note(subject(), Who::Teacher, What::SetRight(truth));
        let meter = What::Meter { percent: 7.773, turn: Some(group) };
        class.note(subject(), Who::Teacher, meter);
        class.note(subject(), Who::Teacher, What::SetAside { rule: RULE.into() });
        let jug = What::Jug { celsius: 43.7, jug: 1 };
        class.note(Subject::Period(period.into()), Who::Teacher, jug);
    }
}

/// Students of period 1, each in a group.
fn students(class: &Class) {
    let (zip, now) = (zip(&tables("MARKSTUDENT")), class.web.now());
    let chosen = [Some(1), None, None, None];
    let taken = take_roster(&class.room, &zip, (date(2027, 3, 9), &chosen), now);
    assert!(matches!(taken, Ok(Ok(1))), "a class for period 1");
    let view = roster_view(&class.room, Wording::english()).expect("a view");
    let of = |row: &ListRow| {
        let group = row.place.group.map(|group| group.to_string()).unwrap_or_default();
        TypedRow { group, ..TypedRow::default() }
    };
    let rows: Vec<TypedRow> = view.periods[0].rows.iter().map(of).collect();
    let saved = save_list(&class.room, ("1", view.periods[0].stamp), &rows, now);
    assert_eq!(saved.expect("saved"), SavedList::Kept);
}

/// A meter that a pilot tried, by a name of the teacher's.
const LOTS: &str = "format = 1\n[[meter]]\nlot = \"MARKLOT\"\ndate = 2027-03-02\nin_use = true\n\
     measured = [\"meter\"]\nlog_gain = 0.1\nlog_gain_doubt = 0.05\nzero_percent = 0.0\n\
     zero_doubt = 0.01\n";

/// A class with a record that is full of marks, and everybody who may try to see them.
pub(super) fn staged(now: &str) -> (Class, Vec<Visitor>) {
    let class = Class::of(&marked_plan(), now, Kind::Real);
    let kept = class.room.keep_pilot(LOTS, "", Key::new(1, 2), class.web.now());
    kept.expect("kept with the plan");
    forecast(&class);
    secrets(&class);
    students(&class);
    class.note(Subject::Period("1".into()), Who::Teacher, What::Began);
    measure(&class, "1", 1, 20.0, 31.0, 40.0);
    measure(&class, "1", 2, 62.7, 87.4, 113.9);
    measure(&class, "2", 1, 63.3, 88.6, 114.8);
    let one = class.codes("1");
    let old = class.group("1", 3);
    class.web.shelf.doors.leave(&old).expect("signed out");
    let page = |code: &str| class.joined(JoinKey::Page(code));
    let mut visitors = vec![
        visitor("the teacher", Role::Teacher, ("", NOBODY), ("barm-teacher", class.teacher())),
        visitor("group 1", Role::Group, ("1", 1), ("barm-bench", class.group("1", 1))),
        visitor("group 2", Role::Group, ("1", 2), ("barm-bench", class.group("1", 2))),
        visitor("the wall", Role::Wall, ("1", NOBODY), ("barm-wall", page(&one.wall))),
        visitor("the round", Role::Round, ("1", NOBODY), ("barm-round", page(&one.round))),
        visitor("an aide", Role::Aide, ("", NOBODY), ("barm-aide", page(&one.aide))),
        visitor("nobody", Role::Anyone, ("", NOBODY), ("barm-bench", String::new())),
        visitor("somebody out", Role::Anyone, ("", NOBODY), ("barm-bench", old)),
        visitor("a liar", Role::Anyone, ("", NOBODY), ("barm-teacher", "a".repeat(64))),
        visitor(
            "a borrower",
            Role::Anyone,
            ("", NOBODY),
            ("barm-teacher", class.group("1", 4)),
        ),
    ];
    if now == DURING_2 {
        let own = ("barm-bench", class.group("2", 1));
        visitors.push(visitor("group 1 of period 2", Role::Group, ("2", 1), own));
    }
    (class, visitors)
}

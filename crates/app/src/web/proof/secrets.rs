//! Nobody receives what is not theirs: every address, every method, every role, every mark.

use super::class::{ANSWERED, Call, Class, DURING_1, DURING_2, HERE, NETWORK};
use crate::desk::Outlook;
use crate::desk::doors::JoinKey;
use crate::desk::room::Kind;
use crate::web::routes::{Role, Route, table};
use axum::body::Body;
use axum::http::Method;
use barm_domain::code::BagCode;
use barm_domain::outlook::{Curve, Entry as Foreseen, Upper};
use barm_domain::record::{Subject, What, Who, WordsKey};
use std::time::Duration;
use tokio_stream::StreamExt;

/// Something that must not come out, and to whom it may.
struct Mark {
    what: &'static str,
    text: String,
    /// Whether this caller may receive it.
    may: fn(&Visitor) -> bool,
}

/// Somebody who calls everything.
#[derive(Debug, Clone)]
struct Visitor {
    name: &'static str,
    role: Role,
    period: &'static str,
    group: u32,
    cookie: (&'static str, String),
    from: &'static str,
}

const NOBODY: u32 = 99;

fn visitor(
    name: &'static str,
    role: Role,
    (period, group): (&'static str, u32),
    cookie: (&'static str, String),
) -> Visitor {
    let from = if role == Role::Teacher { HERE } else { NETWORK };
    Visitor { name, role, period, group, cookie, from }
}

fn teacher(who: &Visitor) -> bool {
    who.role == Role::Teacher
}

fn bag(class: &Class, period: &str, group: u32) -> BagCode {
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
    let guess = What::Guess { expects: vec![(code, guess)], because: Some(words) };
    class.note(subject, who(), guess);
    class.note(Subject::Bag(code), who(), What::Zero { height_mm: zero });
    let reading = What::Reading { planned: Some(4), height_mm: later };
    class.note(Subject::Bag(code), who(), reading);
}

/// A forecast whose every number stands out.
fn forecast(class: &Class) {
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
            })
            .collect()
    });
    class.room.expect(Outlook { entries, treated: Vec::new(), failed: Vec::new() });
}

/// Whether a text holds a mark as a word of its own.
fn holds(text: &str, mark: &str) -> bool {
    text.match_indices(mark).any(|(at, _)| {
        let edge = |c: Option<char>| !c.is_some_and(|c| c.is_ascii_alphanumeric());
        edge(text[..at].chars().next_back()) && edge(text[at + mark.len()..].chars().next())
    })
}

fn marks(class: &Class, visitors: &[Visitor]) -> Vec<Mark> {
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

/// The path with something that is there in place of each name.
fn filled(class: &Class, path: &str) -> String {
    let code = bag(class, "1", 2).to_string();
    let name = if path.starts_with("/a/") { "tokens.css" } else { "x" };
    let id = class.room.id.to_string();
    let with = [
        ("{id}", id.as_str()),
        ("{period}", "1"),
        ("{version}", "1"),
        ("{group}", "2"),
        ("{bag}", &code),
        ("{code}", &code),
        ("{name}", name),
    ];
    let path =
        with.iter().fold(path.to_owned(), |path, (name, value)| path.replace(name, value));
    assert!(!path.contains('{'), "tell this walk what to put in place of {path}");
    path
}

/// What comes back: head and body; of a stream, what it says at first and after a change.
async fn answer(class: &Class, call: Call) -> (u16, String) {
    let response = class.open(call).await;
    let (parts, body) = response.into_parts();
    let mut text = format!("{:?}\n", parts.headers);
    let stream = parts.headers.get("content-type").is_some_and(|k| k == "text/event-stream");
    text.push_str(&if stream { frames(class, body).await } else { whole(body).await });
    (parts.status.as_u16(), text)
}

async fn whole(body: Body) -> String {
    let bytes = axum::body::to_bytes(body, 50_000_000).await.expect("a whole body");
    String::from_utf8_lossy(&bytes).into_owned()
}

async fn frames(class: &Class, body: Body) -> String {
    let mut text = String::new();
    let mut body = body.into_data_stream();
    for turn in 0..2 {
        // Silence is a good answer, so that waiting for it must end.
        let wait = Duration::from_millis(if turn == 0 { 2000 } else { 400 });
        if let Ok(Some(Ok(frame))) = tokio::time::timeout(wait, body.next()).await {
            text.push_str(&String::from_utf8_lossy(&frame));
        }
        let code = bag(class, "1", 2);
        let who = Who::Group { period: "1".into(), group: 2 };
        class.note(Subject::Bag(code), who, What::Odd(barm_domain::record::Odd::Bumped));
    }
    text
}

fn call(class: &Class, route: &Route, who: &Visitor, method: &Method, script: bool) -> Call {
    let path = filled(class, route.rules.path);
    let mut call =
        if script { Call::script(&path, "{}") } else { Call::form(class, &path, "") };
    call.method = method.clone();
    let call = call.header("accept", "text/html").from(who.from);
    if who.cookie.1.is_empty() { call } else { call.cookie(who.cookie.0, &who.cookie.1) }
}

/// A class with a record that is full of marks, and everybody who may try to see them.
fn staged(now: &str) -> (Class, Vec<Visitor>) {
    let class = Class::at(now, Kind::Real);
    forecast(&class);
    class.note(Subject::Period("1".into()), Who::Teacher, What::Began);
    measure(&class, "1", 1, 20.0, 31.0, 40.0);
    measure(&class, "1", 2, 62.7, 87.4, 113.9);
    measure(&class, "2", 1, 63.3, 88.6, 114.8);
    let one = class.codes("1");
    let old = class.group("1", 3);
    class.web.shelf.doors.leave(&old).expect("signed out");
    let page = |code: &str| class.joined(JoinKey::Page(code));
    let visitors = vec![
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
    (class, visitors)
}

#[tokio::test]
async fn nobody_receives_what_is_not_theirs() {
    let (class, visitors) = staged(DURING_1);
    let marks = marks(&class, &visitors);
    let mut told = 0;
    let mut received = std::collections::BTreeSet::new();
    let mut leaks = Vec::new();
    // Reading first; what changes something may end a session or a period.
    for method in ["GET", "HEAD", "POST", "PUT", "DELETE", "PATCH", "OPTIONS"] {
        let method: Method = method.parse().expect("a method");
        for route in table() {
            for who in &visitors {
                // The teacher's own changes would take the scenery away, and setting a page for
                // the printer takes long and shows no text to search.
                let paper = route.rules.path.ends_with(".pdf");
                if who.role == Role::Teacher && (method != Method::GET || paper) {
                    continue;
                }
                for script in [false, true] {
                    if script && method != Method::POST {
                        continue;
                    }
                    // What ends a session is tried where it is proved.
                    if method == Method::POST && route.rules.path.ends_with("/leave") {
                        continue;
                    }
                    let call = call(&class, &route, who, &method, script);
                    let (_, text) = answer(&class, call).await;
                    told += 1;
                    for mark in marks.iter().filter(|mark| holds(&text, &mark.text)) {
                        if teacher(who) {
                            received.insert(mark.what);
                        }
                        if !(mark.may)(who) {
                            let path = route.rules.path;
                            leaks.push(format!(
                                "{method} {path}, {}: {} ({})",
                                who.name, mark.what, mark.text
                            ));
                        }
                    }
                }
            }
        }
    }
    assert!(leaks.is_empty(), "{}", leaks.join("\n"));
    assert!(told > 500, "{told} answers were searched");
    // The marks are such that pages show them to those who may see them.
    for what in ["a forecast", "group 2 of period 1", "group code", "period code", "wall code"]
    {
        assert!(received.contains(what), "the teacher's pages show {what}: {received:?}");
    }
}

#[tokio::test]
async fn a_wrong_role_changes_nothing() {
    let (class, visitors) = staged(DURING_1);
    let before = class.room.read(|scene| scene.standing().clone());
    let codes = class.codes("1");
    for route in table().iter().filter(|route| route.method == Method::POST) {
        for who in visitors.iter().filter(|who| who.role != Role::Teacher) {
            let allowed =
                route.rules.who.contains(&Role::Anyone) || route.rules.who.contains(&who.role);
            if allowed {
                continue;
            }
            for script in [false, true] {
                let call = call(&class, route, who, &Method::POST, script);
                let (status, _) = answer(&class, call).await;
                assert_eq!(status, 403, "{} by {}", route.rules.path, who.name);
            }
        }
    }
    assert_eq!(class.room.read(|scene| scene.standing().clone()), before);
    assert_eq!(class.codes("1"), codes);
}

#[tokio::test]
async fn a_wrong_role_is_sent_to_the_door_or_told_no() {
    let (class, visitors) = staged(DURING_2);
    for route in table().iter().filter(|route| route.method == Method::GET) {
        for who in &visitors {
            let rules = route.rules;
            let may = rules.who.contains(&Role::Anyone) || rules.who.contains(&who.role);
            let reached = who.from == HERE || !rules.near;
            if may && reached {
                continue;
            }
            let call = call(&class, route, who, &Method::GET, false);
            let (status, _) = answer(&class, call).await;
            let expected = if reached { 303 } else { 403 };
            assert_eq!(status, expected, "{} by {}", rules.path, who.name);
        }
    }
}

#[test]
fn every_address_says_who_may_call_it() {
    let mut seen = std::collections::BTreeSet::new();
    for route in table() {
        let rules = route.rules;
        assert!(!rules.who.is_empty(), "{}", rules.path);
        assert!(seen.insert((route.method.to_string(), rules.path)), "{} twice", rules.path);
        let teachers = rules.who == [Role::Teacher];
        let named =
            ["/i/", "/shelf", "/backups", "/start", "/teacher/leave", "/teacher/passphrase"];
        let expected = named.iter().any(|start| rules.path.starts_with(start));
        assert_eq!(teachers, expected, "{}", rules.path);
        assert!(!teachers || rules.near, "{}", rules.path);
    }
}

//! Nobody receives what is not theirs: every address, every method, every role, every mark.

use super::class::{Call, Class, DURING_1, DURING_2, HERE};
use super::marked::{Mark, NOBODY, Visitor, bag, holds, marks, staged, teacher};
use crate::desk::room::Kind;
use crate::web::routes::{Role, Route, table};
use axum::body::Body;
use axum::http::Method;
use barm_domain::record::{Subject, Truth, What, Who};
use serde_json::json;
use std::collections::BTreeSet;
use std::time::Duration;
use tokio_stream::StreamExt;

/// The path with something that is there in place of each name.
pub(super) fn filled(class: &Class, path: &str, (period, group): (&str, u32)) -> String {
    let code = bag(class, period, group).to_string();
    let name = if path.starts_with("/a/") { "tokens.css" } else { "x" };
    let id = class.room.id.to_string();
    let with = [
        ("{id}", id.as_str()),
        ("{period}", period),
        ("{version}", "1"),
        ("{group}", &group.to_string()),
        ("{bag}", &code),
        ("{code}", &code),
        ("{name}", name),
        ("{file}", "labels.pdf"),
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

/// What a page of ours would send to an address that takes something of anybody but the teacher,
/// so that what is accepted is searched and not only what is refused. With what belongs to the
/// caller goes what does not.
fn body(class: &Class, path: &str, who: &Visitor, turn: usize) -> String {
    match path {
        "/bench/entries" => {
            let now = class.web.now().as_millisecond();
            let (period, group) =
                if who.group == NOBODY { ("1", 1) } else { (who.period, who.group) };
            let own = bag(class, period, group).to_string();
            let other = bag(class, "1", if group == 2 { 1 } else { 2 });
            let known = class.room.read(|scene| {
                scene.ledger.entries_of(&Subject::Bag(other)).first().map(|entry| entry.key)
            });
            let known = known.expect("the other has written").to_string();
            let key = |number: u32| {
                format!(
                    "01900000-0000-7000-8{period}{group:02}-{:012x}",
                    turn * 8 + number as usize
                )
            };
            let other = other.to_string();
            json!({ "entries": [
                { "key": key(1), "bag": own, "what": "odd", "odd": "bumped", "at": now },
                { "key": key(2), "bag": own, "what": "reading", "mm": 30, "planned": 8, "at": now },
                { "key": key(3), "bag": other, "what": "reading", "mm": 30, "at": now },
                { "key": known, "bag": other, "what": "zero", "mm": 1, "at": now },
                { "key": known, "bag": own, "what": "zero", "mm": 1, "at": now },
                { "key": key(4), "bag": null, "what": "guess", "expects": [[other, 9]], "at": now },
            ] })
            .to_string()
        }
        "/claim" => "says=more&evidence=ours&do=hand-in".to_owned(),
        "/plan-together" => {
            // The same as another group proposed, which would make them partners.
            let act = if turn.is_multiple_of(2) { "look" } else { "hand-in&seen=1" };
            format!(
                "asks=Ours&changes=food&level=honey&level=white+sugar&beside=No+food&bags=2\
                 &expects=more&because=so&do={act}"
            )
        }
        // A group that joins leaves the session that it had, so that others do it.
        "/join" if who.role != Role::Group => {
            let codes = class.codes("1");
            format!("period={}&group={}", codes.period, codes.groups[4].1)
        }
        "/join/page" if who.role == Role::Anyone => {
            format!("code={}", class.codes("1").aide)
        }
        _ => String::new(),
    }
}

/// What a page or a curious child may write behind an address.
const QUERY: &str = "lang=es&period=1&group=2&bag=P1-02A-8&code=P1-02A-8&version=1&from=0&id=1\
     &open=1&new=1&show=all&paper=a4&role=teacher&inquiry=open&next=/i/1/results";

/// How an address is called.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Way {
    Form,
    Script,
    Query,
}

fn call(class: &Class, route: &Route, who: &Visitor, method: &Method, way: Way) -> Call {
    called(class, route, who, (method, way), (("1", 2), 0))
}

fn called(
    class: &Class,
    route: &Route,
    who: &Visitor,
    (method, way): (&Method, Way),
    (place, turn): ((&str, u32), usize),
) -> Call {
    let path = filled(class, route.rules.path, place);
    let said = if *method == Method::POST {
        body(class, route.rules.path, who, turn)
    } else {
        String::new()
    };
    let mut call = match way {
        Way::Form => Call::form(class, &path, &said),
        Way::Script if said.starts_with('{') => Call::script(&path, &said),
        Way::Script => Call::script(&path, "{}"),
        Way::Query => Call::form(class, &format!("{path}?{QUERY}"), &said),
    };
    call.method = method.clone();
    let call = call.header("accept", "text/html").from(who.from);
    if who.cookie.1.is_empty() { call } else { call.cookie(who.cookie.0, &who.cookie.1) }
}

#[tokio::test]
async fn nobody_receives_what_is_not_theirs() {
    let accepted = search(DURING_1).await;
    for (path, name) in [
        ("/bench/entries", "group 1"),
        ("/bench/entries", "group 2"),
        ("/plan-together", "group 1"),
        ("/join", "nobody"),
        ("/join/page", "nobody"),
    ] {
        assert!(
            accepted.contains(&(path, name)),
            "{path} takes what {name} sends: {accepted:?}"
        );
    }
}

#[tokio::test]
async fn nobody_receives_what_is_not_theirs_in_the_next_period() {
    let accepted = search(DURING_2).await;
    for path in ["/bench/entries", "/plan-together"] {
        assert!(accepted.contains(&(path, "group 1 of period 2")), "{path}: {accepted:?}");
    }
}

/// Calls everything as everybody, and searches the answers. Gives which changes were accepted, of
/// whom.
async fn search(now: &str) -> BTreeSet<(&'static str, &'static str)> {
    let (class, visitors) = staged(now);
    let mut marks = marks(&class, &visitors);
    found_out(&class, &visitors[0], &mut marks).await;
    let mut told = 0;
    let mut received = BTreeSet::new();
    let mut accepted = BTreeSet::new();
    let mut leaks = Vec::new();
    // Reading first; what changes something may end a session or a period.
    for method in ["GET", "HEAD", "POST", "PUT", "DELETE", "PATCH", "OPTIONS"] {
        let method: Method = method.parse().expect("a method");
        for route in table() {
            let path = route.rules.path;
            for who in &visitors {
                // The teacher's own changes would take the scenery away, and setting a page for
                // the printer takes long and shows no text to search.
                let is_teacher = teacher(who);
                let paper = [".pdf", "{file}"].iter().any(|end| path.ends_with(end));
                if is_teacher && (method != Method::GET || paper) {
                    continue;
                }
                // What ends a session is tried where it is proved.
                if method == Method::POST && path.ends_with("/leave") {
                    continue;
                }
                let ways: &[Way] = match method {
                    Method::GET if is_teacher => &[Way::Form],
                    Method::GET => &[Way::Form, Way::Query],
                    Method::POST => &[Way::Form, Way::Script, Way::Query],
                    _ => &[Way::Form],
                };
                let places: &[(&str, u32)] =
                    if path.contains("{period}") { &[("1", 2), ("2", 1)] } else { &[("1", 2)] };
                for (turn, (way, place)) in ways
                    .iter()
                    .flat_map(|way| places.iter().map(move |place| (way, place)))
                    .enumerate()
                {
                    let call = called(&class, &route, who, (&method, *way), (*place, turn));
                    let (status, text) = answer(&class, call).await;
                    told += 1;
                    if method == Method::POST && matches!(status, 200 | 303) {
                        accepted.insert((path, who.name));
                    }
                    for mark in marks.iter().filter(|mark| holds(&text, &mark.text)) {
                        if is_teacher {
                            received.insert(mark.what);
                        }
                        if !(mark.may)(who) {
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
    // Marks that no page shows to anybody would be looked for in vain.
    let kinds: BTreeSet<&str> = marks.iter().map(|mark| mark.what).collect();
    let unseen: Vec<&&str> = kinds.difference(&received).collect();
    // Tokens and hashes are nobody's to see. The reasons for a guess stand on no page: where they
    // lie is looked at when they are put there.
    let nowhere = [&"a hash", &"a token", &"words of another period", &"words of group 2"];
    assert_eq!(unseen, nowhere, "what the teacher's pages show: {received:?}");
    accepted
}

/// Adds what the program itself works out for the teacher: costs, as her page shows them.
async fn found_out(class: &Class, she: &Visitor, marks: &mut Vec<Mark>) {
    let id = class.room.id;
    let call = Call::get(&format!("/i/{id}/prepare")).cookie(she.cookie.0, &she.cookie.1);
    let page = class.call(call).await.body;
    let costs: BTreeSet<String> = page
        .match_indices('$')
        .map(|(at, _)| {
            let rest = &page[at + 1..];
            let end =
                rest.find(|c: char| !c.is_ascii_digit() && c != '.').unwrap_or(rest.len());
            rest[..end].trim_end_matches('.').to_owned()
        })
        .filter(|cost| cost.len() >= 4)
        .collect();
    assert!(!costs.is_empty(), "{page}");
    marks.extend(costs.into_iter().map(|text| Mark { what: "a cost", text, may: teacher }));
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
            for way in [Way::Form, Way::Script] {
                let call = call(&class, route, who, &Method::POST, way);
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
            let call = call(&class, route, who, &Method::GET, Way::Form);
            let (status, _) = answer(&class, call).await;
            let expected = if reached { 303 } else { 403 };
            assert_eq!(status, expected, "{} by {}", rules.path, who.name);
        }
    }
}

#[tokio::test]
async fn what_can_be_claimed_about_says_nothing_of_what_a_bag_is_in_truth() {
    let class = Class::at(DURING_1, Kind::Real);
    let own = class.group("1", 2);
    let offered = || async {
        let page = class.call(Call::get("/claim").cookie("barm-bench", &own)).await.body;
        let list = page.split("<select id=\"about\"").nth(1).expect("a list");
        list.split("</select>").next().expect("its end").to_owned()
    };
    let before = offered().await;
    assert!(before.matches("<option").count() > 1, "{before}");
    let treatment = class.room.read(|scene| {
        let named = scene.plan.treatments().map(|(_, treatment)| treatment.name.clone());
        named.last().expect("a treatment")
    });
    let truth = Truth { treatment: Some(treatment), group: None };
    for group in [1, 2] {
        let subject = Subject::Bag(bag(&class, "1", group));
        class.note(subject, Who::Teacher, What::SetRight(truth.clone()));
    }
    assert_eq!(offered().await, before);
}

#[test]
fn every_address_says_who_may_call_it() {
    let mut seen = BTreeSet::new();
    for route in table() {
        let rules = route.rules;
        assert!(!rules.who.is_empty(), "{}", rules.path);
        assert!(seen.insert((route.method.to_string(), rules.path)), "{} twice", rules.path);
        let teachers = rules.who == [Role::Teacher];
        let named = [
            "/i/",
            "/shelf",
            "/backups",
            "/kept",
            "/years",
            "/package",
            "/start",
            "/teacher/leave",
            "/teacher/passphrase",
        ];
        let expected = named.iter().any(|start| rules.path.starts_with(start));
        assert_eq!(teachers, expected, "{}", rules.path);
        assert!(!teachers || rules.near, "{}", rules.path);
    }
}

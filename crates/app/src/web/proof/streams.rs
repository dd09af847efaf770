//! Event streams say that something has changed, to those whom it concerns.

use super::class::{Call, Class, DURING_1};
use crate::desk::room::{Kind, Scope};
use axum::body::BodyDataStream;
use barm_domain::code::BagCode;
use barm_domain::record::{Audience, Face, Odd, Subject, What, Who};
use std::time::Duration;
use tokio_stream::StreamExt;

/// The first bag of a group.
fn bag(class: &Class, period: &str, group: u32) -> BagCode {
    class.room.read(|scene| {
        let bags = &scene.plan.bags;
        let own = bags.iter().find(|bag| bag.period == period && bag.group == group);
        own.expect("a bag").code.parse().expect("a code")
    })
}

fn seen(group: u32) -> Who {
    Who::Group { period: "1".into(), group }
}

#[test]
fn a_group_hears_of_its_own_bags_and_of_nothing_that_is_the_teachers() {
    let class = Class::at(DURING_1, Kind::Real);
    let scopes = [
        Scope::Teacher,
        Scope::Group { period: "1".into(), group: 1 },
        Scope::Group { period: "1".into(), group: 2 },
        Scope::Group { period: "2".into(), group: 1 },
        Scope::Wall("1".into()),
        Scope::Wall("2".into()),
        Scope::Round("1".into()),
        Scope::Aide,
    ];
    let numbers = || scopes.clone().map(|scope| class.room.number(scope));
    let own = bag(&class, "1", 1);
    let zero = What::Zero { height_mm: 20.0 };
    let truth = barm_domain::record::Truth { treatment: None, group: Some(2) };
    let bag = Subject::Bag;
    let period = |name: &str| Subject::Period(name.into());
    let group = |number| Subject::Group { period: "1".into(), group: number };
    let to_groups = Audience::Groups { period: "1".into() };
    for (what, subject, who, entry, expected) in [
        ("zero", bag(own), seen(1), zero, "TG..W.R."),
        ("odd", bag(own), seen(1), What::Odd(Odd::Foam), "TG..W.R."),
        ("truth", bag(own), Who::Teacher, What::SetRight(truth), "T......."),
        ("aside", bag(own), Who::Teacher, What::SetAside { rule: "leak".into() }, "T.....R."),
        ("began", period("1"), Who::Teacher, What::Began, "TGG.W.RA"),
        ("jug", period("1"), Who::Teacher, What::Jug { celsius: 40.0, jug: 1 }, "T.....RA"),
        (
            "blank",
            period("1"),
            Who::Teacher,
            What::Blank { turn: 1, percent: Some(0.01) },
            "T.....RA",
        ),
        ("here", group(2), Who::Teacher, What::Here { students: 3 }, "T.G...R."),
        (
            "opened",
            Subject::Investigation,
            Who::Teacher,
            What::Opened { face: Face::PeriodCurves, to: to_groups },
            "TGG.....",
        ),
    ] {
        let before = numbers();
        class.note(subject, who, entry);
        let heard: String = before
            .iter()
            .zip(numbers())
            .zip("TGGGWWRA".chars())
            .map(|((before, after), letter)| if *before < after { letter } else { '.' })
            .collect();
        assert_eq!(heard, expected, "{what}");
    }
}

async fn next(body: &mut BodyDataStream) -> Option<String> {
    let wait = tokio::time::timeout(Duration::from_secs(20), body.next());
    let frame = wait.await.expect("something within twenty seconds")?;
    Some(String::from_utf8_lossy(&frame.expect("a frame")).into_owned())
}

#[tokio::test]
async fn many_changes_are_told_as_one_and_no_change_is_lost() {
    let class = Class::at(DURING_1, Kind::Real);
    let token = class.group("1", 1);
    let answer = class.open(Call::get("/bench/events").cookie("barm-bench", &token)).await;
    assert_eq!(answer.headers()["content-type"], "text/event-stream");
    let mut body = answer.into_body().into_data_stream();
    let first = next(&mut body).await.expect("where it stands");
    let own = bag(&class, "1", 1);
    for _ in 0..10 {
        class.note(Subject::Bag(own), seen(1), What::Odd(Odd::Foam));
    }
    let mut told = Vec::new();
    let last = class.room.number(Scope::Group { period: "1".into(), group: 1 });
    while !told.last().unwrap_or(&first).contains(&format!("data: {last}")) {
        told.push(next(&mut body).await.expect("more"));
    }
    assert!(told.len() <= 2, "{told:?}");
    for event in told.iter().chain([&first]) {
        let plain = event.trim().strip_prefix("event: changed\ndata: ").expect("nothing else");
        assert!(plain.bytes().all(|byte| byte.is_ascii_digit()), "{event:?}");
    }
}

#[tokio::test]
async fn a_stream_ends_when_its_session_ends_and_when_the_server_stops() {
    let class = Class::at(DURING_1, Kind::Real);
    let mut bodies = Vec::new();
    for group in [1, 2] {
        let token = class.group("1", group);
        let answer = class.open(Call::get("/bench/events").cookie("barm-bench", &token)).await;
        let mut body = answer.into_body().into_data_stream();
        next(&mut body).await.expect("where it stands");
        bodies.push((token, body));
    }
    class.web.shelf.doors.leave(&bodies[0].0).expect("signed out");
    assert_eq!(next(&mut bodies[0].1).await, None, "the one that went out");
    class.stop.send(true).expect("the server listens");
    assert_eq!(next(&mut bodies[1].1).await, None, "the one that was in");
}

#[tokio::test]
async fn the_teachers_sign_out_ends_her_session_on_the_server() {
    let class = Class::at(DURING_1, Kind::Real);
    let (token, other) = (class.teacher(), class.teacher());
    let id = class.room.id;
    let get = |path: &str, token: &str| {
        Call::get(path).cookie("barm-teacher", token).header("accept", "text/html")
    };
    let answer = class.open(get(&format!("/i/{id}/events"), &token)).await;
    assert_eq!(answer.headers()["content-type"], "text/event-stream");
    let mut body = answer.into_body().into_data_stream();
    next(&mut body).await.expect("where it stands");
    assert_eq!(class.call(get("/shelf", &token)).await.status, 200);
    let leave = Call::form(&class, "/teacher/leave", "").cookie("barm-teacher", &token);
    assert_eq!(class.call(leave).await.status, 303);
    assert_eq!(next(&mut body).await, None, "the stream ends");
    // Whoever kept the cookie stands before the door.
    for path in ["/shelf".to_owned(), format!("/i/{id}/run/1"), format!("/i/{id}/events")] {
        let answer = class.call(get(&path, &token)).await;
        assert_eq!(answer.status, 303, "{path}");
        assert!(answer.header("location").starts_with("/teacher"), "{path}");
    }
    let page = class.call(get("/shelf", &other)).await;
    assert_eq!(page.status, 200, "another computer of hers stays in");
}

#[tokio::test]
async fn the_number_of_a_page_rises_over_restarts() {
    let class = Class::at(DURING_1, Kind::Real);
    let token = class.group("1", 1);
    let answer = class.call(Call::get("/bench/version").cookie("barm-bench", &token)).await;
    let began = class.web.now().as_millisecond();
    assert_eq!(answer.body, format!("{{\"version\":{began}}}"));
}

#[tokio::test]
async fn five_hundred_streams_hear_of_one_change() {
    let class = Class::at(DURING_1, Kind::Real);
    let token = class.group("1", 1);
    let mut bodies = Vec::new();
    for _ in 0..500 {
        let answer = class.open(Call::get("/bench/events").cookie("barm-bench", &token)).await;
        let mut body = answer.into_body().into_data_stream();
        next(&mut body).await.expect("where it stands");
        bodies.push(body);
    }
    let own = bag(&class, "1", 1);
    class.note(Subject::Bag(own), seen(1), What::Odd(Odd::Foam));
    let number = class.room.number(Scope::Group { period: "1".into(), group: 1 });
    for body in &mut bodies {
        let event = next(body).await.expect("a change");
        assert!(event.contains(&format!("data: {number}")), "{event}");
    }
}

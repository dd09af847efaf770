//! Another round: proposed beside the requests, made into a plan by one button, judged together with the first.

use super::class::{Answer, Call, Class, DURING_1};
use crate::desk::room::Kind;
use crate::desk::start;
use std::time::Duration;

async fn as_teacher(class: &Class, token: &str, path: &str, body: Option<&str>) -> Answer {
    let call = match body {
        Some(body) => Call::form(class, path, body),
        None => Call::get(path),
    };
    class.call(call.cookie("barm-teacher", token)).await
}

#[tokio::test]
async fn while_a_period_runs_nothing_is_proposed() {
    let class = Class::at(DURING_1, Kind::Real);
    let teacher = class.teacher();
    let path = format!("/i/{}/again", class.room.id);
    let page = as_teacher(&class, &teacher, &path, None).await.body;
    assert!(page.contains("No bag has been read yet"), "{page}");
    assert!(!page.contains("Propose another round"));
    let gone = as_teacher(&class, &teacher, &path, Some("take=1")).await;
    assert_eq!(gone.status, 200);
    assert!(gone.body.contains("nothing was made"), "{}", gone.body);
}

#[tokio::test(flavor = "multi_thread")]
async fn a_proposal_becomes_an_investigation_of_its_own() {
    let class = Class::at(DURING_1, Kind::Real);
    let teacher = class.teacher();
    let first = start::invented(&class.web.shelf, class.web.now()).expect("on the shelf");
    let path = format!("/i/{first}/again");
    let page = as_teacher(&class, &teacher, &path, None).await.body;
    assert!(page.contains("Propose another round"), "{page}");
    let begun = as_teacher(&class, &teacher, &path, Some("by=narrower-per-bag")).await;
    assert_eq!(begun.status, 303);
    let path_by = format!("{path}?by=narrower-per-bag");
    let page = loop {
        let page = as_teacher(&class, &teacher, &path_by, None).await.body;
        if page.contains("Make this plan") {
            break page;
        }
        let working = page.contains("looked at") || page.contains("second rounds are weighed");
        assert!(working, "{page}");
        tokio::time::sleep(Duration::from_millis(200)).await;
    };
    assert!(page.contains("bags in all"), "{page}");
    // Ranked otherwise, it was not asked for yet.
    let other = as_teacher(&class, &teacher, &path, None).await.body;
    assert!(!other.contains("Make this plan"), "{other}");
    let before = class.web.shelf.investigations().expect("the shelf").len();
    let beyond =
        as_teacher(&class, &teacher, &path, Some("by=narrower-per-bag&take=999")).await;
    assert!(beyond.body.contains("nothing was made"), "{}", beyond.body);
    let taken = as_teacher(&class, &teacher, &path, Some("by=narrower-per-bag&take=1")).await;
    assert_eq!(taken.status, 303, "{}", taken.body);
    let all = class.web.shelf.investigations().expect("the shelf");
    assert_eq!(all.len(), before + 1);
    let second = all.last().expect("the new one");
    assert_eq!(second.kind, Kind::Invented, "what follows an invented day is invented");
    // Nobody made it yet, so there is nothing to judge.
    let with = format!("{path}?with={}", second.id);
    let judged = as_teacher(&class, &teacher, &with, None).await.body;
    assert!(judged.contains("They cannot be judged together"), "{judged}");
}

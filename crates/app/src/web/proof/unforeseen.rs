//! No forecast is worked out for anybody but the teacher, so that no answer can be late, early or
//! different because of one.

use super::class::{Call, Class, DURING_1, plan_text};
use crate::desk::doors::{JoinKey, Part};
use crate::desk::room::Kind;
use crate::desk::was_foreseen;
use crate::web::cookies;
use crate::web::routes::{Role, table};
use axum::http::Method;
use barm_domain::record::{Audience, Face, Subject, What, Who};
use serde_json::json;

/// Only this class has this title, so that forecasts for it are told from those of other tests.
const TITLE: &str = "A class whose forecast nobody needs";

fn own_class() -> Class {
    let text = plan_text();
    let (first, rest) = text.split_once("title = \"").expect("a title");
    let (_, rest) = rest.split_once('"').expect("its end");
    let class = Class::of(&format!("{first}title = \"{TITLE}\"{rest}"), DURING_1, Kind::Real);
    class.note(Subject::Period("1".into()), Who::Teacher, What::Began);
    class
}

#[tokio::test]
async fn nothing_that_a_group_can_call_ever_asks_for_a_forecast() {
    let class = own_class();
    let codes = class.codes("1");
    let page = |code: &str| class.joined(JoinKey::Page(code));
    let tokens = [
        (Role::Group, Part::Group, class.group("1", 1)),
        (Role::Wall, Part::Wall, page(&codes.wall)),
        (Role::Round, Part::Round, page(&codes.round)),
        (Role::Aide, Part::Aide, page(&codes.aide)),
        (Role::Anyone, Part::Group, String::new()),
    ];
    let bag = class.room.read(|scene| {
        let own = scene.plan.bags.iter().find(|bag| bag.period == "1" && bag.group == 1);
        own.expect("a bag").code.clone()
    });
    let now = class.web.now().as_millisecond();
    let mut called = 0;
    // Before and after everything is open to groups and to the wall.
    for open in [false, true] {
        if open {
            for face in [Face::PeriodCurves, Face::DayCurves, Face::Results, Face::Forecast] {
                let period = || "1".to_owned();
                for to in
                    [Audience::Groups { period: period() }, Audience::Wall { period: period() }]
                {
                    let opened = What::Opened { face, to };
                    class.note(Subject::Investigation, Who::Teacher, opened);
                }
            }
        }
        // A height that no bag of the kind can have, and one as usual.
        let heights = json!({ "entries": [
            { "key": format!("01900000-0000-7000-8000-00000000000{}", 1 + u8::from(open)),
              "bag": bag, "what": "zero", "mm": 8, "at": now },
            { "key": format!("01900000-0000-7000-8000-00000000001{}", 1 + u8::from(open)),
              "bag": bag, "what": "reading", "mm": 140, "planned": 4, "at": now + 240_000 },
        ] });
        let proposal = "asks=Why&changes=food&level=honey&level=white+sugar&beside=No+food\
                        &bags=2&expects=more&because=so&seen=1&do=hand-in";
        for route in table() {
            let path = route.rules.path;
            if route.rules.who == [Role::Teacher]
                || path.contains('{')
                || path.ends_with("leave")
            {
                continue;
            }
            for (role, part, token) in &tokens {
                let may =
                    route.rules.who.contains(&Role::Anyone) || route.rules.who.contains(role);
                if !may {
                    continue;
                }
                let call = match (route.method.clone(), path) {
                    (Method::POST, "/bench/entries") => {
                        Call::script(path, &heights.to_string())
                    }
                    (Method::POST, "/plan-together") => Call::form(&class, path, proposal),
                    (Method::POST, _) => Call::form(&class, path, ""),
                    _ => Call::get(path),
                };
                let call = call.cookie(cookies::name(*part), token);
                let answer = class.open(call).await;
                if route.method == Method::POST && route.rules.who == [Role::Group] {
                    // No claim was dealt to it to be read.
                    let expected = if path == "/claim/read" { 404 } else { 200 };
                    assert_eq!(answer.status(), expected, "{path}");
                }
                called += 1;
            }
        }
    }
    assert!(called > 60, "{called} calls");
    assert!(!was_foreseen(TITLE), "somebody asked for a forecast");
    assert!(class.room.read(|scene| scene.outlook.is_none()));

    // The teacher's pages do ask, so that this would be seen.
    let teacher = class.teacher();
    let id = class.room.id;
    let call = Call::get(&format!("/i/{id}/results")).cookie("barm-teacher", &teacher);
    assert_eq!(class.call(call).await.status, 200);
    assert!(was_foreseen(TITLE));
}

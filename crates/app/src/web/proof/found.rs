//! What the class found is the teacher's alone until she opens it: a mark that stands in her
//! verdicts is looked for on every page of everybody else.

use super::class::{Call, Class, DURING_1, NETWORK, plan_text};
use super::secrets::filled;
use crate::desk::doors::{JoinKey, Part};
use crate::desk::rehearse::done_before;
use crate::desk::room::Kind;
use crate::desk::room::results::results_view;
use crate::web::cookies;
use crate::web::routes::table;
use axum::http::Method;
use barm_domain::record::{Audience, Face, Subject, What, Who};
use jiff::SignedDuration;
use serde_json::{Value, json};

/// A treatment that neither of the two groups makes.
const MARK: &str = "MARKFOUND";

/// The invented plan with the mark as a treatment's name.
fn marked() -> String {
    plan_text().replace("\"Nonfat dry milk + lactase\"", &format!("\"{MARK}\""))
}

/// Somebody who is in: the name of the cookie, the token, and the own page.
type Seat = (&'static str, String, &'static str);

/// Two groups of period 1, its wall, its walk-round page and an aide.
fn seats(class: &Class) -> Vec<Seat> {
    let codes = class.codes("1");
    let page = |code: &str| class.joined(JoinKey::Page(code));
    vec![
        (cookies::name(Part::Group), class.group("1", 1), "/bench"),
        (cookies::name(Part::Group), class.group("1", 2), "/bench"),
        (cookies::name(Part::Wall), page(&codes.wall), "/wall"),
        (cookies::name(Part::Round), page(&codes.round), "/round"),
        (cookies::name(Part::Aide), page(&codes.aide), "/aide"),
    ]
}

/// Everything that somebody can read, whoever it is meant for. Event streams say a number only.
async fn told(class: &Class, (cookie, token, own): &Seat) -> String {
    let mut all = String::new();
    let get = |path: &str| Call::get(path).cookie(cookie, token).from(NETWORK);
    assert_eq!(class.call(get(own)).await.status, 200, "{own}: still in");
    for route in table().iter().filter(|route| route.method == Method::GET) {
        let path = route.rules.path;
        if path.ends_with("/events") || route.rules.plain_file {
            continue;
        }
        for place in [("1", 1), ("1", 6)] {
            all.push_str(&class.call(get(&filled(class, path, place))).await.body);
        }
    }
    all
}

#[tokio::test]
async fn what_the_class_found_reaches_nobody_before_it_is_opened() {
    let class = Class::of(&marked(), DURING_1, Kind::Real);
    let seats = seats(&class);
    class.later(SignedDuration::from_hours(7));
    done_before(&class.room, "none of them", include_bytes!("../../demo/readings.csv"))
        .expect("on record");
    let (id, teacher) = (class.room.id, class.teacher());
    let her = |path: &str| Call::get(path).cookie("barm-teacher", &teacher);

    // The mark stands in her verdicts, of what was read and of what is foreseen.
    let found = results_view(&class.room).expect("results");
    let verdicts = || found.questions.iter().flat_map(|question| &question.verdicts);
    assert!(verdicts().any(|(_, treatment, _)| treatment == MARK), "{:?}", found.questions);
    let page = class.call(her(&format!("/i/{id}/results"))).await.body;
    assert!(page.contains(MARK), "{page}");
    let text = marked();
    let asks = json!({ "number": 1, "focus": "", "text": text, "fields": [], "step": "all" });
    let call = Call::script(&format!("/i/{id}/plan/forecast"), &asks.to_string());
    let foreseen = class.call(call.cookie("barm-teacher", &teacher)).await;
    let foreseen: Value = serde_json::from_str(&foreseen.body).expect("JSON");
    let says = foreseen["verdicts"].as_str().expect("verdicts");
    assert!(says.contains(MARK), "{says}");

    // Nobody else hears of it, nor a sentence of hers about anything.
    let sentences: Vec<&str> = verdicts()
        .map(|(_, _, why)| why.as_str())
        .chain(found.questions.iter().flat_map(|question| &question.notes).map(String::as_str))
        .collect();
    assert!(sentences.len() > 8, "{sentences:?}");
    let hers = |all: &str| sentences.iter().filter(|says| all.contains(**says)).count();
    assert_eq!(hers(&page), sentences.len(), "as they stand on her page: {page}");
    for seat in &seats {
        let all = told(&class, seat).await;
        assert!(!all.contains(MARK) && hers(&all) == 0, "{}", seat.2);
        assert!(!all.contains("What the class found"), "{}", seat.2);
    }

    // On the wall it stands for all to see, and nowhere else; no word of hers with it.
    let wall = || (Face::Results, Audience::Wall { period: "1".into() });
    let ((face, to), (again, from)) = (wall(), wall());
    class.note(Subject::Investigation, Who::Teacher, What::Opened { face, to });
    for seat in &seats {
        let all = told(&class, seat).await;
        assert_eq!(all.contains(MARK), seat.2 == "/wall", "{}", seat.2);
        assert_eq!(hers(&all), 0, "{}", seat.2);
    }
    class.note(Subject::Investigation, Who::Teacher, What::Closed { face: again, to: from });

    // Opened to the groups of the period, the groups hear which food did what, and no more.
    let to = Audience::Groups { period: "1".into() };
    let what = What::Opened { face: Face::Results, to };
    class.note(Subject::Investigation, Who::Teacher, what);
    for seat in &seats {
        let all = told(&class, seat).await;
        assert_eq!(all.contains(MARK), seat.2 == "/bench", "{}", seat.2);
        assert_eq!(hers(&all), 0, "{}", seat.2);
    }
}

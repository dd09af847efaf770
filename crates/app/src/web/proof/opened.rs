//! What the teacher gives or opens to a group reaches that group, then and not before, and nobody
//! hears of what is not shown.

use super::class::{Call, Class, DURING_1};
use crate::desk::doors::Part;
use crate::desk::rehearse::done_before;
use crate::desk::room::every_bag::{Quantity, Wanted, every_bag_view};
use crate::desk::room::{Kind, Scope};
use crate::desk::{Unheard, outlook};
use crate::web::cookies;
use barm_domain::code::BagCode;
use barm_domain::outlook::Look;
use barm_domain::record::{Audience, Face, Lent, Odd, Subject, Truth, What, Who};
use barm_domain::rehearsal::simulated;
use jiff::SignedDuration;
use serde_json::Value;

/// Heights and the rise between them that no other number of a page is.
const ZERO_MM: f64 = 62.7;
const LATER_MM: f64 = 87.4;
const MARKS: [&str; 2] = ["62.7", "87.4"];

/// Everything that a group's page and its state say.
pub(super) async fn told(class: &Class, token: &str) -> String {
    let mut all = String::new();
    for path in ["/bench", "/bench/state", "/bench/version"] {
        let call = Call::get(path).cookie(cookies::name(Part::Group), token);
        let answer = class.call(call).await;
        assert_eq!(answer.status, 200, "{path}");
        all.push_str(&answer.body);
    }
    all
}

/// The bags of a group with what is in them.
pub(super) fn bags(class: &Class, period: &str, group: u32) -> Vec<(BagCode, String)> {
    class.room.read(|scene| {
        let own = scene.plan.bags.iter();
        let own = own.filter(|bag| bag.period == period && bag.group == group);
        own.map(|bag| (bag.code.parse().expect("a code"), bag.treatment.clone())).collect()
    })
}

/// Who plays: in period 1 groups 2 and 3 make the same, group 1 makes something else.
pub(super) struct Cast {
    pub(super) one: u32,
    pub(super) other: u32,
    /// A bag of the other group, made as one of the first.
    pub(super) alike: BagCode,
    pub(super) stranger: u32,
    /// A bag of the stranger, made as none of the first.
    unlike: BagCode,
}

pub(super) fn cast(class: &Class) -> Cast {
    let (own, theirs, strange) =
        (bags(class, "1", 2), bags(class, "1", 3), bags(class, "1", 1));
    let makes = |treatment: &str| own.iter().any(|(_, own)| own == treatment);
    assert!(makes(&theirs[0].1) && !makes(&strange[0].1), "the invented plan is another now");
    let (alike, unlike) = (theirs[0].0, strange[0].0);
    Cast { one: 2, other: 3, alike, stranger: 1, unlike }
}

pub(super) fn reads(class: &Class, group: u32, code: BagCode) {
    let who = || Who::Group { period: "1".into(), group };
    class.note(Subject::Bag(code), who(), What::Zero { height_mm: ZERO_MM });
    class.later(SignedDuration::from_mins(4));
    let reading = What::Reading { planned: Some(4), height_mm: LATER_MM };
    class.note(Subject::Bag(code), who(), reading);
}

fn group(number: u32) -> Subject {
    Subject::Group { period: "1".into(), group: number }
}

#[tokio::test]
async fn the_numbers_of_the_class_come_when_they_are_given_and_go_when_they_are_taken_back() {
    let class = Class::at(DURING_1, Kind::Real);
    let Cast { one, other, alike, stranger, unlike } = cast(&class);
    class.note(Subject::Period("1".into()), Who::Teacher, What::Began);
    reads(&class, other, alike);
    let token = class.group("1", one as usize);
    let elsewhere = class.group("1", stranger as usize);
    let holds = |text: &str| MARKS.iter().any(|mark| text.contains(mark));
    let scope = || Scope::Group { period: "1".into(), group: one };
    assert!(!holds(&told(&class, &token).await), "not before it is given");
    let before = class.room.number(scope());
    let seen = |group| Who::Group { period: "1".into(), group };
    class.note(Subject::Bag(alike), seen(other), What::Odd(Odd::Foam));
    assert_eq!(class.room.number(scope()), before, "nor is anything heard of it");
    for (what, open) in [
        (What::StandIn(Lent::ClassData), true),
        (What::TakenBack, false),
        (What::StandIn(Lent::ClassData), true),
    ] {
        class.note(group(one), Who::Teacher, what.clone());
        let said = told(&class, &token).await;
        assert_eq!(holds(&said), open, "{what:?}");
        for mark in ["Class data", "Datos de la clase"] {
            // Heading, caption, label of the table, title of the picture.
            assert_eq!(said.matches(mark).count() >= 4, open, "{what:?}: {mark}");
        }
        assert!(!holds(&told(&class, &elsewhere).await), "nobody else gets it");
    }
    // It hears of what is shown: another height there, and not of the rest.
    let heard = |subject: Subject, who: Who, what: What| {
        let before = class.room.number(scope());
        class.note(subject, who, what);
        class.room.number(scope()) > before
    };
    let reading = What::Reading { planned: Some(8), height_mm: 90.3 };
    assert!(heard(Subject::Bag(alike), seen(other), reading));
    assert!(!heard(Subject::Bag(alike), seen(other), What::Odd(Odd::Bumped)));
    assert!(!heard(Subject::Bag(alike), seen(other), What::Vented));
    assert!(!heard(Subject::Bag(unlike), seen(stranger), What::Zero { height_mm: 9.0 }));
    let truth = Truth { treatment: None, group: Some(other) };
    assert!(!heard(Subject::Bag(alike), Who::Teacher, What::SetRight(truth)));
    assert!(heard(Subject::Bag(alike), Who::Teacher, What::SetAside { rule: "leak".into() }));
    let said = told(&class, &token).await;
    assert!(!holds(&said), "a bag that is set aside is no class data");
}

#[tokio::test]
async fn a_simulated_run_comes_when_it_is_given_and_no_minute_before_its_time() {
    let class = Class::at(DURING_1, Kind::Real);
    class.note(Subject::Period("1".into()), Who::Teacher, What::Began);
    let token = class.group("1", 3);
    let marks = ["Simulated run: not measured", "Prueba simulada: no medida"];
    let said = told(&class, &token).await;
    assert!(marks.iter().all(|mark| !said.contains(mark)), "not before it is given");
    class.note(group(3), Who::Teacher, What::StandIn(Lent::Simulated { seed: 5, plan: 1 }));
    let (run, start) = class.room.read(|scene| {
        let period = scene.plan.period("1").expect("a period");
        let schedule = barm_domain::schedule::schedule(scene.plan, period, None);
        let run = simulated(scene.plan, period, 3, 5).expect("a run");
        (run, schedule.start_of(3).expect("a start"))
    });
    let last = run[0].heights.last().expect("a reading").0;
    let mut passed = 0.0;
    for after in [0.0, start + 0.1, start + 5.0, start + 9.9, start + f64::from(last) + 1.0] {
        class.later(SignedDuration::from_secs_f64(60.0 * (after - passed)));
        passed = after;
        let said = told(&class, &token).await;
        let call = Call::get("/bench/state").cookie(cookies::name(Part::Group), &token);
        let state: Value = serde_json::from_str(&class.call(call).await.body).expect("JSON");
        let english = state["opened"]["en"].as_str().expect("markup");
        for bag in &run {
            let come =
                bag.heights.iter().filter(|(minute, _)| start + f64::from(*minute) <= after);
            let row: String = come.map(|(_, mm)| format!("<td>{mm}</td>")).collect();
            assert!(
                row.is_empty() || english.contains(&format!("{row}</tr>")),
                "{after}: {row}"
            );
        }
        // The corner of each table is empty.
        let cells = english.matches("<td>").count() - english.matches("<td></td>").count();
        let due = run[0].heights.iter().filter(|(m, _)| start + f64::from(*m) <= after).count();
        assert_eq!(cells, run.len() * due, "at {after} min no cell more");
        let everywhere = if due == 0 { 1 } else { 3 };
        for mark in marks {
            assert!(said.matches(mark).count() >= everywhere, "{after}: {mark}");
        }
    }
    let typed = class.room.read(|scene| scene.standing().bags.len());
    assert_eq!(typed, 0, "nothing of it is on record");
}

#[tokio::test]
async fn curves_and_answers_reach_the_groups_when_they_are_opened() {
    let class = Class::at(DURING_1, Kind::Real);
    let Cast { one, other, alike, stranger, unlike } = cast(&class);
    class.note(Subject::Period("1".into()), Who::Teacher, What::Began);
    reads(&class, other, alike);
    let token = class.group("1", one as usize);
    let scope = || Scope::Group { period: "1".into(), group: one };
    let to = || Audience::Groups { period: "1".into() };
    let rise = "1 bag, 24.7 mm above its start at 4 min.";
    let says = [(Face::PeriodCurves, rise), (Face::Results, "What the class found")];
    for (face, mark) in says {
        assert!(!told(&class, &token).await.contains(mark), "{mark}: not before");
        class.note(Subject::Investigation, Who::Teacher, What::Opened { face, to: to() });
        assert!(told(&class, &token).await.contains(mark), "{mark}");
        let before = class.room.number(scope());
        let who = |group| Who::Group { period: "1".into(), group };
        class.note(Subject::Bag(unlike), who(stranger), What::Zero { height_mm: 9.0 });
        class.note(Subject::Bag(alike), who(other), What::Odd(Odd::Late));
        assert_eq!(class.room.number(scope()), before, "{mark}: nothing shown has changed");
        class.note(Subject::Investigation, Who::Teacher, What::Closed { face, to: to() });
        assert!(!told(&class, &token).await.contains(mark), "{mark}: not after");
    }
    assert!(!told(&class, &token).await.contains("24.7"));
}

#[tokio::test]
async fn height_gas_and_ethanol_come_with_the_results_as_far_as_the_teacher_has_them() {
    let class = Class::at(DURING_1, Kind::Real);
    let (token, elsewhere) = (class.group("1", 2), class.group("1", 3));
    class.later(SignedDuration::from_hours(7));
    done_before(&class.room, "none of them", include_bytes!("../../demo/readings.csv"))
        .expect("on record");
    let to = || Audience::Group { period: "1".into(), group: 2 };
    let face = Face::Results;
    let marks = ["Height, mm", "Gas, mL", "Ethanol, mg"];
    let held = |said: &str| marks.map(|mark| said.contains(mark));
    assert_eq!(held(&told(&class, &token).await), [false; 3], "not before it is opened");
    class.note(Subject::Investigation, Who::Teacher, What::Opened { face, to: to() });
    // Without a forecast there is neither gas nor ethanol, and none is worked out for a group.
    assert_eq!(held(&told(&class, &token).await), [true, false, false]);
    let plan = class.room.read(|scene| scene.plan.clone());
    let look = Look { draws: 16, ..Look::default() };
    class.room.expect(outlook(&plan, look, &Unheard).expect("a forecast"));
    let said = told(&class, &token).await;
    assert_eq!(held(&said), [true; 3]);
    assert_eq!(held(&told(&class, &elsewhere).await), [false; 3], "nobody else hears of it");

    // The means are those of the bags on the teacher's own page, and no bag, period or group is told of but the own.
    for quantity in [Quantity::Rise, Quantity::Gas] {
        let view = every_bag_view(&class.room, Wanted { period: None, quantity });
        let view = view.expect("every bag");
        let name = "Maple syrup";
        let of = |row: &&crate::desk::room::every_bag::BagRow| {
            row.treatment == name && row.says.is_empty()
        };
        let values: Vec<f64> =
            view.rows.iter().filter(of).filter_map(|row| Some(row.value?.value)).collect();
        assert!(values.len() > 2, "{:?}", view.rows);
        let mean = values.iter().sum::<f64>() / values.len() as f64;
        let says =
            format!("{name}: {mean:.0} {}, the mean of {}", quantity.unit(), values.len());
        assert!(said.contains(&says), "{says} in {said}");
        for row in view.rows.iter().filter(|row| row.period != "1" || row.group != 2) {
            assert!(!said.contains(&row.code), "{}", row.code);
        }
    }
    class.note(Subject::Investigation, Who::Teacher, What::Closed { face, to: to() });
    assert_eq!(held(&told(&class, &token).await), [false; 3], "not after");
}

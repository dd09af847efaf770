//! What was foretold is the teacher's: behind curves of others only once she opened it, and as a table for her alone.

use super::class::{Call, Class, DURING_1};
use super::marked::forecast;
use super::opened::{Cast, bags, cast, reads, told};
use crate::desk::doors::{JoinKey, Part};
use crate::desk::rehearse::done_before;
use crate::desk::room::Kind;
use crate::desk::{Unheard, outlook};
use crate::web::cookies;
use barm_domain::outlook::Look;
use barm_domain::record::{Audience, Face, Subject, What, Who};
use jiff::SignedDuration;

#[tokio::test]
async fn a_band_comes_behind_open_curves_once_it_was_opened_too_and_goes_with_either() {
    let class = Class::at(DURING_1, Kind::Real);
    let Cast { one, other, alike, stranger, .. } = cast(&class);
    class.note(Subject::Period("1".into()), Who::Teacher, What::Began);
    reads(&class, other, alike);
    forecast(&class);
    let made = bags(&class, "1", other).remove(0).1;
    assert!(bags(&class, "1", stranger).iter().all(|(_, treatment)| *treatment != made));
    let [token, elsewhere] = [one, stranger].map(|group| class.group("1", group as usize));
    let wall = class.joined(JoinKey::Page(&class.codes("1").wall));
    // Before, the wall says how to join.
    class.later(SignedDuration::from_mins(10));
    let on_wall = || Call::get("/wall?lang=en").cookie(cookies::name(Part::Wall), &wall);
    let period = || "1".to_owned();
    let audiences =
        || [Audience::Groups { period: period() }, Audience::Wall { period: period() }];
    let note = |face: Face, open: bool| {
        for to in audiences() {
            let what = if open { What::Opened { face, to } } else { What::Closed { face, to } };
            class.note(Subject::Investigation, Who::Teacher, what);
        }
    };
    let band = "73912 to 73913 mm were foretold for 4 min.";
    let (mut curves, mut foretold) = (false, false);
    for (face, open) in [
        (Face::Forecast, true),
        (Face::PeriodCurves, true),
        (Face::Forecast, false),
        (Face::Forecast, true),
        (Face::PeriodCurves, false),
    ] {
        note(face, open);
        if face == Face::Forecast {
            foretold = open;
        } else {
            curves = open;
        }
        let said = told(&class, &token).await;
        assert_eq!(said.contains(band), curves && foretold, "{face:?} {open}");
        assert_eq!(said.contains("7391"), curves && foretold, "{face:?} {open}");
        // A group that makes none of it sees nothing of it; of its own bags none was read.
        assert!(!told(&class, &elsewhere).await.contains("7391"), "{face:?} {open}");
        let said = class.call(on_wall()).await.body;
        let mark = "rose less than foretold, from 4 min on";
        assert_eq!(said.contains(mark), curves && foretold, "{face:?} {open}: {said}");
    }
    // What the teacher knows of other numbers of it is on no page.
    note(Face::PeriodCurves, true);
    let all = told(&class, &token).await + &class.call(on_wall()).await.body;
    assert!(all.contains(band));
    for other in ["7392", "7393", "7394", "7395", "7396", "7397", "7398", "73991", "7400"] {
        assert!(!all.contains(other), "{other}");
    }
}

#[tokio::test]
async fn averages_and_what_was_foretold_are_handed_to_the_teacher_as_a_table() {
    let class = Class::at(DURING_1, Kind::Real);
    let teacher = class.teacher();
    let get = |query: &str| {
        Call::get(&format!("/i/{}/curves.csv{query}", class.room.id))
            .cookie("barm-teacher", &teacher)
    };
    assert_eq!(class.call(get("")).await.status, 404, "nothing was read yet");
    class.later(SignedDuration::from_hours(7));
    done_before(&class.room, "none of them", include_bytes!("../../demo/readings.csv"))
        .expect("on record");
    let plan = class.room.read(|scene| scene.plan.clone());
    let look = Look { draws: 16, ..Look::default() };
    class.room.expect(outlook(&plan, look, &Unheard).expect("a forecast"));
    let teacher = class.teacher();
    let get = |query: &str| {
        Call::get(&format!("/i/{}/curves.csv{query}", class.room.id))
            .cookie("barm-teacher", &teacher)
    };
    let all = class.call(get("")).await;
    assert_eq!(all.status, 200);
    assert_eq!(all.header("content-type"), "text/csv; charset=utf-8");
    let row = |table: &str| -> Vec<f64> {
        let row = table.lines().find(|line| line.starts_with("Maple syrup,12.0,"));
        let cells = row.expect("a row").split(',').skip(1);
        cells.map(|cell| cell.parse().expect("a number")).collect()
    };
    let [_, bags, mean, low, median, high] = row(&all.body)[..] else { panic!("{}", all.body) };
    assert!(bags > 2.0 && mean > 0.0 && low <= median && median <= high, "{}", all.body);
    let one = class.call(get("?period=1")).await.body;
    assert!(row(&one)[1] < bags, "{one}");
}

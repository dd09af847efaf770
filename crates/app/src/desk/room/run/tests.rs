//! The run page's view from records made by hand, and what its buttons write.

use super::{Act, ActError, BagPage, Fields, NeedTag, When, bag_page, run_view};
use crate::desk::Wording;
use crate::desk::room::acted::{Acted, PERIOD, at, bag};
use crate::desk::room::doubts::Doubt;
use crate::desk::room::hour::Stage;
use crate::desk::room::poured::poured;
use barm_domain::record::{Key, Odd, Subject, What, Who};

fn at_minute(acted: &Acted, minute: f64) -> super::RunView {
    acted
        .scene(|scene| run_view(scene, Wording::english(), PERIOD, None, at(60.0 * minute)))
        .expect("a view")
}

fn fields(pairs: &[(&str, &str)]) -> Fields {
    pairs.iter().map(|(name, value)| ((*name).to_owned(), (*value).to_owned())).collect()
}

/// Does what a form says, and puts it on record.
fn acts(acted: &mut Acted, minute: f64, pairs: &[(&str, &str)]) -> Result<Key, ActError> {
    let act = Act::read(&fields(pairs), PERIOD)?;
    let key = Key::new(at(60.0 * minute).as_millisecond() as u64, 0xface);
    let plan = acted.plan.clone();
    let period = plan.period(PERIOD).expect("the period");
    let now = at(60.0 * minute);
    let entries = acted.scene(|scene| act.entries(scene, period, key, now))?;
    for entry in entries {
        assert!(acted.ledger.add(entry), "{pairs:?}");
    }
    Ok(key)
}

#[test]
fn before_the_bell_there_is_one_thing_to_do() {
    let acted = Acted::new(8, 3);
    let view = at_minute(&acted, -5.0);
    assert_eq!(view.hour.stage, Stage::Before);
    assert!(view.needs.is_empty() && view.now.is_empty());
    assert!(view.next.iter().all(|bench| bench.when == When::NotBegun));
    assert!(view.ready.iter().any(|line| line.contains("°C")), "{:?}", view.ready);
    assert!(view.call.is_none() && view.changeover.is_none());
}

#[test]
fn a_period_without_bags_and_one_that_is_not_there() {
    let acted = Acted::new(0, 0);
    let view = at_minute(&acted, 3.0);
    assert!(view.next.is_empty() && view.now.is_empty() && view.needs.is_empty());
    let none =
        acted.scene(|scene| run_view(scene, Wording::english(), "nowhere", None, at(0.0)));
    assert!(none.is_none());
}

#[test]
fn groups_stand_in_the_order_of_their_time() {
    let mut acted = Acted::new(8, 3);
    // Zero readings are 12 to 22 s after their time: group 5 is due from 28:12, group 6 from 28:42.
    acted.runs_to(28.0, 1.0, |_, _| false);
    let view = at_minute(&acted, 29.0);
    let now: Vec<u32> = view.now.iter().map(|bench| bench.group).collect();
    assert_eq!(now, [5, 6]);
    let next: Vec<u32> = view.next.iter().map(|bench| bench.group).collect();
    assert_eq!(next, [7, 8, 1, 2, 3, 4]);
    assert!(view.now.iter().all(|bench| bench.minute == Some(12)));
    assert!(view.needs.is_empty(), "{:?}", view.needs);
    assert_eq!(view.summary, "8 groups, 24 bags: 6 due now, 18 waiting.");
    let band = &view.now[0].bags[0].band;
    assert!(band.len() > 10 && band.iter().all(|(_, low, high)| low <= high));
}

#[test]
fn what_needs_the_teacher_is_ordered_mends_first_then_late_then_silent() {
    let mut acted = Acted::new(8, 3);
    let (leaks, late) = (bag(1, 1), bag(4, 2));
    let dark = |code: barm_domain::code::BagCode, planned| code.group() == 7 && planned > 4;
    acted.runs_to(33.0, 1.0, |code, planned| {
        planned == 16 && (code == late || code == leaks) || dark(code, planned)
    });
    acted.bag(60.0 * 30.4, leaks, What::Reading { planned: Some(16), height_mm: 9.0 });
    let view = at_minute(&acted, 33.0);
    let tags: Vec<&NeedTag> = view.needs.iter().map(|need| &need.tag).collect();
    assert!(matches!(tags[0], NeedTag::Doubt(Doubt::Leak)), "{tags:?}");
    assert!(matches!(tags.last(), Some(NeedTag::Silent(_))), "{tags:?}");
    let need = view.needs.iter().find(|need| need.about == "4C").expect("the late bag");
    assert!(
        matches!(need.tag, NeedTag::Late(since) if since == at(60.0 * 31.5 + 22.0)),
        "{need:?}"
    );
    assert!(need.says.starts_with("A and B are in. Ask group 4 for C"), "{}", need.says);
    let says: Vec<&str> =
        view.needs[0].offers.iter().map(|offer| offer.says.as_str()).collect();
    assert!(says.contains(&"It leaks: mark it") && says.contains(&"Leave it"), "{says:?}");
}

#[test]
fn every_offer_can_be_sent_and_does_what_it_says() {
    let mut acted = Acted::new(8, 3);
    let leaks = bag(1, 1);
    acted.runs_to(30.0, 1.0, |code, planned| code == leaks && planned == 16);
    acted.bag(60.0 * 30.4, leaks, What::Reading { planned: Some(16), height_mm: 9.0 });
    let view = at_minute(&acted, 30.5);
    let need = &view.needs[0];
    let sent: Vec<String> =
        need.offers.iter().filter_map(|offer| offer.sends.clone()).collect();
    assert!(sent.len() >= 2, "{sent:?}");
    for line in &sent {
        assert!(Act::read(&fields(&[("do", line)]), PERIOD).is_ok(), "{line}");
    }
    let leave = need.offers.iter().find(|offer| offer.says == "Leave it").expect("to leave it");
    acts(&mut acted, 30.6, &[("do", leave.sends.as_deref().expect("a line"))]).expect("done");
    let after = at_minute(&acted, 30.7);
    assert!(after.needs.iter().all(|need| need.about != "1B"), "{:?}", after.needs);
}

#[test]
fn a_height_goes_where_the_bag_waits_for_it() {
    let mut acted = Acted::new(8, 3);
    acted.period(0.0, What::Began);
    let first = bag(5, 0);
    acts(&mut acted, 16.0, &[("do", "write"), ("bag", "5a"), ("mm", "4")]).expect("zero");
    let zero = acted.ledger.standing().bags[&first].zero.clone().expect("a zero");
    assert_eq!((zero.height_mm, zero.who), (4.0, Who::Teacher));
    assert!(acted.ledger.standing().bags[&first].sealed.is_some());
    acts(&mut acted, 20.2, &[("do", "write"), ("bag", &first.to_string()), ("mm", "5,5 mm")])
        .expect("a reading");
    let readings = &acted.ledger.standing().bags[&first].readings;
    assert_eq!((readings[0].planned, readings[0].height_mm), (Some(4), 5.5));
    acts(&mut acted, 22.0, &[("do", "write"), ("bag", "5A"), ("mm", "6")]).expect("between");
    assert_eq!(acted.ledger.standing().bags[&first].readings[1].planned, None);
}

#[test]
fn slips_of_the_typing_hand_are_told_and_write_nothing() {
    let mut acted = Acted::new(8, 3);
    acted.period(0.0, What::Began);
    let other =
        acted.plan.bags.iter().find(|bag| bag.period == "2").expect("a bag").code.clone();
    let mut says = |pairs: &[(&str, &str)]| {
        acts(&mut acted, 16.0, pairs).expect_err("nothing done").says(Wording::english())
    };
    assert!(
        says(&[("do", "write"), ("bag", "9A"), ("mm", "4")]).contains("no bag of period 3")
    );
    assert!(
        says(&[("do", "write"), ("bag", &other), ("mm", "4")]).contains("a bag of period 2")
    );
    assert!(says(&[("do", "write"), ("bag", "5A"), ("mm", "x")]).contains("a height in mm"));
    assert!(says(&[("do", "write"), ("bag", "5A"), ("mm", "1200")]).contains("from 0 to 300"));
    assert!(says(&[("do", "format the disk")]).contains("does not offer"));
    assert!(says(&[]).contains("does not offer"));
    assert!(acted.ledger.standing().bags.is_empty());
}

#[test]
fn what_was_done_is_told_with_its_way_back_for_ten_seconds() {
    let mut acted = Acted::new(8, 3);
    acted.runs_to(28.0, 1.0, |_, _| false);
    let code = bag(1, 0);
    let aside = format!("set-aside {code} leak");
    let key = acts(&mut acted, 28.0, &[("do", &aside)]).expect("done");
    let told = |acted: &Acted, seconds: f64| {
        let view = acted.scene(|scene| {
            run_view(scene, Wording::english(), PERIOD, Some(key), at(60.0 * 28.0 + seconds))
        });
        view.expect("a view").done
    };
    let done = told(&acted, 2.0).expect("told");
    assert_eq!(done.says, "1A is set aside by “leak”.");
    assert_eq!(told(&acted, 11.0), None);
    let back = done.back.expect("a way back");
    acts(&mut acted, 28.1, &[("do", &back)]).expect("taken back");
    assert_eq!(acted.ledger.standing().bags[&code].set_aside, None);
    assert_eq!(
        acted.ledger.entries_of(&Subject::Bag(code)).len(),
        4 + 2,
        "both stay on record"
    );
}

#[test]
fn a_correction_is_taken_back_by_another() {
    let mut acted = Acted::new(8, 3);
    acted.runs_to(28.0, 1.0, |_, _| false);
    let code = bag(1, 0);
    let reading = acted.ledger.standing().bags[&code].readings[1].clone();
    let line = format!("correct {code} {}", reading.key);
    let key = acts(&mut acted, 28.0, &[("do", &line), ("mm", "31")]).expect("done");
    let view = acted.scene(|scene| {
        run_view(scene, Wording::english(), PERIOD, Some(key), at(60.0 * 28.02))
    });
    let back = view.expect("a view").done.expect("told").back.expect("a way back");
    acts(&mut acted, 28.05, &[("do", &back)]).expect("done");
    let now = acted.ledger.standing().bags[&code].readings[1].clone();
    assert!((now.height_mm - reading.height_mm).abs() < 1e-9);
    assert_eq!(now.mended.len(), 2);
}

#[test]
fn a_fire_drill_shows_what_going_on_would_cost() {
    let mut acted = Acted::new(8, 3);
    acted.runs_to(26.0, 1.0, |_, _| false);
    acts(&mut acted, 26.0, &[("do", "stop")]).expect("stopped");
    let early = at_minute(&acted, 27.0).replan.expect("a plan");
    assert!(early.since == at(60.0 * 26.0));
    // Bell 45, clearing from 39: group 1 (zero 14:00) is at minute 12 with 13 to clearing; the
    // plan's last is 24. At 31:00 group 8 (zero 17:30) has stood since 8.5 min, and 8 remain.
    let view = at_minute(&acted, 31.0);
    assert_eq!(view.hour.stage, Stage::Standing(at(60.0 * 26.0)));
    assert!(view.now.is_empty());
    let replan = view.replan.expect("a plan");
    assert_eq!(replan.shared, Some(16), "{}", replan.says);
    acts(&mut acted, 31.0, &[("do", "go-on 16")]).expect("went on");
    let standing = &acted.ledger.standing().periods[PERIOD];
    assert_eq!(standing.last_reading, Some(16));
    assert_eq!(standing.stopped, [(at(60.0 * 26.0), Some(at(60.0 * 31.0)))]);
}

#[test]
fn a_dead_class_is_called_once_for_all() {
    let mut acted = Acted::new(8, 3);
    acted.runs_to(28.0, 0.1, |_, _| false);
    let call = at_minute(&acted, 28.0).call.expect("a call");
    assert!(call.says.contains("yeast and water first"), "{}", call.says);
    let mut well = Acted::new(8, 3);
    well.runs_to(28.0, 1.0, |_, _| false);
    assert_eq!(at_minute(&well, 28.0).call, None);
}

#[test]
fn after_the_bell_there_are_six_ticks() {
    let mut acted = Acted::new(8, 3);
    acted.runs_to(45.0, 1.0, |_, _| false);
    let view = at_minute(&acted, 45.5);
    assert_eq!(view.hour.stage, Stage::PastBell);
    let changeover = view.changeover.expect("a list");
    assert_eq!(changeover.ticks.len(), 6);
    assert!(view.now.is_empty() && view.next.iter().all(|bench| bench.when == When::Over));
    acts(&mut acted, 46.0, &[("do", "end")]).expect("ended");
    assert_eq!(at_minute(&acted, 46.5).hour.stage, Stage::Over);
}

#[test]
fn the_meter_takes_bags_after_their_last_reading_and_counts_clean_air() {
    let mut acted = Acted::new(8, 3);
    acted.runs_to(42.5, 1.0, |_, _| false);
    let line = at_minute(&acted, 42.5).meter.expect("a line");
    assert!(line.blank_next && line.waiting.len() > 3, "{line:?}");
    let (name, code) = line.next().cloned().expect("a bag");
    acts(
        &mut acted,
        42.6,
        &[("do", "meter"), ("bag", &name), ("percent", "0.12"), ("blank", "1")],
    )
    .expect("noted");
    let shown = &acted.ledger.standing().bags[&code].meter;
    assert_eq!((shown[0].1, shown[0].2), (0.12, Some(2)));
    let after = at_minute(&acted, 42.7).meter.expect("a line");
    assert!(!after.blank_next && after.waiting.iter().all(|(_, other)| *other != code));
    assert_eq!(after.air, [(1, None)], "pushed, and nobody noted what it showed");
}

#[test]
fn clean_air_is_noted_with_its_turn_and_can_be_set_right() {
    let mut acted = Acted::new(8, 3);
    acted.runs_to(42.5, 1.0, |_, _| false);
    let line = at_minute(&acted, 42.5).meter.expect("a line");
    let bag = |at: usize| (line.waiting[at].0.clone(), line.waiting[at].1);
    for (at, (air, expected)) in
        [("0,01 %", Some(2)), ("", Some(3)), ("0.03", Some(5))].iter().enumerate()
    {
        let (name, code) = bag(at);
        let minute = 42.6 + 0.1 * at as f64;
        let fields =
            [("do", "meter"), ("bag", name.as_str()), ("percent", "0.12"), ("air", *air)];
        acts(&mut acted, minute, &fields).expect("noted");
        assert_eq!(acted.ledger.standing().bags[&code].meter[0].2, *expected, "{air}");
    }
    let air = |acted: &Acted| at_minute(acted, 43.5).meter.expect("a line").air;
    assert_eq!(air(&acted), [(1, Some(0.01)), (4, Some(0.03))]);
    // A slip of a digit, set right.
    acts(&mut acted, 43.2, &[("do", "air"), ("turn", "4"), ("air", "0.02")])
        .expect("set right");
    assert_eq!(air(&acted), [(1, Some(0.01)), (4, Some(0.02))]);
    acts(&mut acted, 43.3, &[("do", "air 4 0.03")]).expect("the way back");
    acts(&mut acted, 43.4, &[("do", "air 1")]).expect("not noted");
    assert_eq!(air(&acted), [(1, None), (4, Some(0.03))]);
    let name = bag(3).0;
    let wrong =
        [("do", "meter"), ("bag", name.as_str()), ("percent", "0.12"), ("air", "clean")];
    assert!(acts(&mut acted, 43.5, &wrong).is_err());
}

#[test]
fn absent_students_are_counted_and_never_named() {
    let mut acted = Acted::new(8, 3);
    acted.period(0.0, What::Began);
    acts(&mut acted, 1.0, &[("do", "here 3 1")]).expect("noted");
    let view = at_minute(&acted, 1.1);
    let row = &view.roles[2];
    assert_eq!((row.group, row.here), (3, Some(1)));
    assert!(row.says.contains("neighbor"), "{}", row.says);
}

#[test]
fn a_bag_page_hides_nothing() {
    let mut acted = Acted::new(8, 3);
    acted.runs_to(28.0, 1.0, |_, _| false);
    let code = bag(1, 0);
    acted.bag(60.0 * 28.1, code, What::Odd(Odd::Bumped));
    acted.bag(60.0 * 28.2, code, What::SetAside { rule: "no such rule".to_owned() });
    let now = at(60.0 * 28.5);
    let page = acted
        .scene(|scene| bag_page(scene, Wording::english(), PERIOD, code, None, now))
        .expect("a page");
    let entries = acted.ledger.entries_of(&Subject::Bag(code));
    assert_eq!(page.ledger.len(), entries.len());
    assert!(page.ledger.iter().any(|row| row.says == "bumped"));
    let refused = page.ledger.last().and_then(|row| row.refused.clone()).expect("a reason");
    assert!(refused.contains("no such rule"), "{refused}");
}

#[test]
fn what_is_open_can_be_closed_with_the_same_button() {
    let mut acted = Acted::new(8, 3);
    for turn in [true, false] {
        let row = at_minute(&acted, 1.0).faces[0].clone();
        assert_eq!(row.open, !turn);
        let act = Act::read(&fields(&[("do", &row.sends)]), PERIOD).expect("an act");
        let Act::Whole(what) = act else { panic!("{:?}", row.sends) };
        acted.enter(60.0, Subject::Investigation, what, Who::Teacher);
    }
    assert!(!at_minute(&acted, 2.0).faces[0].open);
}

fn one_bag(acted: &Acted, code: barm_domain::code::BagCode, did: Option<Key>) -> BagPage {
    let now = at(60.0 * 20.0);
    let page = acted.scene(|scene| bag_page(scene, Wording::english(), PERIOD, code, did, now));
    page.expect("a bag of the period")
}

#[test]
fn what_really_went_in_is_written_read_and_put_back_to_the_plan() {
    let mut acted = Acted::new(2, 2);
    let code = bag(1, 0);
    acted.bag(60.0, code, What::Sealed { plan: 1 });
    let fields = |page: &BagPage| -> Vec<String> {
        page.went_in.iter().map(|one| one.is.clone()).collect()
    };
    assert!(fields(&one_bag(&acted, code, None)).iter().all(String::is_empty));
    assert_eq!(acted.scene(poured), None);
    let act = format!("made {code}");
    let form = [("do", act.as_str()), ("celsius", "113 °F"), ("yeast", "2.5 g")];
    acts(&mut acted, 19.9, &form).expect("written");
    let page = one_bag(&acted, code, None);
    // 113 °F are 45 °C, by the definition of the degree Fahrenheit.
    assert_eq!(fields(&page)[0], "45 °C");
    assert!(fields(&page).contains(&"2.5 g".to_owned()));
    let said: Vec<&str> = page.ledger.iter().map(|row| row.says.as_str()).collect();
    assert!(
        said.iter().any(|says| says.contains("45 °C") && says.contains("2.5 g")),
        "{said:?}"
    );
    let measured = acted.scene(poured).expect("one bag");
    assert_eq!((measured.bags, measured.from_to), (1, (45.0, 45.0)));
    assert_eq!(measured.far.len(), 1, "five degrees above the plan");
    // All blank is as planned.
    acts(&mut acted, 19.95, &[("do", act.as_str())]).expect("written");
    assert!(fields(&one_bag(&acted, code, None)).iter().all(String::is_empty));
    assert_eq!(acted.scene(poured), None);
    // A comma is a point; a unit may be a slip, which is asked and written all the same.
    let asked = [
        (19.961, "40,5 °C", ""),
        (19.962, "64 °C", "burns skin"),
        (19.963, "20 °C", "The plan says"),
    ];
    for (minute, typed, asks) in asked {
        let form = [("do", act.as_str()), ("celsius", typed)];
        let key = acts(&mut acted, minute, &form).expect("written");
        let says = one_bag(&acted, code, Some(key)).done.expect("told").says;
        let asked = says.contains("write it again");
        assert_eq!((says.contains(asks), asked), (true, !asks.is_empty()), "{typed}: {says}");
    }
    let wrong = [("45", "no unit"), ("120 °C", "no water"), ("warm", "no number")];
    for (said, why) in wrong {
        let form = [("do", act.as_str()), ("celsius", said)];
        assert!(
            matches!(acts(&mut acted, 19.97, &form), Err(ActError::Number { .. })),
            "{why}"
        );
    }
}

#[test]
fn an_odd_tap_is_taken_back_from_the_line_and_from_the_bag() {
    let mut acted = Acted::new(2, 2);
    let code = bag(1, 0);
    let tapped = acts(&mut acted, 19.9, &[("do", &format!("odd {code} foam"))]).expect("noted");
    let page = one_bag(&acted, code, Some(tapped));
    assert_eq!(page.odd.len(), 1);
    let back = page.done.and_then(|done| done.back).expect("a way back");
    acts(&mut acted, 19.95, &[("do", &back)]).expect("taken back");
    let page = one_bag(&acted, code, None);
    assert!(page.odd.is_empty());
    assert!(page.ledger.iter().all(|row| row.refused.is_none()), "{:?}", page.ledger);
}

#[test]
fn a_unit_that_is_written_behind_a_number_counts() {
    let mut acted = Acted::new(2, 2);
    acted.period(0.0, What::Began);
    let mut minute = 5.0;
    let mut jug = |typed: &str| {
        minute += 0.1;
        let form = [("do", "jug"), ("jug", "1"), ("celsius", typed)];
        acts(&mut acted, minute, &form)
            .map(|_| ())
            .map_err(|error| error.says(Wording::english()))
    };
    assert!(jug("41,5").is_ok() && jug("41.5 °C").is_ok());
    // 104 °F are 40 °C and 250 °F are more than water can have; 104 alone is no °C of water.
    assert!(jug("104 °F").is_ok() && jug("250 °F").is_err() && jug("104").is_err());
    let mut acted = Acted::new(2, 2);
    acted.period(0.0, What::Began);
    let form = [("do", "write"), ("bag", "1A"), ("mm", "1,2 cm")];
    acts(&mut acted, 16.0, &form).expect("written");
    let zero = acted.ledger.standing().bags[&bag(1, 0)].zero.clone().expect("a zero");
    assert!((zero.height_mm - 12.0).abs() < 1e-9, "{}", zero.height_mm);
}

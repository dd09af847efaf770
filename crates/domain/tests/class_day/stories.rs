//! Whole bags as lists of entries.

use crate::day::{about, at, bag, by, correct, entry, key, known, one, read, zero};
use barm_domain::code::BagCode;
use barm_domain::record::{
    Audience, Bag, Entry, Face, Key, Ledger, Lent, Made, Odd, Refused, StandIn, Standing,
    Subject, Truth, What, Who, replay,
};

fn standing(entries: &[Entry]) -> Standing {
    replay(&known(), entries)
}

/// The one bag of the story: heights that count by planned minute, and what is refused.
fn check(
    entries: &[Entry],
    zero: Option<f64>,
    heights: &[(u32, f64)],
    refused: &[(u128, Refused)],
) {
    let standing = standing(entries);
    let bag = standing.bags.get(&bag(1, 1, 0)).expect("the bag is on record");
    assert_eq!(bag.zero.as_ref().map(|zero| zero.height_mm), zero);
    let found: Vec<(u32, f64)> =
        bag.readings.iter().map(|r| (r.planned.expect("planned"), r.height_mm)).collect();
    assert_eq!(found, heights);
    let refused: Vec<(Key, Refused)> =
        refused.iter().map(|(number, reason)| (key(*number), reason.clone())).collect();
    assert_eq!(standing.refused, refused);
}

fn the_bag(entries: &[Entry]) -> Bag {
    standing(entries).bags.remove(&bag(1, 1, 0)).expect("the bag is on record")
}

#[test]
fn a_quiet_bag() {
    let story = [
        entry(1, 600, What::Sealed { plan: 3 }),
        entry(2, 840, zero(8.0)),
        entry(3, 1080, read(4, 9.0)),
        entry(4, 1325, read(8, 12.0)),
        entry(5, 2400, What::Vented),
    ];
    check(&story, Some(8.0), &[(4, 9.0), (8, 12.0)], &[]);
    let bag = the_bag(&story);
    assert_eq!(bag.sealed, Some((at(600), 3)));
    assert_eq!(bag.vented, Some(at(2400)));
    assert_eq!(bag.last, Some(at(2400)));
    let rises = bag.rises();
    assert_eq!(rises[..2], [(0.0, 0.0), (4.0, 1.0)]);
    assert!((rises[2].0 - 485.0 / 60.0).abs() < 1e-9 && (rises[2].1 - 4.0).abs() < 1e-9);
}

#[test]
fn a_tablet_that_was_cut_off_brings_its_readings_late() {
    let late = Entry { arrived: at(4000), ..entry(3, 1080, read(4, 9.0)) };
    let story = [entry(4, 1320, read(8, 12.0)), entry(2, 840, zero(8.0)), late];
    check(&story, Some(8.0), &[(4, 9.0), (8, 12.0)], &[]);
    let group = &standing(&story).groups[&("1".to_owned(), 1)];
    assert_eq!(group.heard, Some(at(4000)), "heard when it arrived, not when it was read");
}

#[test]
fn sent_twice_counts_once() {
    let again = Entry { arrived: at(2000), ..entry(3, 1080, read(4, 9.0)) };
    let story =
        [entry(2, 840, zero(8.0)), entry(3, 1080, read(4, 9.0)), again.clone(), again.clone()];
    check(&story, Some(8.0), &[(4, 9.0)], &[]);
    let mut ledger = Ledger::of(known(), story[..2].to_vec());
    assert!(!ledger.add(again));
    assert_eq!(ledger.entries_of(&Subject::Bag(bag(1, 1, 0))).len(), 2);
}

#[test]
fn a_mended_reading_keeps_its_history() {
    let story = [
        entry(2, 840, zero(8.0)),
        entry(3, 1080, read(4, 120.0)),
        entry(4, 1100, correct(3, 1.2)),
        // Points to the correction; the same slip goes on.
        entry(5, 1120, correct(4, 12.0)),
    ];
    check(&story, Some(8.0), &[(4, 12.0)], &[]);
    let reading = the_bag(&story).readings.remove(0);
    let before: Vec<(f64, Key)> = reading.mended.iter().map(|m| (m.height_mm, m.by)).collect();
    assert_eq!(before, [(120.0, key(4)), (1.2, key(5))]);
    assert_eq!(reading.measured, at(1080), "a correction does not change when it was read");
    assert!(!reading.rival);
}

#[test]
fn the_latest_correction_counts_however_it_arrives() {
    let story = [
        entry(5, 1120, correct(3, 12.0)),
        entry(4, 1100, correct(3, 13.0)),
        entry(2, 840, zero(8.0)),
        entry(3, 1080, read(4, 9.0)),
    ];
    check(&story, Some(8.0), &[(4, 12.0)], &[]);
}

#[test]
fn a_mended_zero_moves_every_rise_and_not_the_clock() {
    let story = [
        entry(2, 840, zero(80.0)),
        entry(3, 1080, read(4, 9.0)),
        entry(4, 1400, correct(2, 8.0)),
    ];
    check(&story, Some(8.0), &[(4, 9.0)], &[]);
    assert_eq!(the_bag(&story).rises(), [(0.0, 0.0), (4.0, 1.0)]);
}

#[test]
fn corrections_of_nothing() {
    let other = about(Subject::Bag(bag(1, 1, 1)), entry(7, 900, zero(9.0)));
    let story = [
        entry(2, 840, zero(8.0)),
        entry(3, 1000, correct(99, 1.0)),
        // Another bag's reading cannot be corrected from here.
        entry(4, 1001, correct(7, 1.0)),
        // Two that point to one another.
        entry(5, 1002, correct(6, 1.0)),
        entry(6, 1003, correct(5, 1.0)),
        other,
    ];
    let nothing = |of: u128| Refused::NothingToCorrect { of: key(of) };
    let refused = [(3, nothing(99)), (4, nothing(7)), (5, nothing(6)), (6, nothing(5))];
    check(&story, Some(8.0), &[], &refused);
}

#[test]
fn two_devices_disagree_until_the_teacher_chooses() {
    let phone = entry(3, 1080, read(4, 9.0));
    let tablet = entry(4, 1090, read(4, 19.0));
    let mut story = vec![entry(2, 840, zero(8.0)), phone, tablet];
    check(&story, Some(8.0), &[(4, 9.0), (4, 19.0)], &[]);
    assert!(the_bag(&story).readings.iter().all(|reading| reading.rival));

    // The group mends its own; then both say the same.
    let mended = [story.clone(), vec![entry(5, 1200, correct(4, 9.0))]].concat();
    assert!(the_bag(&mended).readings.iter().all(|reading| !reading.rival));

    // Or the teacher corrects one to itself.
    story.push(by(Who::Teacher, entry(6, 1300, correct(3, 9.0))));
    check(&story, Some(8.0), &[(4, 9.0)], &[(4, Refused::NotChosen { by: key(6) })]);
    let chosen = the_bag(&story).readings.remove(0);
    assert!(!chosen.rival);
    let history: Vec<f64> = chosen.mended.iter().map(|mended| mended.height_mm).collect();
    assert_eq!(history, [19.0, 9.0], "what was put aside can still be seen");
    assert!(chosen.is_confirmed(), "it was looked at and left as it is");

    // A paper brought in later, written before the choice, is put aside with the rest ...
    let paper = by(Who::Import, Entry { arrived: at(9000), ..entry(7, 1085, read(4, 10.0)) });
    story.push(paper);
    let not_chosen = |number| (number, Refused::NotChosen { by: key(6) });
    check(&story, Some(8.0), &[(4, 9.0)], &[not_chosen(7), not_chosen(4)]);

    // ... and one written after it is a rival anew.
    story.push(entry(8, 1400, read(4, 11.0)));
    check(&story, Some(8.0), &[(4, 9.0), (4, 11.0)], &[not_chosen(7), not_chosen(4)]);
    assert!(the_bag(&story).readings.iter().all(|reading| reading.rival));
}

#[test]
fn two_zero_readings_stay_until_one_is_chosen() {
    let mut story = vec![
        entry(2, 840, zero(8.0)),
        entry(3, 870, zero(11.0)),
        entry(4, 1080, read(4, 12.0)),
    ];
    let bag = the_bag(&story);
    let zero = bag.zero.expect("a zero reading");
    assert!(zero.rival && bag.other_zeros[0].rival);
    assert_eq!((zero.height_mm, bag.other_zeros[0].height_mm), (8.0, 11.0));
    story.push(by(Who::Teacher, entry(5, 2000, correct(3, 11.0))));
    let bag = the_bag(&story);
    let zero = bag.zero.expect("a zero reading");
    assert_eq!((zero.height_mm, zero.measured, zero.rival), (11.0, at(870), false));
    assert!(bag.other_zeros.is_empty());
}

#[test]
fn readings_wait_for_a_zero() {
    let mut story = vec![entry(3, 1080, read(4, 9.0)), entry(4, 1100, correct(3, 10.0))];
    check(&story, None, &[], &[(3, Refused::NoZeroYet), (4, Refused::NoZeroYet)]);
    story.push(entry(5, 840, zero(8.0)));
    check(&story, Some(8.0), &[(4, 10.0)], &[]);
}

#[test]
fn a_height_from_before_the_zero_is_no_rise() {
    let story =
        [entry(1, 800, read(4, 8.0)), entry(2, 840, zero(8.0)), entry(3, 1080, read(4, 9.0))];
    check(&story, Some(8.0), &[(4, 9.0)], &[(1, Refused::BeforeZero)]);
}

#[test]
fn nothing_is_read_from_a_lost_bag() {
    let mut story = vec![
        entry(2, 840, zero(8.0)),
        entry(3, 1080, read(4, 9.0)),
        entry(4, 1200, What::Lost),
        entry(5, 1320, read(8, 12.0)),
        entry(6, 1330, What::Odd(Odd::Foam)),
        entry(7, 1340, What::Vented),
        entry(8, 1350, What::Lost),
        // A mistake in what was read before can still be mended.
        entry(9, 1360, correct(3, 10.0)),
    ];
    let after = |number| (number, Refused::AfterLoss);
    check(&story, Some(8.0), &[(4, 10.0)], &[after(5), after(6), after(7), after(8)]);
    assert_eq!(the_bag(&story).lost, Some(at(1200)));
    // A wrong tap is taken back, and everything counts.
    story.push(by(Who::Teacher, entry(10, 1500, What::TakenBack)));
    let bag = the_bag(&story[..7].iter().chain(&story[8..]).cloned().collect::<Vec<_>>());
    assert_eq!((bag.lost, bag.readings.len(), bag.odd.len()), (None, 2, 1));
    assert_eq!(bag.vented, Some(at(1340)));
}

#[test]
fn an_odd_thing_tapped_in_error_is_taken_back_by_who_may() {
    let back = |number, second, of| entry(number, second, What::OddBack { of: key(of) });
    let taps = |story: &[Entry]| -> Vec<Odd> {
        the_bag(story).odd.iter().map(|tap| tap.odd).collect()
    };
    let mut story = vec![
        entry(2, 840, zero(8.0)),
        entry(3, 900, What::Odd(Odd::Leak)),
        by(Who::Teacher, entry(4, 910, What::Odd(Odd::Foam))),
    ];
    assert_eq!(taps(&story), [Odd::Leak, Odd::Foam]);
    story.push(back(5, 920, 3));
    assert_eq!(taps(&story), [Odd::Foam]);
    // Not twice, not what never was, and not what the teacher tapped.
    story.extend([back(6, 930, 3), back(7, 940, 77), back(8, 950, 4)]);
    let no = |number| (number, Refused::NotTapped);
    check(&story, Some(8.0), &[], &[no(6), no(7), no(8)]);
    assert_eq!(taps(&story), [Odd::Foam]);
    // The teacher takes back anybody's.
    story.push(by(Who::Teacher, back(9, 960, 4)));
    assert_eq!(taps(&story), []);
}

#[test]
fn what_really_went_in_is_filled_in_and_put_back() {
    let water = |celsius| What::Made(Made { water_celsius: Some(celsius), difference: None });
    let less = barm_domain::plan::Difference {
        water: Some(barm_domain::testing::amount("45 mL")),
        ..Default::default()
    };
    let less = Made { water_celsius: None, difference: Some(Box::new(less)) };
    let mut story = vec![
        entry(2, 800, water(43.0)),
        by(Who::Teacher, entry(3, 900, What::Made(less.clone()))),
    ];
    let made = the_bag(&story).made.expect("something else went in");
    assert_eq!((made.water_celsius, &made.difference), (Some(43.0), &less.difference));
    // A second look at the thermometer leaves the water that was poured.
    story.push(entry(4, 950, water(41.5)));
    let made = the_bag(&story).made.expect("something else went in");
    assert_eq!((made.water_celsius, &made.difference), (Some(41.5), &less.difference));
    story.push(by(Who::Teacher, entry(5, 990, What::Made(Made::default()))));
    assert_eq!(the_bag(&story).made, None);
}

#[test]
fn bags_are_set_aside_by_the_rules_of_the_plan_only() {
    let by_rule = |number, second, rule: &str| {
        by(Who::Teacher, entry(number, second, What::SetAside { rule: rule.into() }))
    };
    let taken_back = |number, second| by(Who::Teacher, entry(number, second, What::TakenBack));
    let mut story = vec![by_rule(1, 2000, "too low")];
    let unknown = Refused::NoSuchRule { rule: "too low".into() };
    check(&story, None, &[], &[(1, unknown.clone())]);
    assert_eq!(the_bag(&story).set_aside, None);
    story.push(by_rule(2, 2010, "leak"));
    assert_eq!(the_bag(&story).set_aside.as_deref(), Some("leak"));
    story.push(taken_back(3, 2020));
    assert_eq!(the_bag(&story).set_aside, None);
    story.push(taken_back(4, 2030));
    check(&story, None, &[], &[(1, unknown), (4, Refused::NotSetAside)]);
}

#[test]
fn taking_back_undoes_the_newest_first() {
    let aside = entry(1, 1000, What::SetAside { rule: "leak".into() });
    let taken_back = |number, second| entry(number, second, What::TakenBack);
    let left = |story: &[Entry]| {
        let bag = the_bag(story);
        (bag.set_aside.is_some(), bag.lost.is_some())
    };
    let lost_last = [aside.clone(), entry(2, 1100, What::Lost), taken_back(3, 1200)];
    assert_eq!(left(&lost_last), (true, false));
    let lost_first = [entry(2, 900, What::Lost), aside, taken_back(3, 1200)];
    assert_eq!(left(&lost_first), (false, true));
    let both = [lost_first.to_vec(), vec![taken_back(4, 1300)]].concat();
    assert_eq!(left(&both), (false, false));
}

#[test]
fn a_swapped_label_is_set_right() {
    let truth = |treatment: Option<&str>, group| {
        What::SetRight(Truth { treatment: treatment.map(Into::into), group })
    };
    let mut story = vec![
        entry(1, 2000, truth(Some("starch"), None)),
        entry(2, 2010, truth(Some("sand"), None)),
    ];
    let no_such = Refused::NoSuchTreatment { treatment: "sand".into() };
    check(&story, None, &[], &[(2, no_such)]);
    let set_right = the_bag(&story).truth.expect("set right");
    assert_eq!(set_right.treatment.as_deref(), Some("starch"));
    story.push(entry(3, 2020, truth(None, None)));
    assert_eq!(the_bag(&story).truth, None, "back to what the label says");
}

#[test]
fn a_guess_is_locked_by_the_first_zero_of_the_group() {
    let group = Subject::Group { period: "1".into(), group: 1 };
    let guess = |number, second, mm| {
        let expects = vec![(bag(1, 1, 0), mm)];
        about(group.clone(), entry(number, second, What::Guess { expects, because: None }))
    };
    let second_bag = about(Subject::Bag(bag(1, 1, 1)), entry(4, 850, zero(8.0)));
    let story = [
        guess(1, 300, 10.0),
        guess(2, 700, 20.0),
        second_bag,
        guess(5, 850, 30.0),
        entry(6, 900, zero(9.0)),
    ];
    let standing = standing(&story);
    let guess = standing.groups[&("1".to_owned(), 1)].guess.clone().expect("a guess");
    assert_eq!((guess.at, guess.expects), (at(700), vec![(bag(1, 1, 0), 20.0)]));
    assert_eq!(standing.refused, [(key(5), Refused::GuessLocked)]);
    // One by one, with the zero reading last to arrive, it is the same.
    let mut ledger = Ledger::new(known());
    for entry in [&story[0], &story[1], &story[3], &story[4], &story[2]] {
        assert!(ledger.add(entry.clone()));
    }
    assert_eq!(ledger.standing(), &standing);
}

#[test]
fn a_guess_that_comes_after_the_first_zero_is_late_whatever_time_it_claims() {
    let group = Subject::Group { period: "1".into(), group: 1 };
    let guess = |number, claims, arrives| {
        let expects = vec![(bag(1, 1, 0), 9.0)];
        let entry = entry(number, claims, What::Guess { expects, because: None });
        about(group.clone(), Entry { arrived: at(arrives), ..entry })
    };
    let zero = |arrives| Entry { arrived: at(arrives), ..entry(2, 850, zero(9.0)) };
    // Sent together from a device that was cut off: in the order in which they were typed.
    let story = [guess(1, 700, 4000), zero(4000)];
    assert_eq!(standing(&story).refused, []);
    // The zero was on record before.
    let story = [guess(1, 700, 4001), zero(4000)];
    assert_eq!(standing(&story).refused, [(key(1), Refused::GuessLocked)]);
}

#[test]
fn another_group_does_not_lock_the_guess() {
    let group = Subject::Group { period: "1".into(), group: 2 };
    let guess = What::Guess { expects: vec![(bag(1, 2, 0), 5.0)], because: None };
    let story = [entry(1, 840, zero(8.0)), about(group, entry(2, 900, guess))];
    assert!(standing(&story).refused.is_empty());
}

#[test]
fn numbers_that_stand_in_never_count() {
    let group = Subject::Group { period: "1".into(), group: 1 };
    let simulated = by(Who::Program, entry(6, 1330, read(8, 40.0)));
    let story = [
        entry(2, 840, zero(8.0)),
        entry(3, 1080, read(4, 9.0)),
        // The bag burst; from here on the group works with the numbers of the class.
        about(group, entry(4, 1200, What::StandIn(Lent::ClassData))),
        entry(5, 1320, read(8, 30.0)),
        simulated,
        // The teacher still reads what is left of it.
        by(Who::Teacher, entry(7, 1340, read(8, 10.0))),
    ];
    let refused = [(5, Refused::StandIn), (6, Refused::StandIn)];
    check(&story, Some(8.0), &[(4, 9.0), (8, 10.0)], &refused);
    let lent = StandIn { since: at(1200), lent: Lent::ClassData };
    assert_eq!(standing(&story).groups[&("1".to_owned(), 1)].stand_in, Some(lent));
}

#[test]
fn lent_numbers_that_are_taken_back_leave_what_was_read_before_and_after() {
    let group = || Subject::Group { period: "1".into(), group: 1 };
    let simulated = Lent::Simulated { seed: 7, plan: 1 };
    let story = [
        entry(2, 840, zero(8.0)),
        by(Who::Teacher, about(group(), entry(3, 1000, What::TakenBack))),
        by(Who::Teacher, about(group(), entry(4, 1200, What::StandIn(Lent::ClassData)))),
        by(Who::Teacher, about(group(), entry(5, 1300, What::StandIn(simulated)))),
        entry(6, 1320, read(8, 30.0)),
        by(Who::Teacher, about(group(), entry(7, 1400, What::TakenBack))),
        entry(8, 1560, read(12, 14.0)),
    ];
    let refused = [(3, Refused::OwnNumbers), (6, Refused::StandIn)];
    check(&story, Some(8.0), &[(12, 14.0)], &refused);
    let of_group = |story: &[Entry]| standing(story).groups[&("1".to_owned(), 1)].stand_in;
    assert_eq!(of_group(&story), None);
    let lent = StandIn { since: at(1300), lent: simulated };
    assert_eq!(of_group(&story[..5]), Some(lent), "the last that was given");
}

#[test]
fn a_fire_drill() {
    let period = |number, second, what| {
        by(Who::Teacher, about(Subject::Period("1".into()), entry(number, second, what)))
    };
    let story = [
        period(1, 0, What::Began),
        period(2, 5, What::Began),
        period(3, 1000, What::Stopped),
        period(4, 1010, What::Stopped),
        period(5, 1500, What::WentOn),
        period(6, 1510, What::WentOn),
        period(7, 1520, What::LastReading { minute: 16 }),
        period(8, 2000, What::Stopped),
        period(9, 2100, zero(3.0)),
        period(10, 2700, What::Ended),
    ];
    let standing = standing(&story);
    let found = &standing.periods["1"];
    assert_eq!(found.began, Some(at(0)));
    assert_eq!(found.stopped, [(at(1000), Some(at(1500))), (at(2000), None)]);
    assert_eq!((found.last_reading, found.ended), (Some(16), Some(at(2700))));
    let refused = [
        (key(2), Refused::BegunAlready),
        (key(4), Refused::StandsAlready),
        (key(6), Refused::RunsAlready),
        (key(9), Refused::WrongSubject),
    ];
    assert_eq!(standing.refused, refused);
}

#[test]
fn a_start_that_was_a_slip() {
    let period = |number, second, what| {
        by(Who::Teacher, about(Subject::Period("1".into()), entry(number, second, what)))
    };
    let story = [
        period(1, 0, What::TakenBack),
        period(2, 10, What::Began),
        period(3, 20, What::Stopped),
        period(4, 30, What::TakenBack),
        period(5, 40, What::TakenBack),
    ];
    let slip = standing(&story);
    let found = &slip.periods["1"];
    assert_eq!((found.began, found.ended, found.stopped.len()), (None, None, 0));
    assert_eq!(slip.refused, [(key(1), Refused::NotBegun), (key(5), Refused::NotBegun)]);
    let again = [&story[..], &[period(6, 500_000, What::Began)]].concat();
    assert_eq!(standing(&again).periods["1"].began, Some(at(500_000)));
}

#[test]
fn what_is_open_to_whom() {
    let wall = || Audience::Wall { period: "1".into() };
    let groups = || Audience::Groups { period: "1".into() };
    let whole = |number, second, what| {
        by(Who::Teacher, about(Subject::Investigation, entry(number, second, what)))
    };
    let opened = |to| What::Opened { face: Face::PeriodCurves, to };
    let closed = |to| What::Closed { face: Face::PeriodCurves, to };
    let story = [
        whole(1, 10, What::PlanSaved { version: 1 }),
        whole(2, 20, What::PlanSaved { version: 2 }),
        whole(3, 100, opened(wall())),
        whole(4, 110, opened(groups())),
        // Arrives last, but it was said before.
        whole(6, 130, opened(wall())),
        whole(5, 120, closed(wall())),
        whole(7, 140, closed(groups())),
    ];
    let standing = standing(&story);
    assert_eq!(standing.plan_version, 2);
    let open: Vec<_> = standing.open.into_iter().collect();
    assert_eq!(open, [(Face::PeriodCurves, wall())]);
}

#[test]
fn a_bag_that_no_plan_has_counts_once_a_plan_has_it() {
    let stranger: BagCode = bag(7, 1, 0);
    let story = about(Subject::Bag(stranger), entry(1, 840, zero(8.0)));
    let mut ledger = Ledger::of(known(), [story]);
    assert!(ledger.standing().bags.is_empty());
    let no_such = Refused::NoSuchBag { code: stranger.to_string() };
    assert_eq!(ledger.standing().refused, [(key(1), no_such)]);
    let mut plan = crate::day::plan();
    plan.bags[0].code = stranger.to_string();
    ledger.learn(barm_domain::record::Known::of([&plan]));
    assert!(ledger.standing().bags.contains_key(&stranger));
    assert!(ledger.standing().refused.is_empty());
}

#[test]
fn what_is_no_number_never_counts() {
    let story = [
        entry(1, 840, zero(8.0)),
        entry(2, 1080, read(4, f64::NAN)),
        entry(3, 1090, correct(1, f64::INFINITY)),
        entry(4, 1100, What::Meter { percent: f64::NAN, turn: None }),
        entry(5, 1110, What::Meter { percent: 0.4, turn: Some(2) }),
    ];
    let wrong = |number| (number, Refused::NotANumber);
    check(&story, Some(8.0), &[], &[wrong(2), wrong(3), wrong(4)]);
    assert_eq!(the_bag(&story).meter, [(at(1110), 0.4, Some(2))]);
    assert_eq!(one(), Who::Group { period: "1".into(), group: 1 });
}

//! What is worth a second look while it can still be mended.

use crate::day::{at, bag, by, correct, entry, key, known, plan, read, zero};
use barm_domain::code::BagCode;
use barm_domain::plan::SetAsideRule;
use barm_domain::record::{Bag, Entry, Odd, What, Who, replay};
use barm_domain::slip::{
    ClassCall, Expected, Followed, Mend, Own, Slip, SlipKind, WrittenIn, class_call,
    seen_by_group, seen_by_teacher, seen_in_code,
};

/// About that of a snack bag (mm).
pub(crate) const FULL_MM: f64 = 51.0;

const LEAK: Mend = Mend::Tap(Odd::Leak);
const BUMPED: Mend = Mend::Tap(Odd::Bumped);

/// A zero reading at second 840 and readings every four minutes, each in time.
pub(crate) fn series(heights: &[f64]) -> Vec<Entry> {
    let entry = |(nth, height): (u32, &f64)| {
        let what = if nth == 0 { zero(*height) } else { read(4 * nth, *height) };
        entry(u128::from(nth), 840 + 240 * i64::from(nth), what)
    };
    (0..).zip(heights).map(entry).collect()
}

pub(crate) fn bag_of(entries: &[Entry]) -> Bag {
    replay(&known(), entries).bags.remove(&bag(1, 1, 0)).expect("the bag is on record")
}

pub(crate) const fn own(bag: &Bag, code: BagCode) -> Own<'_> {
    Own { code, bag, full_height_mm: FULL_MM, stopped: &[] }
}

pub(crate) fn seen(entries: &[Entry]) -> Vec<Slip> {
    seen_by_group(own(&bag_of(entries), bag(1, 1, 0)))
}

/// The only slip: which reading by its place, what it looks like, and the heights offered.
fn only(entries: &[Entry]) -> (u128, SlipKind, Vec<f64>) {
    let slips = seen(entries);
    assert_eq!(slips.len(), 1, "{slips:?}");
    let slip = slips[0].clone();
    let offered = slip.mends.iter().filter_map(|mend| match mend {
        Mend::Write(mm) => Some(*mm),
        _ => None,
    });
    (slip.reading.expect("a reading").0, slip.kind, offered.collect())
}

fn unit(wrote_mm: f64, written_in: WrittenIn) -> SlipKind {
    SlipKind::Unit { wrote_mm, written_in }
}

#[test]
fn a_sound_bag_is_left_alone() {
    assert_eq!(seen(&series(&[8.0, 9.0, 12.0, 16.0, 19.0, 21.0, 23.0])), []);
    // One that hardly rises, read by eyes that slant.
    assert_eq!(seen(&series(&[8.0, 9.0, 7.0, 8.0, 10.0, 8.0, 9.0])), []);
    // A millimeter below the zero reading is what a ruler leaves open; more is not.
    assert_eq!(seen(&series(&[8.0, 8.0, 7.0, 7.0, 8.0])), []);
    let below = SlipKind::Fell { by_mm: 2.0, from: 0.0, to: 4.0 };
    let slips = seen(&series(&[8.0, 6.0, 6.0, 7.0]));
    assert_eq!(slips.iter().map(|slip| &slip.kind).collect::<Vec<_>>(), [&below]);
    assert_eq!(seen(&[entry(1, 1080, read(4, 900.0))]), [], "no zero, no question");
}

#[test]
fn centimeters() {
    let story = series(&[8.0, 9.0, 1.2, 16.0]);
    assert_eq!(only(&story), (2, unit(1.2, WrittenIn::Centimeters), vec![12.0]));
    let mends = [Mend::Write(12.0), Mend::AskAgain, LEAK, BUMPED, Mend::Leave];
    assert_eq!(seen(&story)[0].mends, mends);
}

#[test]
fn a_lost_point() {
    let story = series(&[8.0, 9.0, 120.0, 16.0]);
    assert_eq!(only(&story), (2, unit(120.0, WrittenIn::PointLost), vec![12.0]));
}

#[test]
fn inches() {
    let story = series(&[19.0, 21.0, 0.9, 24.0]);
    let (reading, kind, offered) = only(&story);
    assert_eq!((reading, kind), (2, unit(0.9, WrittenIn::Inches)));
    assert_eq!(offered, [22.9]);
}

#[test]
fn eighths_of_an_inch() {
    // Seven eighths are 22.2 mm.
    let story = series(&[19.0, 21.0, 7.0, 24.0]);
    let (reading, kind, offered) = only(&story);
    assert_eq!((reading, kind), (2, unit(7.0, WrittenIn::Eighths)));
    assert_eq!(offered, [22.2]);
}

/// A leak can look like eighths: nobody can tell from the number, so both are offered.
#[test]
fn a_leak_that_looks_like_eighths() {
    let story = series(&[8.0, 14.0, 20.0, 7.0]);
    let (reading, kind, _) = only(&story);
    assert_eq!((reading, kind), (3, unit(7.0, WrittenIn::Eighths)));
    assert_eq!(
        seen(&story)[0].mends,
        [Mend::Write(22.2), Mend::AskAgain, LEAK, BUMPED, Mend::Leave]
    );
    // Six and a half of anything are not counted marks.
    let between = series(&[8.0, 14.0, 20.0, 6.5]);
    assert!(matches!(only(&between).1, SlipKind::Fell { .. }));
}

#[test]
fn a_zero_in_centimeters_with_its_point() {
    let (reading, kind, offered) = only(&series(&[0.8, 9.0, 12.0]));
    assert_eq!((reading, kind), (0, unit(0.8, WrittenIn::Centimeters)));
    assert_eq!(offered, [8.0, 20.3]);
}

#[test]
fn a_zero_of_one_centimeter_shows_at_the_next_reading() {
    assert_eq!(seen(&series(&[1.0])), []);
    let (reading, kind, offered) = only(&series(&[1.0, 11.0, 13.0]));
    assert_eq!((reading, kind), (0, unit(1.0, WrittenIn::Centimeters)));
    assert_eq!(offered, [10.0, 3.2]);
}

#[test]
fn a_zero_that_is_high_for_a_bag_just_sealed() {
    // Half of 51 mm is 25.5 mm.
    assert_eq!(seen(&series(&[25.0, 27.0, 30.0])), []);
    let (reading, kind, offered) = only(&series(&[26.0, 9.0, 11.0]));
    assert_eq!(reading, 0);
    assert_eq!(kind, SlipKind::HighZero { wrote_mm: 26.0, full_mm: FULL_MM });
    assert!(offered.is_empty());
    // 80 for 8.0 is no height of such a bag; 45 for 4.5 is one, and may be meant.
    assert_eq!(only(&series(&[45.0])).2, [4.5]);
    assert_eq!(seen(&series(&[45.0]))[0].mends.last(), Some(&Mend::Leave));
    // Whoever says that it is right is not asked again.
    let right = [series(&[45.0, 46.0]), vec![entry(9, 1300, correct(0, 45.0))]].concat();
    assert_eq!(seen(&right), []);
}

#[test]
fn nothing_after_a_height_above_nothing() {
    let fell = SlipKind::Fell { by_mm: 2.0, from: 4.0, to: 8.0 };
    assert_eq!(only(&series(&[1.0, 2.0, 0.0])).1, fell);
    assert_eq!(seen(&series(&[0.0, 1.0, 0.0])), [], "a ruler can explain it");
}

#[test]
fn higher_than_the_bag() {
    let story = series(&[8.0, 9.0, 900.0, 16.0]);
    let (reading, kind, offered) = only(&story);
    assert_eq!(reading, 2);
    assert_eq!(kind, SlipKind::TooHigh { wrote_mm: 900.0, full_mm: FULL_MM });
    assert!(offered.is_empty());
}

#[test]
fn two_digits_swapped() {
    let story = series(&[8.0, 10.0, 14.0, 51.0, 17.0]);
    let slips = seen(&story);
    let jumped = SlipKind::Jumped { by_mm: 37.0, from: 8.0, to: 12.0 };
    assert_eq!((slips[0].reading, &slips[0].kind), (Some(key(3)), &jumped));
    assert_eq!(slips[0].mends, [Mend::AskAgain, Mend::Tap(Odd::Foam), Mend::Leave]);
    // The next reading is in line with those before, so that nothing is asked of it.
    assert_eq!(slips.len(), 1);
    let mended = [story, vec![entry(9, 2000, correct(3, 15.0))]].concat();
    assert_eq!(seen(&mended), []);
}

#[test]
fn a_fall_may_be_a_leak() {
    let story = series(&[8.0, 14.0, 20.0, 13.0, 12.0]);
    let slips = seen(&story);
    assert_eq!(slips.len(), 1);
    assert_eq!(slips[0].kind, SlipKind::Fell { by_mm: 7.0, from: 8.0, to: 12.0 });
    assert_eq!(slips[0].mends, [Mend::AskAgain, LEAK, BUMPED, Mend::Leave]);
    // Three millimeters are within what two readings leave open.
    assert_eq!(seen(&series(&[8.0, 14.0, 20.0, 17.0])), []);
    // Whoever has tapped it is not asked again.
    let tapped = [story, vec![entry(9, 1600, What::Odd(Odd::Leak))]].concat();
    assert_eq!(seen(&tapped), []);
}

#[test]
fn foam_explains_a_jump_and_not_a_fall() {
    let foam = |heights: &[f64]| {
        let foam = entry(9, 1330, What::Odd(Odd::Foam));
        seen(&[series(heights), vec![foam]].concat()).len()
    };
    assert_eq!(foam(&[8.0, 10.0, 40.0]), 0);
    assert_eq!(foam(&[8.0, 24.0, 14.0]), 1);
}

#[test]
fn what_is_left_as_it_is_is_not_asked_again() {
    let story = series(&[8.0, 14.0, 20.0, 13.0, 12.0]);
    let confirmed = [story, vec![entry(9, 2000, correct(3, 13.0))]].concat();
    assert_eq!(seen(&confirmed), []);
    let bag = bag_of(&confirmed);
    assert!((bag.readings[2].height_mm - 13.0).abs() < 1e-9, "nothing was changed");
}

#[test]
fn a_late_reading_is_only_said() {
    let story = [entry(1, 840, zero(8.0)), entry(2, 1141, read(4, 9.0))];
    let slips = seen(&story);
    assert_eq!(slips[0].kind, SlipKind::Late { planned: 4, late_s: 61.0 });
    assert_eq!(slips[0].mends, [Mend::Leave]);
    assert_eq!(seen(&[entry(1, 840, zero(8.0)), entry(2, 1140, read(4, 9.0))]), []);
    // Not late where all clocks stood still.
    let bag = bag_of(&story);
    let stopped = [(at(900), Some(at(960)))];
    let own = Own { stopped: &stopped, ..own(&bag, self::bag(1, 1, 0)) };
    assert_eq!(seen_by_group(own), []);
}

#[test]
fn rivals_wait_for_a_choice() {
    let mut story = series(&[8.0, 12.0]);
    story.push(entry(9, 1090, read(4, 21.0)));
    let slips = seen(&story);
    assert_eq!(slips.len(), 1);
    assert_eq!(slips[0].kind, SlipKind::Rivals { planned: Some(4) });
    let mends = [Mend::Choose(key(1)), Mend::Choose(key(9)), Mend::AskAgain];
    assert_eq!(slips[0].mends, mends);
    story.push(by(Who::Teacher, entry(10, 2000, correct(9, 21.0))));
    assert_eq!(seen(&story), []);
}

#[test]
fn a_code_of_somebody_else() {
    let own = [bag(2, 1, 0), bag(2, 1, 1)];
    let kind = |typed| seen_in_code(typed, &own).map(|slip| slip.kind);
    assert_eq!(kind(bag(2, 1, 1)), None);
    assert_eq!(kind(bag(1, 1, 0)), Some(SlipKind::OtherPeriod));
    assert_eq!(kind(bag(2, 2, 0)), Some(SlipKind::OtherGroup));
    assert_eq!(kind(bag(2, 1, 5)), Some(SlipKind::NoSuchBag));
    assert_eq!(seen_in_code(bag(2, 1, 0), &[]), None, "a group without bags is not asked");
}

/// A band that rises by so much a minute, a third narrower and wider at its edges.
fn band(per_minute: f64) -> Vec<Expected> {
    let expected = |minute: u32| {
        let minute = f64::from(minute);
        let median_mm = per_minute * minute;
        let (low_mm, high_mm) = (0.67 * median_mm, 1.33 * median_mm);
        Expected { minute, low_mm, median_mm, high_mm }
    };
    (0..=24).map(expected).collect()
}

fn teacher(entries: &[Entry], band: &[Expected], sisters: &[(BagCode, &Bag)]) -> Vec<Slip> {
    teacher_with(entries, &plan().set_aside_rules, band, sisters)
}

/// What the teacher sees of the first bag, with other bags that are made alike.
fn teacher_with(
    entries: &[Entry],
    rules: &[SetAsideRule],
    band: &[Expected],
    sisters: &[(BagCode, &Bag)],
) -> Vec<Slip> {
    let found = bag_of(entries);
    let all = std::iter::once((bag(1, 1, 0), &found)).chain(sisters.iter().copied());
    let period: Vec<Followed<'_>> =
        all.map(|(code, bag)| alike(own(bag, code), band, false)).collect();
    seen_by_teacher(&period, rules).remove(0)
}

/// A bag that is made like all others.
pub(crate) const fn alike<'a>(
    own: Own<'a>,
    band: &'a [Expected],
    control: bool,
) -> Followed<'a> {
    Followed { own, treatment: "sugar", enzyme: false, control, band }
}

#[test]
fn the_teacher_is_offered_the_rule_of_the_plan() {
    let story = series(&[8.0, 14.0, 20.0, 13.0, 12.0]);
    let slips = teacher(&story, &[], &[]);
    assert!(slips[0].mends.contains(&Mend::SetAside("leak".into())));
    assert!(!seen(&story)[0].mends.iter().any(|mend| matches!(mend, Mend::SetAside(_))));
    let other = SetAsideRule { id: "late".into(), says: "Read late.".into() };
    let slips = teacher_with(&story, &[other], &[], &[]);
    assert!(!slips[0].mends.iter().any(|mend| matches!(mend, Mend::SetAside(_))));
}

#[test]
fn far_above_the_band_is_for_the_teacher_only() {
    // 4 mm expected by minute 8, with 2.7 mm and 5.3 mm as edges.
    let story = series(&[8.0, 14.0, 22.0]);
    assert_eq!(seen(&story), []);
    // Which of the slips that lift a card it is cannot be told of one bag alone.
    let slips = teacher(&story, &band(0.5), &[]);
    assert!(slips.iter().any(|slip| slip.probability.is_some_and(|p| p > 0.5)), "{slips:?}");
    assert!(slips.iter().all(|slip| slip.mends.last() == Some(&Mend::Leave)));
    // Outside of the band but not far.
    assert_eq!(teacher(&series(&[8.0, 12.0, 16.0]), &band(0.5), &[]), []);
}

#[test]
fn the_same_series_in_two_groups() {
    let story = series(&[8.0, 9.0, 12.0, 16.0, 19.0]);
    let same = bag_of(&story);
    let copied = |code, bag: &Bag| {
        teacher(&story, &[], &[(code, bag)]).first().map(|slip| slip.kind.clone())
    };
    let other_group = bag(1, 2, 0);
    let expected = SlipKind::Copied { with: other_group, readings: 5 };
    assert_eq!(copied(other_group, &same), Some(expected));
    // A second bag of the same group is read by the same children beside the first.
    assert_eq!(copied(bag(1, 1, 1), &same), None);
    let one_off = bag_of(&series(&[8.0, 9.0, 12.0, 17.0, 19.0]));
    assert_eq!(copied(other_group, &one_off), None);
    let short = bag_of(&series(&[8.0, 9.0, 12.0, 16.0]));
    assert_eq!(copied(other_group, &short), None);
}

#[test]
fn two_flat_bags_are_no_copies() {
    let story = series(&[8.0, 8.0, 9.0, 8.0, 9.0, 9.0]);
    assert_eq!(teacher(&story, &[], &[(bag(1, 2, 0), &bag_of(&story))]), []);
}

/// Bags of groups 1 and 2 and a control, each with these heights.
fn class<'a>(
    bags: &'a [Bag],
    control: &'a Bag,
    bands: &'a [Vec<Expected>; 2],
) -> Vec<Followed<'a>> {
    let follow = |(nth, bag): (usize, &'a Bag)| {
        let group = if nth % 2 == 0 { 1 } else { 2 };
        alike(own(bag, self::bag(1, group, nth / 2)), &bands[0], false)
    };
    let control =
        Followed { treatment: "control", ..alike(own(control, bag(1, 0, 0)), &bands[1], true) };
    bags.iter().enumerate().map(follow).chain([control]).collect()
}

#[test]
fn dead_yeast_is_called_once_it_can_be_told() {
    // 0.5 mm a minute: the median reaches 3 mm at minute 6.
    let bands = [band(0.5), band(0.4)];
    let flat = |readings: usize| bag_of(&series(&vec![8.0; readings]));
    let call = |readings| class_call(&class(&vec![flat(readings); 4], &flat(readings), &bands));
    assert_eq!(call(2), None, "minute 4 is too early");
    let called = call(3).expect("a call");
    let sure = called.probability;
    let expected = ClassCall {
        minute: 8.0,
        low: 4,
        of: 4,
        controls_low: 1,
        controls_of: 1,
        probability: sure,
    };
    assert_eq!(called, expected);
    assert!(sure > 0.9, "{sure}");
}

#[test]
fn a_control_that_works_means_that_the_yeast_does() {
    let bands = [band(0.5), band(0.5)];
    let flat = bag_of(&series(&[8.0, 8.0, 8.0]));
    let risen = bag_of(&series(&[8.0, 10.0, 12.0]));
    assert_eq!(class_call(&class(&vec![flat.clone(); 4], &risen, &bands)), None);
    // A control that is not expected to rise cannot speak.
    let still = [band(0.5), band(0.01)];
    let called = class_call(&class(&vec![flat.clone(); 4], &flat, &still));
    assert_eq!(called.map(|call| (call.low, call.controls_of)), Some((4, 0)));
}

#[test]
fn half_a_class_is_no_class() {
    let bands = [band(0.5), band(0.5)];
    let flat = bag_of(&series(&[8.0, 8.0, 8.0]));
    let risen = bag_of(&series(&[8.0, 10.0, 12.0]));
    let half = [vec![flat.clone(); 3], vec![risen; 3]].concat();
    assert_eq!(class_call(&class(&half, &flat, &bands)), None);
    assert_eq!(class_call(&class(&vec![flat.clone(); 3], &flat, &bands)), None, "too few");
    // Four bags of one group are that group's own trouble.
    let all = vec![flat.clone(); 4];
    let of_one: Vec<Followed<'_>> = class(&all, &flat, &bands)
        .into_iter()
        .zip([bag(1, 1, 0), bag(1, 1, 1), bag(1, 1, 2), bag(1, 1, 3), bag(1, 0, 0)])
        .map(|(followed, code)| Followed { own: Own { code, ..followed.own }, ..followed })
        .collect();
    assert_eq!(class_call(&of_one), None);
}

#[test]
fn lost_bags_do_not_call() {
    let bands = [band(0.5), band(0.5)];
    let flat = bag_of(&series(&[8.0, 8.0, 8.0]));
    let lost = [series(&[8.0, 8.0, 8.0]), vec![entry(9, 1400, What::Lost)]].concat();
    let lost = bag_of(&lost);
    assert_eq!(class_call(&class(&vec![lost; 4], &flat, &bands)), None);
}

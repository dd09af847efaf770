//! Classes of one to ten groups, short and long periods, one meter for all. Minutes by hand.

use crate::school::{as_planned, plan, readings, runs, shortened, waves};
use barm_domain::plan::{Circumstance, Period};
use barm_domain::schedule::{Advice, Change, Pouring, Task, Why, changeover, schedule};
use barm_domain::testing::period;
use jiff::civil::time;

#[test]
fn one_group_reads_from_its_own_zero() {
    let course = as_planned(&plan(0, &[3]));
    assert_eq!(waves(&course), [(14.0, vec![1])]);
    let by_hand = [(4, 18.0), (8, 22.0), (12, 26.0), (16, 30.0), (20, 34.0), (24, 38.0)];
    assert_eq!(readings(&course, 1), by_hand);
    assert_eq!(course.load.peak(), Some((14, 3)));
    assert!(course.unfit.is_empty() && course.advice.is_empty());
}

#[test]
fn two_groups_start_half_a_minute_apart() {
    let course = as_planned(&plan(0, &[3, 3]));
    assert_eq!(waves(&course), [(14.0, vec![1]), (14.5, vec![2])]);
    assert_eq!(readings(&course, 2)[5], (24, 38.5));
}

/// 25 minutes to read in, the last reading at 24: waves at 14, 14.5 and 15, and no later.
#[test]
fn six_and_ten_groups_share_the_three_waves_that_lose_nothing() {
    let six = as_planned(&plan(0, &[3; 6]));
    assert_eq!(waves(&six), [(14.0, vec![1, 2]), (14.5, vec![3, 4]), (15.0, vec![5, 6])]);
    assert_eq!((six.load.peak(), six.one_wave), (Some((14, 12)), 18));
    assert_eq!(six.load.bags[15], 6);
    assert!(six.unfit.is_empty());
    // 1 and 30 bags: 10, 12 and 9. With 11 in the largest, three waves would hold 10, 9 and 9.
    let ten = as_planned(&plan(1, &[3; 10]));
    let by_hand = [(14.0, vec![0, 1, 2, 3]), (14.5, vec![4, 5, 6, 7]), (15.0, vec![8, 9, 10])];
    assert_eq!(waves(&ten), by_hand);
    assert!(ten.unfit.is_empty());
    let last = ten.turns.iter().map(|turn| turn.at_min).fold(0.0, f64::max);
    assert!((last - 39.0).abs() < 1e-9, "all read when clearing begins: {last}");
}

/// 40 minutes leave 20 to read in, all of them needed; 50 leave 30, of which the last reading takes 28.
#[test]
fn forty_and_fifty_minutes() {
    let of = |length_min: f64| {
        let mut plan = plan(0, &[3; 6]);
        plan.periods[0].length_min = length_min;
        as_planned(&plan)
    };
    let forty = of(40.0);
    assert_eq!(waves(&forty), [(14.0, vec![1, 2, 3, 4, 5, 6])]);
    assert_eq!(forty.planned, [4, 8, 12, 16, 20]);
    assert_eq!((forty.load.peak(), forty.unfit.len()), (Some((14, 18)), 0));
    let fifty = of(50.0);
    let sizes: Vec<(f64, usize)> =
        fifty.waves.iter().map(|wave| (wave.at_min, wave.groups.len())).collect();
    let by_hand = [(14.0, 2), (14.5, 1), (15.0, 1), (15.5, 1), (16.0, 1)];
    assert_eq!(sizes, by_hand, "two minutes to spare: five waves");
    assert_eq!(readings(&fifty, 6).last(), Some(&(28, 44.0)));
}

/// Emptying begins at 41, so a push may end there and the meter recovers until 41:40. The first bag is
/// read at 38 and brought at 38:30: three runs of a minute.
#[test]
fn one_meter_for_ten_groups() {
    let mut plan = plan(1, &[3; 10]);
    plan.equipment.meters = Some(1);
    let course = as_planned(&plan);
    let runs = runs(&course);
    let minutes: Vec<f64> = runs.iter().map(|run| run.at_min).collect();
    assert_eq!(minutes, [38.5, 39.5, 40.5]);
    assert_eq!(runs[0].group, 0, "the control first");
    assert_eq!(course.lost(), (0, 28), "no reading is given up for the meter");
    assert!(course.unfit.iter().all(|one| one.why == Why::NoMeter));
    // All at once, each group's bags are ready at 38:30, 39 and 39:30: 20 bags have two turns left, and 31
    // have three, so 11 meters do. In three waves 14 would be needed.
    let first = course.advice[0];
    assert_eq!(first, Advice { change: Change::Meters(11), readings: 0, runs: 0 });
    let second = course.advice[1];
    assert_eq!(second, Advice { change: Change::MeterOnly(3), readings: 0, runs: 28 });
    plan.circumstances = vec![Circumstance::Substitute];
    let substitute = as_planned(&plan);
    assert_eq!((substitute.meters, substitute.unfit.len()), (0, 0), "no meter on such a day");
}

/// Of each kind one bag has a turn before any has two.
#[test]
fn the_meter_sees_one_bag_of_each_kind_first() {
    let mut plan = plan(1, &[4, 4]);
    plan.equipment.meters = Some(2);
    let course = as_planned(&plan);
    let kind = |code: &str| {
        let bag = plan.bags.iter().find(|bag| bag.code == code);
        bag.expect("a bag").treatment.clone()
    };
    let mut kinds: Vec<String> = runs(&course).iter().map(|run| kind(&run.bag)).collect();
    kinds.sort_unstable();
    kinds.dedup();
    assert_eq!(kinds, ["honey", "nothing", "starch", "sugar", "syrup"]);
}

/// Water of 46 °C was above 52 °C when it was mixed: the teacher pours, a bench each half minute. Whoever
/// starts after 15 has no reading at 24.
#[test]
fn where_the_teacher_pours_the_largest_groups_go_first() {
    let mut plan = plan(1, &[3, 3, 3, 3, 3, 4]);
    plan.base.water_celsius = 46.0;
    let course = as_planned(&plan);
    assert_eq!(course.pouring, Pouring::Teacher);
    let order: Vec<u32> = course.waves.iter().map(|wave| wave.groups[0]).collect();
    assert_eq!(order, [0, 6, 1, 2, 3, 4, 5], "controls, then most bags, then as they sit");
    assert_eq!(course.lost(), (12, 0));
    let all = |task: Task| task == Task::Reading { planned: 24 };
    assert!(course.unfit.iter().all(|one| all(one.task) && one.why == Why::Clearing));
    let advice: Vec<(Change, usize)> =
        course.advice.iter().map(|one| (one.change, one.readings)).collect();
    // Mixed in 12 minutes the last starts at 15. All 20 bags without a reading at 24 lose 20.
    let by_hand =
        [(Change::GroupsPour, 0), (Change::MixFaster(2), 0), (Change::LastReading(20), 20)];
    assert_eq!(advice, by_hand);
}

/// 30 minutes in place of 45 end reading at 24.
#[test]
fn a_short_day_names_what_it_takes() {
    let plan = plan(0, &[3, 3]);
    let course = shortened(&plan, 30.0);
    assert_eq!(readings(&course, 2), [(4, 18.5), (8, 22.5)]);
    assert_eq!(course.lost(), (6 * 4, 0), "minutes 12, 16, 20 and 24 of six bags");
    assert!(course.unfit.iter().all(|one| one.why == Why::ShortDay));
    // Mixed in 8 minutes, the least that is advised, all have 16 more to read in.
    let best = course.advice[0];
    assert_eq!(best.change, Change::MixFaster(6));
    assert_eq!((best.readings, best.runs), (2 * 6, 0));
    let nothing = shortened(&plan, 12.0);
    assert_eq!(nothing.lost(), (6 * 7, 0), "no time for a zero reading");
    assert!(nothing.turns.is_empty() && nothing.load.peak().is_none());
    assert_eq!(shortened(&plan, 90.0), as_planned(&plan), "a longer day changes nothing");
}

#[test]
fn the_minutes_between_two_classes() {
    let mut plan = plan(0, &[2]);
    assert_eq!(changeover(&plan, &plan.periods[0]), None);
    for (start, minutes, enough) in [
        (time(9, 0, 0, 0), 5.0, true),
        (time(8, 57, 0, 0), 2.0, false),
        (time(8, 50, 0, 0), -5.0, false),
    ] {
        plan.periods.truncate(1);
        plan.periods.push(Period { start, ..period("2") });
        let found = changeover(&plan, &plan.periods[0]).expect("a next class");
        assert_eq!((found.next.as_str(), found.is_enough()), ("2", enough));
        assert!((found.minutes - minutes).abs() < 1e-9, "{found:?}");
        assert_eq!(changeover(&plan, &plan.periods[1]), None, "the last of the day");
    }
}

/// What pages ask and what the course says are one schedule.
#[test]
fn pages_and_course_start_groups_alike() {
    for groups in 1..=12 {
        let plan = plan(2, &vec![3; groups]);
        let course = as_planned(&plan);
        let asked = schedule(&plan, &plan.periods[0], None);
        assert_eq!((&asked, asked.waves()), (&course.hour, course.waves.clone()));
    }
}

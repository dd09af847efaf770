//! What holds for the course of any period.

use crate::school::plan;
use crate::size::counts;
use barm_domain::plan::Plan;
use barm_domain::schedule::{Course, RUN_MIN, Stop, Task, Upset, course};
use proptest::prelude::*;
use proptest::test_runner::TestCaseResult;

fn config() -> ProptestConfig {
    let cases = counts(60, 400, 4000);
    ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(cases) }
}

fn plans() -> impl Strategy<Value = Plan> {
    let bags = (0usize..5, prop::collection::vec(1usize..5, 1..11));
    let minutes = (0.0f64..70.0, 0.0f64..25.0, 0.0f64..15.0, 0.5f64..12.0);
    let rest = (0u32..5, prop::bool::weighted(0.3), any::<bool>());
    (bags, minutes, rest).prop_map(|((bench, groups), minutes, (meters, hot, whole))| {
        let mut plan = plan(bench, &groups);
        let (length, mixing, clearing, interval) = minutes;
        let round = |minute: f64| if whole { minute.round() } else { minute };
        plan.periods[0].length_min = round(length);
        plan.timing.mixing_min = round(mixing);
        plan.timing.clearing_min = round(clearing);
        plan.timing.interval_min = round(interval).max(0.5);
        plan.equipment.meters = Some(meters);
        if hot {
            plan.base.water_celsius = 46.0;
        }
        plan
    })
}

fn upsets() -> impl Strategy<Value = Upset> {
    let stop = prop::option::of((0.0f64..50.0, 0.1f64..30.0));
    (prop::option::of(0.0f64..60.0), stop).prop_map(|(length_min, stop)| Upset {
        length_min,
        stop: stop.map(|(from_min, for_min)| Stop { from_min, for_min, done: None }),
    })
}

fn nothing_is_late(course: &Course) -> TestCaseResult {
    let (clearing, cleaning) = (course.hour.clearing_min(), course.hour.cleaning_min());
    for turn in &course.turns {
        match turn.task {
            Task::Zero | Task::Reading { .. } => {
                prop_assert!(turn.at_min <= clearing + 1e-5, "{:?}", turn);
            }
            Task::Meter { meter } => {
                prop_assert!(turn.at_min + 20.0 / 60.0 <= cleaning + 1e-5, "{:?}", turn);
                prop_assert!(turn.at_min + RUN_MIN <= course.bell_min + 1e-5, "{:?}", turn);
                prop_assert!((1..=course.meters).contains(&meter), "{:?}", turn);
            }
        }
        prop_assert!(turn.at_min >= 0.0 && turn.at_min <= course.bell_min + 1e-5);
    }
    Ok(())
}

/// Every bag has every planned reading, or is named for it; so with the meter.
fn nothing_is_forgotten(plan: &Plan, course: &Course) -> TestCaseResult {
    for bag in &plan.bags {
        let own = course.turns.iter().filter(|turn| turn.bag == bag.code);
        let own: Vec<_> = own.collect();
        let missing = course.unfit.iter().filter(|one| one.bag == bag.code);
        let mut tasks: Vec<Task> = missing.map(|one| one.task).collect();
        tasks.extend(own.iter().map(|turn| turn.task));
        let runs = tasks.iter().filter(|task| matches!(task, Task::Meter { .. })).count();
        let sealed = own.iter().any(|turn| turn.task == Task::Zero);
        let metered = sealed && course.meters > 0;
        prop_assert_eq!(runs, usize::from(metered), "{}", &bag.code);
        tasks.retain(|task| !matches!(task, Task::Meter { .. }));
        tasks.sort_unstable();
        let planned = course.planned.iter().map(|planned| Task::Reading { planned: *planned });
        let expected: Vec<Task> = std::iter::once(Task::Zero).chain(planned).collect();
        prop_assert_eq!(tasks, expected, "{}", &bag.code);
        // One thing after the other with one bag, and the meter last.
        prop_assert!(own.windows(2).all(|two| two[0].at_min + 0.5 <= two[1].at_min + 1e-9));
        let last = own.iter().position(|turn| matches!(turn.task, Task::Meter { .. }));
        prop_assert!(last.is_none_or(|last| last + 1 == own.len()));
    }
    Ok(())
}

fn no_meter_is_used_twice_at_once(course: &Course) -> TestCaseResult {
    for meter in 1..=course.meters {
        let runs = course.turns.iter().filter(|turn| turn.task == Task::Meter { meter });
        let at: Vec<f64> = runs.map(|run| run.at_min).collect();
        // A run that a stop cut short after its push has recovered long before the class is back, or the
        // stop was shorter than the recovery.
        prop_assert!(at.windows(2).all(|two| two[1] >= two[0] + RUN_MIN - 1e-6), "{:?}", at);
    }
    Ok(())
}

proptest! {
    #![proptest_config(config())]

    #[test]
    fn any_period_has_a_sound_course(plan in plans(), upset in upsets()) {
        let period = &plan.periods[0];
        let found = course(&plan, period, &upset);
        nothing_is_late(&found)?;
        nothing_is_forgotten(&plan, &found)?;
        no_meter_is_used_twice_at_once(&found)?;
        let peak = found.load.peak().map_or(0, |(_, bags)| bags);
        prop_assert!(peak <= found.one_wave, "{} of {}", peak, found.one_wave);
        prop_assert!(found.load.bags.len() as f64 <= found.bell_min + 1.0 + 1e-9);
        prop_assert_eq!(&found, &course(&plan, period, &upset), "one plan, one course");
        for advice in &found.advice {
            let (readings, runs) = found.lost();
            prop_assert!(readings + runs > 0, "{:?}", advice);
        }
    }

    /// What was done before a stop stands as it was planned, and nothing else lies before its end.
    #[test]
    fn a_stop_never_moves_what_is_done(
        plan in plans(), from_min in 0.0f64..60.0, for_min in 0.1f64..30.0,
    ) {
        let period = &plan.periods[0];
        let before = course(&plan, period, &Upset::default());
        let stop = Some(Stop { from_min, for_min, done: None });
        let after = course(&plan, period, &Upset { stop, length_min: None });
        for turn in &after.turns {
            let old = before.turns.iter().find(|old| old.bag == turn.bag && old.task == turn.task);
            if turn.done {
                let old = old.expect("it was planned");
                prop_assert!((old.at_min - turn.at_min).abs() < 1e-12 && turn.at_min < from_min);
            } else {
                prop_assert!(turn.at_min >= from_min + for_min - 1e-6, "{:?}", turn);
            }
        }
        let readings = |course: &Course| {
            let runs = |task| matches!(task, Task::Meter { .. });
            course.turns.iter().filter(|turn| !runs(turn.task)).count()
        };
        prop_assert!(readings(&after) <= readings(&before), "no reading is invented");
        let due = before.turns.iter().filter(|turn| !matches!(turn.task, Task::Meter { .. }));
        for old in due.filter(|old| old.at_min < from_min - 1e-5) {
            let kept = after.turns.iter().find(|new| new.bag == old.bag && new.task == old.task);
            prop_assert!(kept.is_some_and(|new| new.done), "{:?}", old);
        }
    }

    /// With time enough, planned readings lie at their minute after the bag's own zero reading.
    #[test]
    fn readings_lie_at_their_planned_minute(plan in plans()) {
        let found = course(&plan, &plan.periods[0], &Upset::default());
        for turn in &found.turns {
            let Task::Reading { planned } = turn.task else { continue };
            let zero = found.turns.iter().find(|one| one.bag == turn.bag && one.task == Task::Zero);
            let zero = zero.expect("a bag that is read was sealed").at_min;
            prop_assert!((turn.at_min - zero - f64::from(planned)).abs() < 1e-9);
        }
    }
}

//! When things happen in a period.

use crate::day::plan;
use barm_domain::plan::{Period, Plan};
use barm_domain::record::PeriodStanding;
use barm_domain::schedule::{PhaseKind, Schedule, schedule};
use barm_domain::testing::{base_plan, period};
use proptest::prelude::*;

fn of(plan: &Plan, period: &Period) -> Schedule {
    schedule(plan, period, None)
}

/// 45 minutes: 14 to mix, 6 to clear, a reading every 4.
#[test]
fn an_ordinary_period() {
    let plan = plan();
    let schedule = of(&plan, &Period { groups: 2, ..period("1") });
    let phases: Vec<_> =
        schedule.phases.iter().map(|p| (p.kind, p.from_min, p.to_min)).collect();
    let expected = [
        (PhaseKind::SetUp, 0.0, 14.0),
        (PhaseKind::Read, 14.0, 39.0),
        (PhaseKind::Vent, 39.0, 41.0),
        (PhaseKind::Clean, 41.0, 45.0),
    ];
    assert_eq!(phases, expected);
    assert_eq!(schedule.starts, [(0, 14.0), (1, 14.5), (2, 15.0)]);
    assert_eq!(schedule.minutes, [4, 8, 12, 16, 20, 24]);
    assert_eq!((schedule.last, schedule.last), (24, plan.last_reading_min(&period("1"))));
    assert!((schedule.clearing_min() - 39.0).abs() < 1e-9);
}

#[test]
fn without_a_control_the_first_group_starts_first() {
    let schedule = of(&base_plan(), &Period { groups: 2, ..period("1") });
    assert_eq!(schedule.starts, [(1, 14.0), (2, 14.5)]);
}

#[test]
fn a_short_day() {
    let day = |minute| PeriodStanding { last_reading: Some(minute), ..Default::default() };
    let minutes = |minute| schedule(&plan(), &period("1"), Some(&day(minute))).minutes;
    assert_eq!(minutes(16), [4, 8, 12, 16]);
    assert_eq!(minutes(18), [4, 8, 12, 16, 18], "the last one lies between");
    assert_eq!(minutes(3), [3]);
    assert_eq!(minutes(0), [0; 0]);
    assert_eq!(minutes(500), [4, 8, 12, 16, 20, 24, 25], "not past the start of clearing");
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(64) })]

    /// Phases follow one another from bell to bell, and nothing is planned after clearing starts.
    #[test]
    fn any_plan_has_a_schedule(
        length in 0.0f64..120.0,
        mixing in 0.0f64..60.0,
        clearing in 0.0f64..60.0,
        interval in 0.0f64..20.0,
        groups in 0u32..12,
        last in prop::option::of(0u32..90),
    ) {
        let mut plan = plan();
        plan.timing.mixing_min = mixing;
        plan.timing.clearing_min = clearing;
        plan.timing.interval_min = interval;
        let period = Period { length_min: length, groups, ..period("1") };
        let day = PeriodStanding { last_reading: last, ..Default::default() };
        let schedule = schedule(&plan, &period, Some(&day));
        let mut from = 0.0;
        for phase in &schedule.phases {
            prop_assert!((phase.from_min - from).abs() < 1e-9 && phase.to_min >= from);
            from = phase.to_min;
        }
        prop_assert!((from - length).abs() < 1e-9);
        prop_assert!(schedule.minutes.windows(2).all(|pair| pair[0] < pair[1]));
        prop_assert_eq!(schedule.minutes.last().copied().unwrap_or(0), schedule.last);
        if schedule.last > 0 {
            let window = length - mixing - clearing;
            prop_assert!(f64::from(schedule.last) <= window + 1e-6);
        }
    }
}

//! The first plan that a teacher gets: sound, and safe as it stands.

use barm_domain::check::check;
use barm_domain::finding::Severity;
use barm_domain::outlook::{Look, forecast, gather};
use barm_domain::plan::{CONTROLS, Place, Plan};
use barm_domain::starter::{Answers, StarterError, plan};

fn answers(periods: u32, groups: u32) -> Answers {
    Answers {
        title: "What does yeast like to eat?".into(),
        date: jiff::civil::date(2027, 3, 9),
        zone: "America/Chicago".into(),
        place: Place::Altitude(200.0),
        first_start: jiff::civil::time(8, 10, 0, 0),
        length_min: 45.0,
        periods,
        groups,
        students: groups * 3,
    }
}

fn faults(plan: &Plan, draws: usize) -> Vec<String> {
    let treated: Vec<_> = plan
        .treatments()
        .map(|(_, t)| forecast(plan, t, Look { draws, ..Look::default() }).unwrap())
        .collect();
    let found = check(plan, &gather(plan, &treated));
    let bad = found.into_iter().filter(|f| f.severity <= Severity::Warning);
    bad.map(|finding| format!("{}: {}", finding.code, finding.message)).collect()
}

#[test]
fn is_a_fair_test_that_overfills_no_bag() {
    for (periods, groups, meters) in [(1, 6, 0.0), (4, 8, 200.0), (6, 10, 1600.0)] {
        let answers = Answers { place: Place::Altitude(meters), ..answers(periods, groups) };
        let plan = plan(&answers).unwrap();
        assert_eq!(
            faults(&plan, 128),
            Vec::<String>::new(),
            "{periods} x {groups} at {meters} m"
        );
    }
}

#[test]
fn gives_every_group_two_bags_and_one_of_its_own_without_food() {
    let plan = plan(&answers(4, 8)).unwrap();
    for period in &plan.periods {
        for group in 1..=period.groups {
            let bags: Vec<&str> = plan
                .bags
                .iter()
                .filter(|bag| bag.period == period.name && bag.group == group)
                .map(|bag| bag.treatment.as_str())
                .collect();
            assert!((2..=4).contains(&bags.len()), "{bags:?}");
            assert!(bags.contains(&"No food"), "{bags:?}");
        }
        let shared =
            plan.bags.iter().filter(|b| b.period == period.name && b.question == CONTROLS);
        assert_eq!(shared.count(), 2);
    }
    assert_eq!(plan.periods[3].start, jiff::civil::time(10, 40, 0, 0));
}

#[test]
fn refuses_what_makes_no_school_day() {
    assert!(matches!(plan(&answers(0, 8)), Err(StarterError::Periods { periods: 0 })));
    assert!(matches!(plan(&answers(13, 8)), Err(StarterError::Periods { .. })));
    assert!(matches!(plan(&answers(4, 0)), Err(StarterError::Groups { groups: 0 })));
    assert!(matches!(plan(&answers(4, 100)), Err(StarterError::Groups { .. })));
    let late = Answers { first_start: jiff::civil::time(22, 0, 0, 0), ..answers(4, 8) };
    assert!(matches!(plan(&late), Err(StarterError::Periods { .. })));
    let past = Answers { first_start: jiff::civil::time(23, 30, 0, 0), ..answers(1, 8) };
    assert!(matches!(plan(&past), Err(StarterError::Periods { .. })));
    let endless = Answers { length_min: f64::INFINITY, ..answers(4, 8) };
    assert!(matches!(plan(&endless), Err(StarterError::Periods { .. })));
}

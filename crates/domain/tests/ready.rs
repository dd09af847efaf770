//! Ready plans: sound and safe for every answer that is taken.

use barm_domain::check::check;
use barm_domain::finding::Severity;
use barm_domain::outlook::{Look, forecast, gather};
use barm_domain::plan::{BagChoice, Inquiry, Place, Plan};
use barm_domain::ready::{Answers, OFFERED, Ready, ReadyError, USUAL, plan};
use barm_domain::testing;

fn answers() -> Answers {
    testing::answers(4, 8, &USUAL)
}

fn found(plan: &Plan, worst: Severity) -> Vec<String> {
    let treated: Vec<_> = plan
        .treatments()
        .map(|(_, t)| forecast(plan, t, Look { draws: 32, ..Look::default() }).unwrap())
        .collect();
    let found = check(plan, &gather(plan, &treated));
    let bad = found.into_iter().filter(|finding| finding.severity <= worst);
    bad.map(|finding| format!("{}: {}", finding.code, finding.message)).collect()
}

/// A grid of answers: not every combination, but every value beside the others' extremes.
fn grid() -> Vec<Answers> {
    let mut all = Vec::new();
    for (bag, celsius) in [
        ("snack", 30.0),
        ("snack", 48.0),
        ("sandwich", 40.0),
        ("quart freezer", 48.0),
        ("gallon", 40.0),
    ] {
        for (minutes, periods, groups, meters) in [
            (25.0, 1, 1, 0.0),
            (30.0, 2, 3, 3000.0),
            (42.0, 6, 12, 1600.0),
            (90.0, 4, 8, 3000.0),
            (180.0, 1, 15, 0.0),
        ] {
            let mut one = answers();
            one.bag = BagChoice::parse(bag).unwrap();
            one.water_celsius = celsius;
            one.school.length_min = minutes;
            one.school.periods = periods;
            one.school.groups = groups;
            one.school.students = groups * 3;
            one.school.place = Place::Altitude(meters);
            all.push(one);
        }
    }
    all
}

#[test]
fn every_one_passes_without_a_fault_for_every_sensible_answer() {
    let mut all = Vec::new();
    for ready in Ready::ALL {
        for answers in grid() {
            let plan = plan(ready, &answers).unwrap();
            let faults = found(&plan, Severity::Fault);
            let at = (&answers.bag.written, answers.water_celsius, &answers.school);
            all.extend(
                faults.into_iter().map(|fault| format!("{} {at:?} {fault}", ready.name())),
            );
        }
    }
    assert_eq!(all, Vec::<String>::new());
}

#[test]
fn every_one_suits_every_cupboard() {
    let all: Vec<&str> = OFFERED.iter().map(|one| one.id).collect();
    let mut cupboards: Vec<Vec<&str>> = all.iter().map(|one| vec![*one]).collect();
    cupboards.extend([vec![], all.clone(), all.into_iter().rev().collect()]);
    cupboards.push(vec!["Oat flour", "nonfat dry milk", "grape juice"]);
    for ready in Ready::ALL {
        for cupboard in &cupboards {
            let cupboard = cupboard.iter().map(|&one| one.to_owned()).collect();
            let plan = plan(ready, &Answers { cupboard, ..answers() }).unwrap();
            let faults = found(&plan, Severity::Fault);
            assert_eq!(faults, Vec::<String>::new(), "{} {:?}", ready.name(), plan.materials);
        }
    }
}

#[test]
fn an_ordinary_school_gets_no_warning_either() {
    for ready in Ready::ALL {
        let mut answers = answers();
        answers.school.length_min = f64::from(ready.good_from_min());
        let plan = plan(ready, &answers).unwrap();
        assert_eq!(found(&plan, Severity::Warning), Vec::<String>::new(), "{}", ready.name());
    }
}

#[test]
fn they_reach_from_a_given_lesson_to_an_open_one() {
    assert_eq!(Ready::ALL.first().unwrap().inquiry(), Inquiry::Confirmation);
    assert_eq!(Ready::ALL.last().unwrap().inquiry(), Inquiry::Open);
    for ready in Ready::ALL {
        assert_eq!(Ready::named(ready.name()), Ok(ready));
        let plan = plan(ready, &answers()).unwrap();
        assert!(!plan.bags.is_empty());
        // Whatever is weighed or poured can be bought, the teacher need not name it again.
        for (_, treatment) in plan.treatments() {
            let food = plan.recipe(treatment).food;
            assert!(food.is_none_or(|food| plan.materials.iter().any(|m| m.item == food)));
        }
    }
}

#[test]
fn what_is_no_answer_is_refused_with_what_to_write() {
    let short = |minutes| {
        let mut one = answers();
        one.school.length_min = minutes;
        plan(Ready::FoodOrNot, &one)
    };
    for minutes in [24.0, 181.0, f64::NAN, -1.0] {
        assert!(matches!(short(minutes), Err(ReadyError::Minutes { .. })), "{minutes}");
    }
    for water_celsius in [29.0, 49.0, f64::NAN] {
        let refused = plan(Ready::WhichFood, &Answers { water_celsius, ..answers() });
        assert!(matches!(refused, Err(ReadyError::Warmth { .. })));
    }
    let bag = BagChoice::parse("60 x 60 mm").unwrap();
    let refused = plan(Ready::WhichFood, &Answers { bag, ..answers() });
    assert!(matches!(refused, Err(ReadyError::Bag { .. })));
    let cupboard = vec!["honny".to_owned()];
    let refused = plan(Ready::WhichFood, &Answers { cupboard, ..answers() }).unwrap_err();
    assert_eq!(refused.fix().as_deref(), Some("did you mean honey?"));
    let unknown = Ready::named("wich-food").unwrap_err();
    assert_eq!(unknown.fix().as_deref(), Some("did you mean which-food?"));
}

//! Faults that are planted in sound plans are found, and sound plans are left in peace.

mod bench;
mod beyond;
mod blind;
mod changes;
mod convergence;
mod dice;
#[path = "../../../science/tests/model/nearness.rs"]
mod nearness;
mod outlook;
mod planted;
#[path = "../cautions/readability.rs"]
mod readability;
mod refused;
mod school;
#[path = "../../../science/tests/statistics/size.rs"]
mod size;
mod words;

use barm_domain::check::check;
use barm_domain::finding::{Finding, Severity};
use barm_domain::outlook::{Entry, Look, forecast, gather};
use barm_domain::plan::Plan;
use dice::Dice;
use planted::{FAULTS, Fault, Plant};
use school::{Asks, listed, sound, unlisted};
use size::counts;

/// How many plans of each kind: at least 100 unless the suite is to be quick.
fn plans() -> usize {
    counts(28, 105, 700)
}

/// Few draws: whether a fault is there does not hang on a percentile.
const LOOK: Look = Look { draws: 40, seed: 7 };

fn foreseen(plan: &Plan) -> Vec<Entry> {
    let forecasts = plan.treatments().map(|(_, t)| forecast(plan, t, LOOK));
    let treated: Vec<_> = forecasts.filter_map(Result::ok).collect();
    gather(plan, &treated)
}

fn checked(plan: &Plan) -> Vec<Finding> {
    check(plan, &foreseen(plan))
}

/// What a teacher would have to mend.
fn complaints(found: &[Finding]) -> Vec<&Finding> {
    found.iter().filter(|f| matches!(f.severity, Severity::Fault | Severity::Warning)).collect()
}

#[test]
fn sound_plans_are_left_in_peace() {
    let mut false_alarms = Vec::new();
    for number in 0..plans() {
        let asks = Asks::ALL[number % Asks::ALL.len()];
        let plan = sound(asks, &mut Dice::of(number as u64));
        let found = checked(&plan);
        if !complaints(&found).is_empty() {
            false_alarms.push(format!("{number} {asks:?}: {:#?}", complaints(&found)));
        }
    }
    let share = false_alarms.len() as f64 / plans() as f64;
    assert!(share < 0.05, "{share}:\n{}", false_alarms.join("\n"));
}

/// A sound plan in which a fault has been planted.
fn ill(fault: &Fault, round: usize, number: usize) -> Plan {
    let asks = fault.fits[(round + number) % fault.fits.len()];
    let mut dice = Dice::of((1000 * (round + 1) + number) as u64);
    let mut plan = unlisted(asks, &mut dice);
    match fault.plant {
        Plant::Plan(plant) => {
            plant(&mut plan, &mut dice);
            listed(plan)
        }
        Plant::List(plant) => {
            plan = listed(plan);
            plant(&mut plan, &mut dice);
            plan
        }
    }
}

#[test]
fn planted_faults_are_found() {
    let mut missed = Vec::new();
    let mut planted = 0;
    for round in 0..plans().div_ceil(FAULTS.len()).max(1) {
        for (number, fault) in FAULTS.iter().enumerate() {
            let plan = ill(fault, round, number);
            let found = checked(&plan);
            planted += 1;
            if complaints(&found).iter().all(|finding| finding.code != fault.code) {
                let codes: Vec<&str> = complaints(&found).iter().map(|f| f.code).collect();
                missed.push(format!("{}: {}; found {codes:?}", fault.code, fault.what));
            }
        }
    }
    assert!(
        missed.len() * 20 <= planted,
        "{} of {planted}:\n{}",
        missed.len(),
        missed.join("\n")
    );
}

/// Pages will check plans that are half written.
#[test]
fn half_written_plans_are_checked_too() {
    let strip: [fn(&mut Plan); 12] = [
        |plan| plan.questions.clear(),
        |plan| plan.questions.iter_mut().for_each(|q| q.treatments.clear()),
        |plan| plan.controls.clear(),
        |plan| plan.periods.clear(),
        |plan| plan.days.clear(),
        |plan| plan.bags.clear(),
        |plan| plan.questions.iter_mut().for_each(|q| q.reference = Some("Nobody".into())),
        |plan| plan.questions.iter_mut().for_each(|q| q.uses = vec!["Nobody".into()]),
        |plan| plan.timing.interval_min = 0.0,
        |plan| plan.periods.iter_mut().for_each(|p| p.length_min = 0.0),
        |plan| plan.base.food = Some("nobody".into()),
        |plan| plan.equipment = barm_domain::plan::Equipment::default(),
    ];
    for (number, asks) in Asks::ALL.into_iter().enumerate() {
        let whole = sound(asks, &mut Dice::of(number as u64));
        for (first, one) in strip.iter().enumerate() {
            for other in &strip[first..] {
                let mut plan = whole.clone();
                one(&mut plan);
                other(&mut plan);
                assert!(!check(&plan, &[]).is_empty());
            }
        }
    }
}

//! A class that was never there does what is said of it.

#[path = "../../science/tests/statistics/size.rs"]
mod size;

use barm_domain::outlook::{self, Look};
use barm_domain::plan::{Plan, PlannedBag};
use barm_domain::rehearsal::{Does, Mishap, Rates, Script, Truth, script, simulated};
use barm_domain::schedule::schedule;
use barm_domain::testing::{base_plan, food, period, question, treatment};
use std::collections::BTreeMap;

/// One period of eight groups with three bags each, and two bags of the teacher's.
fn plan() -> Plan {
    let mut bags = Vec::new();
    for group in 0..=8_u8 {
        let made = if group == 0 { 2 } else { 3 };
        let codes = barm_domain::code::BagCode::all_of(1, group).take(made);
        for (code, place) in codes.zip(1..) {
            bags.push(PlannedBag {
                code: code.to_string(),
                period: "1".into(),
                group: group.into(),
                place,
                question: "q".into(),
                treatment: if place == 1 { "Sugar" } else { "More sugar" }.into(),
                replicate: u32::from(group) + 1,
            });
        }
    }
    let treatments = vec![
        treatment("Sugar", food("table sugar", "1 g")),
        treatment("More sugar", food("table sugar", "3 g")),
    ];
    Plan {
        periods: vec![period("1")],
        questions: vec![question("q", treatments)],
        bags,
        ..base_plan()
    }
}

fn written(plan: &Plan, seed: u64, rates: &Rates) -> Script {
    script(plan, &plan.periods[0], seed, rates).expect("every bag can be followed")
}

fn small() -> bool {
    size::counts(true, false, false)
}

#[test]
fn the_same_seed_gives_the_same_script_and_another_another() {
    let plan = plan();
    let rates = Rates::default();
    assert_eq!(written(&plan, 7, &rates), written(&plan, 7, &rates));
    assert_ne!(written(&plan, 7, &rates), written(&plan, 8, &rates));
}

#[test]
fn a_bench_types_what_a_bench_page_takes_in_the_order_of_time() {
    let plan = plan();
    let period = &plan.periods[0];
    let clearing_s = 60.0 * schedule(&plan, period, None).clearing_min();
    let script = written(&plan, 3, &Rates::NONE);
    assert!(script.staged.is_empty(), "nothing goes wrong");
    assert_eq!(script.devices.len(), 9);
    let mut keys = std::collections::BTreeSet::new();
    for device in &script.devices {
        let mut of_bag: BTreeMap<_, Vec<&Does>> = BTreeMap::new();
        let mut before = 0;
        for step in &device.steps {
            assert!(step.at_s >= before, "in the order of time");
            before = step.at_s;
            assert!(keys.insert(step.random), "every key is new");
            if let Does::Reading(..) | Does::Zero(_) = step.does {
                assert!(f64::from(step.at_s) <= clearing_s + 25.0, "read before clearing");
            }
            of_bag.entry(step.bag).or_default().push(&step.does);
        }
        let guesses = of_bag.remove(&None).unwrap_or_default();
        assert_eq!(guesses.len(), usize::from(device.group > 0), "only groups guess, once");
        for (bag, does) in of_bag {
            assert!(matches!(does[0], Does::Sealed), "{bag:?}");
            assert!(matches!(does[1], Does::Zero(_)), "{bag:?}");
            assert!(matches!(does[does.len() - 1], Does::Vented), "{bag:?}");
            let readings = &does[2..does.len() - 1];
            assert!(readings.len() >= 5, "{bag:?}: {readings:?}");
            assert!(
                readings.iter().all(|does| matches!(does, Does::Reading(_, mm) if *mm >= 1.0))
            );
        }
    }
}

/// Each mishap is a coin of its own, so that its number lies within four standard deviations of
/// what its rate says.
#[test]
fn each_mishap_comes_as_often_as_its_rate_says() {
    let plan = plan();
    let rates = Rates {
        unit: 0.1,
        transposed: 0.1,
        missed: 0.1,
        late: 0.1,
        leak: 0.2,
        wrong_start: 0.2,
        copied: 0.2,
        swapped: 0.3,
    };
    let (mut made, mut chances) = (BTreeMap::new(), BTreeMap::new());
    for seed in 0..if small() { 12 } else { 60 } {
        let script = written(&plan, seed, &rates);
        for staged in &script.staged {
            *made.entry(staged.mishap).or_insert(0_u32) += 1;
        }
        for (mishap, count) in &script.chances {
            *chances.entry(*mishap).or_insert(0_u32) += count;
        }
    }
    for mishap in Mishap::ALL {
        let (n, p) = (f64::from(chances[&mishap]), rates.of(mishap));
        assert!(n >= 90.0, "{mishap:?} could happen {n} times");
        let found = f64::from(made.get(&mishap).copied().unwrap_or_default());
        let (mean, sd) = (n * p, (n * p * (1.0 - p)).sqrt());
        assert!((found - mean).abs() <= 4.0 * sd, "{mishap:?}: {found} of {n}, rate {p}");
    }
}

/// A bag of each possible day lies in the forecast's band of eight in ten as often as it says.
#[test]
fn what_bags_really_do_agrees_with_the_forecast() {
    let plan = plan();
    let sugar = plan.treatment("Sugar").expect("a treatment");
    let expected = outlook::forecast(&plan, sugar, Look::default()).expect("a forecast");
    let band = expected.forecast.rise_mm().band();
    let last = expected.forecast.last_minute();
    let days = if small() { 150 } else { 600 };
    let within = (0..days).filter(|seed| {
        let bag = Truth::of(&plan, &plan.bags[0], last, *seed).expect("a course");
        let rise = bag.rise_mm(f64::from(last));
        (band.low[last as usize]..=band.high[last as usize]).contains(&rise)
    });
    let (n, found) = (days as f64, within.count() as f64);
    let sd = (n * 0.8 * 0.2).sqrt();
    assert!((found - 0.8 * n).abs() <= 4.0 * sd, "{found} of {n} lie in the band");
}

/// Without slips, what is written is what the bag did, as far as a ruler tells.
#[test]
fn without_slips_readings_are_true_to_the_ruler() {
    let plan = plan();
    let script = written(&plan, 11, &Rates::NONE);
    for device in &script.devices {
        let mut zeros = BTreeMap::new();
        for step in &device.steps {
            let Some(code) = step.bag else { continue };
            match step.does {
                Does::Zero(mm) => {
                    zeros.insert(code, (step.at_s, mm));
                }
                Does::Reading(_, mm) => {
                    let written = code.to_string();
                    let bag = plan.bags.iter().find(|bag| bag.code == written).expect("a bag");
                    let truth = Truth::of(&plan, bag, 40, 11).expect("a course");
                    let (zero_s, zero_mm) = zeros[&code];
                    let minute = f64::from(step.at_s - zero_s) / 60.0;
                    // Two roundings of half a millimeter, and five standard deviations of reading.
                    let off = mm - zero_mm - truth.rise_mm(minute);
                    assert!(off.abs() <= 3.0, "{code} at {minute}: off by {off} mm");
                }
                _ => {}
            }
        }
    }
}

#[test]
fn bags_of_a_day_share_its_yeast_and_not_their_spoons() {
    let plan = plan();
    let rise = |bag: usize, seed| {
        Truth::of(&plan, &plan.bags[bag], 24, seed).expect("a course").rise_mm(24.0)
    };
    // Places 2 of groups 1 to 8 hold the same treatment.
    let alike: Vec<usize> =
        (0..plan.bags.len()).filter(|bag| plan.bags[*bag].place == 2).collect();
    let mut within = 0.0;
    let mut means = Vec::new();
    for seed in 0..20 {
        let rises: Vec<f64> = alike.iter().map(|bag| rise(*bag, seed)).collect();
        let mean = rises.iter().sum::<f64>() / rises.len() as f64;
        let spread = rises.iter().map(|rise| (rise - mean).powi(2)).sum::<f64>();
        assert!(spread > 0.0, "no two bags are the same");
        within += spread / (rises.len() - 1) as f64 / 20.0;
        means.push(mean);
    }
    let mean = means.iter().sum::<f64>() / 20.0;
    let between = means.iter().map(|one| (one - mean).powi(2)).sum::<f64>() / 19.0;
    // Without a day of their own, means of nine bags would differ by a ninth of what bags do.
    assert!(between > 2.0 * within / 9.0, "days {between}, bags {within}");
}

/// A run for a group without numbers of its own is one of those days: every bag of the group at
/// every planned minute, whole millimeters, true to the model as far as a ruler tells.
#[test]
fn a_simulated_run_follows_the_model_and_hangs_on_its_seed() {
    let plan = plan();
    let period = &plan.periods[0];
    let run = |seed| simulated(&plan, period, 1, seed).expect("a run");
    let first = run(5);
    assert_eq!(first, run(5), "the same seed, the same run");
    assert_ne!(first, run(6), "another seed, another run");
    let own = plan.bags.iter().filter(|bag| bag.period == period.name && bag.group == 1);
    assert_eq!(first.len(), own.count());
    let minutes = schedule(&plan, period, None).minutes;
    for bag in &first {
        let read: Vec<u32> = bag.heights.iter().map(|(minute, _)| *minute).collect();
        assert_eq!(read[0], 0);
        assert_eq!(read[1..], minutes);
        let written = bag.code.to_string();
        let planned = plan.bags.iter().find(|one| one.code == written).expect("a bag");
        assert_eq!(planned.treatment, bag.treatment);
        let truth = Truth::of(&plan, planned, 40, 5).expect("a course");
        let zero = bag.heights[0].1;
        for (minute, mm) in &bag.heights {
            assert!(mm.fract().abs() < 1e-9 && *mm >= 1.0, "{mm} mm is read off a ruler");
            // Two roundings of half a millimeter, and five standard deviations of reading.
            let off = mm - zero - truth.rise_mm(f64::from(*minute));
            assert!(off.abs() <= 3.0, "{written} at {minute}: off by {off} mm");
        }
    }
    let nobody = simulated(&plan, period, 99, 5).expect("a run");
    assert!(nobody.is_empty(), "a group without bags");
}

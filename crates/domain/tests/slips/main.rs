//! How often slips are found, and how often what is called one is one: by classes from a generator
//! that is not the detector's model.

mod class;
mod law;
mod mishap;
mod school;
mod seed;
mod share;
#[path = "../../../science/tests/statistics/size.rs"]
mod size;
mod trial;
mod watch;

use class::{Failure, PILOT, Width};
use mishap::Mishap;
use share::Share;
use trial::{Bin, Trial};
use barm_science::statistics::chance::Chance;
use std::collections::BTreeMap;
use trial::{leak_found, mishap, name, unit_found};

/// Bags of each trial.
fn bags() -> usize {
    size::counts(400, 1500, 5000)
}

fn full() -> bool {
    size::counts(false, false, true)
}

/// Three times what the ruler leaves open between two readings (mm).
const LEAK_MM: f64 = 3.0 * 0.707;

#[test]
fn clean_bags_are_left_alone() {
    let made = school::treatments(Some(0.3));
    let mut chance = Chance::from_seed(seed::fresh("clean bags"));
    let trial = Trial { made: &made, width: PILOT, failure: Failure::None, chances: &|_| 0.0 };
    let classes = trial.run(bags(), &mut chance);
    let (mut alarms, mut kinds) = (Share::default(), BTreeMap::<String, u32>::new());
    for bag in classes.iter().flat_map(|class| &class.bags) {
        alarms.count(bag.alarmed());
        let said = bag.said.iter().find(|(_, slips)| !slips.is_empty());
        if let Some((minute, slips)) = said {
            *kinds.entry(name(&slips[0].kind)).or_default() += 1;
            if std::env::var("SHOW").is_ok() {
                println!("{minute} {:?} {:?} {:?}", bag.read.heights, bag.read.treatment, slips[0]);
            }
        }
    }
    println!("clean bags called: {alarms} {kinds:?}");
    alarms.under(0.02, full(), "clean bags called");
}

#[test]
fn unit_slips_are_found_by_the_reading_after() {
    let made = school::treatments(Some(0.3));
    let mut chance = Chance::from_seed(seed::fresh("unit slips"));
    let chances = |mishap| if mishap == Mishap::Unit { 0.05 } else { 0.0 };
    let trial = Trial { made: &made, width: PILOT, failure: Failure::None, chances: &chances };
    let classes = trial.run(bags(), &mut chance);
    let (mut found, mut half) = (Share::default(), Share::default());
    let mut kinds = BTreeMap::<String, Share>::new();
    for bag in classes.iter().flat_map(|class| &class.bags) {
        let Some(spoiled) = &bag.read.spoiled else { continue };
        if spoiled.at + 1 >= bag.read.heights.len() {
            continue;
        }
        let rise = bag.read.sound_mm[spoiled.at];
        let is_found = unit_found(bag, spoiled);
        if rise >= 4.0 {
            found.count(is_found);
            kinds.entry(format!("{:?}", spoiled.unit)).or_default().count(is_found);
            if !is_found && std::env::var("SHOW").is_ok() {
                println!("{spoiled:?} {:?}\n   {:?}", bag.read.heights, bag.by(spoiled.at, 1));
            }
        } else if rise >= 2.0 {
            half.count(is_found);
        }
    }
    println!("unit slips found: {found}; at 2 to 4 mm {half}; {kinds:?}");
    found.at_least(0.95, full(), "unit slips");
}

#[test]
fn leaks_are_found_by_the_second_reading() {
    let made = school::treatments(Some(0.3));
    let mut chance = Chance::from_seed(seed::fresh("leaks"));
    let chances = |mishap| if mishap == Mishap::Leak { 0.25 } else { 0.0 };
    let trial = Trial { made: &made, width: PILOT, failure: Failure::None, chances: &chances };
    let classes = trial.run(bags(), &mut chance);
    let (mut found, mut half) = (Share::default(), Share::default());
    let mut kinds = BTreeMap::<String, Share>::new();
    for bag in classes.iter().flat_map(|class| &class.bags) {
        let Some(spoiled) = &bag.read.spoiled else { continue };
        if spoiled.at + 1 >= bag.read.heights.len() {
            continue;
        }
        let is_found = leak_found(bag, spoiled);
        if spoiled.lost_mm > LEAK_MM {
            found.count(is_found);
            kinds.entry(format!("kind {}", spoiled.kind)).or_default().count(is_found);
            let size = (spoiled.lost_mm / LEAK_MM).min(4.0).floor();
            kinds.entry(format!("size {size}")).or_default().count(is_found);
            if !is_found && std::env::var("SHOW").is_ok() {
                println!("{:?}\n {spoiled:?} {:?}\n   {:?}", bag.read.sound_mm, bag.read.heights, bag.by(spoiled.at, 1));
            }
        } else if spoiled.lost_mm > 0.5 * LEAK_MM {
            half.count(is_found);
        }
    }
    println!("leaks found: {found}; half as large {half}; {kinds:?}");
    found.at_least(0.90, full(), "leaks");
}

#[test]
fn a_class_that_is_low_is_called() {
    let made = school::treatments(Some(0.3));
    let mut chance = Chance::from_seed(seed::fresh("class days"));
    for (failure, days) in [
        (Failure::None, 1.0),
        (Failure::Yeast, 1.0),
        (Failure::Water, 1.0),
        (Failure::HalfYeast, 0.5),
        (Failure::HalfWater, 0.5),
    ] {
        let trial = Trial { made: &made, width: PILOT, failure, chances: &|_| 0.0 };
        let classes = trial.run((days * 4.0 * bags() as f64) as usize, &mut chance);
        let (mut at_alert, mut ever) = (Share::default(), Share::default());
        for class in &classes {
            let first = class.calls.iter().find(|(minute, _)| {
                made[0].band[*minute as usize].median_mm >= 3.0
            });
            let first = first.map(|(minute, _)| *minute).unwrap_or_default();
            for (minute, call) in &class.calls {
                assert!(*minute >= first || call.is_none(), "called at {minute}");
            }
            let by = class.calls.iter().filter(|(minute, _)| *minute <= first);
            at_alert.count(by.into_iter().any(|(_, call)| call.is_some()));
            ever.count(class.calls.iter().any(|(_, call)| call.is_some()));
        }
        println!("{failure:?}: called by the first reading {at_alert}, ever {ever}");
    }
}

#[test]
fn what_is_called_likely_is_so() {
    let made = school::treatments(Some(0.3));
    let mut chance = Chance::from_seed(seed::fresh("calibration"));
    let chances = |mishap| match mishap {
        Mishap::Unit | Mishap::Transposed | Mishap::Foam | Mishap::Dead | Mishap::Hot => 0.01,
        Mishap::Misread => 0.003,
        Mishap::Tilt => 0.005,
        Mishap::Leak => 0.04,
        Mishap::Start | Mishap::Unshaken | Mishap::Heaped | Mishap::Swapped => 0.03,
        Mishap::Copied | Mishap::Fives => 0.02,
    };
    let trial = Trial { made: &made, width: PILOT, failure: Failure::None, chances: &chances };
    let classes = trial.run(4 * bags(), &mut chance);
    let mut found = BTreeMap::<Mishap, Share>::new();
    for bag in classes.iter().flat_map(|class| &class.bags) {
        if let Some(mishap) = mishap(&bag.read) {
            let real = bag.said.iter().any(|(_, slips)| slips.iter().any(|s| bag.is_real(s)));
            found.entry(mishap).or_default().count(real);
        }
    }
    for (mishap, share) in found {
        println!("{mishap:?}: found in the end {share}");
    }
    for (from, to) in [(0.0, 0.5), (0.5, 0.65), (0.65, 0.75), (0.75, 0.85), (0.85, 0.95), (0.95, 1.1)] {
        let bin = Bin::of(&classes, from, to);
        println!("called {:.2} to {:.2}: real {}", bin.from, bin.to, bin.real);
        for (kind, share) in &bin.kinds {
            println!("     {kind}: {share}");
        }
    }
}

//! Class days: sound ones, and such with bad yeast or wrong water.

use crate::class::{Failure, PILOT, UNKNOWN, Width};
use crate::school::{self, Made};
use crate::share::Share;
use crate::trial::{Class, Trial};
use crate::{KNOWN, full, seed, size};
use barm_science::statistics::chance::Chance;

/// Days of each kind.
fn days() -> usize {
    size::counts(60, 120, 800)
}

/// The first reading at which the median rise that is forecast for most bags has reached 3 mm.
fn alert(made: &[Made]) -> u32 {
    let reached = |minute: &u32| {
        let risen = made.iter().filter(|made| made.band[*minute as usize].median_mm >= 3.0);
        2 * risen.count() > made.len()
    };
    (4..=24).step_by(4).find(reached).unwrap_or(24)
}

fn called(classes: &[Class], by: u32) -> Share {
    let mut share = Share::default();
    for class in classes {
        let mut until = class.calls.iter().filter(|(minute, _)| *minute <= by);
        share.count(until.any(|(_, call)| call.is_some()));
    }
    share
}

fn tried(made: &[Made], width: Width, failure: Failure, chance: &mut Chance) -> Vec<Class> {
    let trial = Trial { made, width, failure, chances: &|_| 0.0, class_only: true };
    trial.run(26 * days(), chance)
}

#[test]
fn a_class_that_is_low_is_called_at_the_first_reading_that_can_tell() {
    let made = school::treatments(Some(KNOWN));
    let mut chance = Chance::from_seed(seed::fresh("class days"));
    let alert = alert(&made);
    let first = made.iter().map(|made| {
        let reached = made.band.iter().find(|at| at.median_mm >= 3.0);
        reached.map_or(24.0, |at| at.minute)
    });
    let first = first.fold(24.0, f64::min);
    let mut low = Share::default();
    for (failure, says) in [
        (Failure::Yeast, "days with yeast of less than a quarter of its activity"),
        (Failure::Water, "days with water 12 °C off"),
        (Failure::HalfYeast, "days with yeast of a quarter to a half"),
        (Failure::HalfWater, "days with water 6 °C off"),
    ] {
        let classes = tried(&made, PILOT, failure, &mut chance);
        for class in &classes {
            for (minute, call) in &class.calls {
                let may = f64::from(*minute) + 2.6 >= first;
                assert!(may || call.is_none(), "called at minute {minute}");
            }
        }
        let share = called(&classes, alert);
        println!("| {says}, called by minute {alert} | {share} |");
        if matches!(failure, Failure::Yeast | Failure::Water) {
            low.found += share.found;
            low.of += share.of;
        }
    }
    let sound = called(&tried(&made, PILOT, Failure::None, &mut chance), school::LAST);
    println!("| sound days called at any reading | {sound} |");
    low.at_least(0.95, full(), "days that are low");
    sound.under(0.02, full(), "sound days called");
}

/// No bar is set: a day may be half or twice its forecast before anything was tried, so that weak
/// yeast cannot be told from dead in ten minutes. The call must not be made lightly all the same.
#[test]
fn without_a_pilot_less_can_be_told() {
    let made = school::treatments(None);
    let mut chance = Chance::from_seed(seed::fresh("class days without a pilot"));
    let alert = alert(&made);
    for (failure, says) in [
        (Failure::Yeast, "the same without a pilot: yeast of less than a quarter"),
        (Failure::Water, "without a pilot: water 12 °C off"),
    ] {
        let share = called(&tried(&made, UNKNOWN, failure, &mut chance), alert);
        println!("| {says}, called by minute {alert} | {share} |");
    }
    let sound = called(&tried(&made, UNKNOWN, Failure::None, &mut chance), school::LAST);
    println!("| without a pilot: sound days called at any reading | {sound} |");
    sound.under(0.10, full(), "sound days called without a pilot");
}

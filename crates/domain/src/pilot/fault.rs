//! What is wrong with the readings of a pilot.

use super::protocol::Protocol;
use super::readings::{Part, PilotReadings};
use barm_science::bag::simulated_capacity_ml;

/// Something that a pilot's readings cannot be taken with.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PilotFault {
    /// Line of the file, from 1; 0 if it has none.
    pub line: u64,
    /// What is wrong, in one clause.
    pub what: String,
    /// What to do.
    pub fix: String,
}

impl PilotFault {
    pub(super) fn new(line: u64, what: impl Into<String>, fix: impl Into<String>) -> Self {
        Self { line, what: what.into(), fix: fix.into() }
    }

    /// That parts of the same day were counted and are not among the new readings.
    pub(super) fn lost(of: &str, parts: &[Part]) -> Self {
        let names: Vec<&str> = parts.iter().map(|part| part.says()).collect();
        let names = names.join(" and ");
        Self::new(
            0,
            format!(
                "{of} was tried on that day before, and {names} counted then; these readings would \
                 take their place"
            ),
            format!("put {names} of that day into the same file, or write another date"),
        )
    }
}

/// Everything that is wrong with readings for that protocol, by line.
pub(super) fn faults(protocol: &Protocol, readings: &PilotReadings) -> Vec<PilotFault> {
    let mut found = Vec::new();
    if readings.parts().is_empty() {
        let fix = "measure any part of the pilot and write it under its heading";
        found.push(PilotFault::new(0, "there is no reading to learn from", fix));
    }
    bags(protocol, readings, &mut found);
    syringe(protocol, readings, &mut found);
    dummy(readings, &mut found);
    if protocol.spoons.is_none()
        && let Some(first) = readings.spoons.first()
    {
        let fix = "leave the spoons out";
        let what = "the plan has no dry yeast, of which a teaspoon could be weighed";
        found.push(PilotFault::new(first.line, what, fix));
    }
    found.sort_by_key(|fault| fault.line);
    found
}

fn bags(protocol: &Protocol, readings: &PilotReadings, found: &mut Vec<PilotFault>) {
    let letters: Vec<&str> = protocol.bags.iter().map(|bag| bag.letter.as_str()).collect();
    let known = if letters.is_empty() {
        "leave the bags out: the plan has no yeast to try".to_owned()
    } else {
        format!("write one of the pilot's bags: {}", letters.join(", "))
    };
    for made in readings.made.iter().filter(|made| protocol.bag(&made.bag).is_none()) {
        let what = format!("the pilot has no bag “{}”", made.bag);
        found.push(PilotFault::new(made.line, what, known.clone()));
    }
    for bag in &readings.bags {
        let line = bag.heights.first().map_or(0, |first| first.line);
        if protocol.bag(&bag.bag).is_none() {
            let what = format!("the pilot has no bag “{}”", bag.bag);
            found.push(PilotFault::new(line, what, known.clone()));
            continue;
        }
        let zeros = bag.heights.iter().filter(|height| is_zero(height.value.minute)).count();
        if zeros == 0 {
            let what = format!("bag {} has no zero reading", bag.bag);
            let fix = "write its height at minute 0: all others count from it";
            found.push(PilotFault::new(line, what, fix));
        }
        if bag.heights.len() == zeros {
            let what = format!("bag {} has no height after its zero reading", bag.bag);
            let fix = "read it once more, or leave the bag out";
            found.push(PilotFault::new(line, what, fix));
        }
        for (at, height) in bag.heights.iter().enumerate() {
            let minute = height.value.minute;
            let twice =
                bag.heights[..at].iter().find(|one| (one.value.minute - minute).abs() < 1e-9);
            if let Some(first) = twice {
                let what = format!(
                    "bag {} has a height at minute {minute} already, on line {}",
                    bag.bag, first.line
                );
                found.push(PilotFault::new(height.line, what, "keep the one that is right"));
            }
        }
    }
}

fn syringe(protocol: &Protocol, readings: &PilotReadings, found: &mut Vec<PilotFault>) {
    let Some(first) = readings.syringe.first() else { return };
    let Some(check) = &protocol.syringe else {
        let what = "this card is so small for the bag that the first air does not lift it, so the \
                    syringe says nothing";
        let fix = "take a smaller bag or a larger card in the plan, or leave the syringe out";
        found.push(PilotFault::new(first.line, what, fix));
        return;
    };
    if !readings.syringe.iter().any(|one| is_zero(one.value.air_ml)) {
        let fix = "write the height with no air put in, as 0 mL";
        found.push(PilotFault::new(first.line, "the syringe has no zero reading", fix));
    }
    if readings.syringe.iter().all(|one| is_zero(one.value.air_ml)) {
        let fix = "write a volume and the height that goes with it";
        found.push(PilotFault::new(first.line, "no air was put in", fix));
    }
    let most_ml = simulated_capacity_ml(&check.bag.bag) - check.water_ml;
    for one in readings.syringe.iter().filter(|one| one.value.air_ml > most_ml) {
        let what = format!(
            "{} mL of air is more than this bag holds, which is about {most_ml:.0} mL",
            one.value.air_ml
        );
        let fix = "write all air put in so far; look at the decimal point";
        found.push(PilotFault::new(one.line, what, fix));
    }
}

fn dummy(readings: &PilotReadings, found: &mut Vec<PilotFault>) {
    let Some(first) = readings.dummy.first() else { return };
    if readings.dummy.len() < 2 {
        let what = "one temperature says nothing of cooling";
        let fix = "write the temperature at minute 0 and at least one later";
        found.push(PilotFault::new(first.line, what, fix));
    }
}

pub(super) fn is_zero(value: f64) -> bool {
    value.abs() < 1e-9
}

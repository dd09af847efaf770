//! Forty minutes, step by step.

use super::bags::LAST_MIN;
use super::protocol::Protocol;
use super::readings::Part;
use crate::plan::Plan;

/// Something to do in a pilot.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Step {
    /// Minute of the pilot.
    pub minute: u32,
    /// Part of the pilot that it belongs to; nothing for what has to be done anyway.
    pub part: Option<Part>,
    /// What to do.
    pub says: String,
}

/// Minute of the pilot at which bags have their zero reading.
const ZERO_MIN: u32 = 10;
/// Minute at which the bag of plain water is filled.
const DUMMY_MIN: u32 = 6;
/// Minute at which the syringe is begun: between two readings of the bags.
const SYRINGE_MIN: u32 = 12;
/// Minute at which the meter is begun.
const METER_MIN: u32 = 22;

/// What to do when, for one person, in the order of minutes.
pub fn timetable(plan: &Plan, protocol: &Protocol) -> Vec<Step> {
    let mut all = Vec::new();
    let mut step = |minute: u32, part: Option<Part>, says: String| {
        all.push(Step { minute, part, says });
    };
    if let Some(spoons) = protocol.spoons {
        step(
            0,
            Some(Part::Spoons),
            format!(
                "Weigh {} level teaspoons of yeast, one by one. Tip each back into the jar.",
                spoons.count
            ),
        );
    }
    step(
        DUMMY_MIN,
        Some(Part::Dummy),
        "Fill the bag of plain water. Fold it around the thermometer and read it at once: its minute 0."
            .to_owned(),
    );
    for minute in protocol.dummy.minutes.iter().filter(|minute| **minute > 0) {
        let says = format!("Bag of plain water: read its minute {minute}.");
        step(DUMMY_MIN + minute, Some(Part::Dummy), says);
    }
    if !protocol.bags.is_empty() {
        let letters: Vec<&str> = protocol.bags.iter().map(|bag| bag.letter.as_str()).collect();
        let letters = letters.join(", ");
        let wet =
            plan.timing.wet_before_zero_min.round().clamp(0.0, f64::from(ZERO_MIN)) as u32;
        step(
            ZERO_MIN - wet,
            Some(Part::Bags),
            format!(
                "Pour the warm water into {letters}. Press the air out, seal, lay flat in the tray."
            ),
        );
        let says =
            format!("Zero reading of {letters}: height of the card above the tray's floor.");
        step(ZERO_MIN, Some(Part::Bags), says);
        for minute in &protocol.bags[0].minutes {
            step(
                ZERO_MIN + minute,
                Some(Part::Bags),
                format!("Read {letters}: minute {minute}."),
            );
        }
    }
    if protocol.syringe.is_some() {
        let says = "Between readings: air into the bag with the syringe, and the card's height each time.";
        step(SYRINGE_MIN, Some(Part::Syringe), says.to_owned());
    }
    if protocol.meter.is_some() {
        let says = "Between readings: the meter over plain water, then over the two mixes, weakest first.";
        step(METER_MIN, Some(Part::Meter), says.to_owned());
    }
    let says = "Open every bag over the sink and pour it out. Count the syringe back in.";
    step(ZERO_MIN + LAST_MIN, None, says.to_owned());
    all.sort_by_key(|step| step.minute);
    all
}

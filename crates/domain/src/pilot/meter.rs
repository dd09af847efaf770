//! What liquids of known strength say of a meter.

use super::fault::PilotFault;
use super::readings::{Seen, Shown};
use barm_science::ethanol::percent_by_volume;
use barm_science::meter::{MeterPosterior, STEP, Standard, USUAL_RANGE, checked as check};
use barm_science::units::Celsius;

/// The meter once it was held over liquids of known strength, each at the room's temperature unless
/// it was measured.
pub(super) fn checked(
    before: &MeterPosterior,
    readings: &[Seen<Shown>],
    room_celsius: f64,
) -> Result<MeterPosterior, Vec<PilotFault>> {
    if readings.is_empty() {
        return Ok(*before);
    }
    let standard = |shown: &Shown| Standard {
        g_per_l: shown.strength / percent_by_volume(1.0),
        celsius: Celsius(shown.celsius.unwrap_or(room_celsius)),
        percent: shown.percent,
    };
    let (range, step) = (USUAL_RANGE.value, STEP.value);
    let mut wrong = Vec::new();
    for one in readings {
        if let Err(error) = check(before, &[standard(&one.value)], range, step) {
            let fix = "look at the decimal point, or leave this reading out";
            wrong.push(PilotFault::new(one.line, error.to_string(), fix));
        }
    }
    if !wrong.is_empty() {
        return Err(wrong);
    }
    let standards: Vec<Standard> = readings.iter().map(|one| standard(&one.value)).collect();
    check(before, &standards, range, step).map_err(|error| {
        vec![PilotFault::new(0, error.to_string(), "leave the meter out of the readings")]
    })
}

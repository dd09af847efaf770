//! What a pilot's readings teach about each lot.

use super::fault::{PilotFault, faults};
use super::lots::Lots;
use super::made::seen;
use super::protocol::{Protocol, day_at};
use super::readings::{Part, PilotReadings};
use super::shown::{Change, Sides, changes};
use super::start::Start;
use super::titles::title;
use super::{card, door, dummy, meter, spoon};
use crate::bench;
use crate::outlook::Curve;
use crate::plan::Plan;
use barm_science::fit::day::BagSeen;
use barm_science::forecast::{Span, Streams, forecast_from};
use barm_science::prior::Learned;
use jiff::civil::Date;

/// What a pilot taught.
#[derive(Debug, Clone, PartialEq)]
pub struct Taught {
    /// Everything that pilots found for the plan, this one among it.
    pub lots: Lots,
    /// The day that it counts for.
    pub date: Date,
    /// What was measured.
    pub parts: Vec<Part>,
    /// What changed, the most telling first.
    pub changes: Vec<Change>,
    /// Numbers of the bags that their readings could not move, in plain words.
    pub unmoved: Vec<String>,
    /// Each bag with yeast as it was expected before, as it is expected now, and as it was read.
    pub bags: Vec<BagBeforeAfter>,
    /// By which the bags' readings scatter more widely than they should (1), if there are any.
    pub noise: Option<f64>,
}

/// A bag before and after a pilot.
#[derive(Debug, Clone, PartialEq)]
pub struct BagBeforeAfter {
    /// Its letter.
    pub letter: String,
    /// Rise (mm) minute by minute as it was expected before.
    pub before: Curve,
    /// The same as it is expected now.
    pub after: Curve,
    /// Minutes and rises (mm) as they were read.
    pub seen: Vec<(f64, f64)>,
}

/// Days that are drawn to show a bag.
const DRAWS: usize = 256;

/// Works out what a pilot's readings teach, going on from what pilots found before.
///
/// # Errors
/// Every [`PilotFault`] of the readings; then nothing was learned.
pub fn learn(
    plan: &Plan,
    protocol: &Protocol,
    readings: &PilotReadings,
    lots: &Lots,
    today: Date,
) -> Result<Taught, Vec<PilotFault>> {
    let mut wrong = faults(protocol, readings);
    let Some(day) = plan.days.first() else {
        // A protocol is of a plan with a day.
        return Err(wrong);
    };
    let day = day_at(day, readings.room_celsius);
    let start = Start::of(plan, protocol, readings, lots, today);
    let start = match start {
        Ok(start) => start,
        Err(lost) => {
            wrong.extend(lost);
            return Err(wrong);
        }
    };
    if !wrong.is_empty() {
        return Err(wrong);
    }
    let mut yeast = start.yeast.found.clone();
    let teaspoon_before = yeast.teaspoon.unwrap_or_else(spoon::usual);
    if !readings.spoons.is_empty() {
        yeast.teaspoon = Some(spoon::weighed(teaspoon_before, &readings.spoons));
    }
    let before = start.numbers();
    let mut numbers = before.clone();
    if !readings.dummy.is_empty() {
        let setup = bench::setup(plan, &protocol.dummy.recipe, &day);
        match setup {
            Ok(setup) => numbers = dummy::cooled(&numbers, &setup, &readings.dummy),
            Err(error) => wrong.push(PilotFault::new(0, error.problem, error.fix)),
        }
    }
    if let Some(syringe) = protocol.syringe.as_ref().filter(|_| !readings.syringe.is_empty()) {
        match card::injected(&numbers, syringe, &readings.syringe) {
            Ok(found) => numbers = found,
            Err(fault) => wrong.push(fault),
        }
    }
    let seen = seen(plan, protocol, &day, readings, &yeast, &mut wrong);
    let checked = meter::checked(&start.meter.found, &readings.meter, day.room_celsius);
    let checked = checked.unwrap_or_else(|faults| {
        wrong.extend(faults);
        start.meter.found
    });
    let mut fitted = None;
    if wrong.is_empty() && !seen.is_empty() {
        let bags: Vec<BagSeen> = seen.iter().map(|(_, bag)| bag.clone()).collect();
        match door::fit(&bags, &numbers) {
            Ok((found, fit)) => {
                numbers = found;
                fitted = Some(fit);
            }
            Err(error) => {
                let fix = "look at the units, and whether each bag is the one its letter says";
                wrong.push(PilotFault::new(0, error.to_string(), fix));
            }
        }
    }
    if !wrong.is_empty() {
        wrong.sort_by_key(|fault| fault.line);
        return Err(wrong);
    }
    let mut unmoved: Vec<String> = Vec::new();
    for name in fitted.iter().flat_map(|fit| fit.learned.could_not_move()) {
        let says = title(name);
        if !unmoved.contains(&says) {
            unmoved.push(says);
        }
    }
    let changes = changes(&Sides {
        protocol,
        parts: &readings.parts(),
        numbers: (&before, &numbers),
        teaspoon: (teaspoon_before, yeast.teaspoon),
        meter: (start.meter.found, checked),
    });
    let bags = seen
        .iter()
        .filter_map(|(letter, bag)| before_after(letter, bag, &before, &numbers))
        .collect();
    Ok(Taught {
        lots: start.stored(lots, &yeast, &numbers, checked),
        date: start.date,
        parts: readings.parts(),
        changes,
        unmoved,
        bags,
        noise: fitted.map(|fit| fit.noise),
    })
}

/// A bag's band before and after.
fn before_after(
    letter: &str,
    bag: &BagSeen,
    before: &Learned,
    after: &Learned,
) -> Option<BagBeforeAfter> {
    let last = bag.readings.last().map_or(0.0, |reading| reading.0).ceil().max(1.0) as u32;
    let span = Span { last_minute: last, draws: DRAWS, until_hours: 0.0 };
    let curve = |numbers: &Learned| {
        let prior = door::prior(numbers);
        let forecast = forecast_from(&bag.setup, &span, &Streams::alone(1, 2), &prior).ok()?;
        let band = forecast.rise_mm().band();
        Some(Curve { median: band.median, low: band.low, high: band.high })
    };
    Some(BagBeforeAfter {
        letter: letter.to_owned(),
        before: curve(before)?,
        after: curve(after)?,
        seen: bag.readings.clone(),
    })
}

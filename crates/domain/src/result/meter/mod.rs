//! What the breath meter says of a class's bags: one against another, and nothing of any person.

mod bag;
mod sets;

pub use bag::MeteredBag;
pub use sets::{MeterCompared, Told};

use super::aside;
use crate::code::BagCode;
use crate::outlook::Treated;
use crate::plan::Plan;
use crate::reading::{Rejected, SetAside};
use crate::record::Standing;
use barm_science::meter::{
    Blank, Meter, MeterPosterior, RELATIVE_ONLY, STEP, Sample, USUAL_RANGE,
};
use std::collections::BTreeMap;

/// What the meter showed of one bag.
#[derive(Debug, Clone, PartialEq)]
pub struct MeterReading {
    /// Code of the bag, as it stands in the plan's bag list.
    pub bag: String,
    /// As shown, in the meter's own percent.
    pub percent: f64,
    /// Place in the meter's order of the period, from 1, counting blanks.
    pub turn: Option<u32>,
    /// Minutes after the bag's own zero reading; the last reading of the class if nobody knows.
    pub minute: Option<f64>,
    /// Temperature of the liquid (°C), if somebody read it; else it is that of the forecast.
    pub celsius: Option<f64>,
    /// What was held to the meter.
    pub sample: Sample,
    /// Line of the file it was read from, from 1; 0 if it came from elsewhere.
    pub line: u64,
}

/// The one meter of a class.
#[derive(Debug, Clone, PartialEq)]
pub struct ClassMeter {
    /// What is known of it, such as from a check with known ethanol.
    pub known: MeterPosterior,
    /// Highest reading of its display (%).
    pub range_percent: f64,
    /// Step of its display (%).
    pub step_percent: f64,
    /// Pushes of clean air, by period.
    pub blanks: BTreeMap<String, Vec<Blank>>,
}

impl Default for ClassMeter {
    /// A usual meter that nobody has checked, without blanks.
    fn default() -> Self {
        Self {
            known: MeterPosterior::UNCHECKED,
            range_percent: USUAL_RANGE.value,
            step_percent: STEP.value,
            blanks: BTreeMap::new(),
        }
    }
}

impl ClassMeter {
    /// The meter as a pilot knows it, with what it showed of clean air. A display is taken for a usual one
    /// until a reading of a bag shows more, which makes it one with a longer scale: up to what any such
    /// meter shows ([`USUAL_RANGE`]), for beyond that it is a slip.
    pub fn of(
        known: MeterPosterior,
        readings: &[MeterReading],
        blanks: BTreeMap<String, Vec<Blank>>,
    ) -> Self {
        let most = USUAL_RANGE.range.map_or(USUAL_RANGE.value, |(_, most)| most);
        let shown = readings.iter().map(|reading| reading.percent);
        let range_percent =
            shown.filter(|percent| *percent <= most).fold(USUAL_RANGE.value, f64::max);
        Self { known, range_percent, blanks, ..Self::default() }
    }

    /// The same with all that stands on record.
    pub fn on_record(known: MeterPosterior, standing: &Standing) -> Self {
        let noted = |blanks: &BTreeMap<u32, Option<f64>>| -> Vec<Blank> {
            let noted = blanks.iter().filter_map(|(turn, percent)| Some((*turn, (*percent)?)));
            noted.map(|(turn, percent)| Blank { turn, percent }).collect()
        };
        let periods = standing.periods.iter();
        let blanks = periods.map(|(period, of)| (period.clone(), noted(&of.blanks)));
        let blanks = blanks.filter(|(_, blanks)| !blanks.is_empty()).collect();
        Self::of(known, &on_record(standing), blanks)
    }

    /// The meter in a period: it drifts over the period's pushes.
    fn in_period(&self, period: &str) -> Meter {
        let blanks = self.blanks.get(period).map_or(&[][..], Vec::as_slice);
        Meter::new(self.known, blanks, self.range_percent, self.step_percent)
    }
}

/// What a class's meter readings say.
#[derive(Debug, Clone, PartialEq)]
pub struct MeterResult {
    /// What has to stand beside every number of this.
    pub note: &'static str,
    /// Every bag that was held to the meter, in the plan's order.
    pub bags: Vec<MeteredBag>,
    /// Every comparison that the plan asks for and for which both were held to the meter.
    pub comparisons: Vec<MeterCompared>,
    /// What was handed in and could not be used.
    pub rejected: Vec<Rejected>,
}

/// Compares a class's bags by what its breath meter showed, each reading without the zero of its turn,
/// undiluted, and at the temperature of its own bag.
///
/// `forecasts` are those of [`super::analyze`]. Where a bag has several readings the last in the list
/// counts. Bags that are set aside by a rule of the plan are shown and not compared. Periods are taken
/// together, for few bags of a class are held to a meter: where one treatment was pushed in one period only,
/// what that period had of its own is in its number.
///
/// The order that the display gave must not be told where
/// [`Corrections::order_is_in_doubt`](barm_science::meter::Corrections::order_is_in_doubt).
pub fn by_meter(
    plan: &Plan,
    forecasts: &[Treated],
    readings: &[MeterReading],
    set_aside: &[SetAside],
    meter: &ClassMeter,
) -> MeterResult {
    let mut rejected = Vec::new();
    let aside = aside::accept(plan, set_aside, &mut rejected);
    let mut newest: BTreeMap<&str, &MeterReading> = BTreeMap::new();
    for reading in readings {
        if plan.bags.iter().any(|bag| bag.code == reading.bag) {
            newest.insert(&reading.bag, reading);
        } else {
            let reason = format!("{} is no bag of this plan", reading.bag);
            rejected.push(Rejected { line: reading.line, reason });
        }
    }
    let mut found = Vec::new();
    for bag in &plan.bags {
        let Some(reading) = newest.get(bag.code.as_str()) else { continue };
        let treated = Treated::of_bag(forecasts, plan, bag);
        let meter = meter.in_period(&bag.period);
        let set_aside = aside.get(&bag.code).cloned();
        match bag::Pushed::of(bag, reading, treated, &meter, set_aside) {
            Ok(pushed) => found.push(pushed),
            Err(reason) => rejected.push(Rejected { line: reading.line, reason }),
        }
    }
    rejected.sort_by_key(|rejected| rejected.line);
    MeterResult {
        note: RELATIVE_ONLY,
        comparisons: sets::comparisons(plan, &found),
        bags: found.into_iter().map(|pushed| pushed.bag).collect(),
        rejected,
    }
}

/// What stands on record of the meter, bag by bag, in the order of time.
pub fn on_record(standing: &Standing) -> Vec<MeterReading> {
    let of_bag = |(code, bag): (&BagCode, &crate::record::Bag)| {
        let reading =
            |&(at, percent, turn): &(jiff::Timestamp, f64, Option<u32>)| MeterReading {
                bag: code.to_string(),
                percent,
                turn,
                minute: bag.minute_at(at),
                celsius: None,
                sample: Sample::UNTHINNED,
                line: 0,
            };
        bag.meter.iter().map(reading).collect::<Vec<_>>()
    };
    standing.bags.iter().flat_map(of_bag).collect()
}

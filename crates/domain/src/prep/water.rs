//! Warm water for each period: when to mix what, and whether it lasts.

use super::PeriodPrep;
use super::clock::{earlier, later};
use super::dose::Doses;
use super::error::PrepError;
use super::facts::{HAND_LIMIT, MIX_AHEAD, STRAY};
use super::item::Item;
use super::measure::{Measure, Spare, Unit};
use super::mix::{Mix, Sources, jug_celsius, jug_minutes};
use crate::plan::{Day, Period, Plan};
use crate::schedule::schedule;
use jiff::civil::Time;
use std::collections::BTreeMap;

/// Who may handle the water of a jug.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Hands {
    /// It never is above 49 °C in the jug; the hot water it is mixed from may be.
    Students,
    /// The jug starts above 49 °C: the teacher keeps and pours it.
    Teacher,
    /// It is poured above 49 °C: the plan asks for water that students must not touch.
    Nobody,
}

/// More of one water, to bring a jug back to its temperature.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TopUp {
    /// When the jug has strayed too far, local time.
    pub at: Time,
    /// Whether it is hot water that is added; else cold.
    pub hot: bool,
    /// How much (mL), for what is left in the jug then.
    pub adds: Measure,
}

/// The water of one temperature in one period.
#[derive(Debug, Clone, PartialEq)]
pub struct Jug {
    /// The plan's temperature: what the thermometer in the jug must read when it is poured (°C).
    pub poured_celsius: f64,
    /// Bags that get it.
    pub bags: u32,
    /// Treatments that those bags are of, in the order of the plan.
    pub treatments: Vec<String>,
    /// What those bags get (mL).
    pub used: Measure,
    /// Spare of it (mL).
    pub spare: Measure,
    /// How much to mix (mL): used and spare, rounded up to a mark of the jug.
    pub makes: Measure,
    /// When to mix it, local time: a few minutes before the bell.
    pub mix_at: Time,
    /// When the first and the last group pour, local time.
    pub pour: (Time, Time),
    /// What the thermometer must read just after mixing (°C), so that the jug is right in the
    /// middle of the pouring.
    pub mixed_celsius: f64,
    /// Hot and cold water.
    pub mix: Mix,
    /// Temperature in the bags once dry things, solutions and film have taken their share (°C):
    /// the least and the most over the treatments that get this water.
    pub in_bag_celsius: (f64, f64),
    /// Who may handle it.
    pub hands: Hands,
    /// What to add while the groups pour, if the jug strays by more than a kelvin.
    pub top_up: Option<TopUp>,
}

/// Bags that get water of one temperature.
#[derive(Debug, Default)]
struct Wanted<'a> {
    celsius: f64,
    bags: u32,
    /// By their place in the plan.
    treatments: BTreeMap<usize, &'a str>,
    ml: Option<Measure>,
    start: Option<(f64, f64)>,
}

/// The jugs of a period, the coolest first.
pub(super) fn jugs<'a>(
    plan: &'a Plan,
    prep: &PeriodPrep,
    (period, day): (&'a Period, &'a Day),
    doses: &Doses<'a>,
    spare: Spare,
    sources: &Sources,
) -> Result<Vec<Jug>, PrepError> {
    let order: Vec<&str> = plan.treatments().map(|(_, made)| made.name.as_str()).collect();
    let place =
        |name: &str| order.iter().position(|known| *known == name).unwrap_or(order.len());
    let mut wanted: BTreeMap<i64, Wanted<'_>> = BTreeMap::new();
    for bag in plan.bags.iter().filter(|bag| bag.period == period.name) {
        let made = doses.of(bag, period)?;
        for dose in made.doses.iter().filter(|dose| dose.item == Item::Water) {
            let Some(celsius) = dose.celsius else { continue };
            let jug = wanted.entry((1e3 * celsius).round() as i64).or_default();
            jug.celsius = celsius;
            jug.bags += 1;
            jug.treatments.insert(place(&bag.treatment), &bag.treatment);
            jug.ml = Some(jug.ml.map_or(dose.measure, |ml| ml.plus(dose.measure)));
            let start = made.start_celsius;
            jug.start = Some(
                jug.start
                    .map_or((start, start), |(low, high)| (low.min(start), high.max(start))),
            );
        }
    }
    let pouring = Pouring::of(plan, period, prep);
    Ok(wanted.into_values().map(|wanted| jug(&wanted, &pouring, day, spare, sources)).collect())
}

/// When a period mixes and pours (min from mixing).
struct Pouring {
    mix_at: Time,
    first_min: f64,
    last_min: f64,
}

impl Pouring {
    /// The last wave pours as long after the first as it starts after it.
    fn of(plan: &Plan, period: &Period, prep: &PeriodPrep) -> Self {
        let timing = plan.timing;
        let first_min =
            MIX_AHEAD.value + (timing.mixing_min - timing.wet_before_zero_min).max(0.0);
        let waves = schedule(plan, period, None).starts;
        let at = |wave: Option<&(u32, f64)>| wave.map_or(0.0, |(_, at)| *at);
        Self {
            mix_at: earlier(prep.start, MIX_AHEAD.value),
            first_min,
            last_min: first_min + at(waves.last()) - at(waves.first()),
        }
    }

    fn clock(&self, minute: f64) -> Time {
        later(self.mix_at, minute)
    }

    fn middle_min(&self) -> f64 {
        f64::midpoint(self.first_min, self.last_min)
    }
}

fn jug(
    wanted: &Wanted<'_>,
    pouring: &Pouring,
    day: &Day,
    spare: Spare,
    sources: &Sources,
) -> Jug {
    let (celsius, room) = (wanted.celsius, day.room_celsius);
    let used = wanted.ml.unwrap_or(Measure::none(Unit::Milliliter));
    let spare = used.spare(spare);
    let makes = used.plus(spare).up_to_a_mark();
    let mixed_celsius = jug_celsius(celsius, room, -pouring.middle_min());
    let hands = if celsius > HAND_LIMIT.value {
        Hands::Nobody
    } else if mixed_celsius > HAND_LIMIT.value {
        Hands::Teacher
    } else {
        Hands::Students
    };
    Jug {
        poured_celsius: celsius,
        bags: wanted.bags,
        treatments: wanted.treatments.values().map(|name| (*name).to_owned()).collect(),
        used,
        spare,
        makes,
        mix_at: pouring.mix_at,
        pour: (pouring.clock(pouring.first_min), pouring.clock(pouring.last_min)),
        mixed_celsius,
        mix: sources.mix(makes.value(), mixed_celsius),
        in_bag_celsius: wanted.start.unwrap_or((celsius, celsius)),
        hands,
        top_up: top_up(celsius, makes, pouring, room, sources),
    }
}

/// What to add once the jug has strayed from the plan by more than [`STRAY`] before the last group
/// has poured.
fn top_up(
    celsius: f64,
    makes: Measure,
    pouring: &Pouring,
    room: f64,
    sources: &Sources,
) -> Option<TopUp> {
    let strayed_min = pouring.middle_min() + jug_minutes(celsius, room, STRAY.value);
    if strayed_min >= pouring.last_min {
        return None;
    }
    let hot = celsius > room;
    let source = if hot { sources.hot_celsius } else { sources.cold_celsius };
    let is = if hot { celsius - STRAY.value } else { celsius + STRAY.value };
    let reaches = if hot { source > celsius } else { source < celsius };
    let span = pouring.last_min - pouring.first_min;
    let left_ml = makes.value() * (pouring.last_min - strayed_min) / span;
    let adds = left_ml * (celsius - is) / (source - celsius);
    reaches.then(|| TopUp {
        at: pouring.clock(strayed_min),
        hot,
        adds: Measure::new(Unit::Milliliter, adds),
    })
}

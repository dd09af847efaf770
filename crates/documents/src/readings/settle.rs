//! From heights as typed to readings: times of day counted from each bag's zero, repeats found.

use super::time::{ClockTime, When};
use super::typed::Typed;
use barm_domain::plan::Plan;
use barm_domain::reading::{Reading, Rejected, Remark};
use std::collections::BTreeMap;

/// What became of the heights.
#[derive(Default)]
pub(super) struct Settled {
    pub(super) readings: Vec<Reading>,
    pub(super) rejected: Vec<Rejected>,
    pub(super) remarks: Vec<Remark>,
    pub(super) notes: Vec<String>,
    /// Times of day of zero readings, as far as one can be told.
    pub(super) zero_times: Vec<(usize, ClockTime)>,
    /// Heights that a column of zero readings says once more.
    pub(super) repeated_zeros: usize,
}

/// The height that was typed first for a bag and minute.
struct First {
    line: u64,
    mm: f64,
    from_zero_column: bool,
}

/// The longest time after its zero reading at which a bag is read (min): a day.
const LONGEST_MIN: f64 = 1440.0;

/// Minutes over the length of a period beyond which a time of day cannot be meant.
const LATEST_OVER_MIN: f64 = 60.0;

const HALF_DAY_S: f64 = 43_200.0;

/// Turns heights as typed into readings, in the order of the file.
pub(super) fn settle(
    typed: Vec<Typed>,
    zero_times: &BTreeMap<usize, ClockTime>,
    plan: &Plan,
) -> Settled {
    let mut settled = Settled::default();
    let zeros = zeros(&typed, zero_times, &mut settled);
    settled.zero_times = zeros.iter().map(|(bag, clock)| (*bag, clock.clone())).collect();
    let mut firsts: BTreeMap<(usize, i64), First> = BTreeMap::new();
    for typed in typed {
        let Some(bag) = plan.bags.get(typed.bag) else { continue };
        let length = plan.period(&bag.period).map_or(LONGEST_MIN, |period| period.length_min);
        let minute = match minute(&typed, zeros.get(&typed.bag), length) {
            Ok(minute) => minute,
            Err(reason) => {
                settled.reject(&typed, &bag.code, reason);
                continue;
            }
        };
        // Hundredths of a minute: two readings of one bag are never so close.
        #[expect(clippy::cast_possible_truncation, reason = "at most a day of minutes")]
        let key = (typed.bag, (minute * 100.0).round() as i64);
        match firsts.get(&key) {
            None => {
                let Typed { line, mm, from_zero_column, .. } = typed;
                firsts.insert(key, First { line, mm, from_zero_column });
                settled.readings.push(Reading {
                    bag: bag.code.clone(),
                    minute,
                    height_mm: typed.mm,
                    line: typed.line,
                    event: typed.event,
                });
            }
            Some(first)
                if (first.from_zero_column || typed.from_zero_column)
                    && same(first.mm, typed.mm) =>
            {
                settled.repeated_zeros += 1;
            }
            Some(&First { line, mm, .. }) => {
                let reason = if same(mm, typed.mm) {
                    format!("{} at minute {} repeats line {line}", bag.code, short(minute))
                } else {
                    format!(
                        "{} at minute {} is {} mm here but {} mm on line {line}; line {line} \
                         was kept until you correct one of them",
                        bag.code,
                        short(minute),
                        short(typed.mm),
                        short(mm)
                    )
                };
                settled.reject(&typed, &bag.code, reason);
            }
        }
    }
    settled
}

impl Settled {
    /// Lists a height, keeping what was noted beside it.
    fn reject(&mut self, typed: &Typed, code: &str, reason: String) {
        self.rejected.push(Rejected { line: typed.line, reason });
        if let Some(says) = typed.event.clone() {
            self.remarks.push(Remark {
                bag: code.to_owned(),
                minute: None,
                says,
                line: typed.line,
            });
        }
    }
}

/// The time of day of each bag's zero reading, as far as one can be told: from its own column,
/// or the earliest time of day of a bag that has no reading at minute 0.
fn zeros(
    typed: &[Typed],
    zero_times: &BTreeMap<usize, ClockTime>,
    settled: &mut Settled,
) -> BTreeMap<usize, ClockTime> {
    let mut zeros: BTreeMap<usize, ClockTime> = BTreeMap::new();
    for typed in typed {
        if let When::Clock(clock) = &typed.when {
            let earliest = zeros.entry(typed.bag).or_insert_with(|| clock.clone());
            if seconds_after(clock, earliest).is_some_and(|seconds| seconds < 0.0) {
                *earliest = clock.clone();
            }
        }
    }
    for typed in typed {
        if matches!(typed.when, When::Minute(minute) if minute.abs() < 1e-9) {
            zeros.remove(&typed.bag);
        }
    }
    if zeros.keys().any(|bag| !zero_times.contains_key(bag)) {
        settled.notes.push(
            "Times of day were counted from each bag's earliest one, taken as its zero reading."
                .to_owned(),
        );
    }
    zeros.extend(zero_times.iter().map(|(bag, clock)| (*bag, clock.clone())));
    zeros
}

/// Seconds from one time of day to another, within half a day either way; `None` on different
/// dates.
fn seconds_after(clock: &ClockTime, zero: &ClockTime) -> Option<f64> {
    if let (Some(date), Some(zero_date)) = (&clock.date, &zero.date)
        && date != zero_date
    {
        return None;
    }
    let seconds = clock.seconds - zero.seconds;
    if clock.half_known && zero.half_known {
        return Some(seconds);
    }
    // Without am and pm, 12:58 is followed by 1:02.
    let around = seconds.rem_euclid(HALF_DAY_S);
    Some(if around > HALF_DAY_S / 2.0 { around - HALF_DAY_S } else { around })
}

fn minute(typed: &Typed, zero: Option<&ClockTime>, length_min: f64) -> Result<f64, String> {
    let minute = match &typed.when {
        When::Minute(minute) if *minute > LONGEST_MIN => {
            return Err(format!("minute {} is more than a day after the zero", short(*minute)));
        }
        When::Minute(minute) => return Ok(*minute),
        When::Clock(clock) => {
            let zero = zero.ok_or_else(|| {
                "this time of day cannot be counted: the bag's zero reading has none".to_owned()
            })?;
            let seconds = seconds_after(clock, zero).ok_or_else(|| {
                "this reading is on another date than the bag's zero reading".to_owned()
            })?;
            seconds / 60.0
        }
    };
    if minute < 0.0 {
        return Err(format!(
            "this reading is {} min before the bag's zero reading",
            short(-minute)
        ));
    }
    if minute > length_min + LATEST_OVER_MIN {
        return Err(format!(
            "this time is {} min after the bag's zero reading, long after the bell; if it is \
             minutes and seconds, head the column \"minute\"",
            short(minute)
        ));
    }
    Ok(minute)
}

fn same(a: f64, b: f64) -> bool {
    (a - b).abs() < 1e-6
}

/// A number with at most two decimals.
fn short(value: f64) -> String {
    let text = format!("{value:.2}");
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}

//! What each bench types, and what goes wrong there.

use super::chance::Chance;
use super::{Device, Does, Mishap, Rates, Script, Staged, Step, Truth};
use crate::code::BagCode;
use crate::outlook::OutlookError;
use crate::plan::{Period, Plan, PlannedBag};
use crate::record::Odd;
use crate::schedule::{Schedule, schedule};
use std::collections::BTreeMap;

// Own estimates, no source: how hands and rulers are at a bench.
/// Height of a card on a bag at its zero reading (mm), and how it differs.
pub(super) const ZERO_MM: (f64, f64) = (4.0, 1.2);
/// How a reading differs from the height (mm).
pub(super) const READING_SD_MM: f64 = 0.4;
/// How fast a card falls where the seal leaks (mm/min).
const LEAK_MM_MIN: f64 = 0.9;
/// A late reading is so late (s).
const LATE_S: (f64, f64) = (65.0, 150.0);
/// A zero reading that is typed late is so late (s).
const START_S: (f64, f64) = (90.0, 240.0);
/// Groups that have a leak and see it.
const LEAK_SEEN: f64 = 0.5;

/// What a bag really does, up to that minute.
pub(super) type Follow<'a> = &'a dyn Fn(&PlannedBag, u32) -> Result<Truth, OutlookError>;

/// Minutes after the last planned reading up to which a bag is followed, for readings that are late.
pub(super) const LATER_MIN: u32 = 8;

pub(super) fn script(
    plan: &Plan,
    period: &Period,
    seed: u64,
    rates: &Rates,
    follow: Follow<'_>,
) -> Result<Script, OutlookError> {
    let schedule = schedule(plan, period, None);
    let mut script = Script {
        period: period.name.clone(),
        devices: Vec::new(),
        staged: Vec::new(),
        chances: BTreeMap::new(),
    };
    let mut neighbor: Vec<Series> = Vec::new();
    for group in 0..=period.groups {
        let mut bags: Vec<(BagCode, &PlannedBag)> = plan
            .bags
            .iter()
            .filter(|bag| bag.period == period.name && bag.group == group)
            .filter_map(|bag| Some((bag.code.parse().ok()?, bag)))
            .collect();
        bags.sort_by_key(|(code, bag)| (bag.place, *code));
        if bags.is_empty() {
            continue;
        }
        let bench = Bench {
            plan,
            schedule: &schedule,
            // The teacher's own bench is read as it should be.
            rates: if group == 0 { &Rates::NONE } else { rates },
            group,
            follow,
            chance: Chance::of(seed, &format!("{}/{group}", period.name)),
            script: &mut script,
        };
        let series = bench.work(&bags, &neighbor)?;
        neighbor = if group == 0 { Vec::new() } else { series };
    }
    Ok(script)
}

/// One bench while its script is written.
struct Bench<'a> {
    plan: &'a Plan,
    schedule: &'a Schedule,
    rates: &'a Rates,
    group: u32,
    follow: Follow<'a>,
    chance: Chance,
    script: &'a mut Script,
}

/// What is written for one bag.
struct Series {
    code: BagCode,
    place: u32,
    zero: Written,
    readings: BTreeMap<u32, Written>,
    /// When a leak is tapped (s).
    leak_s: Option<f64>,
}

#[derive(Clone, Copy)]
struct Written {
    at_s: f64,
    mm: f64,
}

impl Bench<'_> {
    fn work(
        mut self,
        bags: &[(BagCode, &PlannedBag)],
        neighbor: &[Series],
    ) -> Result<Vec<Series>, OutlookError> {
        let truths = bags
            .iter()
            .map(|(_, bag)| (self.follow)(bag, self.schedule.last + LATER_MIN))
            .collect::<Result<Vec<_>, _>>()?;
        let mut order: Vec<usize> = (0..bags.len()).collect();
        let unlike = (1..bags.len()).find(|at| bags[*at].1.treatment != bags[0].1.treatment);
        if let Some(other) = unlike
            && self.goes_wrong(Mishap::Swapped, bags[0].0, Some(bags[other].0), None)
        {
            order.swap(0, other);
        }
        let mut all = Vec::new();
        for (at, (code, bag)) in bags.iter().enumerate() {
            let truth = &truths[order[at]];
            let beside = neighbor.iter().find(|series| series.place == bag.place);
            let copies = beside.filter(|beside| {
                self.goes_wrong(Mishap::Copied, *code, Some(beside.code), None)
            });
            all.push(self.series(*code, bag, truth, copies));
        }
        self.write(&all);
        Ok(all)
    }

    /// Whether it goes wrong this time; notes it.
    fn goes_wrong(
        &mut self,
        mishap: Mishap,
        bag: BagCode,
        other: Option<BagCode>,
        planned: Option<u32>,
    ) -> bool {
        if self.group == 0 {
            return false;
        }
        *self.script.chances.entry(mishap).or_default() += 1;
        let wrong = self.chance.happens(self.rates.of(mishap));
        if wrong {
            self.script.staged.push(Staged { mishap, bag, other, planned });
        }
        wrong
    }

    fn series(
        &mut self,
        code: BagCode,
        bag: &PlannedBag,
        truth: &Truth,
        copies: Option<&Series>,
    ) -> Series {
        let minutes = &self.schedule.minutes;
        let start = self.schedule.start_of(self.group).unwrap_or(0.0) * 60.0;
        let made_s = start + 8.0 * f64::from(bag.place.saturating_sub(1));
        let zero_mm = (ZERO_MM.0 + ZERO_MM.1 * self.chance.normal()).max(1.0);
        let honest = copies.is_none();
        let started_late = honest && self.goes_wrong(Mishap::WrongStart, code, None, Some(0));
        let late = if started_late { self.chance.between(START_S.0, START_S.1) } else { 0.0 };
        let first = self.chance.below(minutes.len().max(1));
        let from = minutes.get(first).copied().unwrap_or(0);
        let leaks = honest && self.goes_wrong(Mishap::Leak, code, None, Some(from));
        let zero = Written { at_s: made_s + late, mm: zero_mm.round() };
        let mut series =
            Series { code, place: bag.place, zero, readings: BTreeMap::new(), leak_s: None };
        for planned in minutes {
            // Nothing is read once clearing has begun.
            let due = series.zero.at_s + 60.0 * f64::from(*planned);
            if due > 60.0 * self.schedule.clearing_min() {
                break;
            }
            if honest && self.goes_wrong(Mishap::Missed, code, None, Some(*planned)) {
                continue;
            }
            let mut at_s = due + self.chance.between(3.0, 20.0);
            if honest && self.goes_wrong(Mishap::Late, code, None, Some(*planned)) {
                at_s = due + self.chance.between(LATE_S.0, LATE_S.1);
            }
            let minute = (at_s - made_s) / 60.0;
            let lost =
                if leaks { LEAK_MM_MIN * (minute - f64::from(from)).max(0.0) } else { 0.0 };
            let rise = (truth.rise_mm(minute) - lost).max(0.0);
            let height = zero_mm + rise + READING_SD_MM * self.chance.normal();
            let mut mm = height.round().max(1.0);
            if honest && self.goes_wrong(Mishap::Unit, code, None, Some(*planned)) {
                mm /= 10.0;
            } else if let Some(swapped) = transposed(mm).filter(|_| honest)
                && self.goes_wrong(Mishap::Transposed, code, None, Some(*planned))
            {
                mm = swapped;
            }
            if leaks && lost > 3.0 && series.leak_s.is_none() {
                series.leak_s = Some(at_s + 15.0);
            }
            series.readings.insert(*planned, Written { at_s, mm });
        }
        if series.leak_s.is_some() && !self.chance.happens(LEAK_SEEN) {
            series.leak_s = None;
        }
        if let Some(beside) = copies {
            series.zero.mm = beside.zero.mm;
            series.readings.retain(|planned, written| {
                let theirs = beside.readings.get(planned);
                theirs.map(|theirs| written.mm = theirs.mm).is_some()
            });
        }
        series
    }

    /// Puts what the bench types in the order of time.
    fn write(&mut self, all: &[Series]) {
        let wet_s = 60.0 * self.plan.timing.wet_before_zero_min;
        let first = all.iter().map(|series| series.zero.at_s).fold(f64::INFINITY, f64::min);
        let sealed_s = (first - wet_s + 30.0).max(60.0).min(first - 5.0);
        let cleared_s = 60.0 * self.schedule.clearing_min();
        let mut steps: Vec<Step> = Vec::new();
        let mut add = |chance: &mut Chance, at_s: f64, bag: Option<BagCode>, does: Does| {
            let at_s = at_s.max(0.0).round() as u32;
            steps.push(Step { at_s, bag, does, random: chance.bits() });
        };
        let chance = &mut self.chance;
        if self.group > 0 {
            let guess =
                all.iter().map(|series| (series.code, chance.between(1.0, 25.0).round()));
            let guess = Does::Guess(guess.collect());
            add(chance, sealed_s - 45.0, None, guess);
        }
        for (place, series) in (0..).zip(all) {
            let own = Some(series.code);
            let place = f64::from(place);
            add(chance, sealed_s + place, own, Does::Sealed);
            add(chance, series.zero.at_s, own, Does::Zero(series.zero.mm));
            for (planned, written) in &series.readings {
                add(chance, written.at_s, own, Does::Reading(*planned, written.mm));
            }
            if let Some(at_s) = series.leak_s {
                add(chance, at_s, own, Does::Odd(Odd::Leak));
            }
            let open_s = cleared_s + 40.0 + 12.0 * place + chance.between(0.0, 10.0);
            let last_s = series.readings.values().map(|written| written.at_s + 5.0);
            add(chance, last_s.fold(open_s, f64::max), own, Does::Vented);
        }
        steps.sort_by_key(|step| step.at_s);
        self.script.devices.push(Device { group: self.group, steps });
    }
}

/// A height of two unlike digits with the digits swapped.
fn transposed(mm: f64) -> Option<f64> {
    let (tens, ones) = ((mm / 10.0).floor(), mm % 10.0);
    let fits = (1.0..10.0).contains(&tens) && ones >= 1.0 && (tens - ones).abs() >= 0.5;
    fits.then_some(10.0 * ones + tens)
}

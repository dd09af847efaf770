//! Classes that were never there: how their bags really rise, and how they are read.

use crate::law::Law;
use crate::mishap::{Mishap, Spoiled};
use crate::school::{LAST, Made};
use barm_domain::code::BagCode;
use barm_domain::slip::Expected;
use barm_science::statistics::chance::Chance;

/// Minutes between readings.
pub(crate) const INTERVAL: u32 = 4;

/// A number that lies between -1.645 and 1.645, the central 90 % of a normal one: every other time
/// at the edge of it.
pub(crate) fn edge(chance: &mut Chance) -> f64 {
    let sign = if chance.uniform() < 0.5 { -1.0 } else { 1.0 };
    if chance.uniform() < 0.5 {
        sign * 1.645 * (0.8 + 0.2 * chance.uniform())
    } else {
        sign * 1.645 * chance.uniform()
    }
}

/// What all bags of a class have in common.
#[derive(Debug, Clone)]
pub(crate) struct Day {
    laws: Vec<Law>,
    /// By treatment: how soon the yeast wakes by its law, so that on a day like any other a bag is
    /// as high as its forecast at the last minute and at a third of it.
    waking: Vec<f64>,
    /// Factor on every rise.
    activity: f64,
    /// Factor on waking.
    wake: f64,
    /// By treatment: factor on the rise, minutes of delay, factor on the half time.
    own: Vec<(f64, f64, f64)>,
    /// How far the water is from the plan's (K).
    water_off: f64,
}

/// How wide a class is drawn: standard deviations of the logarithm of its activity and of waking.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Width {
    pub(crate) activity: f64,
    pub(crate) wake: f64,
}

/// With a pilot of the same lots.
pub(crate) const PILOT: Width = Width { activity: 0.22, wake: 0.2 };

/// Without one, as the bag model's own table has it: `vigor` and `wake` of the prior.
pub(crate) const UNKNOWN: Width = Width { activity: 0.405, wake: 0.35 };

/// What is wrong with a class.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Failure {
    /// Nothing.
    None,
    /// Yeast of less than a quarter of its activity.
    Yeast,
    /// The same, between a quarter and a half.
    HalfYeast,
    /// Water 12 °C warmer or colder than planned.
    Water,
    /// 6 °C.
    HalfWater,
}

impl Day {
    pub(crate) fn of(
        made: &[Made],
        width: Width,
        failure: Failure,
        chance: &mut Chance,
    ) -> Self {
        let law = Law::any(chance);
        // Now and then a treatment goes by another law.
        let laws: Vec<Law> = made
            .iter()
            .map(|_| if chance.uniform() < 0.2 { Law::any(chance) } else { law })
            .collect();
        let waking = laws.iter().zip(made).map(|(law, made)| {
            let third = f64::from(LAST / 3);
            let at = |minute: f64| made.band[minute as usize].median_mm;
            let last = f64::from(LAST);
            law.waking(at(third) / at(last), third, half_time(&made.band), last)
        });
        let waking = waking.collect();
        let weak = match failure {
            Failure::Yeast => 0.25 * chance.uniform(),
            Failure::HalfYeast => 0.25 + 0.25 * chance.uniform(),
            _ => 1.0,
        };
        let colder = if chance.uniform() < 0.5 { -1.0 } else { 1.0 };
        let water_off = match failure {
            Failure::Water => 12.0 * colder,
            Failure::HalfWater => 6.0 * colder,
            _ => 0.0,
        };
        let own = made.iter().map(|_| {
            let factor = (0.1 * edge(chance)).exp();
            (factor, 0.4 * edge(chance), (0.08 * edge(chance)).exp())
        });
        Self {
            laws,
            waking,
            own: own.collect(),
            activity: weak * (width.activity * edge(chance)).exp(),
            wake: (width.wake * edge(chance)).exp(),
            water_off,
        }
    }

    /// Minutes of the yeast's own clock in minutes of the room's, and what of it is alive.
    fn yeast(&self, minute: f64) -> (f64, f64) {
        if self.water_off.abs() < 0.1 {
            return (minute, 1.0);
        }
        // Wetted 3 min before the zero reading; the difference to a right bag goes with the
        // warmth, in about 25 min; twice the pace for 10 °C; from 44 °C on it slows down, and
        // dies in 6 min at 52 °C, ten times as fast for each 6 °C more (rules of thumb, from memory).
        let (mut own, mut dose, step) = (0.0, 0.0, 0.1);
        let mut at = -3.0;
        while at < minute {
            let off = self.water_off * (-(at + 3.0) / 25.0_f64).exp();
            let celsius = 21.0 + 19.0 * (-(at + 3.0) / 25.0_f64).exp() + off;
            let heat = ((celsius - 44.0) / 5.0).clamp(0.0, 1.0);
            let pace = if self.water_off < 0.0 { 2.1_f64.powf(off / 10.0) } else { 1.0 - heat };
            dose += step / (6.0 * 10.0_f64.powf((52.0 - celsius) / 6.0));
            own += step * pace;
            at += step;
        }
        (own - 3.0, 10.0_f64.powf(-dose))
    }

    /// Rise of a sound bag of a treatment (mm).
    pub(crate) fn rise(
        &self,
        treatment: usize,
        made: &Made,
        minute: f64,
        bag: (f64, f64),
    ) -> f64 {
        let last = f64::from(LAST);
        let at_last = made.band[LAST as usize].median_mm;
        let half = half_time(&made.band);
        let (factor, delay, half_factor) = self.own[treatment];
        let (clock, alive) = self.yeast(minute);
        let clock = clock - delay - bag.1;
        let law = self.laws[treatment];
        let wake = (self.waking[treatment], self.wake);
        let shift = |minute: f64| law.rise(minute, half * half_factor, last, wake);
        // A late bag has risen by nothing at its zero reading, an early one a little.
        let rise = shift(clock) - shift(-delay - bag.1);
        at_last * self.activity * alive * factor * bag.0 * rise.max(0.0)
    }
}

/// Minute at which a forecast is half as high as at its last.
fn half_time(band: &[Expected]) -> f64 {
    let last = band.last().map_or(1.0, |at| at.median_mm);
    let reached = band.iter().find(|at| at.median_mm >= 0.5 * last);
    reached.map_or(12.0, |at| at.minute.max(4.0))
}

/// One bag: what was written of it, and what is wrong with it.
#[derive(Debug, Clone)]
pub(crate) struct Read {
    pub(crate) code: BagCode,
    /// Place of its treatment.
    pub(crate) treatment: usize,
    /// Planned minute, true minute and written height; the zero reading first.
    pub(crate) heights: Vec<(u32, f64, f64)>,
    /// True rise at each of those (mm), without slips.
    pub(crate) sound_mm: Vec<f64>,
    /// What went wrong.
    pub(crate) spoiled: Option<Spoiled>,
    /// Its group.
    pub(crate) group: Group,
}

/// How heaped a bag's spoon was, beside its group's, and how late it woke (min): each times a
/// number that lies between -1.645 and 1.645.
pub(crate) const OWN_LOG: f64 = 0.1;
pub(crate) const OWN_DELAY_MIN: f64 = 0.3;

/// Height of a zero reading (mm), and how it differs.
const ZERO_MM: (f64, f64) = (5.0, 1.8);

/// What the eye adds to each reading (standard deviation, mm).
const EYE_MM: f64 = 0.4;

/// What the bags of a group have in common.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Group {
    habit: Habit,
    /// How it looks at the ruler (mm).
    slant: f64,
    /// How heaped its spoon is.
    pub(crate) spoon: f64,
}

impl Group {
    fn any(chance: &mut Chance) -> Self {
        let habit = Habit::any(chance);
        let slant = 0.4 * chance.normal();
        Self { habit, slant, spoon: (0.06 * edge(chance)).exp() }
    }

    /// ln likelihood of the heights of a sound bag with these rises, whatever its zero; rounding
    /// is taken for a normal error of its size.
    pub(crate) fn log_likelihood(self, written: &[f64], rises: &[f64]) -> f64 {
        let step = self.habit.step_mm();
        let each = EYE_MM * EYE_MM + step * step / 12.0;
        let down = if matches!(self.habit, Habit::Down) { 0.5 } else { 0.0 };
        let off = |(mm, rise): (&f64, &f64)| mm - rise + down - self.slant - ZERO_MM.0;
        let (mut sum, mut square) = (0.0, 0.0);
        for one in written.iter().zip(rises).map(off) {
            sum += one;
            square += one * one;
        }
        // All have the zero in common.
        let shared = ZERO_MM.1 * ZERO_MM.1;
        -0.5 * (square - sum * sum * shared / (each + written.len() as f64 * shared)) / each
    }
}

/// How a group reads its ruler.
#[derive(Debug, Clone, Copy)]
enum Habit {
    Nearest,
    Down,
    Halves,
    Even,
}

impl Habit {
    fn any(chance: &mut Chance) -> Self {
        match chance.uniform() {
            share if share < 0.65 => Self::Nearest,
            share if share < 0.8 => Self::Down,
            share if share < 0.9 => Self::Halves,
            _ => Self::Even,
        }
    }

    fn step_mm(self) -> f64 {
        match self {
            Self::Nearest | Self::Down => 1.0,
            Self::Halves => 0.5,
            Self::Even => 2.0,
        }
    }

    fn read(self, mm: f64) -> f64 {
        match self {
            Self::Nearest => mm.round(),
            Self::Down => mm.floor(),
            Self::Halves => (2.0 * mm).round() / 2.0,
            Self::Even => 2.0 * (mm / 2.0).round(),
        }
    }
}

/// Number of groups and of the bags of each; the teacher makes two controls more.
const GROUPS: u8 = 8;
const EACH: usize = 3;

/// A class with mishaps, `chances` telling how often each comes.
pub(crate) fn class(
    made: &[Made],
    day: &Day,
    chances: &dyn Fn(Mishap) -> f64,
    chance: &mut Chance,
) -> Vec<Read> {
    let mut bags: Vec<Read> = Vec::new();
    for group in 0..=GROUPS {
        let count = if group == 0 { 2 } else { EACH };
        let codes: Vec<BagCode> = BagCode::all_of(1, group).take(count).collect();
        let own_group = Group::any(chance);
        let mut treatments: Vec<usize> = (0..count)
            .map(|nth| if group == 0 { 4 } else { (usize::from(group) + 2 * nth) % 4 })
            .collect();
        let swapped = treatments.len() > 1
            && treatments[0] != treatments[1]
            && group > 0
            && chance.uniform() < chances(Mishap::Swapped);
        let labels = treatments.clone();
        if swapped {
            treatments.swap(0, 1);
        }
        for (nth, code) in codes.into_iter().enumerate() {
            let truth = treatments[nth];
            let factor = own_group.spoon * (OWN_LOG * edge(chance)).exp();
            let own = (factor, OWN_DELAY_MIN * edge(chance));
            let rise = |minute: f64| day.rise(truth, &made[truth], minute, own);
            let zero = (ZERO_MM.0 + ZERO_MM.1 * chance.normal()).max(1.0);
            let reader = Reader { group: own_group, zero };
            let mut read = reader.series(code, labels[nth], &rise, made, chances, chance);
            if swapped && nth < 2 {
                read.spoiled =
                    Some(Spoiled { mishap: Mishap::Swapped, at: 0, ..Spoiled::default() });
            }
            bags.push(read);
        }
    }
    copy(&mut bags, chances, chance);
    bags
}

struct Reader {
    group: Group,
    zero: f64,
}

impl Reader {
    fn series(
        &self,
        code: BagCode,
        treatment: usize,
        rise: &dyn Fn(f64) -> f64,
        made: &[Made],
        chances: &dyn Fn(Mishap) -> f64,
        chance: &mut Chance,
    ) -> Read {
        let mut minutes = vec![(0, 0.0)];
        for planned in (INTERVAL..=LAST).step_by(INTERVAL as usize) {
            if chance.uniform() < 0.04 {
                continue;
            }
            let late = if chance.uniform() < 0.08 { 1.0 + 1.5 * chance.uniform() } else { 0.0 };
            minutes.push((planned, f64::from(planned) + 0.05 + 0.3 * chance.uniform() + late));
        }
        let sound_mm: Vec<f64> = minutes.iter().map(|(_, minute)| rise(*minute)).collect();
        let of_bag = Spoiled::of_bag(&made[treatment], &minutes, &sound_mm, chances, chance);
        let mut spoiled = of_bag;
        let mut heights = Vec::new();
        for (at, (planned, minute)) in minutes.iter().enumerate() {
            let rises = match &spoiled {
                Some(one) => one.rise(at, *minute, rise, &minutes),
                None => sound_mm[at],
            };
            let true_mm = (self.zero + rises).max(1.0);
            let mm = self
                .group
                .habit
                .read(true_mm + self.group.slant + EYE_MM * chance.normal())
                .max(1.0);
            let fives = spoiled.as_ref().is_some_and(|one| one.mishap == Mishap::Fives);
            let mm = if fives { 5.0 * (true_mm / 5.0).round() } else { mm };
            heights.push((*planned, *minute, mm.min(crate::school::FULL_MM)));
        }
        if spoiled.is_none() {
            spoiled = Spoiled::of_readings(&mut heights, &sound_mm, chances, chance);
        } else if let Some(one) = &spoiled {
            one.write(&mut heights);
        }
        Read { code, treatment, heights, sound_mm, spoiled, group: self.group }
    }
}

/// Some bags get the heights of another group's bag, at the minutes at which both were read.
fn copy(bags: &mut [Read], chances: &dyn Fn(Mishap) -> f64, chance: &mut Chance) {
    for at in 0..bags.len() {
        let group = bags[at].code.group();
        if group < 2
            || bags[at].spoiled.is_some()
            || chance.uniform() >= chances(Mishap::Copied)
        {
            continue;
        }
        let others: Vec<usize> = (0..bags.len())
            .filter(|other| bags[*other].code.group() == group - 1)
            .filter(|other| bags[*other].spoiled.is_none())
            .collect();
        let Some(from) = others.get(chance.below(others.len())).copied() else { continue };
        let theirs = bags[from].heights.clone();
        let own = &mut bags[at];
        own.heights.retain_mut(|(planned, _, mm)| {
            let same = theirs.iter().find(|(other, _, _)| other == planned);
            same.map(|(_, _, other)| *mm = *other).is_some()
        });
        own.spoiled = Some(Spoiled { mishap: Mishap::Copied, at: 0, ..Spoiled::default() });
    }
}

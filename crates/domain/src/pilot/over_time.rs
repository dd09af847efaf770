//! How active a lot was on each day on which it was tried or used, and whether it ages.
//!
//! What is kept of a lot goes on from what was known before, so that two days of one lot are not two measurements. Here
//! each day is told by itself: what was known before is taken out of what is known since.

use super::known::Known;
use super::lots::{EnzymeLot, Lot, Lots, YeastLot};
use super::numbers::of;
use crate::plan::YeastKind;
use barm_science::enzyme::products::product;
use barm_science::prior::{Key, Learned, Of, Whose, standard};
use jiff::civil::Date;
use std::collections::BTreeSet;

/// What a lot is a lot of.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum LotOf {
    /// A yeast.
    Yeast(YeastKind),
    /// An enzyme, by the key of its product.
    Enzyme(String),
}

/// From which readings something is known of a lot.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum By {
    /// A pilot's.
    Pilot,
    /// A class's.
    Class,
}

/// What one day says of a lot, all by itself.
#[derive(Debug, Clone, PartialEq)]
pub struct LotDay {
    /// What it is a lot of.
    pub of: LotOf,
    /// What it is called.
    pub name: String,
    /// The day.
    pub date: Date,
    /// Whose readings it rests on.
    pub by: By,
    /// Natural logarithm of its activity over the usual one.
    pub log: f64,
    /// Standard deviation of that.
    pub log_sd: f64,
}

/// A lot over the days on which it was used.
#[derive(Debug, Clone, PartialEq)]
pub struct LotOverTime {
    /// Its days, in order; at least one. All are of one lot.
    pub days: Vec<LotDay>,
    /// Whether it ages.
    pub ageing: Ageing,
}

/// Whether a lot's activity changes with time.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Ageing {
    /// All is from one date, so that nothing can be said.
    OneDate,
    /// Its days do not differ by more than they leave open; what is left of it on its last day, over its first.
    NotTold(Left),
    /// It lost activity.
    Lost(Left),
    /// It gained activity, which a lot that only lies does not.
    Gained(Left),
}

/// Activity on the last day over that on the first (1).
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Left {
    /// The best guess.
    pub best: f64,
    /// The low end of its 95 % interval.
    pub low: f64,
    /// The high end.
    pub high: f64,
}

/// Standard deviations to either side of 95 % of a normal distribution.
const TO_95: f64 = 1.959_964;
/// A day that left more than this of the width of a number said nothing of it (1, as for what is kept in a file).
const SAID_NOTHING: f64 = 0.98;

impl LotDay {
    /// Its activity over the usual one: best guess, and the ends of the middle 95 % (1).
    pub fn times_usual(&self) -> [f64; 3] {
        [0.0, -TO_95, TO_95].map(|sds| libm::exp(self.log + sds * self.log_sd))
    }

    fn is_of(&self, other: &Self) -> bool {
        self.of == other.of && self.name == other.name
    }
}

/// What a measurement said by itself of a number (mean and standard deviation), from what was known before it and
/// since; nothing where it said nothing.
///
/// ```text
/// 1/s² = 1/s₁² − 1/s₀²        m / s² = m₁/s₁² − m₀/s₀²        0 before, 1 since
/// ```
///
/// # Accuracy
/// Exact for a normal distribution of one number. Where a day taught other numbers that hang together with this one,
/// what came through them is counted as the day's own.
/// # Source
/// Bayes' theorem for a normal mean with known variance: A. Gelman et al., *Bayesian Data Analysis*, 3rd ed. (2013),
/// section 2.5, solved for the data; section from memory.
fn by_itself((m0, s0): (f64, f64), (m1, s1): (f64, f64)) -> Option<(f64, f64)> {
    let sound = s0 > 0.0 && s1 > 0.0 && s1 < SAID_NOTHING * s0;
    let information = 1.0 / (s1 * s1) - 1.0 / (s0 * s0);
    let mean = (m1 / (s1 * s1) - m0 / (s0 * s0)) / information;
    (sound && mean.is_finite()).then(|| (mean, 1.0 / information.sqrt()))
}

/// Name of the number that says how active a lot is, and what its one standard deviation is as a natural logarithm.
fn number(of: &LotOf) -> Option<(String, f64)> {
    match of {
        LotOf::Yeast(kind) => {
            let rows = standard();
            let own = |whose: Whose| matches!(whose, Whose::Yeast(one) if one == *kind);
            let row = rows.iter().find(|row| row.name == "vigor" && own(row.whose))?;
            Some((Key::new(row.name, Of::Yeast(*kind)).to_string(), row.spread.day))
        }
        LotOf::Enzyme(key) => {
            let one = product(key)?;
            Some((Key::activity(one.kind).to_string(), one.activity_sd()))
        }
    }
}

fn day(
    of_lot: LotOf,
    name: &str,
    date: Date,
    by: By,
    known: (&Learned, &Learned),
) -> Option<LotDay> {
    let (key, width) = number(&of_lot)?;
    let (mean, sd) = by_itself(of(known.0, &key), of(known.1, &key))?;
    let (log, log_sd) = (width * mean, width * sd);
    Some(LotDay { of: of_lot, name: name.to_owned(), date, by, log, log_sd })
}

/// What each pilot said by itself of each jar of yeast and bottle of enzyme.
pub fn pilot_days(lots: &Lots) -> Vec<LotDay> {
    let nothing = Learned::default();
    let yeast = |lot: &Lot<YeastLot>| (LotOf::Yeast(lot.found.kind), lot.found.numbers.clone());
    let enzyme = |lot: &Lot<EnzymeLot>| {
        (LotOf::Enzyme(lot.found.product.clone()), lot.found.numbers.clone())
    };
    let yeasts = lots.yeast.iter().map(|lot| (lot.name.as_str(), lot.date, yeast(lot)));
    let enzymes = lots.enzymes.iter().map(|lot| (lot.name.as_str(), lot.date, enzyme(lot)));
    let mut all: Vec<(&str, Date, (LotOf, Learned))> = yeasts.chain(enzymes).collect();
    all.sort_by_key(|(_, date, _)| *date);
    let said = |(at, (name, date, (of, numbers))): (usize, &(&str, Date, (LotOf, Learned)))| {
        // A pilot goes on from the last day of the same lot.
        let before = all[..at]
            .iter()
            .rev()
            .find(|(own, day, (other, _))| own == name && day < date && other == of);
        let before = before.map_or(&nothing, |(_, _, (_, numbers))| numbers);
        day(of.clone(), name, *date, By::Pilot, (before, numbers))
    };
    all.iter().enumerate().filter_map(said).collect()
}

/// What the readings of a class said by themselves of the lots in use; `learned` is what is known since, as
/// [`DayTaught::learned`](crate::result::taught::DayTaught) has it. Lots that nobody tried have no name, and are left out.
pub fn class_days(known: &Known, learned: &Learned, date: Date) -> Vec<LotDay> {
    let before = known.numbers();
    let of = |lot: LotOf, name: &str| day(lot, name, date, By::Class, (&before, learned));
    let mut days: Vec<LotDay> = Vec::new();
    let yeasts =
        known.jars().iter().filter_map(|lot| of(LotOf::Yeast(lot.found.kind), &lot.name));
    let bottles = known.bottles().iter();
    let bottles =
        bottles.filter_map(|lot| of(LotOf::Enzyme(lot.found.product.clone()), &lot.name));
    for one in yeasts.chain(bottles) {
        // A lot in use may have been tried on several days.
        if !days.iter().any(|other| other.is_of(&one)) {
            days.push(one);
        }
    }
    days
}

/// Lots over their days, each with whether it ages; those with more days first, then by name.
pub fn over_time(days: impl IntoIterator<Item = LotDay>) -> Vec<LotOverTime> {
    let mut lots: Vec<Vec<LotDay>> = Vec::new();
    for day in days {
        match lots.iter_mut().find(|lot| lot[0].is_of(&day)) {
            // One pilot that was typed in for two plans is one.
            Some(lot) if day.by == By::Pilot && lot.contains(&day) => {}
            Some(lot) => lot.push(day),
            None => lots.push(vec![day]),
        }
    }
    let told = |mut days: Vec<LotDay>| {
        days.sort_by_key(|day| day.date);
        LotOverTime { ageing: ageing(&days), days }
    };
    let mut all: Vec<LotOverTime> = lots.into_iter().map(told).collect();
    all.sort_by(|a, b| {
        let dates = |lot: &LotOverTime| {
            lot.days.iter().map(|day| day.date).collect::<BTreeSet<_>>().len()
        };
        dates(b).cmp(&dates(a)).then_with(|| a.days[0].name.cmp(&b.days[0].name))
    });
    all
}

/// Whether activity falls with time: a straight line of its logarithm over days, each day weighed by what it leaves
/// open. Where days scatter about the line more widely than they should, the interval is as much wider.
///
/// ```text
/// b = Σ w (t − t̄)(y − ȳ) / Σ w (t − t̄)²      u(b)² = 1 / Σ w (t − t̄)²      w = 1/s²
/// ```
///
/// It is told where 95 % of what the line leaves open lies on one side of no change: of lots that do not change about
/// 1 in 40 is told to have lost.
///
/// # Source
/// Weighted least squares with known variances, and the Birge ratio: R. T. Birge (1932), *Phys. Rev.* 40, 207-227; from
/// memory.
fn ageing(days: &[LotDay]) -> Ageing {
    let first = days.iter().map(|day| day.date).min().unwrap_or_default();
    let since =
        |day: &LotDay| f64::from(day.date.duration_since(first).as_hours() as i32) / 24.0;
    let points: Vec<(f64, f64, f64)> =
        days.iter().map(|day| (since(day), day.log, 1.0 / (day.log_sd * day.log_sd))).collect();
    let span = points.iter().map(|(t, ..)| *t).fold(0.0, f64::max);
    if span <= 0.0 {
        return Ageing::OneDate;
    }
    let weight: f64 = points.iter().map(|(.., w)| w).sum();
    let mean = |of: fn(&(f64, f64, f64)) -> f64| {
        points.iter().map(|one| one.2 * of(one)).sum::<f64>() / weight
    };
    let (t_mean, y_mean) = (mean(|one| one.0), mean(|one| one.1));
    let spread: f64 = points.iter().map(|(t, _, w)| w * (t - t_mean) * (t - t_mean)).sum();
    let along: f64 =
        points.iter().map(|(t, y, w)| w * (t - t_mean) * (y - y_mean)).sum::<f64>() / spread;
    let off = |&(t, y, w): &(f64, f64, f64)| {
        let residual = y - y_mean - along * (t - t_mean);
        w * residual * residual
    };
    let chi2: f64 = points.iter().map(off).sum();
    let free = points.len().saturating_sub(2) as f64;
    let birge = if free > 0.0 { (chi2 / free).sqrt().max(1.0) } else { 1.0 };
    let doubt = TO_95 * birge / spread.sqrt();
    let left = |slope: f64| libm::exp(slope * span);
    let told = Left { best: left(along), low: left(along - doubt), high: left(along + doubt) };
    match told {
        Left { high, .. } if high < 1.0 => Ageing::Lost(told),
        Left { low, .. } if low > 1.0 => Ageing::Gained(told),
        _ => Ageing::NotTold(told),
    }
}

//! Bags against bags on one meter.

use super::reading::Corrected;
use super::{Ratio, Z95};
use crate::fact::Fact;
use crate::statistics::distribution::student;

/// Degrees of freedom of what is known beforehand of the scatter between bags (1).
const SCATTER_KNOWN: Fact = Fact::derived(
    "meter.scatter_known",
    10.0,
    "1",
    "judgement: standard deviations known to about a quarter; JCGM 100:2008 (GUM), table E.1, from memory",
);

/// Facts of this file.
pub const COMPARE_FACTS: &[Fact] = &[SCATTER_KNOWN];

/// What some bags' liquids hold against what others hold.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Outcome {
    /// Ethanol shows in all of them.
    Ratio(Corrections),
    /// It shows in the first and in none of the others.
    OnlyTheFirst,
    /// It shows in the others and in none of the first.
    OnlyTheOthers,
    /// It shows in some of either and not in all: no ratio of means can be given.
    Partly,
    /// It shows in none.
    None,
    /// Readings of the first stood at the end of the range: they hold at least so many times as much (1).
    AtLeast(f64),
    /// Readings of the others stood there: the first hold at most so many times as much (1).
    AtMost(f64),
    /// Readings of both stood there.
    BothAtTheEnd,
}

/// A ratio with what the corrections did to it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Corrections {
    /// Ethanol in the first over ethanol in the others (1).
    pub ratio: Ratio,
    /// The same of what the display showed (1): without any correction.
    pub shown: f64,
}

impl Corrections {
    /// Whether the corrections turn round which bags are ahead: the display said more and the liquid holds
    /// less, or the other way.
    pub fn turned(&self) -> bool {
        (self.shown - 1.0) * (self.ratio.ratio - 1.0) < 0.0
    }

    /// Whether either may hold more: the interval holds 1.
    pub fn open(&self) -> bool {
        self.ratio.low <= 1.0 && 1.0 <= self.ratio.high
    }

    /// Whether the order that the display gave is not to be repeated to anybody: it is turned round, or may
    /// be.
    pub fn order_is_in_doubt(&self) -> bool {
        self.turned() || self.open()
    }
}

/// Compares bags read on one meter: its gain drops out. `thermal_sd` is what the doubt about the
/// temperatures leaves open of the ratio (1): of their difference, for a thermometer that is off is off for
/// both. `None` if that is not known; then each set's own doubt counts in full.
///
/// ```text
/// ln ratio = mean ln C₁ − mean ln C₂
/// u²       = s² (1/n₁ + 1/n₂) + (z mean₁(1/R) − z mean₂(1/R))² + thermal²
/// s²       = (ν s²_bags + 10 s²_known)/(ν + 10)          ν = n₁ + n₂ − 2
/// ```
///
/// s_bags the scatter of ln C between bags alike, s_known what one push, dilution and equilibrium leave
/// open; z the doubt about the zero. 95 % by Student's t at the degrees of freedom of Welch and
/// Satterthwaite.
///
/// # Source
/// JCGM 100:2008 (GUM), 5.1.2, G.4; clauses from memory. The pooled variance is that of a scaled inverse
/// chi-square prior with 10 degrees of freedom.
pub fn compare_sets(
    first: &[Corrected],
    others: &[Corrected],
    thermal_sd: Option<f64>,
) -> Outcome {
    let at_end = |set: &[Corrected]| set.iter().any(|one| one.at_least);
    let shows = |set: &[Corrected]| set.iter().filter(|one| one.shows()).count();
    match (shows(first), shows(others)) {
        (0, 0) => return Outcome::None,
        (n, 0) if n == first.len() => return Outcome::OnlyTheFirst,
        (0, n) if n == others.len() => return Outcome::OnlyTheOthers,
        (n, m) if n < first.len() || m < others.len() => return Outcome::Partly,
        _ => {}
    }
    let thermal = thermal_sd.unwrap_or_else(|| {
        let mean = |set: &[Corrected]| mean_of(set, |one| one.thermal_sd);
        libm::hypot(mean(first), mean(others))
    });
    let found = ratio(first, others, thermal);
    match (at_end(first), at_end(others)) {
        (false, false) => Outcome::Ratio(found),
        (true, false) => Outcome::AtLeast(found.ratio.low),
        (false, true) => Outcome::AtMost(found.ratio.high),
        (true, true) => Outcome::BothAtTheEnd,
    }
}

fn mean_of(set: &[Corrected], value: impl Fn(&Corrected) -> f64) -> f64 {
    set.iter().map(value).sum::<f64>() / set.len() as f64
}

fn ratio(first: &[Corrected], others: &[Corrected], thermal: f64) -> Corrections {
    let log_mean = |set: &[Corrected]| mean_of(set, |one| libm::log(one.g_per_l));
    let squares = |set: &[Corrected]| -> f64 {
        let mean = log_mean(set);
        set.iter().map(|one| square(libm::log(one.g_per_l) - mean)).sum()
    };
    let bags = (first.len() + others.len()) as f64;
    let known = first.iter().chain(others).map(|one| square(one.own_sd)).sum::<f64>() / bags;
    let freedom = bags - 2.0 + SCATTER_KNOWN.value;
    let scatter = (squares(first) + squares(others) + SCATTER_KNOWN.value * known) / freedom;
    let between = scatter * (1.0 / first.len() as f64 + 1.0 / others.len() as f64);
    let zero = mean_of(first, |one| one.zero_sd) - mean_of(others, |one| one.zero_sd);
    let whole = between + square(zero) + square(thermal);
    let effective = freedom * square(whole / between);
    let t = if effective < 1e6 { student::upper_quantile(0.025, effective) } else { Z95 };
    let log_ratio = log_mean(first) - log_mean(others);
    let far = t * libm::sqrt(whole);
    let shown = |set: &[Corrected]| mean_of(set, |one| one.shown);
    Corrections {
        ratio: Ratio {
            ratio: libm::exp(log_ratio),
            low: libm::exp(log_ratio - far),
            high: libm::exp(log_ratio + far),
        },
        shown: shown(first) / shown(others),
    }
}

fn square(value: f64) -> f64 {
    value * value
}

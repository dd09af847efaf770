//! Bags that do not belong with the others: one that leaks, or another than it is said to be.
//!
//! Most bags scatter as the model says; one in twenty loses gas, and one in twenty scatters ten times as
//! much:
//!
//! ```text
//! r ~ 0.9 N(0, s² V) + 0.05 N(l d, s² V) + 0.05 N(0, λ s² V),    l ~ |N(0, s² τ²)|
//! w = 1 − p + p/λ         τ = 0.05 /min, λ = 100
//! odds of a leak beside none: 2 Φ(t) exp(t²/2)/√(1 + τ² dᵀV⁻¹d),   t = τ dᵀV⁻¹r/(s √(1 + τ² dᵀV⁻¹d))
//! ```
//!
//! r the n readings of a bag less what is expected of them, d = −(rise · minute) what a leak does to them
//! at first, s the noise ratio, p the chance that the bag is not one of the many, w its weight. A bag
//! that scatters as it should keeps nearly its whole weight, so hardly anything is lost on a day
//! without leaks.
//!
//! # Source
//! Reweighting: K. L. Lange, R. J. A. Little, J. M. G. Taylor (1989), *J. Am. Stat. Assoc.* 84,
//! 881-896; mixtures in place of their t: R. J. A. Little (1988), *Appl. Stat.* 37, 23-38, after
//! J. W. Tukey (1960). From memory; shares, τ and λ are judgement (one bag in ten).

use crate::statistics::distribution::normal;

/// Share of bags that leak, and of those that are otherwise unlike (1).
const SHARES: [f64; 2] = [0.05, 0.05];
/// Usual size of a leak (share of the rise a minute).
const LEAK_PER_MIN: f64 = 0.05;
/// By which the variance of bags that are otherwise unlike is larger (1).
const LARGER: f64 = 100.0;

/// How far a bag's readings lie off, in V of that bag alone.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct Distance {
    /// How many they are.
    pub(super) readings: usize,
    /// rᵀ V⁻¹ r.
    pub(super) square: f64,
    /// dᵀ V⁻¹ r (min).
    pub(super) along: f64,
    /// dᵀ V⁻¹ d (min²).
    pub(super) leak: f64,
}

impl Distance {
    /// Chance that the bag does not belong, where all scatter `noise` times as much as expected.
    fn unlike(&self, noise: f64) -> f64 {
        if self.readings == 0 {
            return 0.0;
        }
        let (square, along) = (self.square / (noise * noise), self.along / noise);
        let most = 1.0 - SHARES[0] - SHARES[1];
        // The odds of either beside the many.
        let seen = LEAK_PER_MIN * LEAK_PER_MIN * self.leak;
        let far = LEAK_PER_MIN * along / (1.0 + seen).sqrt();
        let leak = SHARES[0] * one_sided(far) / (1.0 + seen).sqrt();
        let gain = 0.5 * square * (1.0 - 1.0 / LARGER);
        let wide = 0.5 * self.readings as f64 * libm::log(LARGER);
        let odds = (leak + SHARES[1] * libm::exp(gain - wide)) / most;
        if odds.is_finite() { odds / (1.0 + odds) } else { 1.0 }
    }
}

/// 2 Φ(t) exp(t²/2), nowhere out of range: falls to √(2/π)/|t| where t is far below 0 (Mills).
fn one_sided(t: f64) -> f64 {
    if t < -20.0 {
        return (2.0 / core::f64::consts::PI).sqrt() / -t;
    }
    2.0 * normal::cdf(t) * libm::exp(0.5 * t * t)
}

/// How far a day's readings are trusted.
#[derive(Debug, Clone)]
pub(super) struct Trust {
    /// By which all scatter more than expected (1).
    pub(super) noise: f64,
    /// Whether that was set beforehand, for all bags alike.
    pub(super) fixed: bool,
    /// Chance that a bag does not belong, bag by bag.
    pub(super) unlike: Vec<f64>,
}

impl Trust {
    /// Before anything is known.
    pub(super) fn full(bags: usize) -> Self {
        Self { noise: 1.0, fixed: false, unlike: vec![0.0; bags] }
    }

    /// For readings that fit no day: all scatter so many times as much as expected.
    pub(super) fn fixed(bags: usize, noise: f64) -> Self {
        Self { noise, fixed: true, unlike: vec![0.0; bags] }
    }

    /// Weight of each bag.
    pub(super) fn weights(&self) -> Vec<f64> {
        self.unlike.iter().map(|chance| 1.0 - chance + chance / LARGER).collect()
    }

    /// Trust in bags at such distances, where all scatter `noise` times as much as expected.
    pub(super) fn of(noise: f64, distances: &[Distance]) -> Self {
        Self {
            noise,
            fixed: false,
            unlike: distances.iter().map(|one| one.unlike(noise)).collect(),
        }
    }

    /// How likely such a sorting of the bags was beforehand, with how open it still is (its entropy):
    ///
    /// ```text
    /// Σ p ln(0.1/p) + (1 − p) ln(0.9/(1 − p))
    /// ```
    pub(super) fn log_chance(&self) -> f64 {
        let part = |p: f64, share: f64| if p > 0.0 { p * libm::log(share / p) } else { 0.0 };
        let share = SHARES[0] + SHARES[1];
        self.unlike.iter().map(|p| part(*p, share) + part(1.0 - p, 1.0 - share)).sum()
    }

    /// A share of the way to another.
    pub(super) fn toward(&self, other: &Self, share: f64) -> Self {
        let between = |from: f64, to: f64| from + share * (to - from);
        let chances = self.unlike.iter().zip(&other.unlike);
        Self {
            noise: between(self.noise, other.noise),
            fixed: other.fixed,
            unlike: chances.map(|(from, to)| between(*from, *to)).collect(),
        }
    }

    /// Added up by parts that are 1 together, as far as that can be.
    pub(super) fn together(all: &[&Self], parts: &[f64]) -> Self {
        let sum = |of: &dyn Fn(&Self) -> f64| -> f64 {
            all.iter().zip(parts).map(|(one, part)| part * of(one)).sum()
        };
        let bags = all.first().map_or(0, |one| one.unlike.len());
        Self {
            noise: libm::exp(sum(&|one| libm::log(one.noise))).max(1.0),
            fixed: all.iter().any(|one| one.fixed),
            unlike: (0..bags).map(|bag| sum(&|one| one.unlike[bag]).clamp(0.0, 1.0)).collect(),
        }
    }

    /// The way to another: chances, and the noise as a share.
    pub(super) fn way(&self, other: &Self) -> impl Iterator<Item = f64> {
        let noise = libm::log(other.noise / self.noise);
        self.unlike.iter().zip(&other.unlike).map(|(from, to)| to - from).chain([noise])
    }

    /// The largest difference of a chance, or of the noise as a share, from another.
    pub(super) fn apart(&self, other: &Self) -> f64 {
        let chances = self.unlike.iter().zip(&other.unlike).map(|(a, b)| (a - b).abs());
        chances.fold((self.noise / other.noise - 1.0).abs(), f64::max)
    }
}

/// The noise that half of the bags stay below, whatever the others do: the median of their squared
/// distances over those expected, at least 1. Nothing else can tell leaks from a model that is wrong
/// everywhere before either is known.
pub(super) fn usual_noise(distances: &[Distance]) -> f64 {
    let with = distances.iter().filter(|one| one.readings > 0);
    let mut each: Vec<f64> = with.map(|one| one.square / middle(one.readings as f64)).collect();
    each.sort_by(f64::total_cmp);
    let median = match each.len() {
        0 => 1.0,
        count => 0.5 * (each[(count - 1) / 2] + each[count / 2]),
    };
    median.sqrt().max(1.0)
}

/// Median of chi-square (E. B. Wilson, M. M. Hilferty (1931), *Proc. Natl. Acad. Sci.* 17, 684).
fn middle(freedom: f64) -> f64 {
    let root = 1.0 - 2.0 / (9.0 * freedom);
    freedom * root * root * root
}

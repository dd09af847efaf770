//! Differences between levels, with intervals that hold together.

use crate::statistics::anova::Rest;
use crate::statistics::blocked::{Blocked, Effects};
use crate::statistics::distribution::multivariate_t::LargestOfSeveral;
use crate::statistics::distribution::studentized_range::StudentizedRange;
use std::f64::consts::FRAC_1_SQRT_2;

/// Decides the points at which uneven designs are integrated; any number would do, but it must stay
/// the same for answers to stay the same.
const SEED: u64 = 1955;

/// Two levels compared.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Difference {
    /// The level.
    pub level: usize,
    /// What is taken off.
    pub from: usize,
    /// Difference of their means, adjusted for blocks (unit of the values).
    pub difference: f64,
    /// Standard error of the difference (unit of the values).
    pub se: f64,
    /// Low end of the 95 % interval that holds for all of its kind at once.
    pub low: f64,
    /// High end of that interval.
    pub high: f64,
    /// Chance (1) that any of its kind comes out as far from 0, in standard errors, if no two levels
    /// differ.
    pub p: f64,
}

/// Differences of one kind.
#[derive(Debug, Clone, PartialEq)]
pub struct Together {
    /// Each of them.
    pub differences: Vec<Difference>,
    /// Half width of their intervals over their standard errors (1).
    pub multiplier: f64,
}

/// Every other level less the control.
#[derive(Debug, Clone, PartialEq)]
pub struct Against {
    /// The control's level.
    pub control: usize,
    /// Each other level.
    pub together: Together,
    /// Bound on the error of the chances (1), with 99 % confidence.
    pub error: f64,
    /// Whether they come from quadrature rather than from seeded sampling.
    pub by_quadrature: bool,
}

/// A fitted table with its spread.
pub(super) struct Judged<'a> {
    pub(super) table: &'a Blocked,
    pub(super) effects: &'a Effects,
    pub(super) rest: Rest,
}

impl Judged<'_> {
    /// All pairs, by the studentized range (Tukey & Kramer): exact where all differences are equally
    /// sure, on the safe side otherwise (Hayter 1984, *Ann. Stat.* 12, 61–75, for plain means).
    pub(super) fn pairs(&self) -> Together {
        let levels = self.effects.adjusted.len();
        // There are at most `MOST_LEVELS`.
        let count = u16::try_from(levels).unwrap_or(u16::MAX);
        let range = StudentizedRange::new(count, self.rest.df as f64);
        let multiplier = FRAC_1_SQRT_2 * range.quantile(0.95);
        let pairs = (0..levels).flat_map(|from| (from + 1..levels).map(move |to| (to, from)));
        let told = |(level, from)| {
            self.difference(level, from, multiplier, |t| range.upper(t / FRAC_1_SQRT_2))
        };
        Together { differences: pairs.map(told).collect(), multiplier }
    }

    /// Every other level less the control (Dunnett), by the correlations that the design gives.
    pub(super) fn against(&self, control: usize) -> Against {
        let others: Vec<usize> =
            (0..self.effects.adjusted.len()).filter(|&level| level != control).collect();
        let g = &self.table.inverse;
        let covariance =
            |a: usize, b: usize| g[a][b] - g[a][control] - g[control][b] + g[control][control];
        let correlation: Vec<Vec<f64>> = others
            .iter()
            .map(|&a| {
                let own = |b: &usize| {
                    covariance(a, *b) / libm::sqrt(covariance(a, a) * covariance(*b, *b))
                };
                others.iter().map(own).collect()
            })
            .collect();
        let several = LargestOfSeveral::new(&correlation, self.rest.df as f64, SEED);
        let multiplier = several.bound(0.95);
        let mut error = 0.0_f64;
        let differences = others
            .iter()
            .map(|&level| {
                self.difference(level, control, multiplier, |t| {
                    let inside = several.within(t);
                    error = error.max(inside.error);
                    // None lies further out than a bound of 0 with chance 0.
                    1.0 - inside.chance
                })
            })
            .collect();
        Against {
            control,
            together: Together { differences, multiplier },
            error,
            by_quadrature: several.by_quadrature(),
        }
    }

    fn difference(
        &self,
        level: usize,
        from: usize,
        multiplier: f64,
        chance: impl FnOnce(f64) -> f64,
    ) -> Difference {
        let g = &self.table.inverse;
        let variance = g[level][level] + g[from][from] - g[level][from] - g[from][level];
        let se = libm::sqrt(self.rest.ms * variance);
        let difference = self.effects.adjusted[level] - self.effects.adjusted[from];
        let half = multiplier * se;
        let p = chance((difference / se).abs()).clamp(0.0, 1.0);
        Difference {
            level,
            from,
            difference,
            se,
            low: difference - half,
            high: difference + half,
            p,
        }
    }
}

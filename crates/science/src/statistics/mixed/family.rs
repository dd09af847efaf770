//! The comparisons of one question, held together.

use super::fit::Mixed;
use super::told::Told;
use crate::statistics::distribution::multivariate_t::LargestOfSeveral;
use crate::statistics::distribution::student;
use crate::statistics::distribution::studentized_range::StudentizedRange;
use std::f64::consts::SQRT_2;

/// How the comparisons of a question hold together.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Together {
    /// Student's t of a single comparison.
    Single,
    /// Multivariate t with the model's own correlations, by quadrature (Dunnett 1955).
    Quadrature,
    /// Multivariate t with the model's own correlations, sampled with a seed (Genz & Bretz 2009).
    Sampled,
    /// The studentized range over √2 for all pairs (Tukey–Kramer).
    StudentizedRange,
}

/// Comparisons that are to hold at once.
#[derive(Debug, Clone)]
pub(in crate::statistics) struct Family {
    way: Way,
    /// Shares of questions in which all intervals hold (1): those that are shown, and the wider ones
    /// beyond which a difference is called clear.
    hold: [f64; 2],
    /// Half widths of both in standard errors for some degrees of freedom, in rising order of the latter.
    factors: Vec<(f64, [f64; 2])>,
    /// Bound on the error of chances near the level (1).
    pub(in crate::statistics) error: f64,
}

#[derive(Debug, Clone)]
enum Way {
    Single,
    Several(Box<LargestOfSeveral>),
    Range(u16),
}

impl Family {
    /// For combinations of one model; `pairs_of` says that they are all pairs of so many
    /// treatments, in the order (1, 0), (2, 0), (2, 1), (3, 0) and so on. In a share of questions as the
    /// first of `levels` says one of the intervals does not hold (1); in one as the second says, a
    /// difference that is none is called clear.
    pub(in crate::statistics) fn new(
        model: &Mixed,
        told: &[&Told],
        pairs_of: Option<u16>,
        (levels, seed): ([f64; 2], u64),
    ) -> Self {
        let dfs = degrees(told);
        let middle = dfs[dfs.len() / 2];
        let way = match pairs_of {
            _ if told.len() < 2 => Way::Single,
            Some(treatments) if independent_means(told, treatments) => Way::Range(treatments),
            Some(treatments) => Way::Several(Box::new(LargestOfSeveral::of_pairs(
                &correlations(model, told),
                treatments,
                middle,
                seed,
            ))),
            None => Way::Several(Box::new(LargestOfSeveral::new(
                &correlations(model, told),
                middle,
                seed,
            ))),
        };
        let mut family = Self {
            way,
            hold: levels.map(|level| 1.0 - level),
            factors: Vec::new(),
            error: 0.0,
        };
        family.factors = dfs.iter().map(|&df| (df, family.bounds(df))).collect();
        if let Way::Several(several) = &family.way {
            let all = family.factors.iter().flat_map(|(df, both)| both.map(|c| (*df, c)));
            let errors = all.map(|(df, c)| several.with_df(df).within(c).error);
            family.error = errors.fold(0.0, f64::max);
        }
        family
    }

    pub(in crate::statistics) fn together(&self) -> Together {
        match &self.way {
            Way::Single => Together::Single,
            Way::Range(_) => Together::StudentizedRange,
            Way::Several(several) if several.by_quadrature() => Together::Quadrature,
            Way::Several(_) => Together::Sampled,
        }
    }

    /// Half widths of an interval with `df` degrees of freedom, and of that beyond which a difference is
    /// called clear, in standard errors (1).
    ///
    /// Comparisons whose standard errors have different degrees of freedom each take the width that
    /// the whole question would have with theirs. Between degrees of freedom that were worked out
    /// the width is interpolated along 1/df.
    pub(in crate::statistics) fn factors(&self, df: f64) -> [f64; 2] {
        let mut sum = [0.0; 2];
        for (i, (at, factor)) in self.factors.iter().enumerate() {
            let mut weight = 1.0;
            for (j, (other, _)) in self.factors.iter().enumerate() {
                if i != j {
                    weight *= (1.0 / df - 1.0 / other) / (1.0 / at - 1.0 / other);
                }
            }
            sum = [sum[0] + weight * factor[0], sum[1] + weight * factor[1]];
        }
        sum
    }

    /// Chance, where there is no difference at all, that any comparison lies as far from 0 as `t`
    /// standard errors with `df` degrees of freedom (1).
    pub(in crate::statistics) fn beyond(&self, t: f64, df: f64) -> f64 {
        let t = t.abs();
        let together = match &self.way {
            Way::Single => student::two_sided(t, df),
            Way::Several(several) => 1.0 - several.with_df(df).within(t).chance,
            Way::Range(means) => StudentizedRange::new(*means, df).upper(SQRT_2 * t),
        };
        // Never more certain than the comparison alone.
        together.max(student::two_sided(t, df)).min(1.0)
    }

    /// What a difference must exceed to be called clear, worked out for these degrees of freedom, in
    /// standard errors (1).
    pub(in crate::statistics) fn clear_beyond(&self, df: f64) -> f64 {
        self.bound(self.hold[1], df)
    }

    /// Both half widths, worked out for these degrees of freedom.
    fn bounds(&self, df: f64) -> [f64; 2] {
        let [shown, clear] = self.hold;
        let bound = self.bound(shown, df);
        [bound, if clear > shown { self.bound(clear, df) } else { bound }]
    }

    fn bound(&self, hold: f64, df: f64) -> f64 {
        match &self.way {
            Way::Single => student::upper_quantile(0.5 * (1.0 - hold), df),
            Way::Several(several) => several.with_df(df).bound(hold),
            Way::Range(means) => StudentizedRange::new(*means, df).quantile(hold) / SQRT_2,
        }
    }
}

/// At most four degrees of freedom, from the fewest to the most, for which widths are worked out.
fn degrees(told: &[&Told]) -> Vec<f64> {
    /// Nearer together than this they count as the same (1).
    const SAME: f64 = 1e-9;
    let mut all: Vec<f64> = told.iter().map(|told| told.df).collect();
    all.sort_by(f64::total_cmp);
    all.dedup_by(|b, a| (*b - *a).abs() <= SAME * *a);
    if all.len() <= 4 {
        return all;
    }
    let (first, last) = (1.0 / all[0], 1.0 / all[all.len() - 1]);
    (0..4).map(|i| 1.0 / (first + (last - first) * f64::from(i) / 3.0)).collect()
}

fn correlations(model: &Mixed, told: &[&Told]) -> Vec<Vec<f64>> {
    let own: Vec<f64> = told.iter().map(|a| model.covariance(a, a)).collect();
    let correlation =
        |i: usize, j: usize| model.covariance(told[i], told[j]) / libm::sqrt(own[i] * own[j]);
    (0..told.len())
        .map(|i| (0..told.len()).map(|j| correlation(i, j).clamp(-1.0, 1.0)).collect())
        .collect()
}

/// Whether the variances of all pairs are sums of one variance for each treatment, as for means of
/// bags that have nothing else in common: there Tukey and Kramer's intervals hold (Hayter 1984,
/// *Ann. Statist.* 12, 61–75, from memory).
fn independent_means(told: &[&Told], treatments: u16) -> bool {
    const CLOSE: f64 = 1e-9;
    let pairs: Vec<(usize, usize)> =
        (0..usize::from(treatments)).flat_map(|i| (0..i).map(move |j| (i, j))).collect();
    if pairs.len() != told.len() || treatments < 2 {
        return false;
    }
    let square = |i: usize, j: usize| {
        let (a, b) = (i.max(j), i.min(j));
        let se = told[a * (a - 1) / 2 + b].se;
        se * se
    };
    if treatments < 3 {
        return true;
    }
    let own = |i: usize| {
        let mut others = (0..usize::from(treatments)).filter(|&other| other != i);
        match (others.next(), others.next()) {
            (Some(a), Some(b)) => 0.5 * (square(i, a) + square(i, b) - square(a, b)),
            _ => 0.0,
        }
    };
    let own: Vec<f64> = (0..usize::from(treatments)).map(own).collect();
    let fits = |&(i, j): &(usize, usize)| {
        (own[i] + own[j] - square(i, j)).abs() <= CLOSE * square(i, j)
    };
    own.iter().all(|v| *v > 0.0) && pairs.iter().all(fits)
}

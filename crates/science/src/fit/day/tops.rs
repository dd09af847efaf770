//! What is said of a day with several tops.

use super::arrived::Arrived;
use super::learned::DayFit;
use crate::prior::Learned;

/// A top for which the readings speak so little beside the highest is left out (1).
const LEAST: f64 = 1e-3;

/// The mean over the tops of a day, each with the weight that the readings give it, and how wide they are
/// together:
///
/// ```text
/// w ∝ p(y)        m = Σ w mᵢ        C = Σ w (Cᵢ + (mᵢ − m)(mᵢ − m)ᵀ)
/// ```
pub(super) fn together(mut tops: Vec<Arrived>) -> DayFit {
    let highest = tops.iter().map(|top| top.evidence).fold(f64::NEG_INFINITY, f64::max);
    let weight = |top: &Arrived| libm::exp(top.evidence - highest);
    tops.retain(|top| weight(top) > LEAST);
    let all: f64 = tops.iter().map(weight).sum();
    let fits: Vec<(f64, DayFit)> =
        tops.into_iter().map(|top| (weight(&top) / all, top.fit)).collect();
    mixed(fits)
}

fn mixed(mut fits: Vec<(f64, DayFit)>) -> DayFit {
    fits.sort_by(|a, b| b.0.total_cmp(&a.0));
    let mut first = fits[0].1.clone();
    if fits.len() == 1 {
        return first;
    }
    let sum =
        |of: &dyn Fn(&DayFit) -> f64| -> f64 { fits.iter().map(|(w, fit)| w * of(fit)).sum() };
    let count = first.learned.means.len();
    let means: Vec<f64> = (0..count).map(|at| sum(&|fit| fit.learned.means[at])).collect();
    let off = |fit: &DayFit, at: usize| fit.learned.means[at] - means[at];
    let entry = |row: usize, at: usize| {
        sum(&|fit| fit.learned.covariance[row][at] + off(fit, row) * off(fit, at))
    };
    let covariance =
        (0..count).map(|row| (0..count).map(|at| entry(row, at)).collect()).collect();
    let unwidened = (0..count)
        .map(|at| {
            sum(&|fit| fit.unwidened[at] * fit.unwidened[at] + off(fit, at) * off(fit, at))
                .sqrt()
        })
        .collect();
    let expected = |bag: usize, reading: usize| sum(&|fit| fit.expected_mm[bag][reading]);
    first.expected_mm = (0..first.expected_mm.len())
        .map(|bag| (0..first.expected_mm[bag].len()).map(|at| expected(bag, at)).collect())
        .collect();
    DayFit {
        chi_square: sum(&|fit| fit.chi_square),
        freedom: sum(&|fit| fit.freedom),
        noise: sum(&|fit| fit.noise),
        unlike: (0..first.unlike.len()).map(|bag| sum(&|fit| fit.unlike[bag])).collect(),
        unwidened,
        off: fits.iter().map(|(_, fit)| fit.off).fold(0.0, f64::max),
        expected_mm: first.expected_mm,
        learned: Learned { names: first.learned.names, means, covariance },
    }
}

#[cfg(test)]
mod tests {
    use super::{DayFit, Learned, mixed};

    fn fit(mean: f64, variance: f64) -> DayFit {
        DayFit {
            learned: Learned {
                names: vec!["one".into()],
                means: vec![mean],
                covariance: vec![vec![variance]],
            },
            chi_square: 1.0,
            freedom: 1.0,
            noise: 1.0,
            unlike: vec![mean],
            unwidened: vec![1.0],
            off: 0.0,
            expected_mm: vec![vec![10.0 * mean]],
        }
    }

    /// Three parts of N(0, 1) and one of N(4, 4): mean 1, variance 0.75 (1 + 1) + 0.25 (4 + 9) = 4.75.
    #[test]
    fn two_tops_are_as_wide_as_both() {
        let both = mixed(vec![(0.25, fit(4.0, 4.0)), (0.75, fit(0.0, 1.0))]);
        assert!((both.learned.means[0] - 1.0).abs() < 1e-12);
        assert!((both.learned.covariance[0][0] - 4.75).abs() < 1e-12);
        assert!((both.unwidened[0] - 2.0).abs() < 1e-12, "{}", both.unwidened[0]);
        assert!((both.expected_mm[0][0] - 10.0).abs() < 1e-12);
        assert!((both.unlike[0] - 1.0).abs() < 1e-12);
        assert_eq!(mixed(vec![(1.0, fit(4.0, 4.0))]), fit(4.0, 4.0));
    }
}

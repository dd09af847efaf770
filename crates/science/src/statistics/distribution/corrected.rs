//! Chances of several correlated t values that are nearly of a form that quadrature knows.

use super::lattice::{SHIFTS, T_99, chebyshev, points, sizes};
use super::multivariate_t::Likelihood;
use super::product_form::ProductForm;
use super::quadrature::OverSpread;
use super::sampled::Factor;
use super::student;
use super::studentized_range::StudentizedRange;
use crate::statistics::chance::Chance;
use std::f64::consts::SQRT_2;

/// Error at which more points are not worth their time (1).
const ENOUGH: f64 = 5e-5;
/// Bounds at which the difference to the guide is sampled.
const PLACES: usize = 8;

/// A form near the one asked for, whose chances for a known spread quadrature gives.
#[derive(Debug, Clone)]
pub(super) enum Guide {
    /// Correlations that are products.
    Product(ProductForm),
    /// All pairs of equally sure means.
    Range(StudentizedRange),
}

impl Guide {
    /// Chance that none lies further from 0 than `w` times the known spread.
    fn chance(&self, w: f64) -> f64 {
        match self {
            Self::Product(form) => form.within(w),
            Self::Range(range) => range.cdf(SQRT_2 * w),
        }
    }
}

/// The guide's chance G and what it is off by, for a known spread, learned once by sampling:
///
/// ```text
/// P(c) = ∫ f(s) [G + G (1 − G) ρ](c s) ds        ρ a polynomial through sampled places
/// ```
///
/// ρ does not depend on the degrees of freedom nor on c, so that all chances and bounds of a
/// question cost one sampling. Sampled is only the difference to the guide (control variate).
///
/// # Source
/// As [`Sampled`](super::sampled::Sampled); interpolation at Chebyshev's points in barycentric form,
/// Berrut & Trefethen (2004), *SIAM Review* 46, 501–517 (from memory).
#[derive(Debug, Clone)]
pub(super) struct Corrected {
    guide: Guide,
    over: OverSpread,
    places: Vec<f64>,
    /// ρ at each place, for each shift of the lattice.
    off: Vec<[f64; SHIFTS]>,
}

impl Corrected {
    /// `None` where the difference to the guide is too large to be interpolated.
    pub(super) fn new(
        (asked, near): (&Factor, &Factor),
        guide: Guide,
        df: f64,
        seed: u64,
    ) -> Option<Self> {
        /// A difference, over G (1 − G), beyond which interpolation is not to be trusted (1).
        const LARGEST: f64 = 0.15;
        let places = places(&guide);
        // About where the chance is 95 %: for a known spread, made wider as Student's t is.
        let wider =
            if df.is_finite() { student::upper_quantile(0.025, df) / 1.96 } else { 1.0 };
        let usual = wider * reaches(&guide, 0.95);
        let mut found = Self { guide, over: OverSpread::new(df, 8.5), places, off: Vec::new() };
        for &(size, korobov) in sizes(asked.dimensions()) {
            let mut chance = Chance::from_seed(seed);
            found.off = vec![[0.0; SHIFTS]; PLACES];
            for shift in 0..SHIFTS {
                let lattice = points(asked.dimensions(), size, korobov, &mut chance);
                for (place, off) in found.places.iter().zip(&mut found.off) {
                    off[shift] = lattice.mean(|point, y| {
                        asked.at(*place, point, y) - near.at(*place, point, y)
                    });
                }
            }
            for (place, off) in found.places.iter().zip(&mut found.off) {
                let g = found.guide.chance(*place);
                for off in off {
                    *off /= g * (1.0 - g);
                }
            }
            if found.off.iter().flatten().any(|off| off.abs() > LARGEST) {
                return None;
            }
            if found.within(usual).error <= ENOUGH {
                break;
            }
        }
        Some(found)
    }

    /// The same values with other degrees of freedom.
    pub(super) fn with_df(&self, df: f64) -> Self {
        Self { over: OverSpread::new(df, 8.5), ..self.clone() }
    }

    pub(super) fn within(&self, c: f64) -> Likelihood {
        let mut by_shift = [0.0; SHIFTS];
        let base = self.over.average_with(c, |w, weight| {
            let g = self.guide.chance(w);
            let weights = chebyshev(&self.places, w);
            for (sum, shift) in by_shift.iter_mut().zip(0..) {
                let off: f64 =
                    self.off.iter().zip(&weights).map(|(off, l)| off[shift] * l).sum();
                *sum += weight * g * (1.0 - g) * off;
            }
            g
        });
        let count = SHIFTS as f64;
        let mean = by_shift.iter().sum::<f64>() / count;
        let square = by_shift.iter().map(|m| (m - mean) * (m - mean)).sum::<f64>();
        let error = T_99 * libm::sqrt(square / (count * (count - 1.0)));
        Likelihood { chance: (base + mean).clamp(0.0, 1.0), error }
    }
}

/// The bound at which the guide's chance, for a known spread, is `chance`.
fn reaches(guide: &Guide, chance: f64) -> f64 {
    let (mut low, mut high) = (0.0, 9.0);
    for _ in 0..40 {
        let middle = 0.5 * (low + high);
        if guide.chance(middle) < chance {
            low = middle;
        } else {
            high = middle;
        }
    }
    high
}

/// Chebyshev's points between where the guide's chance is 0.001 and where it is 0.99999.
fn places(guide: &Guide) -> Vec<f64> {
    let (low, high) = (reaches(guide, 1e-3), reaches(guide, 1.0 - 1e-5));
    (0..PLACES)
        .map(|i| {
            let angle = std::f64::consts::PI * (i as f64 + 0.5) / PLACES as f64;
            0.5 * (low + high) - 0.5 * (high - low) * libm::cos(angle)
        })
        .collect()
}

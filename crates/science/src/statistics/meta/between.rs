//! How much true differences vary between years.

use super::profile::where_q_is;
use super::scaled::Scaled;
use super::weighed::Weighed;
use crate::statistics::distribution::rising_root;
use crate::statistics::sum::total;

/// How the variance between years is estimated.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum Between {
    /// Restricted maximum likelihood: the usual choice.
    ///
    /// # Source
    /// Patterson & Thompson (1971), *Biometrika* 58, 545–554; for years as here Viechtbauer (2005),
    /// *J. Educ. Behav. Stat.* 30, 261–293 (both from memory).
    #[default]
    Reml,
    /// The variance at which Q is what chance alone would leave, k − 1.
    ///
    /// # Source
    /// Paule & Mandel (1982), *J. Res. Natl. Bur. Stand.* 87, 377–385 (from memory).
    PauleMandel,
    /// By one moment: τ² = (Q − (k − 1)) / (Σ w − Σ w²/W) at τ² = 0, or 0 where that is below.
    ///
    /// # Source
    /// DerSimonian & Laird (1986), *Control. Clin. Trials* 7, 177–188 (from memory).
    DerSimonianLaird,
}

impl Between {
    /// τ² of two years or more, in scaled units.
    pub(super) fn variance(self, scaled: &Scaled) -> f64 {
        let df = scaled.count() - 1.0;
        match self {
            Self::Reml => most_likely(scaled),
            Self::PauleMandel => where_q_is(scaled, df),
            Self::DerSimonianLaird => {
                let weighed = Weighed::at(scaled, 0.0);
                ((weighed.q - df) / weighed.freedom()).max(0.0)
            }
        }
    }
}

/// The variance that makes the differences most likely, errors of contrasts only (REML).
///
/// The slope of the restricted likelihood has the sign of
///
/// ```text
/// Σ w_i² (y_i − μ̂)² − (Σ w_i − Σ w_i²/W)
/// ```
///
/// which is below 0 beyond the largest v_i and twice the squared range. A ladder of variances, 0 among
/// them, finds where the sign changes; each such top is solved for, and the highest one is the answer.
fn most_likely(scaled: &Scaled) -> f64 {
    const FIRST: f64 = 1e-3;
    const RUNG: f64 = 1.25;
    let widest = scaled.v.iter().copied().fold(1.0, f64::max);
    let last = RUNG * widest.max(2.0 * scaled.range() * scaled.range());
    let mut best = (f64::NEG_INFINITY, 0.0);
    let mut take = |tau2: f64| {
        let likely = likelihood(scaled, tau2);
        if likely > best.0 {
            best = (likely, tau2);
        }
    };
    let (mut low, mut fall) = (0.0, falling(scaled, 0.0));
    if fall >= 0.0 {
        take(0.0);
    }
    let mut high = FIRST;
    while low < last {
        let next = falling(scaled, high);
        if fall < 0.0 && next >= 0.0 {
            take(rising_root(low, high, |tau2| falling(scaled, tau2)));
        }
        (low, fall) = (high, next);
        high *= RUNG;
    }
    best.1
}

/// How fast the likelihood falls, as a number without a unit: below 0 where it still rises.
fn falling(scaled: &Scaled, tau2: f64) -> f64 {
    let weighed = Weighed::at(scaled, tau2);
    let squares = total(weighed.weights.iter().zip(&scaled.y).map(|(w, y)| {
        let off = w * (y - weighed.mean);
        off * off
    }));
    1.0 - squares / weighed.freedom()
}

/// Logarithm of the restricted likelihood, but for a constant.
fn likelihood(scaled: &Scaled, tau2: f64) -> f64 {
    let weighed = Weighed::at(scaled, tau2);
    let widths = total(scaled.v.iter().map(|v| libm::log(v + tau2)));
    -0.5 * (widths + libm::log(weighed.sum) + weighed.q)
}

//! Fisher's F distribution.

use super::beta;

/// Chance that F with `df1` and `df2` degrees of freedom lies above `f` (1).
///
/// # Source
/// DLMF 8.17(i) through the incomplete beta function; Snedecor (1934), *Calculation and
/// Interpretation of Analysis of Variance and Covariance* (from memory).
pub fn upper(f: f64, df1: f64, df2: f64) -> f64 {
    shares(f, df1, df2).1
}

/// Chance that F with `df1` and `df2` degrees of freedom is at most `f` (1).
pub fn cdf(f: f64, df1: f64, df2: f64) -> f64 {
    shares(f, df1, df2).0
}

fn shares(f: f64, df1: f64, df2: f64) -> (f64, f64) {
    if f <= 0.0 {
        return (0.0, 1.0);
    }
    if f == f64::INFINITY {
        return (1.0, 0.0);
    }
    let over = df1 * f;
    let sum = over + df2;
    beta::incomplete(0.5 * df1, 0.5 * df2, over / sum, df2 / sum)
}

/// Value that F with `df1` and `df2` degrees of freedom stays below with chance `p` (1), for `p`
/// strictly between 0 and 1.
///
/// # Accuracy
/// About 1 part in 10¹².
pub fn quantile(p: f64, df1: f64, df2: f64) -> f64 {
    if p.is_nan() || p <= 0.0 || p >= 1.0 {
        return f64::NAN;
    }
    let lower = p <= 0.5;
    let target = if lower { p } else { 1.0 - p };
    let (mut ln_f, mut low, mut high) = (0.0_f64, f64::NEG_INFINITY, f64::INFINITY);
    for _ in 0..300 {
        let f = libm::exp(ln_f);
        let (below, above) = shares(f, df1, df2);
        let share = if lower { below } else { above };
        if (share > target) == lower {
            high = high.min(ln_f);
        } else {
            low = low.max(ln_f);
        }
        let ln_density = 0.5 * df1 * libm::log(df1 * f / (df1 * f + df2))
            + 0.5 * df2 * libm::log(df2 / (df1 * f + df2))
            - beta::ln_beta(0.5 * df1, 0.5 * df2);
        let slope = libm::exp(ln_density) / share * if lower { 1.0 } else { -1.0 };
        let step = (libm::log(target) - libm::log(share)) / slope;
        let mut next = ln_f + step.clamp(-3.0, 3.0);
        if !next.is_finite() || next <= low || next >= high {
            next = match (low.is_finite(), high.is_finite()) {
                (true, true) => 0.5 * (low + high),
                (true, false) => low + 3.0,
                (false, true) => high - 3.0,
                (false, false) => return f64::NAN,
            };
        }
        let moved = (next - ln_f).abs();
        ln_f = next;
        if moved < 1e-14 {
            break;
        }
    }
    libm::exp(ln_f)
}

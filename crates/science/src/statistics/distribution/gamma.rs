//! The gamma distribution, on which chi-square and the spread of a spread rest.

use super::normal;

/// Half the natural logarithm of 2π (1).
pub(super) const HALF_LN_TWO_PI: f64 = 0.918_938_533_204_672_8;

/// Natural logarithm of the gamma function (1), for positive `a`.
pub fn ln_gamma(a: f64) -> f64 {
    libm::lgamma(a)
}

/// What Stirling's formula leaves over in ln Γ(x), for x ≥ 10.
///
/// # Source
/// DLMF 5.11.1.
pub(super) fn stirling_rest(x: f64) -> f64 {
    const TERMS: [f64; 7] = [
        1.0 / 12.0,
        -1.0 / 360.0,
        1.0 / 1260.0,
        -1.0 / 1680.0,
        1.0 / 1188.0,
        -691.0 / 360_360.0,
        1.0 / 156.0,
    ];
    let inverse = 1.0 / x;
    let square = inverse * inverse;
    inverse * TERMS.iter().rev().fold(0.0, |sum, t| sum * square + t)
}

/// Both shares of the regularized incomplete gamma function, P(a, x) and Q(a, x) (1), each to its
/// own relative accuracy.
///
/// # Accuracy
/// About 1 part in 10¹³.
/// # Source
/// DLMF 8.11.4 (series) and 8.9.2 (continued fraction, by Lentz's method).
pub fn incomplete(a: f64, x: f64) -> (f64, f64) {
    if x <= 0.0 {
        return (0.0, 1.0);
    }
    if x == f64::INFINITY {
        return (1.0, 0.0);
    }
    let front = front(a, x);
    if x < a + 1.0 {
        let mut term = 1.0 / a;
        let mut sum = term;
        let mut n = a;
        while term > sum * 1e-17 {
            n += 1.0;
            term *= x / n;
            sum += term;
        }
        let below = front * sum;
        (below, 1.0 - below)
    } else {
        let above = front * fraction(a, x);
        (1.0 - above, above)
    }
}

/// xᵃ e⁻ˣ / Γ(a), without losing digits when a is large.
fn front(a: f64, x: f64) -> f64 {
    if a < 10.0 {
        return libm::exp(a * libm::log(x) - x - ln_gamma(a));
    }
    let off = (x - a) / a;
    let exponent = a * (libm::log1p(off) - off) - stirling_rest(a) - HALF_LN_TWO_PI;
    libm::exp(exponent) * libm::sqrt(a)
}

/// Chance of the whole number `j` ≥ 0 where a Poisson count of that mean > 0 is drawn (1).
pub(super) fn poisson(j: f64, mean: f64) -> f64 {
    front(j + 1.0, mean) / mean
}

fn fraction(a: f64, x: f64) -> f64 {
    const TINY: f64 = 1e-300;
    let mut b = x + 1.0 - a;
    let mut c = 1.0 / TINY;
    let mut d = 1.0 / b;
    let mut h = d;
    for i in 1..100_000_u32 {
        let i = f64::from(i);
        let an = -i * (i - a);
        b += 2.0;
        d = an * d + b;
        d = 1.0 / if d.abs() < TINY { TINY } else { d };
        c = b + an / c;
        c = if c.abs() < TINY { TINY } else { c };
        let step = d * c;
        h *= step;
        if (step - 1.0).abs() < 1e-16 {
            break;
        }
    }
    h
}

/// Density of s = √(χ²/df) at `s` (per unit of s): how an estimated spread varies around the true one.
pub fn density_of_spread(s: f64, df: f64) -> f64 {
    if s <= 0.0 {
        return if s < 0.0 || df > 1.0 { 0.0 } else { 2.0 * normal::density(0.0) };
    }
    // With u = df s²/2, the density of u is front/u, and du/ds = df s = 2u/s.
    let u = 0.5 * df * s * s;
    2.0 * front(0.5 * df, u) / s
}

/// Value that s = √(χ²/df) stays below with chance `p` (1), for `p` strictly between 0 and 1.
///
/// # Accuracy
/// About 1 part in 10¹².
/// # Source
/// Start from Wilson & Hilferty (1931), *Proc. Natl. Acad. Sci.* 17, 684–688; polished by Newton
/// steps on ln s that a bracket keeps from straying.
pub fn quantile_of_spread(p: f64, df: f64) -> f64 {
    if p <= 0.5 { spread_with_tail(p, true, df) } else { spread_with_tail(1.0 - p, false, df) }
}

/// Value that s = √(χ²/df) exceeds with chance `q` (1), for `q` above 0 and at most one half.
pub fn upper_quantile_of_spread(q: f64, df: f64) -> f64 {
    spread_with_tail(q, false, df)
}

fn spread_with_tail(target: f64, lower: bool, df: f64) -> f64 {
    let a = 0.5 * df;
    let side = if lower { 1.0 } else { -1.0 };
    // Cube of a normal value in the middle, the leading term of the series far below it.
    let ninth = 2.0 / (9.0 * df);
    let cube_root = 1.0 - ninth + side * normal::quantile(target) * libm::sqrt(ninth);
    let mut ln_u = if cube_root > 0.3 {
        libm::log(a) + 3.0 * libm::log(cube_root)
    } else {
        (libm::log(target) + ln_gamma(a + 1.0)) / a
    };
    let (mut low, mut high) = (f64::NEG_INFINITY, f64::INFINITY);
    for _ in 0..100 {
        let u = libm::exp(ln_u);
        let (below, above) = incomplete(a, u);
        let share = if lower { below } else { above };
        let too_high = (share > target) == lower;
        if too_high {
            high = high.min(ln_u);
        } else {
            low = low.max(ln_u);
        }
        // Newton on ln(share) as a function of ln u; d share / d ln u = ± front.
        let slope = front(a, u) / share * side;
        let step = (libm::log(target) - libm::log(share)) / slope;
        let mut next = ln_u + step.clamp(-2.0, 2.0);
        if !next.is_finite() || next <= low || next >= high {
            next = match (low.is_finite(), high.is_finite()) {
                (true, true) => 0.5 * (low + high),
                (true, false) => low + 1.0,
                (false, true) => high - 1.0,
                (false, false) => break,
            };
        }
        let moved = (next - ln_u).abs();
        ln_u = next;
        if moved < 1e-14 {
            break;
        }
    }
    libm::sqrt(libm::exp(ln_u) / a)
}

//! Where a rising function crosses zero.

/// Root of a rising function between `low` and `high`, by bisection and false position (Illinois).
///
/// # Source
/// Dowell & Jarratt (1971), *BIT* 11, 168–174.
pub(in crate::statistics) fn rising_root(
    low: f64,
    high: f64,
    mut f: impl FnMut(f64) -> f64,
) -> f64 {
    let (mut a, mut b) = (low, high);
    let (mut at_a, mut at_b) = (f(a), f(b));
    if at_a >= 0.0 {
        return a;
    }
    if at_b <= 0.0 {
        return b;
    }
    let mut last = f64::NAN;
    for turn in 0..200 {
        let width = b - a;
        let mut c = (a * at_b - b * at_a) / (at_b - at_a);
        if turn % 5 == 4 || c <= a || c >= b {
            c = a + 0.5 * width;
        }
        let at_c = f(c);
        if at_c > 0.0 {
            b = c;
            at_b = at_c;
            at_a *= if last > 0.0 { 0.5 } else { 1.0 };
        } else {
            a = c;
            at_a = at_c;
            at_b *= if last <= 0.0 { 0.5 } else { 1.0 };
        }
        last = at_c;
        if b - a <= 4.0 * f64::EPSILON * b.abs() || at_c.abs() < 1e-15 {
            return c;
        }
    }
    0.5 * (a + b)
}

/// Value that a positive quantity stays below with chance `p` (1), for `p` strictly between 0 and
/// 1 and a continuous distribution given as its chances below and above; NaN otherwise. `start` is
/// any positive value of a likely size.
pub(super) fn quantile_of_positive(
    p: f64,
    start: f64,
    shares: impl Fn(f64) -> (f64, f64),
) -> f64 {
    quantile(p, libm::log(start.max(f64::MIN_POSITIVE)), 1.0, |ln| shares(libm::exp(ln)))
        .map_or(f64::NAN, libm::exp)
}

/// The same for a quantity of either sign; `start` and `step` are a likely value and a likely
/// distance from it.
pub(super) fn quantile(
    p: f64,
    start: f64,
    step: f64,
    shares: impl Fn(f64) -> (f64, f64),
) -> Option<f64> {
    if p.is_nan() || p <= 0.0 || p >= 1.0 || !start.is_finite() {
        return None;
    }
    // In logarithms of the smaller share, a far tail is nearly a parabola or a line.
    let off = |x: f64| {
        let (below, above) = shares(x);
        if p <= 0.5 {
            libm::log(below.max(f64::MIN_POSITIVE)) - libm::log(p)
        } else {
            libm::log1p(-p) - libm::log(above.max(f64::MIN_POSITIVE))
        }
    };
    let reach = |side: f64| {
        let mut away = step;
        while off(start + side * away) * side <= 0.0 {
            away *= 2.0;
            if !away.is_finite() {
                return None;
            }
        }
        Some(start + side * away)
    };
    Some(rising_root(reach(-1.0)?, reach(1.0)?, off))
}

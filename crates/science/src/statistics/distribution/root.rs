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

//! Sums over a Poisson count, which make a noncentral distribution of central ones.

use super::gamma;

/// Counts beyond this are not looked at (1): a mean of a million needs some ten thousand.
const MOST: f64 = 1e9;

/// Mean of `share(j)` over a Poisson count j with that mean (1).
///
/// ```text
/// Σ_j e^(−m) m^j / j! · share(j)
/// ```
///
/// All terms are positive, so the sum keeps the relative accuracy of `share`. It begins at its
/// largest term, which in a far tail lies far from the mean, and goes out from there on both sides.
/// `share` has to be log-concave in j, as the incomplete beta and gamma functions are.
pub(super) fn mean_over(mean: f64, share: impl Fn(f64) -> f64) -> f64 {
    if mean <= 0.0 {
        return share(0.0);
    }
    let term = |j: f64| gamma::poisson(j, mean) * share(j);
    let top = largest(mean, &term);
    let mut sum = term(top);
    let mut go = |step: f64| {
        let mut j = top + step;
        while (0.0..MOST).contains(&j) {
            let one = term(j);
            sum += one;
            if one <= 1e-18 * sum {
                break;
            }
            j += step;
        }
    };
    go(-1.0);
    go(1.0);
    sum.min(1.0)
}

/// The count whose term is the largest: terms rise before it and fall after it.
fn largest(mean: f64, term: &impl Fn(f64) -> f64) -> f64 {
    let rises_after = |j: f64| {
        let (here, next) = (term(j), term(j + 1.0));
        // Where both are too small to be told apart, the top is on the side of the mean.
        if here > 0.0 || next > 0.0 { next > here } else { j < mean }
    };
    let (mut low, mut high) = (-1.0, libm::floor(mean) + 1.0);
    while high < MOST && rises_after(high) {
        low = high;
        high *= 2.0;
    }
    while high - low > 1.0 {
        let middle = libm::floor(0.5 * (low + high));
        if rises_after(middle) {
            low = middle;
        } else {
            high = middle;
        }
    }
    high
}

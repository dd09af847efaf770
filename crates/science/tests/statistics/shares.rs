//! Bounds on shares that were counted.

use barm_science::statistics::share::{share_at_least, share_at_most};

/// Chance of at most `found` of `of` at a share `p`, summed term by term.
fn at_most(found: usize, of: usize, p: f64) -> f64 {
    let mut term = (1.0 - p).powi(i32::try_from(of).unwrap());
    let mut sum = term;
    for k in 0..found {
        term *= (of - k) as f64 / (k + 1) as f64 * p / (1.0 - p);
        sum += term;
    }
    sum
}

/// Two-sided intervals that R's `binom.test` prints in a web tutorial on that function (R stats, the
/// method of Clopper and Pearson; read 2026-11-27): found, of, confidence, low, high.
const PRINTED: [(usize, usize, f64, f64, f64); 2] =
    [(9, 24, 0.95, 0.187_992_9, 0.594_063_6), (1, 1497, 0.90, 3.426_347e-5, 3.164_954e-3)];

#[test]
fn published_intervals() {
    for (found, of, confidence, low, high) in PRINTED {
        let side = 0.5 * (1.0 + confidence);
        let (at_least, at_most) =
            (share_at_least(found, of, side), share_at_most(found, of, side));
        // To the seven digits that are printed.
        assert!((at_least / low - 1.0).abs() < 3e-7, "{found} of {of}: {at_least}");
        assert!((at_most / high - 1.0).abs() < 3e-7, "{found} of {of}: {at_most}");
    }
}

/// The bounds are where the binomial tail has the wanted size: their definition.
#[test]
fn the_tail_beyond_a_bound_has_the_wanted_size() {
    for (found, of) in [(0, 7), (1, 1), (3, 20), (19, 20), (12, 300), (90, 2000), (130, 2000)] {
        for confidence in [0.9, 0.95, 0.99, 0.995] {
            if found < of {
                let tail = at_most(found, of, share_at_most(found, of, confidence));
                assert!(
                    (tail / (1.0 - confidence) - 1.0).abs() < 1e-9,
                    "{found} of {of}: {tail}"
                );
            }
            if found > 0 {
                let tail = 1.0 - at_most(found - 1, of, share_at_least(found, of, confidence));
                let off = (tail - (1.0 - confidence)).abs();
                assert!(off < 1e-11, "{found} of {of}: {tail}");
            }
        }
    }
}

#[test]
fn none_and_all_have_closed_forms() {
    for of in [1, 5, 100, 2000, 48_000] {
        let closed = -(0.01_f64.ln() / of as f64).exp_m1();
        assert!((share_at_most(0, of, 0.99) / closed - 1.0).abs() < 1e-11, "{of}");
        assert!((share_at_least(of, of, 0.99) - (1.0 - closed)).abs() < 1e-12, "{of}");
        assert!(share_at_least(0, of, 0.99) == 0.0 && share_at_most(of, of, 0.99) >= 1.0);
    }
    assert!(share_at_least(0, 0, 0.99) == 0.0 && share_at_most(0, 0, 0.99) >= 1.0);
}

#[test]
fn bounds_enclose_what_was_found_and_tighten() {
    for of in [10, 100, 1000, 10_000, 50_000] {
        let found = of / 20;
        let share = found as f64 / of as f64;
        let (low, high) = (share_at_least(found, of, 0.99), share_at_most(found, of, 0.99));
        assert!(low <= share && share < high, "{low} {share} {high}");
        assert!(
            high > share_at_most(found, of, 0.95) && low <= share_at_least(found, of, 0.95)
        );
        assert!(
            high - low
                > share_at_most(found * 10, of * 10, 0.99)
                    - share_at_least(found * 10, of * 10, 0.99)
        );
    }
}

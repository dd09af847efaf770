//! Several t values at once: what sampling once for all is worth.

use crate::table::{number, rows};
use barm_science::statistics::distribution::detection;
use barm_science::statistics::distribution::multivariate_t::LargestOfSeveral;
use barm_science::statistics::distribution::student;
use barm_science::statistics::distribution::studentized_range::StudentizedRange;

/// Correlations of the differences of all pairs of means that vary independently by these variances.
fn pairs(variances: &[f64]) -> Vec<Vec<f64>> {
    let pairs: Vec<(usize, usize)> =
        (0..variances.len()).flat_map(|i| (0..i).map(move |j| (i, j))).collect();
    let covariance = |(a, b): (usize, usize), (c, d): (usize, usize)| {
        let same = |x: usize, y: usize| if x == y { variances[x] } else { 0.0 };
        same(a, c) - same(a, d) - same(b, c) + same(b, d)
    };
    pairs
        .iter()
        .map(|&p| {
            let with = |&q: &(usize, usize)| {
                covariance(p, q) / (covariance(p, p) * covariance(q, q)).sqrt()
            };
            pairs.iter().map(with).collect()
        })
        .collect()
}

#[test]
fn all_pairs_of_equal_means_are_the_guide_itself() {
    for (k, df) in [(3_u16, 3.0), (4, 8.0), (6, 30.0), (8, f64::INFINITY)] {
        let even = vec![1.0; usize::from(k)];
        let several = LargestOfSeveral::of_pairs(&pairs(&even), k, df, 3);
        let exact = StudentizedRange::new(k, df);
        for q in [2.0, 3.5, 5.0] {
            let ours = several.within(q / 2.0_f64.sqrt());
            assert!(ours.error < 1e-6, "{k} {df}: {ours:?}");
            assert!(
                (ours.chance - exact.cdf(q)).abs() < ours.error.min(1e-7),
                "{k} {df} {q}: {ours:?} {}",
                exact.cdf(q)
            );
        }
    }
}

/// Pairs of unequal means by their guide, and by sampling each chance for itself.
#[test]
fn all_pairs_of_unequal_means_agree_both_ways() {
    let correlation = pairs(&[1.0, 0.4, 2.0, 0.7]);
    let (guided, plain) = (
        LargestOfSeveral::of_pairs(&correlation, 4, 9.0, 3),
        LargestOfSeveral::new(&correlation, 9.0, 4),
    );
    for c in [1.0, 2.0, 3.1] {
        let (a, b) = (guided.within(c), plain.within(c));
        assert!(a.error < 1e-4, "{c}: {a:?}");
        assert!((a.chance - b.chance).abs() < a.error + b.error, "{c}: {a:?} {b:?}");
    }
}

/// SciPy's `multivariate_t.cdf`, reached from other degrees of freedom.
#[test]
fn other_degrees_of_freedom_need_no_new_sampling() {
    for row in rows(include_str!("../rows/multivariate_t.csv")) {
        let below: Vec<f64> = row["correlations"].split(' ').map(number).collect();
        let count = (1..).find(|k| k * (k - 1) / 2 == below.len()).unwrap();
        let mut correlation = vec![vec![1.0; count]; count];
        let places = (0..count).flat_map(|i| (0..i).map(move |j| (i, j)));
        for ((i, j), r) in places.zip(below) {
            correlation[i][j] = r;
        }
        let elsewhere = LargestOfSeveral::new(&correlation, 57.0, 8);
        let ours = elsewhere.with_df(number(&row["df"])).within(number(&row["bound"]));
        let allowed = ours.error.max(5e-5) + 3.0 * number(&row["error"]);
        let scipy = number(&row["chance"]);
        assert!((ours.chance - scipy).abs() < allowed, "{}: {ours:?} {scipy}", row["name"]);
    }
}

/// Without a true difference the chance is that of Student's t; R's `power.t.test` example (22.0211
/// values a group for a difference of one standard deviation, two-sided 5 %) has power 0.90.
#[test]
fn the_chance_to_find_a_difference_agrees() {
    for df in [1.0, 4.0, 11.5, f64::INFINITY] {
        let c = 2.2;
        let alone =
            if df.is_finite() { student::two_sided(c, df) } else { 0.027_806_895_026_993_27 };
        assert!((detection::chance(0.0, c, df) - alone).abs() < 1e-9, "{df}");
    }
    let n = 22.021_10;
    let df = 2.0 * (n - 1.0);
    let c = student::upper_quantile(0.025, df);
    let shift = (n / 2.0_f64).sqrt();
    // R counts both sides strictly or not; the far one has a chance below 1e-7 here.
    assert!((detection::chance(shift, c, df) - 0.90).abs() < 1e-6);
    assert!((detection::smallest(0.90, c, df) - shift).abs() < 1e-5);
}

/// A value that has nothing to do with the others: its chance multiplies theirs (known spread).
#[test]
fn a_value_by_itself_multiplies() {
    let four = [
        [1.0, 0.2, 0.5, 0.3],
        [0.2, 1.0, 0.4, 0.6],
        [0.5, 0.4, 1.0, 0.1],
        [0.3, 0.6, 0.1, 1.0],
    ];
    let alone = LargestOfSeveral::new(&four.map(Vec::from), f64::INFINITY, 2);
    let mut five: Vec<Vec<f64>> = four.iter().map(|row| [&row[..], &[0.0]].concat()).collect();
    five.push(vec![0.0, 0.0, 0.0, 0.0, 1.0]);
    let together = LargestOfSeveral::new(&five, f64::INFINITY, 2);
    for c in [1.0, 2.0, 2.6] {
        let (a, b) = (alone.within(c), together.within(c));
        let single = LargestOfSeveral::new(&[vec![1.0]], f64::INFINITY, 2).within(c).chance;
        assert!((single * a.chance - b.chance).abs() < a.error + b.error, "{c}: {a:?} {b:?}");
    }
}

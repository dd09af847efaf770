//! Distributions against R, SciPy and one another.

use crate::table::{number, rows};
use barm_science::statistics::distribution::multivariate_t::LargestOfSeveral;
use barm_science::statistics::distribution::studentized_range::StudentizedRange;
use barm_science::statistics::distribution::{beta, fisher, gamma, normal, student};

/// Name, numbers and SciPy's value of each call in the table.
fn calls() -> Vec<(String, Vec<f64>, f64)> {
    rows(include_str!("../rows/distributions.csv"))
        .iter()
        .map(|row| {
            let (name, rest) = row["call"].trim_end_matches(')').split_once('(').unwrap();
            let last = |part: &str| number(part.rsplit('=').next().unwrap());
            (name.to_owned(), rest.split(',').map(last).collect(), number(&row["scipy"]))
        })
        .collect()
}

/// R 4.2.2 and SciPy 1.17.1, which agree with each other to about 1e-15 on these.
#[test]
fn t_f_normal_and_gamma_agree_to_fourteen_digits() {
    let mut seen = 0;
    for (name, a, scipy) in calls() {
        let ours = match name.as_str() {
            "qnorm" => normal::quantile(a[0]),
            "qt" => student::quantile(a[0], a[1]),
            "qf" => fisher::quantile(a[0], a[1], a[2]),
            "pbeta" => beta::incomplete(a[1], a[2], a[0], 1.0 - a[0]).0,
            "qgamma" => {
                let s = gamma::quantile_of_spread(a[0], 2.0 * a[1]);
                s * s * a[1]
            }
            _ => continue,
        };
        seen += 1;
        let off = (ours - scipy).abs();
        assert!(off <= 1e-14 * scipy.abs(), "{name}{a:?}: {ours} against {scipy}");
    }
    assert_eq!(seen, 70);
}

/// SciPy 1.17.1 `studentized_range`, good to about 1e-13.
#[test]
fn the_studentized_range_agrees_to_twelve_digits() {
    let mut seen = 0;
    for (name, a, scipy) in calls() {
        let range = |k: f64, df| StudentizedRange::new(k as u16, df);
        let ours = match name.as_str() {
            "ptukey" => range(a[1], a[2]).cdf(a[0]),
            "qtukey" => range(a[1], a[2]).quantile(a[0]),
            _ => continue,
        };
        seen += 1;
        let off = (ours - scipy).abs();
        assert!(off <= 1e-12 * scipy.abs().max(1.0), "{name}{a:?}: {ours} against {scipy}");
    }
    assert_eq!(seen, 298);
}

#[test]
fn quantiles_and_chances_undo_each_other() {
    for df in [1.0, 1.5, 2.0, 3.0, 7.3, 30.0, 400.0, 1e5] {
        for p in [1e-9, 0.001, 0.025, 0.3, 0.5, 0.8, 0.975, 0.9999] {
            let t = student::quantile(p, df);
            assert!((student::cdf(t, df) / p - 1.0).abs() < 1e-11, "t {p} {df}");
            let s = gamma::quantile_of_spread(p, df);
            let below = gamma::incomplete(0.5 * df, 0.5 * df * s * s).0;
            assert!((below / p - 1.0).abs() < 1e-10, "s {p} {df}");
            let f = fisher::quantile(p, 3.0, df);
            assert!((fisher::cdf(f, 3.0, df) / p - 1.0).abs() < 1e-10, "F {p} {df}");
            let z = normal::quantile(p);
            assert!((normal::cdf(z) / p - 1.0).abs() < 1e-13, "z {p}");
        }
    }
}

/// Exact: F with 1 and df degrees of freedom is t squared, and t with 1 is Cauchy's.
#[test]
fn distributions_agree_where_one_is_another() {
    for t in [0.01_f64, 0.7, 2.5, 40.0] {
        let cauchy = 0.5 - libm::atan(t) / std::f64::consts::PI;
        assert!((student::upper(t, 1.0) - cauchy).abs() < 1e-15);
        for df in [1.0, 4.0, 25.0] {
            let both = student::two_sided(t, df);
            assert!((fisher::upper(t * t, 1.0, df) / both - 1.0).abs() < 1e-13);
            // Two values differ by at most q: q is √2 t.
            let two = StudentizedRange::new(2, df).upper(t * 2.0_f64.sqrt());
            assert!((two - both).abs() < 1e-12, "t {t} df {df}: {two} {both}");
        }
    }
}

/// Dunnett's critical values with equal numbers: quadrature by SciPy 1.17.1, printed to 1e-8.
#[test]
fn dunnetts_critical_values_agree() {
    let mut seen = 0;
    for row in rows(include_str!("../rows/dunnett.csv")) {
        let Some(rest) = row["case"].strip_prefix("equal n, ") else { continue };
        let k: usize = rest.split(' ').next().unwrap().parse().unwrap();
        let df = number(row["case"].rsplit('=').next().unwrap());
        let several = LargestOfSeveral::new(&vec![vec![0.5; k]; k], df, 1);
        assert!(several.by_quadrature());
        let (ours, scipy) = (several.bound(0.95), number(&row["value_quadrature"]));
        assert!((ours - scipy).abs() < 1e-9, "{}: {ours} against {scipy}", row["case"]);
        seen += 1;
    }
    assert_eq!(seen, 18);
}

/// SciPy 1.17.1 `multivariate_t.cdf`, whose own error is in the table.
#[test]
fn correlations_that_are_no_products_agree_within_the_stated_error() {
    for row in rows(include_str!("../rows/multivariate_t.csv")) {
        let below: Vec<f64> = row["correlations"].split(' ').map(number).collect();
        let count = (1..).find(|k| k * (k - 1) / 2 == below.len()).unwrap();
        let mut correlation = vec![vec![1.0; count]; count];
        let places = (0..count).flat_map(|i| (0..i).map(move |j| (i, j)));
        for ((i, j), r) in places.zip(below) {
            correlation[i][j] = r;
        }
        let several = LargestOfSeveral::new(&correlation, number(&row["df"]), 7);
        assert!(!several.by_quadrature(), "{}", row["name"]);
        let (bound, scipy) = (number(&row["bound"]), number(&row["chance"]));
        let ours = several.within(bound);
        assert!(ours.error < 1e-4, "{}: {ours:?}", row["name"]);
        let allowed = ours.error + 3.0 * number(&row["error"]);
        assert!((ours.chance - scipy).abs() < allowed, "{}: {ours:?} {scipy}", row["name"]);
        let back = several.bound(ours.chance);
        assert!((several.within(back).chance - ours.chance).abs() < 1e-4, "{}", row["name"]);
    }
}

/// All pairs of equally sure means are the studentized range over √2: dependent values, whose
/// correlations are no products.
#[test]
fn all_pairs_at_once_are_the_studentized_range() {
    for (k, df) in [(3_u16, 3.0), (3, 20.0), (4, 8.0), (4, f64::INFINITY)] {
        let pairs: Vec<(u16, u16)> = (0..k).flat_map(|i| (0..i).map(move |j| (i, j))).collect();
        let same = |a: u16, b: u16| f64::from(u8::from(a == b));
        let correlation: Vec<Vec<f64>> = pairs
            .iter()
            .map(|p| {
                let with = |q: &(u16, u16)| {
                    0.5 * (same(p.0, q.0) - same(p.0, q.1) - same(p.1, q.0) + same(p.1, q.1))
                };
                pairs.iter().map(with).collect()
            })
            .collect();
        let several = LargestOfSeveral::new(&correlation, df, 11);
        let exact = StudentizedRange::new(k, df);
        for q in [1.5, 3.0, 4.5] {
            let ours = several.within(q / 2.0_f64.sqrt());
            let off = (ours.chance - exact.cdf(q)).abs();
            assert!(ours.error < 1e-4 && off < ours.error, "{k} {df} {q}: {ours:?} off {off}");
        }
    }
}

/// Twenty treatments against one reference in uneven numbers, correlations disturbed so that they
/// are no products: the error stays as promised.
#[test]
fn many_comparisons_keep_the_promised_error() {
    let share = |i: usize| (0.3 + 0.02 * i as f64).sqrt();
    let correlation: Vec<Vec<f64>> = (0..20)
        .map(|i| {
            let off = |j: usize| 0.02 * ((i * 7 + j * 7) % 5) as f64 - 0.04;
            (0..20).map(|j| if i == j { 1.0 } else { share(i) * share(j) + off(j) }).collect()
        })
        .collect();
    let several = LargestOfSeveral::new(&correlation, 60.0, 3);
    assert!(!several.by_quadrature());
    let bound = several.bound(0.95);
    let likelihood = several.within(bound);
    assert!(likelihood.error < 1e-4, "{likelihood:?}");
    assert!((likelihood.chance - 0.95).abs() < 1e-4, "{bound} {likelihood:?}");
}

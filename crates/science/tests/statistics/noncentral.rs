//! Noncentral distributions against R, SciPy, quadrature at 40 digits, and one another.

use crate::table::{number, rows};
use barm_science::statistics::distribution::{
    fisher, gamma, noncentral_chi_square, noncentral_fisher, noncentral_student, normal,
    student,
};

/// Name and numbers of a call such as `pt(-1,df=2,ncp=0.5)`.
fn call(text: &str) -> (String, Vec<f64>) {
    let (name, rest) = text.trim_end_matches(')').split_once('(').unwrap();
    let last = |part: &str| number(part.rsplit('=').next().unwrap());
    (name.to_owned(), rest.split(',').map(last).collect())
}

/// SciPy 1.17.1 is good to about 1e-13 where R 4.2.2 agrees with it only to 1e-9.
#[test]
fn noncentral_t_f_and_chi_square_agree_with_scipy_and_r() {
    let mut seen = 0;
    for row in rows(include_str!("../rows/noncentral.csv")) {
        let (name, a) = call(&row["call"]);
        let ours = match name.as_str() {
            "pt" => noncentral_student::cdf(a[0], a[1], a[2]),
            "qt" => noncentral_student::quantile(a[0], a[1], a[2]),
            "pf" => noncentral_fisher::cdf(a[0], a[1], a[2], a[3]),
            "qf" => noncentral_fisher::quantile(a[0], a[1], a[2], a[3]),
            "pchisq" => noncentral_chi_square::cdf(a[0], a[1], a[2]),
            other => panic!("{other} is not known here"),
        };
        seen += 1;
        let (scipy, r) = (number(&row["scipy"]), number(&row["r"]));
        let off = (ours - scipy).abs() / scipy.abs();
        assert!(off < 2e-12, "{}: {ours} against SciPy's {scipy}", row["call"]);
        assert!((ours - r).abs() < 5e-9, "{}: {ours} against R's {r}", row["call"]);
    }
    assert_eq!(seen, 114);
}

/// Both tails, each to its own relative accuracy, from 1e-112 up.
#[test]
fn far_tails_agree_with_quadrature_at_forty_digits() {
    let mut seen = 0;
    for row in rows(include_str!("../rows/noncentral_tails.csv")) {
        let (name, a) = call(&row["call"]);
        let ours = match name.as_str() {
            "nct_cdf" => noncentral_student::cdf(a[0], a[1], a[2]),
            "nct_upper" => noncentral_student::upper(a[0], a[1], a[2]),
            "ncx2_cdf" => noncentral_chi_square::cdf(a[0], a[1], a[2]),
            "ncx2_upper" => noncentral_chi_square::upper(a[0], a[1], a[2]),
            "ncf_cdf" => noncentral_fisher::cdf(a[0], a[1], a[2], a[3]),
            "ncf_upper" => noncentral_fisher::upper(a[0], a[1], a[2], a[3]),
            other => panic!("{other} is not known here"),
        };
        seen += 1;
        let exact = number(&row["chance"]);
        assert!((ours / exact - 1.0).abs() < 1e-11, "{}: {ours} {exact}", row["call"]);
    }
    assert_eq!(seen, 56);
}

/// Exact: without noncentrality they are the central ones.
#[test]
fn at_zero_they_are_the_central_ones() {
    for df in [1.0, 2.5, 7.0, 60.0, 1e4] {
        for x in [0.02, 0.9, 3.0, 25.0] {
            let near = |a: f64, b: f64| (a - b).abs() <= 1e-11 * b;
            assert!(near(noncentral_student::upper(x, df, 0.0), student::upper(x, df)));
            assert!(near(noncentral_student::cdf(-x, df, 0.0), student::cdf(-x, df)));
            let f = noncentral_fisher::upper(x, 3.0, df, 0.0);
            assert!(near(f, fisher::upper(x, 3.0, df)));
            let (below, above) = gamma::incomplete(0.5 * df, 0.5 * x);
            assert!(near(noncentral_chi_square::cdf(x, df, 0.0), below));
            assert!(near(noncentral_chi_square::upper(x, df, 0.0), above));
        }
    }
}

/// Exact: F with 1 and df degrees of freedom is t squared, chi-square with 1 is a normal value
/// squared. Each is worked out in another way than its partner.
#[test]
fn squares_of_t_and_of_normal_values_are_f_and_chi_square() {
    for delta in [0.0, 0.3, 2.0, 5.0, 11.0] {
        for t in [0.05_f64, 0.9, 2.5, 8.0] {
            for df in [1.0, 3.0, 14.0, 200.0] {
                let both = noncentral_student::upper(t, df, delta)
                    + noncentral_student::cdf(-t, df, delta);
                let f = noncentral_fisher::upper(t * t, 1.0, df, delta * delta);
                assert!((f / both - 1.0).abs() < 1e-11, "{t} {df} {delta}: {f} {both}");
            }
            let both = normal::cdf(delta - t) + normal::cdf(-t - delta);
            let square = noncentral_chi_square::upper(t * t, 1.0, delta * delta);
            assert!((square / both - 1.0).abs() < 1e-11, "{t} {delta}: {square} {both}");
        }
    }
}

#[test]
fn quantiles_undo_chances() {
    for p in [1e-8, 0.02, 0.5, 0.8, 0.999] {
        for (df, delta) in [(1.0, 0.5), (4.0, -3.0), (20.0, 6.0), (300.0, 15.0)] {
            let t = noncentral_student::quantile(p, df, delta);
            let back = noncentral_student::cdf(t, df, delta);
            assert!((back / p - 1.0).abs() < 1e-10, "t {p} {df} {delta}: {back}");
            let lambda = delta * delta;
            let f = noncentral_fisher::quantile(p, 3.0, df, lambda);
            let back = noncentral_fisher::cdf(f, 3.0, df, lambda);
            assert!((back / p - 1.0).abs() < 1e-10, "F {p} {df} {lambda}: {back}");
            let x = noncentral_chi_square::quantile(p, df, lambda);
            let back = noncentral_chi_square::cdf(x, df, lambda);
            assert!((back / p - 1.0).abs() < 1e-10, "chi-square {p} {df} {lambda}: {back}");
        }
    }
}

#[test]
fn chances_fall_with_t_rise_with_delta_and_add_to_one() {
    for df in [0.5, 1.0, 3.0, 9.0, 1e3] {
        for delta in [-30.0, -2.0, 0.0, 1.0, 7.0, 60.0] {
            let mut last = 1.0;
            for t in [-500.0, -20.0, -1.0, -1e-9, 0.0, 1e-9, 2.0, 6.0, 70.0, 1e4] {
                let above = noncentral_student::upper(t, df, delta);
                let below = noncentral_student::cdf(t, df, delta);
                let at = format!("{t} {df} {delta}: {above} {below}");
                assert!((above + below - 1.0).abs() < 1e-11, "{at}");
                assert!(above <= last + 1e-13, "{at}");
                let more = noncentral_student::upper(t, df, delta + 0.5);
                assert!(more >= above - 1e-13, "{at}: {more}");
                last = above;
            }
        }
    }
}

/// Asking for a size too can only take away; asking for one that the test implies takes nothing.
#[test]
fn a_size_that_counts_is_asked_beside_the_test() {
    for (df, delta, critical) in [(2.0, 3.0, 4.3), (10.0, 2.0, 2.5), (60.0, 0.0, 2.0)] {
        let plain = noncentral_student::beyond(critical, 0.0, df, delta);
        let mut last = plain;
        for least in [1e-9, 0.5, 1.0, 2.5, 6.0] {
            let (up, down) = noncentral_student::beyond(critical, least, df, delta);
            assert!(up <= last.0 + 1e-11 && down <= last.1 + 1e-11, "{least}: {up} {last:?}");
            last = (up, down);
        }
        let (up, _) = noncentral_student::beyond(critical, 1e-9, df, delta);
        assert!((up - plain.0).abs() < 1e-11, "{up} {plain:?}");
        // A size far beyond what the test asks decides alone.
        let (up, down) = noncentral_student::beyond(0.01, 3.0, df, delta);
        assert!((up - normal::cdf(delta - 3.0)).abs() < 1e-10);
        assert!((down - normal::cdf(-delta - 3.0)).abs() < 1e-10);
    }
}

#[test]
fn what_is_no_distribution_is_no_number() {
    assert!(noncentral_student::cdf(1.0, 0.0, 1.0).is_nan());
    assert!(noncentral_student::cdf(1.0, 3.0, f64::INFINITY).is_nan());
    assert!(noncentral_student::quantile(1.0, 3.0, 1.0).is_nan());
    assert!(noncentral_fisher::upper(1.0, 2.0, 3.0, -1.0).is_nan());
    assert!(noncentral_chi_square::quantile(0.5, -1.0, 2.0).is_nan());
    assert!(noncentral_student::beyond(-1.0, 0.0, 3.0, 1.0).0.is_nan());
    assert!(noncentral_student::upper(f64::INFINITY, 3.0, 1.0).abs() < f64::EPSILON);
    assert!(noncentral_fisher::cdf(f64::INFINITY, 2.0, 3.0, 1.0) > 0.999);
}

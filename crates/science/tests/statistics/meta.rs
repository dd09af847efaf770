//! Differences of several years put together, against metafor, statsmodels and printed examples.

use crate::table::{number, rows};
use barm_science::statistics::meta::{Between, Pooled, Study, pool};

/// A set of `meta_data.csv`.
pub(crate) fn set(name: &str) -> Vec<Study> {
    rows(include_str!("../rows/meta_data.csv"))
        .iter()
        .filter(|row| row["set"] == name)
        .map(|row| Study::known(number(&row["estimate"]), number(&row["variance"]).sqrt()))
        .collect()
}

fn between(name: &str) -> Between {
    match name {
        "REML" => Between::Reml,
        "PM" => Between::PauleMandel,
        "DL" => Between::DerSimonianLaird,
        other => panic!("{other} is not known here"),
    }
}

/// Equal to `digits` parts, or to a millionth of that near 0.
fn close(ours: f64, theirs: f64, digits: f64) -> bool {
    (ours - theirs).abs() <= digits * theirs.abs().max(1e-6)
}

/// R 4.2.2 with metafor 3.8.1: variances by three methods, the guarded interval (its "adhoc") and the
/// plain one of Hartung and Knapp where the guard does not bind, Q, I² and the Q profile.
#[test]
fn summaries_agree_with_metafor() {
    let (mut seen, mut free) = (0, 0);
    for row in rows(include_str!("../rows/meta.csv")) {
        let theirs = |name: &str| number(&row[name]);
        let pooled = pool(&set(&row["set"]), between(&row["method"])).unwrap();
        let told = pooled.between.unwrap();
        let mut held = vec![
            ("tau2", told.tau2),
            ("estimate", pooled.mean.estimate),
            ("adhoc_se", pooled.mean.se),
            ("adhoc_low", pooled.mean.low),
            ("adhoc_high", pooled.mean.high),
            ("q", told.q),
            ("q_p", told.p),
            ("i2_dl", told.i2),
            ("tau2_low", told.tau2_low),
            ("tau2_high", told.tau2_high),
            ("common", pooled.common.estimate),
            ("common_se", pooled.common.se),
        ];
        if theirs("knha_se") > 1.000_001 * theirs("se") {
            let mean = pooled.mean;
            held.extend([("knha_se", mean.se), ("knha_low", mean.low)]);
            held.extend([("knha_high", mean.high), ("knha_p", mean.p)]);
            free += 1;
        }
        for (name, ours) in held {
            let theirs = theirs(name);
            assert!(
                close(ours, theirs, 1e-8),
                "{} {} {name}: {ours} against {theirs}",
                row["set"],
                row["method"]
            );
        }
        seen += 1;
    }
    assert_eq!((seen, free), (27, 7));
}

/// statsmodels 0.15.0 (DerSimonian and Laird, Paule and Mandel, its Hartung-Knapp standard error), and
/// the restricted likelihood maximized with NumPy.
#[test]
fn summaries_agree_with_statsmodels_and_with_the_likelihood() {
    let mut seen = 0;
    for row in rows(include_str!("../rows/meta_python.csv")) {
        let theirs = |name: &str| number(&row[name]);
        let pooled = pool(&set(&row["set"]), between(&row["method"])).unwrap();
        let told = pooled.between.unwrap();
        let guarded = theirs("se").max(theirs("knha_se"));
        for (name, ours, theirs) in [
            ("tau2", told.tau2, theirs("tau2")),
            ("estimate", pooled.mean.estimate, theirs("estimate")),
            ("se", pooled.mean.se, guarded),
            ("q", told.q, theirs("q")),
            ("i2", told.i2, theirs("i2").max(0.0)),
            ("common", pooled.common.estimate, theirs("common")),
            ("common_se", pooled.common.se, theirs("common_se")),
        ] {
            let place = format!("{} {} {name}", row["set"], row["method"]);
            assert!(close(ours, theirs, 1e-8), "{place}: {ours} against {theirs}");
        }
        seen += 1;
    }
    assert_eq!(seen, 24);
}

/// The trials of BCG (Colditz et al. 1994) as handbooks print them, to their digits and from memory:
/// REML 0.3132, mean −0.7145 with −1.1084 to −0.3206 by Hartung and Knapp, Q 152.233, variance
/// interval 0.1197 to 1.1115; DerSimonian and Laird 0.3088, −0.7141, I² 92.12 %; the common mean
/// −0.4303 with standard error 0.0405.
#[test]
fn the_bcg_trials_come_out_as_printed() {
    let near = |ours: f64, printed: f64| (ours - printed).abs() <= 0.000_051;
    let reml = pool(&set("bcg"), Between::Reml).unwrap();
    let told = reml.between.unwrap();
    assert!(near(told.tau2, 0.3132) && near(reml.mean.estimate, -0.7145), "{reml:?}");
    assert!(near(reml.mean.low, -1.1084) && near(reml.mean.high, -0.3206), "{reml:?}");
    assert!((told.q - 152.233).abs() < 0.000_51 && (told.df - 12.0).abs() < 1e-12);
    assert!(near(told.tau2_low, 0.1197) && near(told.tau2_high, 1.1115), "{told:?}");
    let moments = pool(&set("bcg"), Between::DerSimonianLaird).unwrap();
    let told = moments.between.unwrap();
    assert!(near(told.tau2, 0.3088) && near(moments.mean.estimate, -0.7141), "{moments:?}");
    assert!(near(told.i2, 0.9212), "{told:?}");
    assert!(near(moments.common.estimate, -0.4303) && near(moments.common.se, 0.0405));
}

/// Teacher expectancy (Raudenbush & Bryk 1985; Raudenbush 2009 as recalled): REML variance 0.0188,
/// mean 0.0837, Q 35.83 with 18 degrees of freedom and chance 0.0074.
#[test]
fn teacher_expectancy_comes_out_as_printed() {
    let pooled = pool(&set("expectancy"), Between::Reml).unwrap();
    let told = pooled.between.unwrap();
    assert!((told.tau2 - 0.0188).abs() < 0.000_051, "{told:?}");
    assert!((pooled.mean.estimate - 0.0837).abs() < 0.000_051, "{pooled:?}");
    assert!((told.q - 35.83).abs() < 0.005_1 && (told.p - 0.0074).abs() < 0.000_051);
}

/// By hand: two years 6.3 apart with variances 1.69 and 4.84. Whatever the method, the variance between
/// them is half the square of the gap less the mean variance: 19.845 − 3.265 = 16.58.
#[test]
fn two_years_by_hand() {
    let years = [Study::known(3.1, 1.3), Study::known(9.4, 2.2)];
    for how in [Between::Reml, Between::PauleMandel] {
        let pooled = pool(&years, how).unwrap();
        let told = pooled.between.unwrap();
        assert!((told.tau2 - 16.58).abs() < 1e-12, "{how:?}: {told:?}");
        // Q = 6.3²/(1.69 + 4.84).
        assert!((told.q - 39.69 / 6.53).abs() < 1e-13);
        // Student's t with one degree of freedom is 12.706.
        let half = 0.5 * (pooled.mean.high - pooled.mean.low);
        assert!((half / pooled.mean.se - 12.706_204_736).abs() < 1e-8);
        assert_eq!(pooled.next_year(0.0), None);
    }
}

/// Equal to a formula written out: the interval for next year, with 5 degrees of freedom for 7 classes
/// (t of 2.570 582).
#[test]
fn next_year_lies_in_a_wider_interval() {
    let pooled: Pooled = pool(&set("classes"), Between::Reml).unwrap();
    let told = pooled.between.unwrap();
    let mut last = 0.0;
    for own in [0.0, 1.5, 6.0] {
        let (low, high) = pooled.next_year(own).unwrap();
        let spread = (told.tau() * told.tau() + pooled.mean.se.powi(2) + own * own).sqrt();
        assert!((0.5 * (high - low) / spread - 2.570_581_836).abs() < 1e-8);
        assert!((0.5 * (high + low) - pooled.mean.estimate).abs() < 1e-12);
        assert!(high - low > last && low < pooled.mean.low && high > pooled.mean.high);
        last = high - low;
    }
    assert_eq!(pooled.next_year(-1.0), None);
    assert_eq!(pooled.next_year(f64::NAN), None);
}

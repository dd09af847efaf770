//! Differences of several years put together: what must hold for any years at all.

use crate::meta::set;
use crate::size::counts;
use barm_science::statistics::chance::Chance;
use barm_science::statistics::distribution::{gamma, student};
use barm_science::statistics::meta::{Between, Pooled, Study, pool};
use barm_science::statistics::{two_sample, welch_anova};

pub(crate) const ALL: [Between; 3] =
    [Between::Reml, Between::PauleMandel, Between::DerSimonianLaird];

/// Years whose true differences vary by `tau`.
pub(crate) fn years(chance: &mut Chance, count: usize, mean: f64, tau: f64) -> Vec<Study> {
    (0..count)
        .map(|_| {
            let se = (0.7 * chance.normal()).exp();
            Study::known(mean + tau * chance.normal() + se * chance.normal(), se)
        })
        .collect()
}

fn weights(studies: &[Study], tau2: f64) -> Vec<f64> {
    studies.iter().map(|s| 1.0 / (s.se * s.se + tau2)).collect()
}

/// Q, and the slope of the restricted likelihood, written out anew.
fn q_and_slope(studies: &[Study], tau2: f64) -> (f64, f64) {
    let w = weights(studies, tau2);
    let sum: f64 = w.iter().sum();
    let mean = w.iter().zip(studies).map(|(w, s)| w * s.estimate).sum::<f64>() / sum;
    let off = |s: &Study| (s.estimate - mean) * (s.estimate - mean);
    let q = w.iter().zip(studies).map(|(w, s)| w * off(s)).sum();
    let squares: f64 = w.iter().map(|w| w * w).sum();
    let twice: f64 = w.iter().zip(studies).map(|(w, s)| w * w * off(s)).sum();
    (q, twice - sum + squares / sum)
}

fn likelihood(studies: &[Study], tau2: f64) -> f64 {
    let w = weights(studies, tau2);
    let logs: f64 = w.iter().map(|w| w.ln()).sum();
    0.5 * (logs - w.iter().sum::<f64>().ln() - q_and_slope(studies, tau2).0)
}

/// The slope is 0 at the answer, or points down at 0; no other variance is likelier.
#[test]
fn the_restricted_likelihood_is_at_its_top() {
    let mut chance = Chance::from_seed(1);
    let mut none = 0;
    for turn in 0..counts(60, 300, 5000) {
        let count = 2 + turn % 9;
        let studies = years(&mut chance, count, 3.0, 0.4 * (turn % 5) as f64);
        let tau2 = pool(&studies, Between::Reml).unwrap().between.unwrap().tau2;
        let (_, slope) = q_and_slope(&studies, tau2);
        let size: f64 = weights(&studies, tau2).iter().sum();
        if tau2 > 0.0 {
            assert!(slope.abs() < 1e-9 * size, "{turn}: {tau2} {slope}");
        } else {
            assert!(slope <= 1e-12 * size, "{turn}: {slope}");
            none += 1;
        }
        let best = likelihood(&studies, tau2);
        for rung in -40..40 {
            let other = 1.3_f64.powi(rung);
            assert!(likelihood(&studies, other) <= best + 1e-9, "{turn}: {tau2} {other}");
        }
    }
    assert!(none > 5, "{none}");
}

/// Paule and Mandel's variance makes Q what chance would leave; the ends of the interval make it the
/// 2.5 % points of chi-square (by their chance, not by the quantile that found them).
#[test]
fn q_is_what_it_should_be_at_each_answer() {
    let mut chance = Chance::from_seed(2);
    for turn in 0..counts(60, 300, 5000) {
        let count = 2 + turn % 12;
        let studies = years(&mut chance, count, -40.0, 0.5 * (turn % 4) as f64);
        let told = pool(&studies, Between::PauleMandel).unwrap().between.unwrap();
        let df = (count - 1) as f64;
        let q = |tau2| q_and_slope(&studies, tau2).0;
        if told.tau2 > 0.0 {
            assert!((q(told.tau2) / df - 1.0).abs() < 1e-9, "{turn}: {told:?}");
        } else {
            assert!(told.q <= df * (1.0 + 1e-12));
        }
        let upper = |tau2| gamma::incomplete(0.5 * df, 0.5 * q(tau2)).1;
        for (end, beyond) in [(told.tau2_low, 0.025), (told.tau2_high, 0.975)] {
            if end > 0.0 {
                assert!((upper(end) / beyond - 1.0).abs() < 1e-8, "{turn}: {told:?}");
            } else {
                assert!(upper(0.0) >= beyond * (1.0 - 1e-9), "{turn}: {told:?}");
            }
        }
        assert!(told.tau2_low <= told.tau2 + 1e-12 && told.tau2 <= told.tau2_high + 1e-12);
        assert!((told.p - upper(0.0)).abs() < 1e-9);
    }
}

/// Exact: years that agree differ by nothing, and the guard gives the plain standard error.
#[test]
fn equal_years_differ_by_nothing() {
    for count in [2_usize, 3, 9, 60] {
        for how in ALL {
            let pooled = pool(&vec![Study::known(4.2, 1.5); count], how).unwrap();
            let told = pooled.between.unwrap();
            for zero in [told.tau2, told.i2, told.q, told.tau2_low, told.tau2_high, told.h2] {
                assert!(zero.abs() < 1e-300, "{told:?}");
            }
            let k = count as f64;
            assert!((pooled.mean.estimate - 4.2).abs() < 1e-14 && (told.p - 1.0).abs() < 1e-14);
            assert!((pooled.mean.se - 1.5 / k.sqrt()).abs() < 1e-14);
            let half = student::upper_quantile(0.025, k - 1.0) * pooled.mean.se;
            assert!((pooled.mean.high - 4.2 - half).abs() < 1e-12);
            assert!(pooled.shares.iter().all(|share| (share * k - 1.0).abs() < 1e-14));
        }
    }
}

/// Exact: with equal standard errors and years that differ, Hartung and Knapp's interval is that of one
/// sample by Student, whatever the method.
#[test]
fn equally_sure_years_make_a_sample() {
    let values = [2.0, 9.5, 4.0, 7.25, 12.0, -3.0];
    let studies: Vec<Study> = values.iter().map(|&v| Study::known(v, 1.1)).collect();
    let sample = two_sample::paired(&values, &[0.0; 6]).unwrap();
    for how in ALL {
        let mean = pool(&studies, how).unwrap().mean;
        for (ours, theirs) in [
            (mean.estimate, sample.difference),
            (mean.se, sample.se),
            (mean.p, sample.p),
            (mean.low, sample.low),
            (mean.high, sample.high),
        ] {
            assert!((ours - theirs).abs() < 1e-12, "{how:?}: {ours} {theirs}");
        }
    }
}

/// Exact: means of levels with the degrees of freedom of their spreads give Welch's F.
#[test]
fn with_degrees_of_freedom_q_is_welchs_f() {
    let levels: [&[f64]; 4] =
        [&[3.0, 5.5, 4.1], &[6.0, 9.0, 7.7, 6.4, 8.8], &[2.0, 2.4], &[5.0, 4.0, 7.0, 11.0]];
    let study = |values: &&[f64]| {
        let n = values.len() as f64;
        let mean = values.iter().sum::<f64>() / n;
        let squares: f64 = values.iter().map(|v| (v - mean) * (v - mean)).sum();
        Study::estimated(mean, (squares / (n - 1.0) / n).sqrt(), n - 1.0)
    };
    let studies: Vec<Study> = levels.iter().map(study).collect();
    let sets: Vec<Vec<f64>> = levels.iter().map(|l| l.to_vec()).collect();
    let welch = welch_anova::welch_anova(&sets).unwrap().p;
    let told = pool(&studies, Between::Reml).unwrap().between.unwrap();
    assert!((told.p / welch - 1.0).abs() < 1e-10, "{} {welch}", told.p);
    // Endless degrees of freedom are none given.
    let endless: Vec<Study> =
        studies.iter().map(|s| Study { df: Some(f64::INFINITY), ..*s }).collect();
    let known: Vec<Study> = studies.iter().map(|s| Study { df: None, ..*s }).collect();
    assert_eq!(pool(&endless, Between::Reml), pool(&known, Between::Reml));
}

fn near(ours: f64, theirs: f64) -> bool {
    (ours - theirs).abs() <= 1e-9 * theirs.abs().max(1.0)
}

fn told(pooled: &Pooled) -> Vec<f64> {
    let between = pooled.between.unwrap();
    vec![
        pooled.mean.estimate,
        pooled.mean.low,
        pooled.mean.high,
        pooled.common.low,
        between.tau(),
        between.tau2_high.sqrt(),
    ]
}

/// The unit, what is added to all and the order of years change nothing.
#[test]
fn unit_origin_and_order_do_not_matter() {
    let mut chance = Chance::from_seed(3);
    for turn in 0..counts(30, 100, 1000) {
        let studies = years(&mut chance, 2 + turn % 7, 5.0, 1.0);
        for how in ALL {
            let first = told(&pool(&studies, how).unwrap());
            for scale in [1e-30, 0.1, 1e40] {
                let scaled: Vec<Study> = studies
                    .iter()
                    .map(|s| Study::known(scale * s.estimate, scale * s.se))
                    .collect();
                let scaled = told(&pool(&scaled, how).unwrap());
                assert!(first.iter().zip(&scaled).all(|(a, b)| near(b / scale, *a)), "{turn}");
            }
            let mut turned = studies.clone();
            turned.reverse();
            turned.rotate_left(1);
            let turned = told(&pool(&turned, how).unwrap());
            assert!(first.iter().zip(&turned).all(|(a, b)| near(*b, *a)), "{turn}");
            let moved: Vec<Study> =
                studies.iter().map(|s| Study::known(s.estimate + 1000.0, s.se)).collect();
            let moved = told(&pool(&moved, how).unwrap());
            assert!(first[..4].iter().zip(&moved).all(|(a, b)| near(b - 1000.0, *a)));
            assert!(first[4..].iter().zip(&moved[4..]).all(|(a, b)| near(*b, *a)));
        }
    }
}

/// The interval told is never narrower than the plain one.
#[test]
fn the_guard_holds() {
    let mut chance = Chance::from_seed(4);
    let (mut bound, mut plain) = (0, 0);
    for turn in 0..counts(100, 1000, 20_000) {
        let mut studies = years(&mut chance, 2 + turn % 6, 0.0, 0.3);
        let few = turn % 3 == 0;
        if few {
            studies.iter_mut().for_each(|s| s.df = Some(1.0 + chance.below(3) as f64));
        }
        let pooled = pool(&studies, Between::Reml).unwrap();
        let tau2 = pooled.between.unwrap().tau2;
        let se = 1.0 / weights(&studies, tau2).iter().sum::<f64>().sqrt();
        let half = 0.5 * (pooled.mean.high - pooled.mean.low);
        assert!(half >= 1.959_963 * se * (1.0 - 1e-9) && pooled.mean.se >= se * (1.0 - 1e-9));
        bound += usize::from(pooled.mean.se < se * (1.0 + 1e-12));
        let df = (studies.len() - 1) as f64;
        plain += usize::from((pooled.mean.df - df).abs() > 1e-9);
        // With equal doubt, the common mean is known better than any year.
        assert!(few || pooled.common.df.is_infinite());
    }
    assert!(bound > 10 && plain > 0, "{bound} {plain}");
}

/// All sixty classes of a district in far less than a second.
#[test]
fn sixty_classes_take_no_time() {
    let mut chance = Chance::from_seed(7);
    let studies = years(&mut chance, 60, 4.0, 2.0);
    let start = std::time::Instant::now();
    for _ in 0..20 {
        assert!(pool(&studies, Between::Reml).unwrap().between.unwrap().tau2 > 0.5);
    }
    assert!(start.elapsed().as_secs_f64() < 10.0);
    assert_eq!(set("classes").len(), 7);
}

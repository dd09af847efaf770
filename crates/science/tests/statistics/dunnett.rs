//! Comparisons with one reference against R, SciPy and textbooks.

use crate::bags::bags;
use crate::experiments::{by_treatment, experiment, near, r_values};
use crate::table::{number, rows};
use barm_science::statistics::compare::{Compared, Comparison, Estimate, How, compare};
use barm_science::statistics::distribution::multivariate_t::LargestOfSeveral;

fn estimate(answer: &Comparison) -> Estimate {
    answer.contrasts[0].outcome.clone().unwrap()
}

/// Half width of the intervals in standard errors.
fn factor(answer: &Comparison) -> f64 {
    estimate(answer).factor
}

/// R 4.2.2 and multcomp (differences and standard errors), SciPy 1.17.1 quadrature (critical
/// values and adjusted p) on four of R's data sets.
#[test]
fn dunnetts_comparisons_agree() {
    let outside = rows(include_str!("../rows/dunnett.csv"));
    for set in ["aov_PlantGrowth", "aov_InsectSprays", "aov_chickwts", "aov_warpbreaks_tension"]
    {
        let trials = experiment(set);
        let names: Vec<String> =
            by_treatment(&trials).into_iter().map(|(name, _)| name).collect();
        let first = if set == "aov_chickwts" { "casein" } else { &names[0] };
        let reference = names.iter().position(|name| name == first).unwrap();
        let answer =
            compare(&bags(&trials), &Compared::Reference(reference), &How::read_with(0.0));
        let of = |comparison: &str| {
            let row = outside
                .iter()
                .find(|row| row["case"] == set && row["comparison"] == comparison);
            number(&row.unwrap()["value_quadrature"])
        };
        near(set, factor(&answer), of(""), 1e-9, 0.0);
        let r = r_values(set);
        let correlation: Vec<Vec<f64>> = answer
            .contrasts
            .iter()
            .map(|a| {
                let n = |x: usize| by_treatment(&trials)[x].1.len() as f64;
                let share = |x: usize| (n(x) / (n(x) + n(reference))).sqrt();
                answer
                    .contrasts
                    .iter()
                    .map(|b| share(a.treatment) * share(b.treatment))
                    .collect()
            })
            .collect();
        let several = LargestOfSeveral::new(&correlation, estimate(&answer).df, 1);
        for contrast in &answer.contrasts {
            let ours = contrast.outcome.clone().unwrap();
            let other = &names[contrast.treatment];
            let wanted = |what: &str| {
                r[&("glht Dunnett".to_owned(), format!("{other} - {first} {what}"))]
            };
            near(other, ours.difference, wanted("estimate"), 1e-12, 1.0);
            near(other, ours.se, wanted("se"), 1e-13, 0.0);
            let p = 1.0 - several.within((ours.difference / ours.se).abs()).chance;
            near(other, p, of(&format!("{other}-{first}")), 1e-10, 1.0);
        }
    }
}

/// Dunnett (1955), blood counts (unequal numbers) and breaking strength of fabric (means 50, 61,
/// 52, 45, s² 19 with 8 degrees of freedom, as printed), with factors by quadrature in SciPy 1.17.1;
/// Montgomery, cotton, printed: d 2.65, allowance 4.76 for 4 treatments and 20 degrees of freedom;
/// Westfall et al. (1999), recovery, printed: t −1.330, −4.656, −1.884.
#[test]
fn dunnetts_textbook_examples_are_met() {
    let against = |set: &str, reference: &str| {
        let trials = experiment(set);
        let names: Vec<String> =
            by_treatment(&trials).into_iter().map(|(name, _)| name).collect();
        let reference = names.iter().position(|name| name == reference).unwrap();
        compare(&bags(&trials), &Compared::Reference(reference), &How::read_with(0.0))
    };
    let estimates = |answer: &Comparison| -> Vec<Estimate> {
        answer.contrasts.iter().map(|c| c.outcome.clone().unwrap()).collect()
    };
    let blood = against("blood", "control");
    near("factor", factor(&blood), 2.513_482_903_596, 1e-11, 0.0);
    near("s²", blood.variances.unwrap().bag.powi(2), 1.380_523, 1e-6, 0.0);
    for (ours, (difference, bags)) in estimates(&blood).iter().zip([(0.65, 4.0), (2.628, 5.0)])
    {
        let half = 2.513_482_903_596 * f64::sqrt(1.380_523 * (1.0 / 6.0 + 1.0 / bags));
        near("difference", ours.difference, difference, 1e-12, 0.0);
        near("low", ours.low, difference - half, 1e-5, 0.0);
        near("high", ours.high, difference + half, 1e-5, 0.0);
    }
    let fabric = against("fabric", "standard");
    near("s", fabric.variances.unwrap().bag, 19.0_f64.sqrt(), 1e-13, 0.0);
    let half = 2.879_661_505_119_6 * (19.0 * 2.0 / 3.0_f64).sqrt();
    for (ours, difference) in estimates(&fabric).iter().zip([11.0, 2.0, -5.0]) {
        near("low", ours.low, difference - half, 1e-12, 20.0);
        near("high", ours.high, difference + half, 1e-12, 20.0);
        assert_eq!(ours.low > 0.0 || ours.high < 0.0, difference > 10.0);
    }
    let cotton = against("cotton", "35");
    near("factor", factor(&cotton), 2.65, 0.005 / 2.65, 0.0);
    for ours in estimates(&cotton) {
        near("allowance", 0.5 * (ours.high - ours.low), 4.76, 0.005 / 4.76, 0.0);
    }
    let recovery = against("recovery", "b0");
    for (ours, printed) in estimates(&recovery).iter().zip([-1.330, -4.656, -1.884]) {
        near("t", ours.difference / ours.se, printed, 0.0005, 0.0);
    }
}

/// All pairs at once (Tukey's comparisons), as printed: NIST/SEMATECH e-Handbook 7.4.7.1 (with q
/// rounded to 4.05) and Montgomery & Runger, example 13-1 (with q rounded to 3.96).
#[test]
fn all_pairs_of_the_handbooks_examples_are_met() {
    let handbook: [(usize, usize, f64, f64); 6] = [
        (1, 0, 0.29, 4.47),
        (2, 0, 1.13, 5.31),
        (0, 3, -2.25, 1.93),
        (1, 2, -2.93, 1.25),
        (1, 3, 0.13, 4.31),
        (2, 3, 0.97, 5.15),
    ];
    let hardwood = [
        (1, 0, 1.542, 9.791),
        (2, 1, -2.791, 5.458),
        (3, 2, 0.042, 8.291),
        // Not printed there, but part of all pairs.
        (2, 0, f64::NAN, f64::NAN),
        (3, 0, f64::NAN, f64::NAN),
        (3, 1, f64::NAN, f64::NAN),
    ];
    for (set, printed, within) in
        [("nist-resistance", &handbook, 0.0105), ("hardwood", &hardwood, 0.003)]
    {
        let pairs = printed.iter().map(|&(a, b, ..)| (a, b)).collect();
        let answer =
            compare(&bags(&experiment(set)), &Compared::Pairs(pairs), &How::read_with(0.0));
        for (contrast, &(a, b, low, high)) in answer.contrasts.iter().zip(printed) {
            let ours = contrast.outcome.clone().unwrap();
            if low.is_finite() {
                assert!((ours.low - low).abs() < within, "{set} {a} {b}: {ours:?}");
                assert!((ours.high - high).abs() < within, "{set} {a} {b}: {ours:?}");
            }
        }
    }
}

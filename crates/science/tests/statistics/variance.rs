//! Analysis of variance against NIST, R and textbooks.

use crate::experiments::{Trial, by_treatment, experiment, near, numbered, r_values};
use crate::table::{number, rows};
use barm_science::statistics::anova::{AnovaError, one_way, table};
use barm_science::statistics::distribution::studentized_range::StudentizedRange;
use barm_science::statistics::linear::fit;

/// R 4.2.2, `summary(aov(y ~ g))`, on four of its data sets.
#[test]
fn one_way_tables_agree_with_r() {
    for set in ["aov_PlantGrowth", "aov_InsectSprays", "aov_chickwts", "aov_warpbreaks_tension"]
    {
        let r = r_values(set);
        let wanted = |quantity: &str| r[&("summary(aov(y~g))".into(), quantity.into())];
        let groups: Vec<Vec<f64>> =
            by_treatment(&experiment(set)).into_iter().map(|(_, values)| values).collect();
        let ours = one_way(&groups).unwrap();
        let term = ours.terms[0];
        near(set, term.df as f64, wanted("between Df"), 0.0, 0.0);
        near(set, ours.rest.df as f64, wanted("within Df"), 0.0, 0.0);
        near(set, term.ss, wanted("between Sum Sq"), 1e-13, 0.0);
        near(set, ours.rest.ss, wanted("within Sum Sq"), 1e-13, 0.0);
        near(set, term.f, wanted("between F value"), 1e-12, 0.0);
        near(set, term.p, wanted("between Pr(>F)"), 1e-10, 0.0);
    }
}

/// NIST/SEMATECH e-Handbook 7.4.3.3, printed: 27.897, 2, 13.949; 17.452, 12, 1.454; F 9.59.
#[test]
fn the_handbooks_resistance_table_is_met() {
    let groups = by_treatment(&experiment("nist-resistance"));
    let three: Vec<Vec<f64>> = groups.into_iter().take(3).map(|(_, values)| values).collect();
    let ours = one_way(&three).unwrap();
    near("treatments", ours.terms[0].ss, 27.897, 0.0005 / 27.897, 0.0);
    near("mean square", ours.terms[0].ms, 13.949, 0.0005 / 13.949, 0.0);
    near("error", ours.rest.ss, 17.452, 0.0005 / 17.452, 0.0);
    near("mean square error", ours.rest.ms, 1.454, 0.0005 / 1.454, 0.0);
    near("F", ours.terms[0].f, 9.59, 0.005 / 9.59, 0.0);
    assert_eq!((ours.terms[0].df, ours.rest.df), (2, 12));
}

/// Montgomery, *Design and Analysis of Experiments*, cotton: 475.760, 161.200, F 14.757; Montgomery
/// & Runger, hardwood: 382.79, 130.17, F 19.61.
#[test]
fn montgomerys_tables_are_met() {
    for (set, treatments, error, f) in
        [("cotton", 475.76, 161.20, 14.757), ("hardwood", 382.79, 130.17, 19.61)]
    {
        let groups: Vec<Vec<f64>> =
            by_treatment(&experiment(set)).into_iter().map(|(_, values)| values).collect();
        let ours = one_way(&groups).unwrap();
        near(set, ours.terms[0].ss, treatments, 0.005 / treatments, 0.0);
        near(set, ours.rest.ss, error, 0.005 / error, 0.0);
        near(set, ours.terms[0].f, f, 0.005 / f, 0.0);
    }
}

/// Columns of 0 and 1 for each level but the first.
fn levels(trials: &[Trial], level: impl Fn(&Trial) -> &str) -> Vec<Vec<f64>> {
    let numbers = numbered(trials.iter().map(level));
    let most = *numbers.iter().max().unwrap();
    let column = |wanted| numbers.iter().map(|&n| f64::from(u8::from(n == wanted))).collect();
    (1..=most).map(column).collect()
}

/// Products of each column of one set with each of another.
fn crossed(a: &[Vec<f64>], b: &[Vec<f64>]) -> Vec<Vec<f64>> {
    let product = |x: &Vec<f64>, y: &Vec<f64>| x.iter().zip(y).map(|(x, y)| x * y).collect();
    a.iter().flat_map(|x| b.iter().map(move |y| product(x, y))).collect()
}

/// Sequential table of these terms, after an intercept.
fn sequential(
    trials: &[Trial],
    terms: &[Vec<Vec<f64>>],
) -> barm_science::statistics::anova::Anova {
    let values: Vec<f64> = trials.iter().map(|trial| trial.value).collect();
    let mut columns = vec![vec![1.0; values.len()]];
    let mut ranges = Vec::new();
    for term in terms {
        ranges.push(columns.len()..columns.len() + term.len());
        columns.extend(term.iter().cloned());
    }
    table(&fit(&columns, &values).unwrap(), &ranges, 100.0).unwrap()
}

/// Box, Hunter & Hunter (1978), penicillin: blocks 264 (4), treatments 70 (3), error 226 (12);
/// F 3.51 and 1.24 from rounded mean squares, 3.50442 and 1.23894 exactly.
#[test]
fn the_penicillin_blocks_table_is_met() {
    let trials = experiment("penicillin");
    let ours = sequential(
        &trials,
        &[levels(&trials, |t| &t.block), levels(&trials, |t| &t.treatment)],
    );
    near("blocks", ours.terms[0].ss, 264.0, 1e-13, 0.0);
    near("treatments", ours.terms[1].ss, 70.0, 1e-12, 0.0);
    near("error", ours.rest.ss, 226.0, 1e-12, 0.0);
    assert_eq!((ours.terms[0].df, ours.terms[1].df, ours.rest.df), (4, 3, 12));
    near("F blocks", ours.terms[0].f, 3.504_42, 2e-6, 0.0);
    near("F treatments", ours.terms[1].f, 1.238_94, 4e-6, 0.0);
    near("p blocks", ours.terms[0].p, 0.040_746, 2e-5, 0.0);
    near("p treatments", ours.terms[1].p, 0.338_658, 2e-6, 0.0);
}

/// R 4.2.2, `aov(yield ~ block + N * P * K)` (blocks hide the threefold interaction) and
/// `aov(breaks ~ wool * tension)`.
#[test]
fn factorial_tables_agree_with_r() {
    let npk = experiment("fac_npk");
    let [n, p, k] = [
        levels(&npk, |t| &t.treatment),
        levels(&npk, |t| &t.second),
        levels(&npk, |t| &t.third),
    ];
    let terms = [
        levels(&npk, |t| &t.block),
        n.clone(),
        p.clone(),
        k.clone(),
        crossed(&n, &p),
        crossed(&n, &k),
        crossed(&p, &k),
    ];
    agree(
        "fac_npk",
        "summary(aov(yield ~ block + N * P * K))",
        &["block", "N", "P", "K", "N:P", "N:K", "P:K"],
        &sequential(&npk, &terms),
    );
    let breaks = experiment("fac_warpbreaks");
    let (wool, tension) = (levels(&breaks, |t| &t.treatment), levels(&breaks, |t| &t.second));
    let both = crossed(&wool, &tension);
    agree(
        "fac_warpbreaks",
        "summary(aov(breaks ~ wool * tension))",
        &["wool", "tension", "wool:tension"],
        &sequential(&breaks, &[wool, tension, both]),
    );
}

fn agree(
    case: &str,
    call: &str,
    names: &[&str],
    ours: &barm_science::statistics::anova::Anova,
) {
    let r = r_values(case);
    let wanted = |term: &str, what: &str| r[&(call.to_owned(), format!("{term} {what}"))];
    for (term, name) in ours.terms.iter().zip(names) {
        near(name, term.df as f64, wanted(name, "Df"), 0.0, 0.0);
        near(name, term.ss, wanted(name, "Sum Sq"), 1e-11, 1.0);
        near(name, term.f, wanted(name, "F value"), 1e-11, 1.0);
        near(name, term.p, wanted(name, "Pr(>F)"), 1e-10, 0.0);
    }
    near("rest", ours.rest.df as f64, wanted("Residuals", "Df"), 0.0, 0.0);
    near("rest", ours.rest.ss, wanted("Residuals", "Sum Sq"), 1e-12, 0.0);
}

/// SciPy 1.17.1 (p of Tukey's comparisons on five sets) and printed tables: e-Handbook 7.4.7.1
/// (q 4.05), Montgomery & Runger (q 3.96).
#[test]
fn tukeys_comparisons_agree() {
    for row in rows(include_str!("../rows/tukey.csv")) {
        let groups = by_treatment(&experiment(&row["case"]));
        let (a, b) = row["pair"].split_once('-').unwrap();
        let of = |name: &str| &groups.iter().find(|(n, _)| n == name).unwrap().1;
        let all: Vec<Vec<f64>> = groups.iter().map(|(_, values)| values.clone()).collect();
        let rest = one_way(&all).unwrap().rest;
        let mean = |v: &[f64]| v.iter().sum::<f64>() / v.len() as f64;
        let (x, y) = (of(a), of(b));
        let se = (0.5 * rest.ms * (1.0 / x.len() as f64 + 1.0 / y.len() as f64)).sqrt();
        let q = (mean(x) - mean(y)).abs() / se;
        let range = StudentizedRange::new(u16::try_from(all.len()).unwrap(), rest.df as f64);
        let wanted = number(&row["p_adj_scipy_studentized_range"]);
        near(&format!("{} {}", row["case"], row["pair"]), range.upper(q), wanted, 1e-11, 1.0);
    }
    near("q 4, 16", StudentizedRange::new(4, 16.0).quantile(0.95), 4.05, 0.005 / 4.05, 0.0);
    near("q 4, 20", StudentizedRange::new(4, 20.0).quantile(0.95), 3.96, 0.005 / 3.96, 0.0);
}

#[test]
fn tables_that_cannot_be_made_say_why() {
    let one_each = [vec![1.0], vec![2.0]];
    assert_eq!(one_way(&one_each), Err(AnovaError::NoRest));
    let alike = [vec![3.3, 3.3], vec![3.3, 3.3]];
    assert_eq!(one_way(&alike), Err(AnovaError::NoSpread));
    assert_eq!(one_way(&[vec![1.0, 2.0]]), Err(AnovaError::NothingToTest { term: 0 }));
    assert_eq!(one_way(&[vec![1.0, 2.0], vec![]]), Err(AnovaError::EmptyGroup { group: 1 }));
    assert!(matches!(one_way(&[]), Err(AnovaError::Fit(_))));
    for wild in [f64::NAN, f64::INFINITY, 1e308] {
        assert!(matches!(one_way(&[vec![1.0, wild], vec![2.0, 3.0]]), Err(AnovaError::Fit(_))));
    }
}

//! General comparisons of a table against R, SciPy, NIST and textbooks.

use crate::experiments::{Trial, experiment, near, numbered, r_values};
use crate::table::{number, rows};
use barm_science::statistics::levels::{Asked, Difference, Levels, Measured, levels};

/// Rows of an experiment; levels and blocks numbered in the order of their first row.
pub(crate) fn measured(trials: &[Trial]) -> Vec<Measured> {
    let of = |level: &dyn Fn(&Trial) -> String| {
        let texts: Vec<String> = trials.iter().map(level).collect();
        numbered(texts.iter().map(String::as_str))
    };
    let (treatments, blocks) = (of(&|t| t.treatment.clone()), of(&|t| t.block.clone()));
    trials
        .iter()
        .zip(treatments.iter().zip(&blocks))
        .map(|(trial, (&level, &block))| Measured { value: trial.value, level, block })
        .collect()
}

fn names(trials: &[Trial]) -> Vec<String> {
    let mut names: Vec<String> = Vec::new();
    for trial in trials {
        if !names.contains(&trial.treatment) {
            names.push(trial.treatment.clone());
        }
    }
    names
}

pub(crate) fn asked(in_blocks: bool, control: Option<usize>) -> Asked {
    Asked { in_blocks, control, seed: 1 }
}

const SETS: [&str; 4] =
    ["aov_PlantGrowth", "aov_InsectSprays", "aov_chickwts", "aov_warpbreaks_tension"];

/// The difference of two named levels, first less second.
fn of_pair(list: &[Difference], a: usize, b: usize) -> [f64; 4] {
    let sign = |d: &Difference, s: f64| {
        let (low, high) = if s > 0.0 { (d.low, d.high) } else { (-d.high, -d.low) };
        [s * d.difference, low, high, d.p]
    };
    let found = list.iter().find_map(|d| match (d.level, d.from) {
        (x, y) if (x, y) == (a, b) => Some(sign(d, 1.0)),
        (x, y) if (x, y) == (b, a) => Some(sign(d, -1.0)),
        _ => None,
    });
    found.expect("every pair is there once")
}

/// R 4.2.2: `summary(aov)`, `oneway.test`, `kruskal.test`, means by level, `TukeyHSD`'s differences and
/// intervals (its p by SciPy 1.17.1, since R's studentized range is off at few degrees of freedom).
#[test]
fn four_data_sets_agree_with_r_and_scipy() {
    for set in SETS {
        let (trials, r) = (experiment(set), r_values(set));
        let wanted = |call: &str, what: &str| r[&(call.to_owned(), what.to_owned())];
        let ours = levels(&measured(&trials), asked(false, None)).unwrap();
        let names = names(&trials);
        let aov = "summary(aov(y~g))";
        near(set, ours.anova.f, wanted(aov, "between F value"), 1e-12, 0.0);
        near(set, ours.anova.p, wanted(aov, "between Pr(>F)"), 1e-10, 0.0);
        near(set, ours.anova.df as f64, wanted(aov, "between Df"), 0.0, 0.0);
        near(set, ours.rest.df as f64, wanted(aov, "within Df"), 0.0, 0.0);
        let welch = ours.welch.unwrap();
        let call = "oneway.test(y~g,var.equal=FALSE)";
        near(set, welch.f, wanted(call, "F"), 1e-12, 0.0);
        near(set, welch.df1, wanted(call, "num df"), 1e-15, 0.0);
        near(set, welch.df2, wanted(call, "denom df"), 1e-12, 0.0);
        near(set, welch.p, wanted(call, "p"), 1e-10, 0.0);
        let by_ranks = ours.by_ranks.unwrap();
        near(set, by_ranks.h, wanted("kruskal.test(y~g)", "chi2"), 1e-12, 0.0);
        near(set, by_ranks.df as f64, wanted("kruskal.test(y~g)", "df"), 0.0, 0.0);
        near(set, by_ranks.p, wanted("kruskal.test(y~g)", "p"), 1e-10, 0.0);
        let tukey: Vec<_> = rows(include_str!("../rows/tukey.csv"))
            .into_iter()
            .filter(|row| row["case"] == set)
            .collect();
        assert_eq!(tukey.len(), ours.pairs.len(), "{set}: every pair");
        for row in tukey {
            let (a, b) = row["pair"].split_once('-').unwrap();
            let at = |name: &str| names.iter().position(|own| own == name).unwrap();
            let [difference, low, high, p] = of_pair(&ours.pairs, at(a), at(b));
            let r = |what: &str| wanted("TukeyHSD(aov(y~g))", &format!("{a}-{b} {what}"));
            near(a, difference, r("diff"), 1e-12, 1.0);
            // R's quantile is good to about seven digits.
            near(a, low, r("lwr"), 1e-7, 1.0);
            near(a, high, r("upr"), 1e-7, 1.0);
            near(a, p, number(&row["p_adj_scipy_studentized_range"]), 1e-11, 1.0);
        }
    }
}

/// SciPy 1.17.1 quadrature of Dunnett's critical values and p.
#[test]
fn comparisons_with_a_control_agree_with_quadrature() {
    let outside = rows(include_str!("../rows/dunnett.csv"));
    for set in SETS {
        let trials = experiment(set);
        let names = names(&trials);
        let own: Vec<_> = outside.iter().filter(|row| row["case"] == set).collect();
        let control = own[0]["comparison"].split_once('-').unwrap().1;
        let control = names.iter().position(|name| name == control).unwrap();
        let ours = levels(&measured(&trials), asked(false, Some(control))).unwrap();
        let against = ours.against.unwrap();
        assert!(against.by_quadrature && against.error <= 1e-10);
        assert_eq!(against.together.differences.len(), names.len() - 1);
        for row in own {
            let wanted = number(&row["value_quadrature"]);
            match row["comparison"].split_once('-') {
                None => near(set, against.together.multiplier, wanted, 1e-9, 0.0),
                Some((level, _)) => {
                    let level = names.iter().position(|name| name == level).unwrap();
                    let [.., p] = of_pair(&against.together.differences, level, control);
                    near(set, p, wanted, 1e-10, 1.0);
                }
            }
        }
    }
}

fn of_set(set: &str, in_blocks: bool, control: Option<&str>) -> (Levels, Vec<String>) {
    let trials = experiment(set);
    let names = names(&trials);
    let at = |name: &str| names.iter().position(|own| own == name).unwrap();
    let ours = levels(&measured(&trials), asked(in_blocks, control.map(at))).unwrap();
    (ours, names)
}

/// Printed and recomputed values of textbooks: NIST/SEMATECH e-Handbook 7.4.7.1 (Tukey, four levels),
/// Montgomery's cotton, Montgomery & Runger's hardwood, Dunnett's blood counts and fabric, Westfall's
/// recovery; recomputed with R 4.2.2 and SciPy 1.17.1 to the digits given.
#[test]
fn textbook_tables_are_met() {
    let (nist, _) = of_set("nist-resistance", false, None);
    near("F", nist.anova.f, 9.723_84, 1e-6, 0.0);
    near("p", nist.anova.p, 0.000_684_45, 1e-5, 0.0);
    for (a, b, low, high, p) in [
        (1, 0, 0.29, 4.47, 0.022_793_4),
        (2, 0, 1.13, 5.31, 0.002_210_8),
        (3, 0, -1.93, 2.25, 0.996_121_1),
        (2, 1, -1.25, 2.93, 0.664_464_9),
        (3, 1, -4.31, -0.13, 0.035_154_5),
        (3, 2, -5.15, -0.97, 0.003_450_6),
    ] {
        // The handbook rounds q to 4.05.
        let [_, our_low, our_high, our_p] = of_pair(&nist.pairs, a, b);
        assert!((our_low - low).abs() < 0.0105 && (our_high - high).abs() < 0.0105, "{a} {b}");
        near("p", our_p, p, 1e-7, 1.0);
    }
    let (cotton, names) = of_set("cotton", false, Some("35"));
    near("F", cotton.anova.f, 14.756_82, 1e-6, 0.0);
    near("p", cotton.anova.p, 9.1279e-6, 1e-4, 0.0);
    let half = |d: &Difference| 0.5 * (d.high - d.low);
    near("Tukey", half(&cotton.pairs[0]), 5.372_96, 1e-5, 0.0);
    let against = cotton.against.unwrap();
    // By quadrature in SciPy 1.17.1; printed 2.65. Its own routine draws points and gives 2.6515.
    near("d", against.together.multiplier, 2.651_029_589_572_7, 1e-11, 0.0);
    near("allowance", half(&against.together.differences[0]), 4.76, 0.005 / 4.76, 0.0);
    assert_eq!(names.len(), 5);
    let (hardwood, _) = of_set("hardwood", false, None);
    near("F", hardwood.anova.f, 19.605_21, 1e-6, 0.0);
    for (a, b, low, high) in
        [(1, 0, 1.544_10, 9.789_23), (2, 1, -2.789_23, 5.455_90), (3, 2, 0.044_11, 8.289_23)]
    {
        let [_, our_low, our_high, _] = of_pair(&hardwood.pairs, a, b);
        assert!((our_low - low).abs() < 2e-4 && (our_high - high).abs() < 2e-4, "{a} {b}");
    }
    for (group, sd) in hardwood.groups.iter().zip([2.828, 2.805, 1.789, 2.639]) {
        near("sd", group.summary.sd.unwrap(), sd, 0.0005 / 1.7, 0.0);
    }
    let (blood, names) = of_set("blood", false, Some("control"));
    let against = blood.against.unwrap();
    let at = |name: &str| names.iter().position(|own| own == name).unwrap();
    for (drug, difference, low, high, p) in [
        ("drug_a", 0.65, -1.2564, 2.5564, 0.620_10),
        ("drug_b", 2.628, 0.8396, 4.4164, 0.005_83),
    ] {
        let found = of_pair(&against.together.differences, at(drug), at("control"));
        near(drug, found[0], difference, 1e-12, 0.0);
        // With a factor of 2.5136 from drawn points; by quadrature it is 2.51348.
        near(drug, found[1], low, 2e-4, 1.0);
        near(drug, found[2], high, 2e-4, 1.0);
        near(drug, found[3], p, 2e-5, 1.0);
    }
    let (fabric, _) = of_set("fabric", false, Some("standard"));
    let sure: Vec<bool> =
        fabric.against.unwrap().together.differences.iter().map(|d| d.low > 0.0).collect();
    assert_eq!(sure, [true, false, false]);
    let (recovery, _) = of_set("recovery", false, Some("b0"));
    near("F", recovery.anova.f, 7.55, 0.005, 1.0);
    let printed = [(-2.1333, 0.456), (-7.4667, 0.0001), (-1.6667, 0.182)];
    for (ours, (difference, p)) in
        recovery.against.unwrap().together.differences.iter().zip(printed)
    {
        near("difference", ours.difference, difference, 5e-5, 1.0);
        near("p", ours.p, p, 0.001, 1.0);
    }
}

/// R 4.2.2 on PlantGrowth: MADs worked by hand from its data, and the largest of its tests.
#[test]
fn groups_are_described_as_a_school_does() {
    let (plants, _) = of_set("aov_PlantGrowth", false, None);
    for (group, mad) in plants.groups.iter().zip([0.4636, 0.5970, 0.3392]) {
        near("MAD", group.summary.mad, mad, 1e-4, 1.0);
        near("mean", group.adjusted_mean, group.summary.mean, 1e-15, 0.0);
    }
    let (own, _) = of_set("mad-own", false, None);
    let found: Vec<(f64, f64)> =
        own.groups.iter().map(|g| (g.summary.mean, g.summary.mad)).collect();
    assert_eq!(found, [(5.0, 0.5), (11.0, 1.5)]);
    near("difference", own.pairs[0].difference, 6.0, 1e-15, 0.0);
}

/// NIST StRD: F of every one-way set, from the doubles as they are (the digits that these can reach;
/// the exact reach is tested with the analysis itself).
#[test]
fn nists_sets_come_through_whole() {
    let data = rows(include_str!("../rows/nist_anova.csv"));
    for certified in rows(include_str!("../rows/nist_anova_certified.csv")) {
        let set = &certified["set"];
        let mut table = Vec::new();
        for row in data.iter().filter(|row| row["set"] == *set) {
            let level = row["treatment"].parse::<usize>().unwrap() - 1;
            let one = Measured { value: number(&row["response"]), level, block: 0 };
            table.extend(std::iter::repeat_n(one, row["count"].parse().unwrap()));
        }
        let ours = levels(&table, asked(false, Some(0))).unwrap();
        let within = match set.as_str() {
            "SmLs01" | "SmLs03" => 1e-14,
            "SiRstv" => 1e-12,
            "AtmWtAg" | "SmLs04" => 4e-9,
            _ => 2e-3,
        };
        near(set, ours.anova.f, number(&certified["f"]), within, 0.0);
        assert_eq!(ours.anova.df, certified["df_between"].parse::<usize>().unwrap());
        assert_eq!(ours.rest.df, certified["df_within"].parse::<usize>().unwrap());
    }
}

//! Levels compared inside blocks, against statsmodels, SciPy and textbooks.

use crate::experiments::{experiment, near};
use crate::levels::{asked, measured};
use crate::table::{number, rows};
use barm_science::statistics::levels::{Levels, LevelsError, Measured, levels};

/// A case of the rows with its level names, in the order of their first row.
fn case(name: &str) -> (Vec<Measured>, Vec<String>) {
    let mut names: Vec<String> = Vec::new();
    let own = rows(include_str!("../rows/blocks_data.csv"));
    let table = own
        .iter()
        .filter(|row| row["case"] == name)
        .map(|row| {
            let level = names.iter().position(|n| *n == row["level"]).unwrap_or_else(|| {
                names.push(row["level"].clone());
                names.len() - 1
            });
            let block = row["block"].trim_start_matches('P').parse().unwrap();
            Measured { value: number(&row["value"]), level, block }
        })
        .collect();
    (table, names)
}

fn wanted(case: &str, level: &str, quantity: &str) -> f64 {
    let found = rows(include_str!("../rows/blocks.csv")).into_iter().find(|row| {
        row["case"] == case && row["level"] == level && row["quantity"] == quantity
    });
    number(&found.unwrap_or_else(|| panic!("{case} {level} {quantity}"))["value"])
}

/// Designs that are not complete: test, adjusted means, differences and Dunnett's p by multivariate t.
#[test]
fn uneven_blocks_agree_with_statsmodels_and_scipy() {
    for name in ["catalyst", "penicillin-gaps", "school"] {
        let (table, names) = case(name);
        let ours = levels(&table, asked(true, Some(0))).unwrap();
        let of = |quantity: &str| wanted(name, "", quantity);
        near(name, ours.anova.f, of("F"), 1e-11, 0.0);
        near(name, ours.anova.p, of("p"), 1e-10, 0.0);
        near(name, ours.anova.ss, of("ss_levels"), 1e-11, 0.0);
        near(name, ours.rest.ss, of("ss_rest"), 1e-12, 0.0);
        near(name, ours.rest.df as f64, of("df2"), 0.0, 0.0);
        assert!(ours.welch.is_none() && ours.by_ranks.is_none(), "{name}");
        let against = ours.against.unwrap();
        assert!(against.error < 1e-4, "{name}: {}", against.error);
        for (level, label) in names.iter().enumerate() {
            let mean = wanted(name, label, "adjusted_mean");
            near(label, ours.groups[level].adjusted_mean, mean, 1e-12, 0.0);
            if level == 0 {
                continue;
            }
            let told = against.together.differences[level - 1];
            assert_eq!((told.level, told.from), (level, 0));
            near(label, told.difference, wanted(name, label, "difference"), 1e-11, 1.0);
            near(label, told.se, wanted(name, label, "se"), 1e-12, 0.0);
            near(label, told.p, wanted(name, label, "p_dunnett"), 1e-4, 1.0);
        }
    }
}

/// Montgomery's catalysts, as printed: treatments adjusted for blocks 22.75 (3), error 3.25 (5), F 11.66.
#[test]
fn the_catalysts_table_is_met() {
    let ours = levels(&case("catalyst").0, asked(true, None)).unwrap();
    near("levels", ours.anova.ss, 22.75, 1e-13, 0.0);
    near("rest", ours.rest.ss, 3.25, 1e-12, 0.0);
    assert_eq!((ours.anova.df, ours.rest.df), (3, 5));
    near("F", ours.anova.f, 11.66, 0.007 / 11.66, 0.0);
}

/// Box, Hunter & Hunter (1978), penicillin in complete blocks: F 1.23894, p 0.338658; means 84, 85,
/// 89, 86. Friedman's test by SciPy.
#[test]
fn the_penicillin_is_met() {
    let ours = levels(&measured(&experiment("penicillin")), asked(true, Some(0))).unwrap();
    near("F", ours.anova.f, 1.238_94, 4e-6, 0.0);
    near("p", ours.anova.p, 0.338_658, 2e-6, 0.0);
    for (group, mean) in ours.groups.iter().zip([84.0, 85.0, 89.0, 86.0]) {
        near("mean", group.adjusted_mean, mean, 1e-14, 0.0);
    }
    let by_ranks = ours.by_ranks.unwrap();
    near("T", by_ranks.h, wanted("penicillin", "", "friedman"), 1e-12, 0.0);
    near("p", by_ranks.p, wanted("penicillin", "", "friedman_p"), 1e-10, 0.0);
    assert!(ours.against.unwrap().by_quadrature, "complete blocks have one correlation");
}

/// Box, Hunter & Hunter (1978), shoes: the same two materials with and without the boys as blocks. With
/// two levels F is t squared: R 4.2.2 gives t −3.3488765 paired, and Welch's −0.36891055.
#[test]
fn pairs_find_what_hides_without_them() {
    let trials = experiment("shoes");
    let rows = measured(&trials);
    let paired = levels(&rows, asked(true, Some(0))).unwrap();
    near("F", paired.anova.f, 3.348_876_5_f64.powi(2), 1e-7, 0.0);
    near("p", paired.anova.p, 0.008_538_781, 1e-7, 0.0);
    let one = paired.against.unwrap().together.differences[0];
    near("difference", one.difference.abs(), 0.41, 1e-12, 0.0);
    near("end", one.low.abs().max(one.high.abs()), 0.686_953_9, 1e-6, 0.0);
    near("end", one.low.abs().min(one.high.abs()), 0.133_046_0, 1e-6, 0.0);
    let plain = levels(&rows, asked(false, None)).unwrap();
    near("F", plain.welch.unwrap().f, 0.368_910_55_f64.powi(2), 1e-7, 0.0);
    near("p", plain.welch.unwrap().p, 0.716_501_1, 1e-7, 0.0);
}

/// R 4.2.2, sleep: Welch's t −1.8608135 on 17.776474 degrees of freedom, p 0.07939414; paired
/// −4.0621277, p 0.00283289.
#[test]
fn the_sleepers_are_met() {
    let mut rows = measured(&experiment("t_sleep"));
    let plain = levels(&rows, asked(false, None)).unwrap();
    let welch = plain.welch.unwrap();
    near("F", welch.f, 1.860_813_5_f64.powi(2), 1e-7, 0.0);
    near("df", welch.df2, 17.776_474, 1e-7, 0.0);
    near("p", welch.p, 0.079_394_14, 1e-7, 0.0);
    let count = rows.len() / 2;
    for (at, row) in rows.iter_mut().enumerate() {
        row.block = at % count;
    }
    let paired = levels(&rows, asked(true, None)).unwrap();
    near("F", paired.anova.f, 4.062_127_7_f64.powi(2), 1e-7, 0.0);
    near("p", paired.anova.p, 0.002_832_89, 1e-6, 0.0);
}

/// R 4.2.2, npk: nitrogen alone in its six blocks has the sum of squares of the whole factorial (its
/// columns are at right angles to the others).
#[test]
fn nitrogen_explains_in_blocks_what_it_explains_in_the_factorial() {
    let ours = levels(&measured(&experiment("fac_npk")), asked(true, Some(0))).unwrap();
    near("nitrogen", ours.anova.ss, 12.258_73 * 15.440_556, 1e-6, 0.0);
    near("difference", ours.pairs[0].difference, 5.616_666_7, 1e-7, 0.0);
}

fn one(value: f64, level: usize, block: usize) -> Measured {
    Measured { value, level, block }
}

#[test]
fn what_hangs_together_through_a_third_is_told_and_what_does_not_is_refused() {
    let linked = [
        one(1.0, 0, 0),
        one(2.1, 1, 0),
        one(1.4, 0, 0),
        one(6.0, 1, 1),
        one(9.0, 2, 1),
        one(8.7, 2, 1),
    ];
    let ours = levels(&linked, asked(true, Some(0))).unwrap();
    assert!(ours.against.unwrap().together.differences[1].difference > 3.0);
    let apart =
        [one(1.0, 0, 0), one(2.0, 1, 0), one(1.4, 0, 0), one(6.0, 2, 1), one(9.0, 3, 1)];
    let sets = vec![vec![0, 1], vec![2, 3]];
    assert_eq!(levels(&apart, asked(true, None)), Err(LevelsError::Apart { sets }));
}

#[test]
fn tables_that_cannot_be_compared_say_why() {
    let refused = |rows: &[Measured], in_blocks, control| {
        let why = levels(rows, asked(in_blocks, control)).unwrap_err();
        assert!(why.to_string().len() > 20, "{why}");
        why
    };
    let two = [one(1.0, 0, 0), one(2.0, 0, 1), one(4.0, 1, 0), one(5.5, 1, 1)];
    assert!(levels(&two, asked(true, Some(1))).is_ok());
    assert_eq!(refused(&[], false, None), LevelsError::Empty);
    assert_eq!(refused(&two[..2], false, None), LevelsError::OneLevel);
    assert_eq!(refused(&two, false, Some(2)), LevelsError::NoControl);
    let same_block = two.map(|row| Measured { block: 7, ..row });
    assert_eq!(refused(&same_block, true, None), LevelsError::OneBlock);
    let single = [one(1.0, 0, 0), one(2.0, 1, 0)];
    assert!(matches!(refused(&single, false, None), LevelsError::Chance(_)));
    let equal = two.map(|row| Measured { value: 3.3, ..row });
    assert_eq!(refused(&equal, false, None), LevelsError::AllEqual { value: 3.3 });
    let alike = [one(1.0, 0, 0), one(1.0, 0, 1), one(4.0, 1, 0), one(4.0, 1, 1)];
    assert!(matches!(refused(&alike, false, None), LevelsError::Chance(_)));
    assert!(matches!(refused(&alike, true, None), LevelsError::Chance(_)));
    for wild in [f64::NAN, f64::NEG_INFINITY, 1e308] {
        let mut rows = two;
        rows[2].value = wild;
        assert!(matches!(refused(&rows, false, None), LevelsError::OutOfReach { row: 2, .. }));
    }
    let gap = [one(1.0, 0, 0), one(2.0, 2, 0), one(3.0, 0, 0)];
    assert_eq!(refused(&gap, false, None), LevelsError::NoValues { level: 1 });
    let many: Vec<Measured> = (0..202).map(|at| one(f64::from(at as u8), at / 2, 0)).collect();
    assert_eq!(refused(&many, false, None), LevelsError::TooMany { found: 101 });
}

fn finite(ours: &Levels) -> bool {
    let all = |list: &[f64]| list.iter().all(|v| v.is_finite());
    all(&[ours.anova.f, ours.anova.p, ours.randomization.p, ours.pairs_multiplier])
        && ours.pairs.iter().all(|d| all(&[d.difference, d.low, d.high, d.p]))
}

/// A district's table: 200,000 rows, 20 levels, 2,000 blocks; what was put in is found.
#[test]
fn a_districts_table_is_compared() {
    use barm_science::statistics::chance::Chance;
    let mut chance = Chance::from_seed(8);
    let rows: Vec<Measured> = (0..200_000)
        .map(|at| {
            let (level, block) = (chance.below(20), at / 100);
            let value = 20.0 + level as f64 * 0.1 + (block % 17) as f64 + chance.normal();
            one(value, level, block)
        })
        .collect();
    let ours = levels(&rows, asked(true, Some(0))).unwrap();
    assert!(finite(&ours));
    assert_eq!((ours.n, ours.blocks, ours.rest.df), (200_000, 2_000, 200_000 - 2_000 - 19));
    let against = ours.against.unwrap();
    assert!(against.error < 1e-4, "{}", against.error);
    for told in &against.together.differences {
        assert!((told.difference - 0.1 * told.level as f64).abs() < 5.0 * told.se);
        assert!((told.se - 0.0143).abs() < 0.0005, "{}", told.se);
    }
    assert_eq!(ours.randomization.draws, 199);
}

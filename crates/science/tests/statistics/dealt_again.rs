//! The randomization test against counts by hand, published values and its own promise.

use crate::experiments::{experiment, near};
use crate::levels::measured;
use crate::size::counts;
use barm_science::statistics::chance::Chance;
use barm_science::statistics::levels::Measured;
use barm_science::statistics::randomization::randomization;

fn table(values: &[(f64, usize, usize)]) -> Vec<Measured> {
    values.iter().map(|&(value, level, block)| Measured { value, level, block }).collect()
}

/// Three against three with all of one side above: of 20 deals, that one and its mirror image.
#[test]
fn three_against_three_have_twenty_deals() {
    let rows =
        table(&[(1.0, 0, 0), (2.0, 0, 0), (3.0, 0, 0), (7.0, 1, 0), (8.0, 1, 0), (9.0, 1, 0)]);
    let ours = randomization(&rows, 2, 5).unwrap();
    assert_eq!((ours.draws, ours.seed), (20, 5));
    near("p", ours.p, 0.1, 1e-15, 0.0);
    near("smallest", ours.smallest.unwrap(), 0.1, 1e-15, 0.0);
}

/// Darwin's 15 pairs of maize plants, cross- less self-fertilized, in eighths of an inch: Fisher
/// (1935), *The Design of Experiments*, section 21, counts that 1,726 of the 32,768 deals give a
/// total as large on either side (863 each; data and count from memory).
#[test]
fn fishers_count_of_darwins_plants_is_near() {
    const DIFFERENCES: [f64; 15] = [
        49.0, -67.0, 8.0, 16.0, 6.0, 23.0, 28.0, 41.0, 14.0, 29.0, 56.0, 24.0, 75.0, 60.0,
        -48.0,
    ];
    let total: f64 = DIFFERENCES.iter().sum();
    let as_large = (0..1_u32 << 15)
        .filter(|signs| {
            let sum: f64 = DIFFERENCES
                .iter()
                .enumerate()
                .map(|(at, d)| if signs >> at & 1 == 1 { *d } else { -d })
                .sum();
            sum.abs() >= total
        })
        .count();
    assert_eq!(as_large, 1_726, "the count that Fisher prints");
    let rows: Vec<Measured> = DIFFERENCES
        .iter()
        .enumerate()
        .flat_map(|(block, &d)| table(&[(d, 0, block), (0.0, 1, block)]))
        .collect();
    let ours = randomization(&rows, 2, 1).unwrap();
    assert_eq!((ours.draws, ours.smallest), (9_999, None));
    // Four standard errors of 9,999 draws.
    let share = 1_726.0 / 32_768.0;
    near("p", ours.p, share, 4.0 * f64::sqrt(share / 9_999.0) / share, 0.0);
}

/// Every deal of a few pairs, counted here by signs.
#[test]
fn pairs_are_dealt_inside_their_block_only() {
    let differences = [4.0, 1.0, -2.0, 5.0, 3.0, 2.0];
    let rows: Vec<Measured> = differences
        .iter()
        .enumerate()
        .flat_map(|(block, &d)| {
            // The level of a block must not matter.
            let base = 1000.0 * block as f64;
            table(&[(base + d, 1, block), (base, 0, block)])
        })
        .collect();
    let ours = randomization(&rows, 2, 1).unwrap();
    let total: f64 = differences.iter().sum();
    let sums = (0..64_u32).map(|signs| -> f64 {
        let sign = |at: usize| if signs >> at & 1 == 1 { 1.0 } else { -1.0 };
        differences.iter().enumerate().map(|(at, d)| sign(at) * d).sum()
    });
    let as_large = sums.filter(|sum| sum.abs() >= total).count();
    assert_eq!(ours.draws, 64);
    near("p", ours.p, as_large as f64 / 64.0, 1e-15, 0.0);
    near("smallest", ours.smallest.unwrap(), 2.0 / 64.0, 1e-15, 0.0);
}

/// On ordinary tables dealing again says about what F says: PlantGrowth's p is 0.0159 (R 4.2.2), and
/// with blocks the penicillin's 0.339 (Box, Hunter & Hunter 1978).
#[test]
fn it_agrees_with_f_on_ordinary_tables() {
    for (set, levels, in_blocks, p) in
        [("aov_PlantGrowth", 3, false, 0.015_91), ("penicillin", 4, true, 0.338_7)]
    {
        let mut rows = measured(&experiment(set));
        if !in_blocks {
            rows.iter_mut().for_each(|row| row.block = 0);
        }
        let ours = randomization(&rows, levels, 1).unwrap();
        assert_eq!(ours.draws, 9_999);
        assert!((ours.p - p).abs() < 0.02, "{set}: {}", ours.p);
        assert_eq!(ours, randomization(&rows, levels, 1).unwrap(), "one seed, one answer");
    }
}

/// With nothing to find, p of 0.05 or less comes at most 1 time in 20: the promise of the test, also
/// in uneven blocks, drawn or counted.
#[test]
fn without_a_difference_a_small_p_is_as_rare_as_it_says() {
    let mut chance = Chance::from_seed(11);
    let classes = counts(200, 400, 4_000);
    for sizes in [[2, 1, 2], [4, 3, 5]] {
        let mut small = 0;
        for class in 0..classes {
            let mut rows = Vec::new();
            for (block, size) in sizes.into_iter().enumerate() {
                for at in 0..3 * size {
                    let level = if block == 1 { at % 2 } else { at % 3 };
                    rows.extend(table(&[(chance.normal() + block as f64, level, block)]));
                }
            }
            let p = randomization(&rows, 3, class).unwrap().p;
            small += u64::from(p <= 0.05);
        }
        let most = 0.05 + 3.5 * f64::sqrt(0.05 * 0.95 / classes as f64);
        let found = small as f64 / classes as f64;
        assert!(found <= most, "{sizes:?}: {found}");
        assert!(found >= 0.005, "{sizes:?}: it never finds anything");
    }
}

/// A long table takes fewer draws, and says how many.
#[test]
fn a_long_table_is_drawn_less_often() {
    let mut chance = Chance::from_seed(3);
    let rows: Vec<Measured> = (0..200_000)
        .map(|at| Measured { value: chance.normal(), level: at % 20, block: at / 100 })
        .collect();
    let ours = randomization(&rows, 20, 1).unwrap();
    assert_eq!(ours.draws, 199);
    assert!(ours.p >= 1.0 / 200.0 && ours.p <= 1.0);
}

#[test]
fn a_block_of_one_level_moves_nothing() {
    let mut rows = table(&[(1.0, 0, 0), (2.0, 0, 0), (4.0, 1, 0)]);
    rows.extend((0..50_000).map(|at| Measured {
        value: f64::from(at % 7),
        level: 1,
        block: 1,
    }));
    let ours = randomization(&rows, 2, 1).unwrap();
    assert_eq!(ours.draws, 3);
    near("p", ours.p, 1.0 / 3.0, 1e-15, 0.0);
}

//! Tests by ranks against published examples and identities.

use crate::experiments::near;
use barm_science::statistics::friedman::friedman;
use barm_science::statistics::kruskal::kruskal_wallis;
use barm_science::statistics::ranks::RankError;
use barm_science::statistics::two_sample::paired;

/// Rounding first base, three ways, 22 runners (seconds): Hollander & Wolfe (1973), *Nonparametric
/// Statistical Methods*, p. 140 (from memory; what R's help of `friedman.test` prints is met).
const ROUNDING: [[f64; 3]; 22] = [
    [5.40, 5.50, 5.55],
    [5.85, 5.70, 5.75],
    [5.20, 5.60, 5.50],
    [5.55, 5.50, 5.40],
    [5.90, 5.85, 5.70],
    [5.45, 5.55, 5.60],
    [5.40, 5.40, 5.35],
    [5.45, 5.50, 5.35],
    [5.25, 5.15, 5.00],
    [5.85, 5.80, 5.70],
    [5.25, 5.20, 5.10],
    [5.65, 5.55, 5.45],
    [5.60, 5.35, 5.45],
    [5.05, 5.00, 4.95],
    [5.50, 5.50, 5.40],
    [5.45, 5.55, 5.50],
    [5.55, 5.55, 5.35],
    [5.45, 5.50, 5.55],
    [5.50, 5.45, 5.25],
    [5.65, 5.60, 5.40],
    [5.70, 5.65, 5.55],
    [6.30, 6.30, 6.25],
];

fn one_each<const K: usize>(rows: &[[f64; K]]) -> Vec<Vec<Vec<f64>>> {
    rows.iter().map(|row| row.iter().map(|&v| vec![v]).collect()).collect()
}

/// R 4.2.2, help of `friedman.test`: chi-squared = 11.143, df = 2, p-value = 0.003805.
#[test]
fn the_runners_are_met() {
    let ours = friedman(&one_each(&ROUNDING)).unwrap();
    near("T", ours.h, 11.143, 0.0005 / 11.0, 0.0);
    assert_eq!(ours.df, 2);
    near("p", ours.p, 0.003_805, 0.000_000_5 / 0.003, 0.0);
}

/// Two levels: Friedman's T is the sign test's (n₊ − n₋)²/(n₊ + n₋); Kruskal–Wallis's H is the square of
/// the rank-sum test's z. Both by definition.
#[test]
fn two_levels_give_the_tests_of_two() {
    let pairs = [[3.1, 2.0], [4.4, 1.5], [2.2, 2.9], [5.0, 0.1], [6.1, 3.3], [1.0, 1.2]];
    let ours = friedman(&one_each(&pairs)).unwrap();
    near("T", ours.h, f64::from((4 - 2) * (4 - 2)) / 6.0, 1e-14, 0.0);
    let (a, b) = (vec![1.0, 4.0, 6.0, 9.0], vec![2.0, 3.0, 5.0]);
    let ours = kruskal_wallis(&[a, b]).unwrap();
    // Ranks of the first: 1, 4, 6, 7 = 18; mean 4·8/2 = 16, variance 4·3·8/12 = 8.
    near("H", ours.h, (18.0_f64 - 16.0).powi(2) / 8.0, 1e-14, 0.0);
    assert!(paired(&[3.1, 4.4, 2.2], &[2.0, 1.5, 2.9]).is_ok());
}

/// Without ties H is 12/(N(N+1)) Σ R²/n − 3(N+1), as Kruskal & Wallis wrote it.
#[test]
fn the_original_formula_is_met_without_ties() {
    let groups = [vec![6.4, 6.8, 7.2, 8.3], vec![2.5, 3.7, 4.9, 5.4], vec![1.3, 4.1, 8.2]];
    let ours = kruskal_wallis(&groups).unwrap();
    // By hand: ranks 7, 8, 9, 11; 2, 3, 5, 6; 1, 4, 10.
    let h = 12.0 / (11.0 * 12.0) * (35.0 * 35.0 / 4.0 + 16.0 * 16.0 / 4.0 + 15.0 * 15.0 / 3.0)
        - 3.0 * 12.0;
    near("H", ours.h, h, 1e-13, 0.0);
}

/// With several values in every cell, T has as mean its degrees of freedom over all deals of the
/// labels, as with one: here one block of 2 + 2 + 2 values, all 90 deals.
#[test]
fn several_values_a_cell_keep_the_mean_of_the_statistic() {
    let values = [1.0, 2.5, 2.5, 4.0, 7.0, 9.0];
    let (mut sum, mut count) = (0.0, 0);
    for code in 0..3_usize.pow(6) {
        let mut cells = vec![Vec::new(); 3];
        let mut left = code;
        for value in values {
            cells[left % 3].push(value);
            left /= 3;
        }
        if cells.iter().all(|cell| cell.len() == 2) {
            sum += friedman(&[cells]).unwrap().h;
            count += 1;
        }
    }
    assert_eq!(count, 90);
    near("mean", sum / f64::from(count), 2.0, 1e-12, 0.0);
}

#[test]
fn what_cannot_be_ranked_says_why() {
    assert_eq!(kruskal_wallis(&[vec![1.0]]), Err(RankError::TooFewLevels { found: 1 }));
    let gap = [vec![1.0], vec![]];
    assert_eq!(kruskal_wallis(&gap), Err(RankError::EmptyLevel { level: 1 }));
    assert_eq!(kruskal_wallis(&[vec![0.0, -0.0], vec![0.0]]), Err(RankError::AllEqual));
    for wild in [f64::NAN, f64::INFINITY, 1e308] {
        let groups = [vec![1.0, wild], vec![2.0]];
        assert!(matches!(kruskal_wallis(&groups), Err(RankError::OutOfReach { .. })));
    }
    let hole = [vec![vec![1.0], vec![2.0]], vec![vec![1.0], vec![]]];
    assert_eq!(friedman(&hole), Err(RankError::Incomplete { block: 1 }));
    assert_eq!(friedman(&one_each(&[[1.0, 1.0], [2.0, 2.0]])), Err(RankError::AllEqual));
    assert_eq!(friedman(&[]), Err(RankError::TooFewLevels { found: 0 }));
}

//! The randomization test: how often would chance alone, dealing the labels out again, have made as
//! large a difference?

mod deals;

use super::blocked::{Blocked, Measured};
use super::chance::Chance;
use super::sum::total;
use deals::Deals;

/// Deals up to which all of them are tried, one by one.
const ALL: u64 = 10_000;
/// Draws at most where there are more deals.
const DRAWS: [usize; 7] = [9_999, 4_999, 1_999, 999, 499, 199, 99];
/// Labels that are moved at most in all draws together, so that a district's table still ends.
const MOVES: usize = 40_000_000;

/// What dealing the labels out again says.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Randomization {
    /// Share of deals that make as large a difference between the levels as the one that was made (1).
    pub p: f64,
    /// Deals that were tried: all there are, or so many that were drawn.
    pub draws: usize,
    /// Seed of the draws; it decides nothing where all deals were tried.
    pub seed: u64,
    /// The smallest p that any outcome could have given (1), where all deals were tried: with few
    /// deals, chance cannot be ruled out whatever the values are.
    pub smallest: Option<f64>,
}

/// Deals the levels out again inside each block.
///
/// The measure of a deal is what the levels explain after the blocks, which orders deals as F does.
/// Up to 10,000 possible deals are all tried (in blocks of up to 1,000 rows). Beyond, 9,999 are drawn, fewer for tables of more than
/// 4,000 rows, at least 99; the deal that was made counts as one of them. `levels` is how many levels
/// there are, `seed` decides the draws.
///
/// # Source
/// Fisher (1935), *The Design of Experiments*, section 21; Pitman (1938), *Biometrika* 29, 322–335;
/// counting the deal that was made: Phipson & Smyth (2010), *Stat. Appl. Genet. Mol. Biol.* 9, 39
/// (all three from memory).
/// # Errors
/// The sets of levels that hang together through blocks, where they are more than one.
pub fn randomization(
    rows: &[Measured],
    levels: usize,
    seed: u64,
) -> Result<Randomization, Vec<Vec<usize>>> {
    Ok(deal_again(&Blocked::of(rows, levels)?, seed))
}

pub(super) fn deal_again(table: &Blocked, seed: u64) -> Randomization {
    match Deals::of(table, ALL) {
        Some(deals) => every_deal(table, &deals, seed),
        None => drawn(table, seed),
    }
}

/// What a deal's sums of block-centered values explain.
fn explained(table: &Blocked, sums: &[f64]) -> f64 {
    let along = |row: &Vec<f64>| row.iter().zip(sums).map(|(g, s)| g * s).sum::<f64>();
    table.inverse.iter().zip(sums).map(|(row, sum)| sum * along(row)).sum()
}

/// Differences smaller than this are rounding: two deals that explain the same.
fn rounding(table: &Blocked) -> f64 {
    1e-11 * total(table.centered.iter().map(|v| v * v))
}

fn made(table: &Blocked) -> f64 {
    let mut sums = vec![0.0; table.inverse.len()];
    for (value, &level) in table.centered.iter().zip(&table.labels) {
        sums[level] += value;
    }
    explained(table, &sums)
}

fn every_deal(table: &Blocked, deals: &Deals, seed: u64) -> Randomization {
    let mut all = Vec::new();
    deals.each(|sums| all.push(explained(table, sums)));
    let rounding = rounding(table);
    let share = |from: f64| {
        all.iter().filter(|&&one| one >= from - rounding).count() as f64 / all.len() as f64
    };
    let largest = all.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    let (p, smallest) = (share(made(table)), Some(share(largest)));
    Randomization { p, draws: all.len(), seed, smallest }
}

fn drawn(table: &Blocked, seed: u64) -> Randomization {
    let moves = |draws: usize| draws.saturating_mul(table.labels.len());
    let draws = DRAWS.into_iter().find(|&draws| moves(draws) <= MOVES).unwrap_or(99);
    let (wanted, mut chance) = (made(table) - rounding(table), Chance::from_seed(seed));
    let mut labels = table.labels.clone();
    let mut as_large = 1_usize;
    let mut sums = vec![0.0; table.inverse.len()];
    for _ in 0..draws {
        sums.fill(0.0);
        for ends in table.starts.windows(2) {
            let (labels, values) =
                (&mut labels[ends[0]..ends[1]], &table.centered[ends[0]..ends[1]]);
            // Fisher & Yates, from the end; each label is final once it is swapped.
            for at in (0..labels.len()).rev() {
                labels.swap(at, below(&mut chance, at + 1));
                sums[labels[at]] += values[at];
            }
        }
        as_large += usize::from(explained(table, &sums) >= wanted);
    }
    Randomization { p: as_large as f64 / (draws + 1) as f64, draws, seed, smallest: None }
}

/// A whole number from 0 to `count` − 1, by the high half of a product: a shuffle asks for very
/// many. What its inequality is worth, count/2⁶⁴, no number of draws could show.
fn below(chance: &mut Chance, count: usize) -> usize {
    let product = u128::from(chance.bits()) * count as u128;
    usize::try_from(product >> 64).unwrap_or(0)
}

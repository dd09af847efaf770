//! The Friedman test: do levels differ, by the ranks of their values inside each block?

use super::ranks::{RankError, RankTest, ranks, usable};
use super::sum::total;

/// Tests whether some levels tend to be larger than others in the same block.
///
/// `blocks[b][j]` holds the values of level j in block b, one each as a rule; the same number m in
/// every cell is taken too. Ranks are inside each block, k levels, K = k m values a block:
///
/// ```text
/// T = (K − 1) Σ_j (R_j − R̄)² / (m Σ_b Σ_i (r_bi − (K + 1)/2)²)        R_j sum of the ranks of level j
/// ```
///
/// # Source
/// Friedman (1937), *J. Am. Stat. Assoc.* 32, 675–701; several values a cell after Benard & van
/// Elteren (1953), *Indag. Math.* 15, 358–369 (from memory; the formula is derived from the
/// variance of rank sums under random labels, and tested by it).
/// # Errors
/// [`RankError`] for fewer than two levels, a block that is not complete, blocks in which all values
/// are equal, or values that are not usable.
pub fn friedman(blocks: &[Vec<Vec<f64>>]) -> Result<RankTest, RankError> {
    let levels = blocks.first().map_or(0, Vec::len);
    if levels < 2 {
        return Err(RankError::TooFewLevels { found: levels });
    }
    let each = blocks[0][0].len();
    let whole = |block: &Vec<Vec<f64>>| {
        each > 0 && block.len() == levels && block.iter().all(|cell| cell.len() == each)
    };
    if let Some(block) = blocks.iter().position(|block| !whole(block)) {
        return Err(RankError::Incomplete { block });
    }
    usable(blocks.iter().flatten().flatten())?;
    let room = (levels * each) as f64;
    let middle = 0.5 * (room + 1.0);
    let mut sums = vec![0.0; levels];
    let mut spread = 0.0;
    for block in blocks {
        let off: Vec<f64> = ranks(&block.concat()).iter().map(|r| r - middle).collect();
        for (sum, own) in sums.iter_mut().zip(off.chunks(each)) {
            *sum += total(own.iter().copied());
        }
        spread += total(off.iter().map(|r| r * r));
    }
    if spread <= 0.0 {
        return Err(RankError::AllEqual);
    }
    let between = total(sums.iter().map(|sum| sum * sum));
    Ok(RankTest::new((room - 1.0) * between / (each as f64 * spread), levels))
}

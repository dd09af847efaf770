//! One table of values with their levels, and blocks if there are any: every general comparison of
//! it in one answer.
//!
//! ```text
//! value = block + level + rest        rest normal, independent, of one size for all levels
//! ```
//!
//! Without blocks this is the one-way layout. With blocks, the test is that of the levels after the
//! blocks, and differences are of means adjusted for blocks.

mod pairs;
mod refused;
mod ways;

use super::anova::{self, Rest, Term};
use super::blocked::{Blocked, Effects};
use super::linear::LARGEST;
use super::randomization::{Randomization, deal_again};
use super::ranks::RankTest;
use super::summary::{Summary, summarize};
use super::welch_anova::{WelchAnova, welch_anova};

pub use super::blocked::Measured;
pub use pairs::{Against, Difference, Together};
pub use refused::LevelsError;

/// Most levels that are compared; beyond, the column is hardly one of levels.
pub const MOST_LEVELS: usize = 100;

/// What a table shows.
#[derive(Debug, Clone, PartialEq)]
pub struct Levels {
    /// Values.
    pub n: usize,
    /// Blocks; 1 where there are none.
    pub blocks: usize,
    /// Test of whether the levels differ, after the blocks.
    pub anova: Term,
    /// What levels and blocks leave over.
    pub rest: Rest,
    /// The test that does not take spreads to be equal; none with blocks, or where a spread is not known.
    pub welch: Option<WelchAnova>,
    /// Each level by itself.
    pub groups: Vec<Group>,
    /// Every pair of levels, the later less the earlier; intervals hold for all pairs together.
    pub pairs: Vec<Difference>,
    /// Half width of the pairs' intervals over their standard errors (1).
    pub pairs_multiplier: f64,
    /// Every other level less the control, if one was named.
    pub against: Option<Against>,
    /// Kruskal–Wallis, or Friedman with blocks; none where the blocks are not complete.
    pub by_ranks: Option<RankTest>,
    /// The same question to the labels alone.
    pub randomization: Randomization,
}

/// Values of one level.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Group {
    /// Count, mean, spread, ends.
    pub summary: Summary,
    /// Mean as it would be over all blocks, each counted once (unit of the values).
    pub adjusted_mean: f64,
}

/// How a table is to be compared.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Asked {
    /// Whether blocks count.
    pub in_blocks: bool,
    /// The level that the others are compared with.
    pub control: Option<usize>,
    /// Seed of the randomization test.
    pub seed: u64,
}

/// Compares the levels of a table.
///
/// # Accuracy
/// Pairs: as [`StudentizedRange`](super::distribution::studentized_range::StudentizedRange); with the
/// control: as [`LargestOfSeveral`](super::distribution::multivariate_t::LargestOfSeveral), the error
/// is told.
/// # Source
/// Fisher (1925) and Yates (1934) for the tests; Tukey (1953) and Kramer (1956), *Biometrics* 12,
/// 307–310, for all pairs; Dunnett (1955) for the control (see there).
/// # Errors
/// [`LevelsError`] where there is nothing to compare or nothing to judge chance by.
pub fn levels(rows: &[Measured], asked: Asked) -> Result<Levels, LevelsError> {
    let groups = checked(rows, asked)?;
    let in_one = |row: &Measured| Measured { block: 0, ..*row };
    let plain: Vec<Measured>;
    let rows = if asked.in_blocks {
        rows
    } else {
        plain = rows.iter().map(in_one).collect();
        &plain
    };
    let table = Blocked::of(rows, groups.len()).map_err(|sets| LevelsError::Apart { sets })?;
    if asked.in_blocks && table.blocks() < 2 {
        return Err(LevelsError::OneBlock);
    }
    let effects = table.effects();
    let (term, rest) = tested(rows, &table, &effects, &groups)?;
    let group = |(values, &adjusted_mean): (&Vec<f64>, &f64)| {
        // They were looked at before.
        let summary = summarize(values).map_err(LevelsError::Values)?;
        Ok(Group { summary, adjusted_mean })
    };
    let described: Result<Vec<Group>, LevelsError> =
        groups.iter().zip(&effects.adjusted).map(group).collect();
    let judged = pairs::Judged { table: &table, effects: &effects, rest };
    let together = judged.pairs();
    Ok(Levels {
        n: rows.len(),
        blocks: table.blocks(),
        anova: term,
        rest,
        welch: if asked.in_blocks { None } else { welch_anova(&groups) },
        groups: described?,
        pairs: together.differences,
        pairs_multiplier: together.multiplier,
        against: asked.control.map(|control| judged.against(control)),
        by_ranks: ways::by_ranks(rows, &groups, asked.in_blocks),
        randomization: deal_again(&table, asked.seed),
    })
}

/// The values of each level, if they can be compared at all.
fn checked(rows: &[Measured], asked: Asked) -> Result<Vec<Vec<f64>>, LevelsError> {
    if rows.is_empty() {
        return Err(LevelsError::Empty);
    }
    let beyond = |row: &Measured| row.value.is_nan() || row.value.abs() > LARGEST;
    if let Some(row) = rows.iter().position(beyond) {
        return Err(LevelsError::OutOfReach { row, value: rows[row].value });
    }
    let levels = 1 + rows.iter().map(|row| row.level).max().unwrap_or(0);
    if levels > MOST_LEVELS {
        return Err(LevelsError::TooMany { found: levels });
    }
    let mut groups = vec![Vec::new(); levels];
    for row in rows {
        groups[row.level].push(row.value);
    }
    if let Some(level) = groups.iter().position(Vec::is_empty) {
        return Err(LevelsError::NoValues { level });
    }
    if levels < 2 {
        return Err(LevelsError::OneLevel);
    }
    let first = rows[0].value;
    if rows.iter().all(|row| (row.value - first).abs() <= 0.0) {
        return Err(LevelsError::AllEqual { value: first });
    }
    match asked.control {
        Some(control) if control >= levels => Err(LevelsError::NoControl),
        _ => Ok(groups),
    }
}

/// The test of the levels, and what is left to judge it by.
fn tested(
    rows: &[Measured],
    table: &Blocked,
    effects: &Effects,
    groups: &[Vec<f64>],
) -> Result<(Term, Rest), LevelsError> {
    if table.blocks() == 1 {
        let told = anova::one_way(groups)?;
        return Ok((told.terms[0], told.rest));
    }
    let largest = rows.iter().fold(0.0_f64, |most, row| most.max(row.value.abs()));
    let gone = table.blocks() + groups.len() - 1;
    let rest = Rest::new(effects.rest, rows.len().saturating_sub(gone), largest)?;
    Ok((Term::new(0, effects.between, groups.len() - 1, rest)?, rest))
}

//! The Kruskal–Wallis test: do levels differ, by the ranks of their values alone?

use super::ranks::{RankError, RankTest, ranks, usable};
use super::sum::total;

/// Tests whether values of several levels tend to be larger in some than in others.
///
/// ```text
/// H = (N − 1) Σ_j n_j (R̄_j − R̄)² / Σ_i (R_i − R̄)²        R̄ = (N + 1)/2
/// ```
///
/// Ranks are of all values together; with shared ranks the divisor is what corrects for ties. `groups`
/// holds the values of each level.
///
/// # Source
/// Kruskal & Wallis (1952), *J. Am. Stat. Assoc.* 47, 583–621. Chi-square is an approximation that is
/// fair from about five values a level on.
/// # Errors
/// [`RankError`] for fewer than two levels, an empty one, values that are all equal or not usable.
pub fn kruskal_wallis(groups: &[Vec<f64>]) -> Result<RankTest, RankError> {
    if groups.len() < 2 {
        return Err(RankError::TooFewLevels { found: groups.len() });
    }
    if let Some(level) = groups.iter().position(Vec::is_empty) {
        return Err(RankError::EmptyLevel { level });
    }
    usable(groups.iter().flatten())?;
    let ranks = ranks(&groups.concat());
    let n = ranks.len() as f64;
    let middle = 0.5 * (n + 1.0);
    let spread = total(ranks.iter().map(|r| (r - middle) * (r - middle)));
    if spread <= 0.0 {
        return Err(RankError::AllEqual);
    }
    let mut from = 0;
    let between = total(groups.iter().map(|group| {
        let own = &ranks[from..from + group.len()];
        from += group.len();
        let off = total(own.iter().map(|r| r - middle));
        off * off / group.len() as f64
    }));
    Ok(RankTest::new((n - 1.0) * between / spread, groups.len()))
}

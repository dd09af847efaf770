//! The ladder of school statistics: dots and overlap in grade 6, a gap counted in MADs in grade 7,
//! slopes in grade 8 (those are in [`slope`](super::slope)).
//!
//! The MAD is the mean absolute deviation from the mean. Common Core State Standards for
//! Mathematics 6.SP.B.5 (center and spread), 7.SP.B.3 (gap between centers as a multiple of a
//! measure of spread; its own example is about two MADs), 8.SP.A (line through a scatter plot).

use super::summary::{Summary, SummaryError, summarize};

/// Two dot plots on one axis.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Dots {
    /// The first set.
    pub first: Summary,
    /// The second set.
    pub second: Summary,
    /// The stretch that both sets cover, if any.
    pub overlap: Option<Overlap>,
}

/// Where two dot plots cover the same stretch of the axis.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Overlap {
    /// Its low end (unit of the values).
    pub low: f64,
    /// Its high end (unit of the values).
    pub high: f64,
    /// Dots of the first set in it.
    pub first_inside: usize,
    /// Dots of the second set in it.
    pub second_inside: usize,
}

/// Lays two sets of values on one axis (grade 6).
///
/// # Errors
/// [`SummaryError`] for an empty set, and for numbers that are not finite.
pub fn dots(first: &[f64], second: &[f64]) -> Result<Dots, SummaryError> {
    let (a, b) = (summarize(first)?, summarize(second)?);
    let (low, high) = (a.low.max(b.low), a.high.min(b.high));
    let inside = |set: &[f64]| set.iter().filter(|&&v| v >= low && v <= high).count();
    let overlap = (low <= high).then(|| Overlap {
        low,
        high,
        first_inside: inside(first),
        second_inside: inside(second),
    });
    Ok(Dots { first: a, second: b, overlap })
}

/// A gap between two means, counted in MADs (grade 7).
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Gap {
    /// Second mean less first (unit of the values).
    pub gap: f64,
    /// The larger MAD, or the reading doubt where that is larger (unit of the values).
    pub mad: f64,
    /// Whether the reading doubt stands in for the larger MAD.
    pub mad_is_reading_doubt: bool,
    /// Size of the gap in MADs (1), where a MAD is not 0.
    pub in_mads: Option<f64>,
    /// Gap in MADs (1) from which chance alone makes one like it at most 1 time in 20, for this
    /// number of bags; none for a single bag.
    pub needed: Option<f64>,
}

impl Gap {
    /// Whether the gap is as large as needed.
    pub fn stands_out(&self) -> bool {
        self.in_mads.zip(self.needed).is_some_and(|(found, needed)| found >= needed)
    }
}

/// Counts the gap between two sets in MADs.
///
/// `reading_doubt` (unit of the values; 0 where they are exact) is the least that a MAD can be
/// believed to be. The needed multiple is that of the smaller set.
///
/// # Errors
/// [`SummaryError`] for an empty set, and for numbers that are not finite.
pub fn gap_in_mads(
    first: &[f64],
    second: &[f64],
    reading_doubt: f64,
) -> Result<Gap, SummaryError> {
    let (a, b) = (summarize(first)?, summarize(second)?);
    let doubt = if reading_doubt.is_finite() { reading_doubt.max(0.0) } else { 0.0 };
    let larger = a.mad.max(b.mad);
    let gap = b.mean - a.mean;
    let mad = larger.max(doubt);
    // A MAD that is rounding of the arithmetic would make any gap look endless.
    let size = a.mean.abs().max(b.mean.abs());
    let in_mads = (mad > 1e-14 * size && mad > 0.0).then(|| gap.abs() / mad);
    let needed = needed_multiple(a.n.min(b.n));
    Ok(Gap { gap, mad, mad_is_reading_doubt: larger < doubt, in_mads, needed })
}

/// Gap over the larger MAD (1) that two sets of `bags` values without a true difference reach 1
/// time in 20; `None` for a single bag.
///
/// Between the numbers in the table the next smaller one counts, which asks for more.
///
/// # Accuracy
/// Within 0.005. Derived: for two bags solved from E[erf(|Z|/m)²] = 0.05 with Z standard normal;
/// for more, the 95th percentile of 4 million simulated pairs of normal sets, drawn from
/// [`Chance`](super::chance::Chance) seeded with the number of bags. The tests repeat both. Bags
/// are taken to spread normally, equally on both sides, and to come from different groups.
pub fn needed_multiple(bags: usize) -> Option<f64> {
    NEEDED.iter().rev().find(|(n, _)| *n <= bags).map(|&(_, multiple)| multiple)
}

const NEEDED: [(usize, f64); 14] = [
    (2, 4.847),
    (3, 2.575),
    (4, 1.982),
    (5, 1.676),
    (6, 1.482),
    (7, 1.343),
    (8, 1.239),
    (9, 1.158),
    (10, 1.091),
    (11, 1.034),
    (12, 0.987),
    (15, 0.874),
    (20, 0.752),
    (30, 0.612),
];

//! The ladder of school statistics: dots and overlap in grade 6, a gap counted in MADs in grade 7,
//! slopes in grade 8 (those are in [`slope`](super::slope)).
//!
//! The MAD is the mean absolute deviation from the mean. Common Core State Standards for
//! Mathematics 6.SP.B.5 (center and spread), 7.SP.B.3 (gap between centers as a multiple of a
//! measure of spread; its own example is about two MADs), 8.SP.A (line through a scatter plot).

use super::mad_multiple::needed_multiple;
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

/// What one side of a gap was measured on.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Side<'a> {
    /// One value a bag.
    pub values: &'a [f64],
    /// How many groups made these bags.
    pub groups: usize,
}

impl<'a> Side<'a> {
    /// Bags that a group each made.
    pub fn each_its_group(values: &'a [f64]) -> Self {
        Self { values, groups: values.len() }
    }
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
    /// How many gaps the question has.
    pub gaps: usize,
    /// Gap in MADs (1) from which chance alone makes one like it, or any other of the question, at most 1
    /// time in 20, for this number of bags out of so many groups; none for a single bag, and for one
    /// group's bags.
    pub needed: Option<f64>,
    /// Whether all bags of a side come from one group although there are several: then the gap may be
    /// that group's way of working, and no multiple tells.
    pub one_groups_bags: bool,
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
/// believed to be. The needed multiple is that of the smaller set, of the fewer groups, and of a question
/// of so many `gaps`.
///
/// # Errors
/// [`SummaryError`] for an empty set, and for numbers that are not finite.
pub fn gap_in_mads(
    first: Side,
    second: Side,
    gaps: usize,
    reading_doubt: f64,
) -> Result<Gap, SummaryError> {
    let (a, b) = (summarize(first.values)?, summarize(second.values)?);
    let doubt = if reading_doubt.is_finite() { reading_doubt.max(0.0) } else { 0.0 };
    let larger = a.mad.max(b.mad);
    let gap = b.mean - a.mean;
    let mad = larger.max(doubt);
    // A MAD that is rounding of the arithmetic would make any gap look endless.
    let size = a.mean.abs().max(b.mean.abs());
    let in_mads = (mad > 1e-14 * size && mad > 0.0).then(|| gap.abs() / mad);
    Ok(Gap {
        gap,
        mad,
        mad_is_reading_doubt: larger < doubt,
        in_mads,
        gaps,
        needed: needed_multiple(a.n.min(b.n), first.groups.min(second.groups), gaps),
        one_groups_bags: [(a.n, first.groups), (b.n, second.groups)]
            .iter()
            .any(|(bags, groups)| *bags > 1 && *groups < 2),
    })
}

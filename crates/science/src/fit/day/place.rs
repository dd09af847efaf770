//! A place on the way of the search.

use super::DayError;
use super::block::Block;
use super::curves::Seen;
use super::gathered::Day;
use super::scatter::Scatter;
use super::unlike::{Trust, usual_noise};
use crate::cholesky::lower_triangle;
use crate::fit::triangle::Triangle;
use crate::householder::length;

/// A step as short as this is taken whatever it gains.
const NEAR: f64 = 1.0;
/// Halvings of a longer step at most.
const HALVINGS: usize = 5;

/// How readings hang on the day's numbers, and how they scatter: both as they were seen.
pub(super) struct Local<'a> {
    day: &'a Day<'a>,
    seen: &'a [Seen],
    scatter: Scatter,
    blocks: Vec<Block>,
    /// Slopes of the readings with each independent deviate (mm).
    slopes: Vec<Vec<f64>>,
    /// Readings made independent, and the prior of each number as one more of them: a column of slopes a
    /// number.
    columns: Vec<Vec<f64>>,
}

impl<'a> Local<'a> {
    pub(super) fn new(day: &'a Day<'a>, seen: &'a [Seen], assumed: &Trust) -> Self {
        let scatter = Scatter::new(day, seen);
        let blocks = scatter.blocks(assumed.noise, &assumed.weights());
        let (count, numbers) = (day.readings.len(), day.keys.len());
        let slopes = day.turned(&day.columns(seen));
        let mut columns = slopes.clone();
        for (number, column) in columns.iter_mut().enumerate() {
            blocks.iter().for_each(|block| block.whiten(column));
            column.resize(count + numbers, 0.0);
            column[count + number] = 1.0;
        }
        Self { day, seen, scatter, blocks, slopes, columns }
    }

    /// What is left over at a place: of the readings, made independent, and of the prior.
    fn left(&self, at: &[f64], off_mm: &[f64]) -> Vec<f64> {
        let mut left = off_mm.to_vec();
        self.blocks.iter().for_each(|block| block.whiten(&mut left));
        left.extend(at.iter().map(|z| -z));
        left
    }
}

/// A place on the way.
pub(super) struct Place<'a> {
    local: &'a Local<'a>,
    /// Independent deviates.
    pub(super) at: Vec<f64>,
    /// Columns of slopes, with what is left over turned along.
    triangle: Triangle,
    /// Length of the step that leads to the best place, as far as slopes stay what they are (standard
    /// deviations of what is left open, along the numbers' covariance).
    pub(super) long: f64,
    /// Readings less what is expected of them (mm).
    pub(super) off_mm: Vec<f64>,
    /// Sum of squares of the readings, in the noise that was assumed.
    pub(super) chi_square: f64,
}

impl<'a> Place<'a> {
    pub(super) fn new(
        local: &'a Local<'a>,
        at: Vec<f64>,
        off_mm: Vec<f64>,
    ) -> Result<Self, DayError> {
        let left = local.left(&at, &off_mm);
        let chi_square = squares(&left[..off_mm.len()]);
        let triangle = Triangle::of(local.columns.clone(), left);
        // Along the triangle a step is as long as what it takes up.
        let long = length(triangle.turned());
        if !long.is_finite() || !triangle.is_whole() {
            return Err(DayError::Lost);
        }
        Ok(Self { local, at, triangle, long, off_mm, chi_square })
    }

    /// Covariance of the independent deviates.
    pub(super) fn covariance(&self) -> Vec<Vec<f64>> {
        self.triangle.covariance()
    }

    /// How much the readings speak for this place and all that is left open around it, on a logarithmic scale
    /// on which two places of one day differ by what they differ:
    ///
    /// ```text
    /// ln p(y) ≈ −½ (y − m)ᵀ V⁻¹ (y − m) − ½ ln|V| − ½ zᵀz + ½ ln|C| + how likely such bags were beforehand
    /// ```
    ///
    /// # Source
    /// Laplace's approximation: L. Tierney, J. B. Kadane (1986), *J. Am. Stat. Assoc.* 81, 82-86; the last term as
    /// in R. M. Neal, G. E. Hinton (1998), "A view of the EM algorithm". From memory.
    pub(super) fn evidence(&self, trust: &Trust) -> f64 {
        let blocks: f64 = self.local.blocks.iter().map(Block::half_log).sum();
        let root = lower_triangle(&self.covariance());
        let open: f64 = (0..root.len()).map(|at| libm::log(root[at][at])).sum();
        let left = self.chi_square + squares(&self.at);
        -0.5 * left - blocks + open + trust.log_chance()
    }

    /// How far readings are trusted from here. As long as the way is longer than `telling` that cannot be told
    /// bag by bag, and nothing is said; a search that has been `long` on its way takes all for as noisy as half
    /// of them are, so that readings that fit nothing do not drive the numbers where no bag is.
    pub(super) fn trust(
        &self,
        before: Option<&Trust>,
        long: bool,
        telling: f64,
    ) -> Option<Trust> {
        let day = self.local.day;
        if let Some(fixed) = before.filter(|before| before.fixed) {
            return Some(fixed.clone());
        }
        let distances = self.local.scatter.distances(day, &self.off_mm);
        if self.long > telling {
            let unlike =
                before.map_or(vec![0.0; day.bags.len()], |before| before.unlike.clone());
            let noise = usual_noise(&distances);
            return long.then_some(Trust { noise, fixed: false, unlike });
        }
        let noise = match before {
            None => usual_noise(&distances),
            Some(before) => {
                let freedom = self.freedom(before, &day.counts());
                let ratio = if freedom < 1.0 { 1.0 } else { self.chi_square / freedom };
                (before.noise * ratio.sqrt()).max(1.0)
            }
        };
        Some(Trust::of(noise, &distances))
    }

    /// Readings of bags that belong, less what the numbers took up.
    pub(super) fn freedom(&self, trust: &Trust, counts: &[usize]) -> f64 {
        let covariance = self.covariance();
        let open: f64 = (0..covariance.len()).map(|i| covariance[i][i]).sum();
        let belong = trust.unlike.iter().zip(counts);
        belong.map(|(chance, count)| (1.0 - chance) * *count as f64).sum::<f64>()
            - (covariance.len() as f64 - open)
    }

    /// Where the step leads to: a long one is halved until it leaves less over; a short one is taken along
    /// the slopes. Where no share of it leaves less, since slopes over what is left open lead past a bend,
    /// the last is taken all the same: they lead to the middle of what is left open, not to the best
    /// point.
    pub(super) fn onward(&self) -> Result<Self, DayError> {
        let step = self.triangle.solution();
        if self.long <= NEAR {
            let mut off_mm = self.off_mm.clone();
            for (slope, change) in self.local.slopes.iter().zip(&step) {
                off_mm.iter_mut().zip(slope).for_each(|(off, slope)| *off -= slope * change);
            }
            return Self::new(self.local, moved(&self.at, &step, 1.0), off_mm);
        }
        let here = self.chi_square + squares(&self.at);
        let Local { day, seen, .. } = self.local;
        let mut share = 1.0;
        let mut last = None;
        for _ in 0..HALVINGS {
            let there = moved(&self.at, &step, share);
            if let Ok(off_mm) = day.off_mm(&day.deviates(&there), seen) {
                let left = squares(&self.local.left(&there, &off_mm));
                if left < here {
                    return Self::new(self.local, there, off_mm);
                }
                last = left.is_finite().then_some((there, off_mm));
            }
            share *= 0.5;
        }
        let (there, off_mm) = last.ok_or(DayError::Lost)?;
        Self::new(self.local, there, off_mm)
    }
}

fn moved(at: &[f64], step: &[f64], share: f64) -> Vec<f64> {
    at.iter().zip(step).map(|(z, change)| z + share * change).collect()
}

fn squares(values: &[f64]) -> f64 {
    values.iter().map(|value| value * value).sum()
}

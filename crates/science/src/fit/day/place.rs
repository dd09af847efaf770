//! A place on the way of the search.

use super::DayError;
use super::block::Block;
use super::curves::Seen;
use super::gathered::Day;
use super::scatter::Scatter;
use super::unlike::{Trust, usual_noise};
use crate::fit::triangle::Triangle;
use crate::householder::length;

/// From a step as short as this on bags are told from those that do not belong, and a step is taken
/// whatever it gains.
const NEAR: f64 = 1.0;
/// Halvings of a longer step at most.
const HALVINGS: usize = 6;

/// How readings hang on the day's numbers, and how they scatter: both as they are in one place.
pub(super) struct Local {
    scatter: Scatter,
    blocks: Vec<Block>,
    /// Readings made independent, and the prior of each number as one more of them: a column of slopes a
    /// number.
    columns: Vec<Vec<f64>>,
}

impl Local {
    pub(super) fn new(day: &Day, seen: &[Seen], assumed: &Trust) -> Self {
        let scatter = Scatter::new(day, seen);
        let blocks = scatter.blocks(assumed.noise, &assumed.weights());
        let (count, numbers) = (day.readings.len(), day.keys.len());
        let mut columns = day.turned(&day.columns(seen));
        for (number, column) in columns.iter_mut().enumerate() {
            blocks.iter().for_each(|block| block.whiten(column));
            column.resize(count + numbers, 0.0);
            column[count + number] = 1.0;
        }
        Self { scatter, blocks, columns }
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
    local: &'a Local,
    /// Independent deviates.
    pub(super) at: Vec<f64>,
    /// Columns of slopes, with what is left over turned along.
    triangle: Triangle,
    /// Length of the step that leads to the best place, as far as slopes stay what they are (standard
    /// deviations of what is left open, along the numbers' covariance).
    pub(super) long: f64,
    /// Readings less what is expected of them (mm).
    off_mm: Vec<f64>,
    /// Sum of squares of the readings, in the noise that was assumed.
    pub(super) chi_square: f64,
}

impl<'a> Place<'a> {
    pub(super) fn new(
        local: &'a Local,
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

    /// How far readings are trusted from here; nothing as long as the way is long.
    pub(super) fn trust(&self, day: &Day, before: Option<&Trust>) -> Option<Trust> {
        if self.long > NEAR {
            return None;
        }
        let distances = self.local.scatter.distances(day, &self.off_mm);
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

    /// The next place: a share of the step, halved until it leaves less over, unless it is short;
    /// nothing where no share of it does.
    pub(super) fn onward(&self, day: &Day, mut share: f64) -> Result<Option<Self>, DayError> {
        let step = self.triangle.solution();
        let here = self.chi_square + squares(&self.at);
        for _ in 0..HALVINGS {
            let moved = self.at.iter().zip(&step).map(|(z, change)| z + share * change);
            let there: Vec<f64> = moved.collect();
            if let Ok(off_mm) = day.off_mm(&day.deviates(&there)) {
                let left = squares(&self.local.left(&there, &off_mm));
                if left < here || (self.long <= NEAR && left.is_finite()) {
                    return Self::new(self.local, there, off_mm).map(Some);
                }
            }
            share *= 0.5;
        }
        Ok(None)
    }
}

fn squares(values: &[f64]) -> f64 {
    values.iter().map(|value| value * value).sum()
}

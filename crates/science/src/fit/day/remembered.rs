//! Where a search goes next, by several looks together.

use super::stand::Stand;
use crate::cholesky::lower_triangle;
use crate::fit::triangle::Triangle;
use std::collections::VecDeque;

/// Looks that are remembered at most.
const MOST: usize = 6;
/// Share of the way that is gone where the looks together say nothing (1).
const SHARE: f64 = 0.5;
/// Weight of the parts beside the longest of them, which keeps them from cancelling each other (1).
const QUIET: f64 = 1e-6;

/// The last looks: where each was taken, and where it led.
#[derive(Default)]
pub(super) struct Remembered {
    looks: VecDeque<(Stand, Stand)>,
}

impl Remembered {
    /// Adds a look.
    pub(super) fn add(&mut self, from: &Stand, to: &Stand) {
        if self.looks.len() == MOST {
            self.looks.pop_front();
        }
        self.looks.push_back((from.clone(), to.clone()));
    }

    /// Forgets all.
    pub(super) fn clear(&mut self) {
        self.looks.clear();
    }

    /// The place between and beyond the looks whose own way would be the shortest, as far as ways change
    /// evenly from look to look:
    ///
    /// ```text
    /// min |Σ a (x' − x)| over Σ a = 1        next = Σ a (x + ½ (x' − x))
    /// ```
    ///
    /// `None` if there is none.
    ///
    /// # Source
    /// D. G. Anderson (1965), *J. ACM* 12, 547-560. From memory.
    pub(super) fn onward(&self) -> Option<Stand> {
        let (_, to) = self.looks.back()?;
        if self.looks.len() < 2 {
            return None;
        }
        let root = lower_triangle(&to.covariance);
        let ways: Vec<Vec<f64>> =
            self.looks.iter().map(|(from, to)| from.long_way(to, &root)).collect();
        let (last, before) = ways.split_last()?;
        let apart =
            |way: &Vec<f64>| way.iter().zip(last).map(|(way, last)| way - last).collect();
        let columns: Vec<Vec<f64>> = before.iter().map(apart).collect();
        let square = |column: &Vec<f64>| column.iter().map(|value| value * value).sum::<f64>();
        let widest = columns.iter().map(square).fold(0.0, f64::max);
        let back = last.iter().map(|value| -value).collect();
        let triangle =
            Triangle::of(columns, back).stacked(&vec![1.0; before.len()], QUIET * widest);
        if !triangle.is_whole() {
            return None;
        }
        let mut parts = triangle.solution();
        parts.push(1.0 - parts.iter().sum::<f64>());
        let halfway =
            self.looks.iter().map(|(from, to)| from.clone().toward(to.clone(), SHARE));
        Stand::together(&halfway.collect::<Vec<_>>(), &parts)
    }
}

#[cfg(test)]
mod tests {
    use super::super::stand::Stand;
    use super::super::unlike::Trust;
    use super::Remembered;

    fn stand(at: [f64; 2]) -> Stand {
        let covariance = vec![vec![1.0, 0.0], vec![0.0, 1.0]];
        Stand { at: at.to_vec(), covariance, trust: Some(Trust::full(0)) }
    }

    /// x' = 1.3 x along one way and −3 x along another lead away from 0 whatever share is gone; three looks
    /// of two ways know where 0 is.
    #[test]
    fn a_place_that_looks_lead_away_from_is_found() {
        let mut remembered = Remembered::default();
        for at in [[1.0, 0.5], [0.7, -0.2], [0.3, 0.4]] {
            remembered.add(&stand(at), &stand([1.3 * at[0], -3.0 * at[1]]));
        }
        let next = remembered.onward().expect("a place");
        assert!(next.at.iter().all(|value| value.abs() < 0.01), "{:?}", next.at);
    }

    /// One look, or the same one twice, says nothing.
    #[test]
    fn looks_that_say_nothing_lead_nowhere() {
        let mut remembered = Remembered::default();
        for _ in 0..2 {
            assert!(remembered.onward().is_none());
            remembered.add(&stand([1.0, 1.0]), &stand([2.0, 0.0]));
        }
        assert!(remembered.onward().is_none());
    }
}

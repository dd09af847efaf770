//! Bags that are tried around one.

use super::curves::Kind;
use super::effects::Effect;
use super::gas::Gas;
use crate::forecast::SetupError;
use crate::model::Mixture;
use crate::model::card::CardOnBag;
use crate::prior::Prior;

/// The bag around which others are tried.
pub(super) struct Base<'a> {
    kind: &'a Kind,
    prior: &'a Prior,
    day: &'a [f64],
    fine: f64,
    bag: Mixture,
    gas: Gas<'a>,
    /// Its rise at each minute (mm).
    pub(super) rises: Vec<f64>,
}

impl<'a> Base<'a> {
    pub(super) fn new(
        kind: &'a Kind,
        prior: &'a Prior,
        day: &'a [f64],
        fine: f64,
    ) -> Result<Self, SetupError> {
        let (setup, parameters) = kind.bag(prior, day, &[], None);
        let bag = Mixture::new(&setup, &parameters);
        let gas = kind.gas(&bag, &setup, fine)?;
        let rises = gas.rises(&CardOnBag::new(&setup, &bag, &parameters));
        Ok(Self { kind, prior, day, fine, bag, gas, rises })
    }

    /// Rises of a bag with some numbers moved, and with one effect more.
    pub(super) fn tried(
        &self,
        moved: &[(usize, f64)],
        more: Option<(&Effect, f64)>,
        same_gas: bool,
    ) -> Result<Vec<f64>, SetupError> {
        let (setup, parameters) = self.kind.bag(self.prior, self.day, moved, more);
        if same_gas {
            return Ok(self.gas.rises(&CardOnBag::new(&setup, &self.bag, &parameters)));
        }
        let twin = Mixture::new(&setup, &parameters);
        let gas = self.kind.gas(&twin, &setup, self.fine)?;
        Ok(gas.rises(&CardOnBag::new(&setup, &twin, &parameters)))
    }

    /// The slope between two trials, and what they add to the mean: f(±r) = f ± slope r + bend r².
    pub(super) fn either(
        &self,
        more: &[f64],
        less: &[f64],
        reach: f64,
    ) -> (Vec<f64>, Vec<f64>) {
        let bend = |((more, less), rise): ((&f64, &f64), &f64)| {
            0.5 * (more + less - 2.0 * rise) / (reach * reach)
        };
        let both = || more.iter().zip(less);
        let slope = both().map(|(more, less)| 0.5 * (more - less) / reach).collect();
        (slope, both().zip(&self.rises).map(bend).collect())
    }
}

/// Slopes with each number from those along the columns of a triangle: Rᵀ a = d.
pub(super) fn along_axes(root: &[Vec<f64>], mut along: Vec<Vec<f64>>) -> Vec<Vec<f64>> {
    for at in (0..along.len()).rev() {
        let (before, after) = along.split_at_mut(at + 1);
        let own = &mut before[at];
        for (later, row) in after.iter().zip(&root[at + 1..]) {
            own.iter_mut().zip(later).for_each(|(own, later)| *own -= row[at] * later);
        }
        let wide = root[at][at];
        own.iter_mut().for_each(|own| *own = if wide > 0.0 { *own / wide } else { 0.0 });
    }
    along
}

#[cfg(test)]
mod tests {
    use super::along_axes;

    /// A plane of slopes 3 and 5 along the columns (2, 1) and (0, 4): 2 · 3 + 1 · 5 = 11 and 4 · 5 = 20.
    #[test]
    fn slopes_come_back_from_along_the_columns() {
        let slopes =
            along_axes(&[vec![2.0, 0.0], vec![1.0, 4.0]], vec![vec![11.0], vec![20.0]]);
        assert_eq!(slopes, [[3.0], [5.0]]);
    }
}

//! What is to be fitted.

/// Share of a parameter by which it is moved to see how the residuals change: the fifth root of the
/// unit roundoff, at which rounding and the h⁴ error of the formula are alike.
const STEP: f64 = 7.4e-4;

/// A step that changes the residuals by less than this share of the largest shows rounding more than the model (1): of
/// 16 digits fewer than ten are left.
const SEEN: f64 = 1e-6;

/// A model with its data: residuals as a function of parameters.
///
/// A prior of a parameter is one more residual, (parameter − mean)/sd.
pub trait Problem {
    /// How many residuals there are.
    fn count(&self) -> usize;

    /// Writes every residual, measured less computed, each in units of its standard deviation or all
    /// in the unit of the data. One that is not finite says that the parameters cannot be.
    fn residuals(&self, parameters: &[f64], out: &mut [f64]);

    /// How the computed values change with each parameter, a column a parameter: minus the
    /// derivatives of the residuals.
    ///
    /// Unless a model knows better: central differences of fourth order,
    /// (8 (f(h) − f(−h)) − (f(2h) − f(−2h)))/12 h (Abramowitz & Stegun 25.3.21, from memory).
    ///
    /// Each is moved by a share of itself; but one that happens to lie beside 0 would hardly move, and rounding would be
    /// all that is seen. Such a one is moved by as much as changes the residuals by that share.
    fn slopes(&self, parameters: &[f64]) -> Vec<Vec<f64>> {
        let mut here = vec![0.0; self.count()];
        self.residuals(parameters, &mut here);
        let largest = most(&here);
        let column = |at: usize| {
            let own = parameters[at].abs();
            let step = if own > 0.0 { STEP * own } else { STEP };
            let slope = by_steps(self, parameters, (at, step));
            let moves = most(&slope);
            if step * moves >= SEEN * largest {
                return slope;
            }
            let further = by_steps(self, parameters, (at, STEP * largest / moves));
            if further.iter().all(|value| value.is_finite()) { further } else { slope }
        };
        (0..parameters.len()).map(column).collect()
    }
}

/// How the computed values change with one parameter, by steps of one size.
fn by_steps<P: Problem + ?Sized>(
    problem: &P,
    parameters: &[f64],
    (at, step): (usize, f64),
) -> Vec<f64> {
    let mut moved = parameters.to_vec();
    let mut read = vec![0.0; problem.count()];
    let mut slope = vec![0.0; problem.count()];
    for (share, weight) in [(1.0, -8.0), (-1.0, 8.0), (2.0, 1.0), (-2.0, -1.0)] {
        moved[at] = parameters[at] + share * step;
        problem.residuals(&moved, &mut read);
        for (sum, value) in slope.iter_mut().zip(&read) {
            *sum += weight * value / (12.0 * step);
        }
    }
    slope
}

/// The largest of some values, whatever their signs.
fn most(values: &[f64]) -> f64 {
    values.iter().fold(0.0, |most, value| f64::max(most, value.abs()))
}

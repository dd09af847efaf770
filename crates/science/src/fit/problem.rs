//! What is to be fitted.

/// Share of a parameter by which it is moved to see how the residuals change: the fifth root of the
/// unit roundoff, at which rounding and the h⁴ error of the formula are alike.
const STEP: f64 = 7.4e-4;

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
    fn slopes(&self, parameters: &[f64]) -> Vec<Vec<f64>> {
        let mut moved = parameters.to_vec();
        let mut read = vec![0.0; self.count()];
        let mut column = |at: usize| {
            let here = parameters[at];
            let step = if here == 0.0 { STEP } else { STEP * here.abs() };
            let mut slope = vec![0.0; self.count()];
            for (share, weight) in [(1.0, -8.0), (-1.0, 8.0), (2.0, 1.0), (-2.0, -1.0)] {
                moved[at] = here + share * step;
                self.residuals(&moved, &mut read);
                for (sum, value) in slope.iter_mut().zip(&read) {
                    *sum += weight * value / (12.0 * step);
                }
            }
            moved[at] = here;
            slope
        };
        (0..parameters.len()).map(&mut column).collect()
    }
}

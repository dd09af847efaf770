//! What a calibration with a syringe leaves open of a bag's curve.

use crate::cholesky::lower_triangle;

/// What is known of the three deviates of a bag's curve: of its exponent, of what its dead share has
/// of its own, and of its capacity. Each is counted in standard deviations of the
/// [`CurvePrior`](super::CurvePrior) of the same bag and card, so that what was learned at one amount
/// of liquid can be used at another.
///
/// A normal distribution of three dimensions. Plain numbers: this is what is kept of a calibration.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CurvePosterior {
    /// Means (standard deviations of the prior).
    pub mean: [f64; 3],
    /// Lower triangle L, row by row: L Lᵀ is the covariance.
    pub root: [[f64; 3]; 3],
}

impl CurvePosterior {
    /// A bag that was not calibrated.
    pub const NOTHING_MEASURED: Self =
        Self { mean: [0.0; 3], root: [[1.0, 0.0, 0.0], [0.0, 1.0, 0.0], [0.0, 0.0, 1.0]] };

    /// The bag's deviates at three independent standard normal ones.
    pub fn deviates(&self, independent: [f64; 3]) -> [f64; 3] {
        let along =
            |row: &[f64; 3]| -> f64 { row.iter().zip(independent).map(|(r, u)| r * u).sum() };
        core::array::from_fn(|at| self.mean[at] + along(&self.root[at]))
    }

    /// What is left open of each deviate, as a share of what was open before any calibration (1).
    pub fn left_open(&self) -> [f64; 3] {
        self.root.map(|row| libm::sqrt(row.iter().map(|r| r * r).sum()))
    }

    /// What is known of the part that all bags of the same box under the same kind of card have in common;
    /// each bag has a part of its own beside it, of variance 1 − ρ.
    ///
    /// ```text
    /// mean′ = ρ mean        covariance′ = ρ² covariance + ρ (1 − ρ) I
    /// ```
    ///
    /// ρ (`alike`) is the share of the prior variance that bags of one box have in common, 0 to 1.
    pub fn of_the_box(&self, alike: f64) -> Self {
        let alike = alike.clamp(0.0, 1.0);
        self.blurred(alike, alike * (1.0 - alike))
    }

    /// What is known of another bag of the same box under the same kind of card: [`Self::of_the_box`] with
    /// the other bag's own part.
    ///
    /// ```text
    /// mean′ = ρ mean        covariance′ = ρ² covariance + (1 − ρ²) I
    /// ```
    pub fn of_another_bag(&self, alike: f64) -> Self {
        let alike = alike.clamp(0.0, 1.0);
        self.blurred(alike, 1.0 - alike * alike)
    }

    /// Mean times a factor, covariance times its square, and a variance of its own for each deviate.
    fn blurred(&self, factor: f64, own: f64) -> Self {
        let entry = |row: usize, column: usize| {
            let own = if row == column { own } else { 0.0 };
            factor * factor * self.covariance(row, column) + own
        };
        let covariance: Vec<Vec<f64>> =
            (0..3).map(|row| (0..3).map(|column| entry(row, column)).collect()).collect();
        let root = square(&lower_triangle(&covariance));
        Self { mean: self.mean.map(|mean| factor * mean), root }
    }

    /// Whether these are numbers that a calibration can have left: finite, none more open than before
    /// it, none without width. To be asked of what comes back from a file.
    pub fn is_possible(&self) -> bool {
        let finite = |values: &[f64; 3]| values.iter().all(|value| value.is_finite());
        finite(&self.mean)
            && self.root.iter().all(finite)
            && self.root[0][1] == 0.0
            && self.root[0][2] == 0.0
            && self.root[1][2] == 0.0
            && (0..3).all(|at| self.root[at][at] > 0.0)
            && self.left_open().iter().all(|open| *open <= WIDEST)
    }

    /// The same with what was found of three independent deviates of this.
    pub(super) fn narrowed(&self, found: &Self) -> Self {
        let times = |row: usize, column: usize| -> f64 {
            (0..3).map(|at| self.root[row][at] * found.root[at][column]).sum()
        };
        Self {
            mean: self.deviates(found.mean),
            root: core::array::from_fn(|row| core::array::from_fn(|column| times(row, column))),
        }
    }

    pub(crate) fn covariance(&self, row: usize, column: usize) -> f64 {
        (0..3).map(|at| self.root[row][at] * self.root[column][at]).sum()
    }
}

/// Most that a deviate may be open (standard deviations): a calibration does not widen; a little more
/// for rounding in a file, and for moments of a distribution that is not normal.
const WIDEST: f64 = 1.25;

/// Three rows of three as an array.
pub(super) fn square(rows: &[Vec<f64>]) -> [[f64; 3]; 3] {
    core::array::from_fn(|row| core::array::from_fn(|column| rows[row][column]))
}

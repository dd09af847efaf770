//! What a day has taught.

use crate::prior::Learned;

/// A fitted day.
#[derive(Debug, Clone, PartialEq)]
pub struct DayFit {
    /// The numbers that the day's bags share: what is known of them now, the prior of the next day
    /// ([`Prior::knowing`](crate::prior::Prior::knowing)).
    pub learned: Learned,
    /// Sum of squared readings less expectation, in units of what was expected of them.
    pub chi_square: f64,
    /// Readings less what the numbers took up.
    pub freedom: f64,
    /// By which the noise was taken to be larger than expected (1): 1 where the readings scatter no
    /// more than they may.
    pub noise: f64,
    /// Chance that a bag does not belong with the others (1), bag by bag: that it leaks, or is another
    /// than it is said to be. Such a bag hardly counts.
    pub unlike: Vec<f64>,
    /// What would be left open of each number had all bags scattered as the model says (standard
    /// deviations of the table): beside that, `learned` shows how far scatter and doubt widened it.
    pub unwidened: Vec<f64>,
    /// How far the search still was from where it was going (standard deviations of what is left open):
    /// below a thousandth wherever it arrived.
    pub off: f64,
    /// Rise that the fitted day expects at each reading (mm), bag by bag.
    pub expected_mm: Vec<Vec<f64>>,
}

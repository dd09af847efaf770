//! What a day has taught.

/// One number of the day after the readings.
#[derive(Debug, Clone, PartialEq)]
pub struct Learned {
    /// Its name, as of its effect.
    pub name: String,
    /// Where it stands, in standard deviations of its prior from the prior's best guess.
    pub mean: f64,
    /// What is left of its standard deviation (1); 1 says that nothing was learned.
    pub sd: f64,
}

/// Above this share of its prior's width a number counts as one that the readings could not move
/// (1, own rule).
pub(super) const UNMOVED: f64 = 0.9;

impl Learned {
    /// Whether the readings could move it.
    pub fn is_moved(&self) -> bool {
        self.sd < UNMOVED
    }
}

/// A fitted day.
#[derive(Debug, Clone, PartialEq)]
pub struct DayFit {
    /// The numbers that the day's bags share.
    pub numbers: Vec<Learned>,
    /// Their covariance, in standard deviations of the prior, row by row.
    pub covariance: Vec<Vec<f64>>,
    /// Sum of squared readings less expectation, in units of what was expected of them.
    pub chi_square: f64,
    /// Readings less what the numbers took up.
    pub freedom: f64,
    /// By which the noise was taken to be larger than expected (1): 1 where the readings scatter no
    /// more than they may.
    pub noise: f64,
    /// Rise that the fitted day expects at each reading (mm), bag by bag.
    pub expected_mm: Vec<Vec<f64>>,
}

impl DayFit {
    /// One of its numbers.
    pub fn number(&self, name: &str) -> Option<&Learned> {
        self.numbers.iter().find(|number| number.name == name)
    }

    /// Numbers that the readings could not move.
    pub fn unmoved(&self) -> impl Iterator<Item = &Learned> {
        self.numbers.iter().filter(|number| !number.is_moved())
    }
}

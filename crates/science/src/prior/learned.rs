//! What readings have taught about the uncertain numbers, as plain numbers.

use super::joint::Joint;
use super::{Key, Prior};
use thiserror::Error;

/// Above this share of its prior's width a number counts as one that the readings could not move
/// (1, own rule).
pub const UNMOVED: f64 = 0.9;

/// What is known of some of the numbers that a day shares: a normal distribution of many dimensions.
///
/// Every number is counted in standard deviations of the table of what is not known
/// ([`standard`](super::standard)), from its best guess: mean 0 and covariance I say that nothing was
/// learned. Plain numbers: this is what is kept of a fit or of a calibration.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Learned {
    /// Names of the numbers, as a [`Key`] writes them.
    pub names: Vec<String>,
    /// Where each stands (standard deviations of the table).
    pub means: Vec<f64>,
    /// Their covariance, row by row (the same, squared).
    pub covariance: Vec<Vec<f64>>,
}

/// Why numbers cannot be what somebody learned. To be expected of what comes back from a file.
#[derive(Debug, Clone, PartialEq, Error)]
#[non_exhaustive]
pub enum LearnedError {
    /// Lists that do not belong together.
    #[error(
        "{names} names need {names} means and {names} rows of {names} covariances; there are {means} \
         means and {rows} rows, or one row is too short or too long"
    )]
    Shape {
        /// How many names.
        names: usize,
        /// How many means.
        means: usize,
        /// How many rows of covariances.
        rows: usize,
    },
    /// A name that stands twice.
    #[error("{name} stands twice; each number has one mean")]
    Twice {
        /// The name.
        name: String,
    },
    /// A number that is none.
    #[error("the mean of {name} or one of its covariances is not a finite number")]
    NotFinite {
        /// Of which name.
        name: String,
    },
    /// Covariances that no numbers can have.
    #[error(
        "the covariances of {name} with the others cannot be: the table must be the same across its \
         diagonal, and no sum of the numbers may have a negative variance"
    )]
    NotACovariance {
        /// Of which name.
        name: String,
    },
}

impl Learned {
    /// How many numbers.
    pub const fn len(&self) -> usize {
        self.names.len()
    }

    /// Whether nothing was learned.
    pub const fn is_empty(&self) -> bool {
        self.names.is_empty()
    }

    /// Standard deviation of one of them by its place (standard deviations of the table); NaN for none.
    pub fn sd(&self, at: usize) -> f64 {
        self.covariance.get(at).and_then(|row| row.get(at)).map_or(f64::NAN, |v| v.sqrt())
    }

    /// Place of a name.
    pub fn place(&self, name: &str) -> Option<usize> {
        self.names.iter().position(|one| one == name)
    }

    /// Names of those that the readings could not move: still [`UNMOVED`] of their width.
    pub fn could_not_move(&self) -> Vec<&str> {
        let unmoved = |at: &usize| self.sd(*at) >= UNMOVED;
        (0..self.len()).filter(unmoved).map(|at| self.names[at].as_str()).collect()
    }

    /// The same of some of its numbers only; what it knew of the others is left out (marginal
    /// distribution).
    pub fn only(&self, keep: impl Fn(&str) -> bool) -> Self {
        let kept: Vec<usize> = (0..self.len()).filter(|at| keep(&self.names[*at])).collect();
        Self {
            names: kept.iter().map(|at| self.names[*at].clone()).collect(),
            means: kept.iter().map(|at| self.means[*at]).collect(),
            covariance: kept
                .iter()
                .map(|row| kept.iter().map(|column| self.covariance[*row][*column]).collect())
                .collect(),
        }
    }

    /// With what another measurement taught of other numbers. Where both know a number, the other
    /// counts, as the newer.
    pub fn with(&self, other: &Self) -> Self {
        let mut all = self.only(|name| other.place(name).is_none());
        let (before, count) = (all.len(), all.len() + other.len());
        all.names.extend(other.names.iter().cloned());
        all.means.extend(&other.means);
        for row in &mut all.covariance {
            row.resize(count, 0.0);
        }
        for row in &other.covariance {
            let mut wide = vec![0.0; before];
            wide.extend(row);
            all.covariance.push(wide);
        }
        all
    }

    /// Whether these are numbers that somebody can have learned.
    ///
    /// # Errors
    /// [`LearnedError`] says which cannot be.
    pub fn check(&self) -> Result<(), LearnedError> {
        let names = self.len();
        let square = self.covariance.iter().all(|row| row.len() == names);
        if self.means.len() != names || self.covariance.len() != names || !square {
            let (means, rows) = (self.means.len(), self.covariance.len());
            return Err(LearnedError::Shape { names, means, rows });
        }
        for (at, name) in self.names.iter().enumerate() {
            let name = || name.clone();
            if self.place(&self.names[at]) != Some(at) {
                return Err(LearnedError::Twice { name: name() });
            }
            let row = &self.covariance[at];
            if !self.means[at].is_finite() || !row.iter().all(|entry| entry.is_finite()) {
                return Err(LearnedError::NotFinite { name: name() });
            }
        }
        Joint::root_of(&self.covariance)
            .map(|_| ())
            .map_err(|at| LearnedError::NotACovariance { name: self.names[at].clone() })
    }
}

impl Prior {
    /// The same table with what was learned of some of its numbers, in place of what was known of
    /// those before. What was not learned stays as it was; a name that the table does not have (any
    /// more) is passed over.
    ///
    /// # Errors
    /// [`LearnedError`] for numbers that nobody can have learned.
    pub fn knowing(&self, learned: &Learned) -> Result<Self, LearnedError> {
        learned.check()?;
        let joint = Joint::new(&self.learned().with(learned), &self.rows);
        Ok(Self { joint, ..self.clone() })
    }

    /// The value of a number of the model whose deviate of the day is `deviate`, in the unit of its fact: to
    /// show what was learned. Nothing for a name without a row, such as an activity: that is a factor
    /// e to the power of the deviate times what the label leaves open.
    pub fn value(&self, name: &str, deviate: f64) -> Option<f64> {
        let key = Key::read(name, &self.rows)?;
        let row = self.rows.iter().find(|row| row.name == key.name && row.is_of(key.of))?;
        let mut center = self.center;
        Some(row.transform.moved(*(row.place)(&mut center), row.spread.day, deviate))
    }

    /// What was learned beyond the table.
    pub fn learned(&self) -> Learned {
        self.joint.learned()
    }
}

//! What one year found.

use super::error::MetaError;

/// The difference that one year or class measured.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Study {
    /// The difference (any unit, the same for all).
    pub estimate: f64,
    /// Its standard error (the same unit).
    pub se: f64,
    /// Degrees of freedom of that standard error, at least 1; nothing where it is as good as known.
    pub df: Option<f64>,
}

impl Study {
    /// A difference whose standard error is as good as known.
    pub const fn known(estimate: f64, se: f64) -> Self {
        Self { estimate, se, df: None }
    }

    /// A difference whose standard error was estimated with so many degrees of freedom.
    pub const fn estimated(estimate: f64, se: f64, df: f64) -> Self {
        Self { estimate, se, df: Some(df) }
    }

    /// One over the degrees of freedom; 0 where the standard error is as good as known.
    pub(super) fn doubt(&self) -> f64 {
        self.df.map_or(0.0, |df| 1.0 / df)
    }

    pub(super) fn checked(&self, place: usize) -> Result<(), MetaError> {
        // Beyond this, squares are not finite any more.
        const LARGEST: f64 = 1e100;
        if self.estimate.is_nan() || self.estimate.abs() > LARGEST {
            return Err(MetaError::Unusable { place, value: self.estimate });
        }
        if !(self.se >= 1.0 / LARGEST && self.se <= LARGEST) {
            return Err(MetaError::NoStandardError { place, se: self.se });
        }
        match self.df {
            Some(df) if df.is_nan() || df < 1.0 => Err(MetaError::NoFreedom { place, df }),
            _ => Ok(()),
        }
    }
}

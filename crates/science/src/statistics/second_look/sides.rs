//! How much two sides of bags tell of their difference.

use super::error::SecondLookError;

/// Bags on both sides of a comparison; fractions stand for bags that count less, as those of one
/// group do ([`effective_bags`](crate::statistics::power::effective_bags)).
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Sides {
    /// Bags of the treatment.
    pub bags: f64,
    /// Bags of its reference.
    pub bags_reference: f64,
}

impl Sides {
    /// As many on each side.
    pub const fn even(bags: f64) -> Self {
        Self { bags, bags_reference: bags }
    }

    /// Information on the difference, in units of one over the variance of a bag (1).
    ///
    /// ```text
    /// I = 1 / (1/n + 1/n₀)
    /// ```
    ///
    /// # Errors
    /// [`SecondLookError::NoBags`] for a side with less than one bag, or more than 10⁶.
    pub fn information(&self) -> Result<f64, SecondLookError> {
        for bags in [self.bags, self.bags_reference] {
            if !(1.0..=1e6).contains(&bags) {
                return Err(SecondLookError::NoBags { bags });
            }
        }
        Ok(1.0 / (1.0 / self.bags + 1.0 / self.bags_reference))
    }
}

/// Share of the information on a difference that round one has, where bags of both rounds differ
/// equally among themselves and the round is a block (1).
///
/// # Errors
/// [`SecondLookError::NoBags`] as [`Sides::information`].
pub fn share_of_bags(first: Sides, second: Sides) -> Result<f64, SecondLookError> {
    let (first, second) = (first.information()?, second.information()?);
    Ok(first / (first + second))
}

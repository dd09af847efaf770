//! How many bags it takes.

use super::error::PowerError;
use super::is_inner;

/// The fewest bags of each, from 1 to `most`, with which a difference is found with at least that
/// chance (1); `odds` says the chance for a number of bags and must not fall with it.
///
/// A number of bags too small for any test finds nothing.
///
/// # Errors
/// [`PowerError::TooMany`] where `most` are not enough; [`PowerError`] for a chance that is none, and
/// what `odds` says.
pub fn bags_needed(
    most: u32,
    chance: f64,
    odds: impl Fn(u32) -> Result<f64, PowerError>,
) -> Result<u32, PowerError> {
    if !is_inner(chance) {
        return Err(PowerError::NoChance { what: "the chance", value: chance });
    }
    let enough = |bags: u32| match odds(bags) {
        Ok(found) => Ok(found >= chance),
        Err(PowerError::NoSpreadSeen | PowerError::TooFew { .. }) => Ok(false),
        Err(error) => Err(error),
    };
    // Too few and enough; doubling keeps the largest number of bags that is tried small.
    let (mut few, mut many) = (0_u32, 1_u32);
    while !enough(many.min(most))? {
        if many >= most {
            return Err(PowerError::TooMany { most });
        }
        few = many;
        many = many.saturating_mul(2);
    }
    many = many.min(most);
    while many - few > 1 {
        let middle = few + (many - few) / 2;
        if enough(middle)? {
            many = middle;
        } else {
            few = middle;
        }
    }
    Ok(many)
}

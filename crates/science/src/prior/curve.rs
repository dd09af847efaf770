//! What is known of a bag's curve, as numbers of the day and as a posterior of one bag.
//!
//! A deviate of a bag's curve is the box's part and the bag's own: t = √ρ z + √(1 − ρ) b, of which the
//! day's number is z. So what is known of one follows from the other:
//!
//! ```text
//! z | t ~ N(√ρ m, ρ C + (1 − ρ) I)    where a bag of the box was calibrated to t ~ N(m, C)
//! t | z ~ N(√ρ m, ρ C + (1 − ρ) I)    of a bag of the box, where z ~ N(m, C)
//! ```
//!
//! # Source
//! Joint normal of z and t (any text on the normal distribution).

use super::handling::CARD_DAY_SHARE;
use super::{Key, Learned, Of, Prior};
use crate::bag::StandardBag;
use crate::card_height::CurvePosterior;
use crate::cholesky::lower_triangle;
use crate::setup::Bag;

/// The deviates of a curve, in the order of a [`CurvePosterior`].
const DEVIATES: [&str; 3] = ["exponent", "dead-share", "capacity"];

fn keys(bag: &Bag) -> [Key; 3] {
    let of = Of::Bags(StandardBag::nearest(bag));
    DEVIATES.map(|name| Key::new(name, of))
}

/// Means and covariance of the box's part from those of a bag's whole, or the other way round.
fn across(mean: [f64; 3], covariance: [[f64; 3]; 3]) -> ([f64; 3], [[f64; 3]; 3]) {
    let share = CARD_DAY_SHARE.value;
    let entry = |row: usize, column: usize| {
        let own = if row == column { 1.0 - share } else { 0.0 };
        share * covariance[row][column] + own
    };
    let covariance = core::array::from_fn(|row| core::array::from_fn(|to| entry(row, to)));
    (mean.map(|mean| share.sqrt() * mean), covariance)
}

impl Learned {
    /// What the calibration of one bag taught of all bags of its box, under the same kind of card.
    pub fn of_curve(posterior: &CurvePosterior, bag: &Bag) -> Self {
        let covariance = core::array::from_fn(|row| {
            core::array::from_fn(|to| posterior.covariance(row, to))
        });
        let (means, covariance) = across(posterior.mean, covariance);
        Self {
            names: keys(bag).iter().map(Key::to_string).collect(),
            means: means.to_vec(),
            covariance: covariance.iter().map(|row| row.to_vec()).collect(),
        }
    }
}

impl Prior {
    /// What is known of the curve of a bag of this size, whichever of its box it is.
    pub fn curve(&self, bag: &Bag) -> CurvePosterior {
        let (mut mean, mut covariance) = ([0.0; 3], [[0.0; 3]; 3]);
        let places = keys(bag).map(|key| self.joint.keys.iter().position(|one| *one == key));
        if places.iter().all(Option::is_none) {
            return CurvePosterior::NOTHING_MEASURED;
        }
        for (row, place) in places.iter().enumerate() {
            mean[row] = place.map_or(0.0, |place| self.joint.means[place]);
            for (to, other) in places.iter().enumerate() {
                covariance[row][to] = match (place, other) {
                    (Some(place), Some(other)) => self.joint.covariance(*place, *other),
                    _ => f64::from(u8::from(row == to)),
                };
            }
        }
        let (mean, covariance) = across(mean, covariance);
        let rows: Vec<Vec<f64>> = covariance.iter().map(|row| row.to_vec()).collect();
        let root = lower_triangle(&rows);
        let root = core::array::from_fn(|row| core::array::from_fn(|to| root[row][to]));
        CurvePosterior { mean, root }
    }
}

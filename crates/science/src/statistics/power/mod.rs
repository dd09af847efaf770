//! Power: the chance that bags which are still to be made will show a difference.
//!
//! # What is assumed
//! As in [`compare`](super::compare): one value a bag, value = period + treatment + rest, the rest
//! normal. [`OneDifference`] speaks of even layouts with rests of one size, as handbooks tabulate
//! them; [`Classes`] of the bags of a real plan, judged by the rule of the day, with a spread of its own for
//! each treatment and with what bags of one group have in common. A class whose hands slip finds less: these
//! are best cases.
//!
//! All chances are two-sided, and are told by side, so that a difference which is found the wrong
//! way round is never counted as found.

mod bags;
mod classes;
mod effective;
mod error;
mod one_difference;
mod several;
mod widths;

pub use bags::bags_needed;
pub use classes::{Classes, Deals, Place, Spreads};
pub use effective::effective_bags;
pub use error::PowerError;
pub use one_difference::{Beside, Limits, Odds, OneDifference};
pub use several::SeveralTreatments;

/// The chance of finding a difference that is meant by "usually found" (1); common practice, no
/// source.
pub const USUAL: f64 = 0.8;

/// Whether `chance` lies strictly between 0 and 1.
fn is_inner(chance: f64) -> bool {
    chance > 0.0 && chance < 1.0
}

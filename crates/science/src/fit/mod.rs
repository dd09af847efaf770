//! Parameters from data: nonlinear least squares.

pub mod curve;
pub mod day;
mod least_squares;
mod problem;
mod triangle;
mod trust;

pub use crate::prior::Learned;
pub use least_squares::{Estimates, FitError, least_squares};
pub use problem::Problem;

//! The bag model: everything that happens in one bag, as coupled rates of change,
//! one for each state of [`state`].
//!
//! Time is in minutes from the zero reading, amounts in mmol. The equations, with letters, units
//! and sources, stand in `docs/science/bag-model.md`.

mod acidity;
pub mod balance;
pub mod card;
pub mod course;
mod enzyme;
mod fixed;
pub(crate) mod following;
mod granulate;
mod minutes;
pub mod mixture;
mod moving;
mod pantry;
pub mod parameters;
mod rates;

pub mod shares;
pub mod state;
pub mod validity;
mod volume;
mod warmth;

pub use course::{Moment, Trajectory, nominal, run};
pub use mixture::Mixture;
pub use parameters::Parameters;

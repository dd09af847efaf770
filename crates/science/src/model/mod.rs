//! The bag model: everything that happens in one bag, as 26 coupled rates of change.
//!
//! Time is in minutes from the zero reading, amounts in mmol. The equations, with letters, units
//! and sources, stand in `docs/science/bag-model.md`.

pub mod balance;
pub mod card;
pub mod mixture;
pub mod parameters;
mod rates;
pub mod run;
pub mod state;

pub use mixture::Mixture;
pub use parameters::Parameters;
pub use run::{Moment, Trajectory, nominal};

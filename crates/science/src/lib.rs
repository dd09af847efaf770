//! The science of a yeast bag: physical chemistry, yeast, enzymes, foods, bags, the bag model,
//! measurement and statistics.
//!
//! Nothing in this crate reads, writes, waits, knows the time, draws its own random seed or
//! serializes. Time, chance and place are arguments.

pub mod air;
pub mod bag;
pub mod carbon_dioxide;
pub mod carbonate;
pub mod card_height;
mod cholesky;
pub mod constants;
pub mod cooling;
pub mod enzyme;
pub mod ethanol;
mod exponential;
pub mod fact;
pub mod facts;
pub mod fit;
pub mod food;
pub mod forecast;
pub mod gas;
mod householder;
pub mod meter;
pub mod model;
pub mod monotone;
pub mod ode;
pub mod permeation;
pub mod prior;
pub mod ruler;
pub mod setup;
pub mod side_by_side;
pub mod slip;
pub mod statistics;
pub mod stoichiometry;
mod temperature_table;
pub mod units;
pub mod water;
pub mod weighing;
pub mod yeast;

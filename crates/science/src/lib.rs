//! The science of a yeast bag: physical chemistry, yeast, enzymes, foods, bags, the bag model,
//! measurement and statistics.
//!
//! Nothing in this crate reads, writes, waits, knows the time, draws its own random seed or
//! serializes. Time, chance and place are arguments.

pub mod fact;
pub mod setup;
pub mod statistics;

//! Preparing a day: trays, totals, shopping, stock solutions, water.

mod day;
mod packs;
mod refused;
mod school;
mod shopping;
mod stocks;
mod sums;
mod water;

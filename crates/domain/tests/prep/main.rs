//! Preparing a day: trays, totals, shopping, stock solutions, water.

mod day;
mod packs;
mod refused;
mod school;
mod shopping;
#[path = "../../../science/tests/statistics/size.rs"]
mod size;
mod stocks;
mod sums;
mod water;

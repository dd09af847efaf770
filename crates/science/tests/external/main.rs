//! Checks of the science against what others have published.

mod cards;
mod foods;
mod liquid;
mod meter;
mod physical;
mod rows;
mod vectors;
mod weighing;

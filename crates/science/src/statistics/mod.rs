//! Statistics fit for purpose: the bag as the unit, the period as the block.

mod additive;
pub mod chance;
pub mod compare;
pub mod distribution;
pub mod linear;
pub mod verdict;

//! Statistics fit for purpose: the bag as the unit, the period as the block.

pub mod compare;
pub mod distribution;
pub mod linear;

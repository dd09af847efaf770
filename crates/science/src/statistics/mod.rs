//! Statistics fit for purpose: the bag as the unit, the period as the block.

mod additive;
pub mod anova;
pub mod chance;
pub mod compare;
pub mod distribution;
pub mod factorial;
pub mod ladder;
pub mod linear;
pub mod share;
pub mod slope;
pub mod sum;
pub mod summary;
pub mod two_sample;
pub mod verdict;

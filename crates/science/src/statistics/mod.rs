//! Statistics fit for purpose: the bag as the unit, the period as the block.

pub mod anova;
mod blocked;
pub mod chance;
pub mod compare;
pub mod distribution;
pub mod expected_gain;
pub mod factorial;
pub mod friedman;
pub mod kruskal;
pub mod ladder;
pub mod levels;
pub mod linear;
pub mod mad_multiple;
pub mod meta;
pub mod mixed;
pub mod power;
pub mod randomization;
pub mod ranks;
pub mod second_look;
pub mod share;
pub mod slope;
pub mod straight;
pub mod sum;
pub mod summary;
pub mod two_sample;
pub mod verdict;
pub mod welch_anova;

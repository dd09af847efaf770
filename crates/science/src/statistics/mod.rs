//! Statistics fit for purpose: the bag as the unit, the period as the block.

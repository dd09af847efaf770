//! From readings to verdicts.

mod bags;
mod calibration;
mod class;
mod crossed;
mod limits;
mod meter;
mod properties;
mod published;
#[path = "../../../science/tests/statistics/size.rs"]
mod size;
mod stories;
mod taught;
mod words;

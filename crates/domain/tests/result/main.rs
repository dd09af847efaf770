//! From readings to verdicts.

mod bags;
mod calibration;
mod class;
mod crossed;
mod limits;
mod meter;
mod properties;
mod published;
mod stories;
mod words;

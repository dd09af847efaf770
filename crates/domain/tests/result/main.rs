//! From readings to verdicts.

mod bags;
mod calibration;
mod class;
mod crossed;
mod limits;
mod properties;
mod published;
mod stories;
mod words;

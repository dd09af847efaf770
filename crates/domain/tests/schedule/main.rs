//! The schedule of a period: waves, the meter, what does not fit, what is left after a drill.

mod best;
mod checked;
mod properties;
mod replanned;
mod school;
#[path = "../../../science/tests/statistics/size.rs"]
mod size;
mod stories;

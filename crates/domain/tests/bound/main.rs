//! A sealed bag stays what it was, whatever is edited afterwards.

mod edits;
mod school;
#[path = "../../../science/tests/statistics/size.rs"]
mod size;
mod stories;

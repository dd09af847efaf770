//! How far the words can be trusted.

mod cells;
mod classes;
mod not_held;
#[path = "../../../science/tests/statistics/size.rs"]
mod size;
mod words;

//! Data sheets on paper: a grid to type them into, and files of readings.

mod answer;
mod file;
mod page;
mod said;
mod words;

pub(super) use answer::{first, look, save, show};
pub(super) use file::{add_file, look_file};

//! Statistics against handbooks, reference programs and simulation.

mod compare;
mod distributions;
mod experiments;
mod generator;
mod lines;
mod school;
mod size;
mod summaries;
mod table;
mod two_sets;
mod variance;

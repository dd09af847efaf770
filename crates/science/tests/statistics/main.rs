//! Statistics against handbooks, reference programs and simulation.

mod any_bags;
mod bags;
mod calibration;
mod compare;
mod crossed;
mod distributions;
mod dunnett;
mod experiments;
mod generator;
mod lines;
mod models;
mod nist_variance;
mod outside;
mod school;
mod shares;
mod size;
mod summaries;
mod table;
mod two_sets;
mod variance;
mod verdicts;

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
mod mixed;
mod mixed_balanced;
mod mixed_coverage;
mod mixed_experiments;
mod mixed_literal;
mod mixed_properties;
mod models;
mod nist_variance;
mod outside;
mod school;
mod size;
mod summaries;
mod table;
mod two_sets;
mod variance;
mod verdicts;

//! Statistics against handbooks, reference programs and simulation.

mod any_bags;
mod any_table;
mod bags;
mod calibration;
mod compare;
mod crossed;
mod dealt_again;
mod distributions;
mod dunnett;
mod experiments;
mod generator;
mod in_blocks;
mod levels;
mod lines;
mod models;
mod nist_variance;
mod outside;
mod ranked;
mod school;
mod size;
mod straight_part;
mod summaries;
mod table;
mod two_sets;
mod variance;
mod verdicts;

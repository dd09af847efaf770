//! Statistics against handbooks, reference programs and simulation.

mod compare;
mod distributions;
mod table;

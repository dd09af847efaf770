//! Files of readings as teachers and spreadsheets write them.

mod counting;
mod layouts;
mod meter;
mod oddities;
mod plan;
mod whole;

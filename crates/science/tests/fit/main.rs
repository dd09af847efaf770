//! Fitted parameters, held against certified and published fits.

mod curves;
mod day;
mod nist;
#[path = "../statistics/outside.rs"]
mod outside;
#[path = "../external/rows.rs"]
mod rows;
mod shapes;
mod shapes_any;
mod ways;

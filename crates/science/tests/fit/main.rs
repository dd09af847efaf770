//! Fitted parameters, held against certified and published fits.

mod curves;
mod day;
mod nist;
#[path = "../external/rows.rs"]
mod rows;
mod ways;

//! Fitted parameters, held against certified and published fits.

mod curves;
mod nist;
#[path = "../external/rows.rs"]
mod rows;
mod ways;

//! One question over classes and years: the same difference in the data of several classes, put together.
//!
//! A class is a data package: a day of one school with all its periods. Two classes asked the same where
//! the bags of both sides are [alike](Side::is_like). What they found is compared at the latest minute that
//! all of them share, and put together by [`pool`]: classes may truly differ.

mod at_minute;
mod found;
mod said;
mod side;

pub use at_minute::{AtMinute, Compared};
pub use found::{Class, Difference, Found, PassedOver, Years};
pub use side::Side;

#[cfg(doc)]
use barm_science::statistics::meta::pool;

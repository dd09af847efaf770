//! The results page: what the class found, as far as the record goes.

mod answer;
mod page;
mod sharing;

pub(super) use answer::{package, report, show, table};

//! The results page: what the class found, as far as the record goes.

mod answer;
mod page;

pub(super) use answer::{report, show};

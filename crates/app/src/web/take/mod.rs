//! Taking a colleague's data package: looked at first, then kept as an investigation of its own.

mod answer;
mod page;
mod told;

pub(super) use answer::{keep, look, show};

//! The pilot page: what to do, the sheet, what was learned, and the lots.

mod answer;
mod lots;
mod page;
mod sheet;

pub(super) use answer::{blank, paper, post, show};

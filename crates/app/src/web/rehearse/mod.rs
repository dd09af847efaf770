//! The rehearsal page: sets up a rehearsal beside the record, and says how it went.

mod answer;
mod page;
mod practice;

pub(super) use answer::{set_up, show, so_far, stop};
pub(super) use practice::Practice;

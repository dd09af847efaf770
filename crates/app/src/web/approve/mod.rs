//! The approval queue: what groups propose, judged and foreseen, answered by keyboard.

mod answer;
mod page;

pub(super) use answer::{act, show, table};

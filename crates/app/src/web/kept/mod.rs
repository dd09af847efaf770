//! What is kept in words and for how long, and copies of the record.

mod answer;
mod page;

pub(super) use answer::{backup, backups, day, delete, words};

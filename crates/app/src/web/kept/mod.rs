//! What is kept in words and for how long, and copies of the record.

mod answer;
mod page;
mod people;

pub(super) use answer::{backup, backups, day, delete, words};
pub(super) use people::{delete_all, people};

//! The print page: everything on paper, made now.

mod answer;
mod asked;
mod page;

pub(super) use answer::{file, show};

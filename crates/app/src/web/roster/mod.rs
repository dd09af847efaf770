//! Students and groups: a school's roster, who is in which group, and grades as files.

mod answer;
mod file;
mod grades;
mod page;
mod told;

pub(super) use answer::{save, show};
pub(super) use file::{look, take};
pub(super) use grades::grades;

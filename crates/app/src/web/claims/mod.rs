//! The teacher's page of claims: what each group claims beside what the data say of it. For the teacher's eyes.

mod answer;
mod page;

pub(super) use answer::{act, show};
pub(super) use page::claim_shown;

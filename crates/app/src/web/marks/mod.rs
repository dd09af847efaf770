//! Marks: the list of groups, a group's page by keyboard, and the rubric.

mod answer;
mod list_page;
mod one_page;
mod rubric_answer;
mod rubric_page;

pub(super) use answer::{hand_out, list, mark, one};
pub(super) use rubric_answer::{rubric, save_rubric};

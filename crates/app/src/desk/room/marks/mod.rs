//! The teacher's marks: what each group is given for what it handed in, and the copy that it got.
//!
//! They lie where words can be deleted, apart from the record. Nothing here marks by itself.

mod copies;
mod kept;
mod list;
mod one;

pub(crate) use copies::{HandedOut, hand_out, newest_copy};
pub(crate) use kept::{given, keep_given, keep_rubric, rubric};
pub(crate) use list::{MarksView, Standing, marks_view};
pub(crate) use one::{MarkView, OwnBag, beside, mark_view};

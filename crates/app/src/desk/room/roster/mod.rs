//! Who is in which group: lists of a school's roster, class by class, and every student's grade.
//!
//! Names and ids of students lie where words can be deleted, apart from the record and from all science. No page of a
//! group, a wall or an aide is made from them.

mod files;
mod gradebook;
mod kept;
mod list;
mod take;

#[cfg(test)]
pub(crate) use barm_documents::bundle::pack;
pub(crate) use files::write_grades;
pub(crate) use gradebook::{GradeFile, Offered, gradebook, grades_offered};
pub(crate) use kept::{put_away, students_of};
pub(crate) use list::{
    Gets, ListRow, PeriodList, RosterView, SavedList, TypedRow, roster_view, save_list,
};
pub(crate) use take::{NotTaken, Offer, look_at_roster, take_roster};

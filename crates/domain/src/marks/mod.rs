//! Marks for what students handed in: a rubric of strands and levels, one level a strand, and the teacher's words.
//!
//! Marks are the teacher's alone. Nothing here reads a forecast or a verdict: what is marked is how a group planned,
//! measured, claimed and reasoned, not whether its bag did what was foretold.

mod given;
mod remarks;
mod rubric;
mod student;
mod usual;

pub use given::{Basis, Given, GivenFault, MOST_CHARACTERS};
pub use remarks::{Offered, offered};
pub use rubric::{LEVELS, MOST_STRANDS, Rubric, RubricFault, Strand};
pub use student::{
    Graded, GroupWork, MOST_OWN_CHARACTERS, Open, OwnFault, OwnMark, graded, points_of,
};

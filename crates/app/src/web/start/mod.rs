//! Starting an investigation, and the shelf on which all of them stand.

mod answer;
mod page;

pub(super) use answer::{
    again, file, invented, lesson, lessons, made, not_in_a_rehearsal, shelf,
};

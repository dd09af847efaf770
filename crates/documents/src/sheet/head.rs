//! What stands at the head of a group's sheet and of its tables.

use crate::chart::Look;
use serde::Serialize;

/// What stands at the head and in the foot of a group's sheet.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Head {
    /// The code of the group's paper, such as `P3-05-B`.
    pub sheet: String,
    /// Number of the period, from 1, that its sign shows.
    pub sign: u8,
    /// Whose it is, such as "Group 5, period 3".
    pub whose: String,
    /// What it is, such as "Bench card".
    pub name: String,
}

/// A bag in the head of a table.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct HeadBag {
    /// Its code.
    pub code: String,
    /// Its letter within the group.
    pub letter: String,
    /// The mark of its treatment.
    pub look: Look,
}

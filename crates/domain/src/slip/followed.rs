//! A bag of a period with all that the teacher may judge it by.

use super::{Expected, Own};

/// A bag of the period with what is expected of it. For the teacher only.
#[derive(Debug, Clone, Copy)]
pub struct Followed<'a> {
    /// The bag, with its code and its size.
    pub own: Own<'a>,
    /// Name of its treatment in truth: bags made alike have the same.
    pub treatment: &'a str,
    /// Whether an enzyme is in it.
    pub enzyme: bool,
    /// Whether it is a shared control.
    pub control: bool,
    /// What is expected of its treatment, by minute; empty where there is no forecast.
    pub band: &'a [Expected],
}

//! A bag as it was read, and what was expected of it.

use super::Course;

/// A bag as it was read, and what was expected of it.
#[derive(Debug, Clone, PartialEq)]
pub struct Followed {
    /// Its heights in the order of time, the zero reading (minute 0) first.
    pub heights: Vec<Height>,
    /// What is expected of its treatment.
    pub course: Course,
    /// Number of its treatment: bags made alike have the same.
    pub treatment: usize,
    /// Number of its group.
    pub group: usize,
    /// Whether an enzyme is in it, which may not have been shaken.
    pub enzyme: bool,
    /// How high a bag of this size stands when it is full (mm).
    pub full_mm: f64,
}

/// A height of a card above the bench, as somebody wrote it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Height {
    /// True minute after the bag's own zero reading (min).
    pub minute: f64,
    /// What was written, taken for millimeters (mm).
    pub mm: f64,
    /// The minute for which it was planned, 0 for the zero reading; by it heights of two bags are
    /// set beside each other.
    pub planned: Option<u32>,
    /// Whether somebody has looked again and left it as it is: then no pen slipped.
    pub sure: bool,
}

impl Followed {
    /// True minutes of its heights (min).
    pub(super) fn minutes(&self) -> Vec<f64> {
        self.heights.iter().map(|height| height.minute).collect()
    }

    /// Its heights as written (mm).
    pub(super) fn written(&self) -> Vec<f64> {
        self.heights.iter().map(|height| height.mm).collect()
    }
}

//! One bag of the bag list.

/// One bag that is to be made.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PlannedBag {
    /// Its code; made once and never given to another bag.
    pub code: String,
    /// Name of its period.
    pub period: String,
    /// Number of its group within the period from 1; 0 is the teacher's bench.
    pub group: u32,
    /// Bench place within the group, from 1.
    pub place: u32,
    /// Question, or [`super::CONTROLS`].
    pub question: String,
    /// Name of its treatment.
    pub treatment: String,
    /// Replicate number of that treatment, from 1.
    pub replicate: u32,
}

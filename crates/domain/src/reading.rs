//! What was read at the bench: heights, happenings, and bags set aside.

/// One ruler reading of the card on one bag.
#[derive(Debug, Clone, PartialEq)]
pub struct Reading {
    /// Code of the bag, as it stands in the plan's bag list.
    pub bag: String,
    /// Minutes after the bag's own zero reading; 0 is the zero reading itself.
    pub minute: f64,
    /// Height of the card above the bench (mm), the zero reading not yet taken off.
    pub height_mm: f64,
    /// Line of the file it was read from, from 1; 0 if it came from elsewhere.
    pub line: u64,
    /// What was noted beside it, such as `foam`.
    pub event: Option<String>,
}

/// Something noted about a bag without a height beside it.
#[derive(Debug, Clone, PartialEq)]
pub struct Remark {
    /// Code of the bag.
    pub bag: String,
    /// Minutes after the bag's own zero reading, if a time was given.
    pub minute: Option<f64>,
    /// What was noted.
    pub says: String,
    /// Line of the file, from 1.
    pub line: u64,
}

/// A wish to set a bag aside by a rule of the plan.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SetAside {
    /// Code of the bag.
    pub bag: String,
    /// Name of the rule; only the plan's own rules count.
    pub rule: String,
    /// Line of the file it was read from, from 1; 0 if it came from elsewhere.
    pub line: u64,
}

/// Something that was not taken, and why.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Rejected {
    /// Line of the file, from 1; 0 if it came from elsewhere.
    pub line: u64,
    /// Why, in one sentence for the person who typed it.
    pub reason: String,
}

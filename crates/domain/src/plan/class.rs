//! Days, periods, groups and what is agreed with them.

use jiff::civil::{Date, Time};

/// How much of question, method and answer is given (Banchi & Bell 2008, *Science and Children*
/// 46(2), 26-29).
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Inquiry {
    /// Question, method and answer are given.
    Confirmation,
    /// Question and method are given.
    Structured,
    /// The question is given.
    Guided,
    /// Nothing is given.
    Open,
}

impl Inquiry {
    /// All levels, the most guided first.
    pub const ALL: [Self; 4] = [Self::Confirmation, Self::Structured, Self::Guided, Self::Open];

    /// The word used in plans.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Confirmation => "confirmation",
            Self::Structured => "structured",
            Self::Guided => "guided",
            Self::Open => "open",
        }
    }
}

/// A standard that the investigation serves.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Standard {
    /// Code, such as `MS-LS1-7`.
    pub code: String,
    /// The wording in force in the teacher's state.
    pub wording: String,
    /// The student product that shows it; without one the standard is not claimed.
    pub shown_by: Option<String>,
}

/// How the air pressure at the bench is known.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Place {
    /// Altitude (m above sea level), turned into pressure by the standard atmosphere.
    Altitude(f64),
    /// Station pressure (Pa), not reduced to sea level.
    Pressure(f64),
}

/// A school day.
#[derive(Debug, Clone, PartialEq)]
pub struct Day {
    /// Name, such as `A day`.
    pub name: String,
    /// Date.
    pub date: Date,
    /// IANA time zone, such as `America/Denver`; checked when read.
    pub zone: String,
    /// Room temperature (°C).
    pub room_celsius: f64,
    /// Altitude or station pressure.
    pub place: Place,
}

/// A class period.
#[derive(Debug, Clone, PartialEq)]
pub struct Period {
    /// Name, such as `2` or `3B`.
    pub name: String,
    /// Name of its day.
    pub day: String,
    /// Start, local time.
    pub start: Time,
    /// Length (min).
    pub length_min: f64,
    /// Students.
    pub students: u32,
    /// Groups.
    pub groups: u32,
    /// Grade, where it differs from the plan's.
    pub grade: Option<u8>,
    /// Inquiry level, where it differs from the plan's.
    pub inquiry: Option<Inquiry>,
}

/// Settings of one group where they differ from its period's.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct GroupSetting {
    /// Name of its period.
    pub period: String,
    /// Its number within the period, from 1.
    pub group: u32,
    /// Its own label: a number or an invented word, never a child's name.
    pub label: Option<String>,
    /// Grade.
    pub grade: Option<u8>,
    /// Inquiry level.
    pub inquiry: Option<Inquiry>,
}

/// A rule, agreed before the day, by which a bag is set aside.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SetAsideRule {
    /// Short name that the readings file uses, such as `leak`.
    pub id: String,
    /// The rule in words.
    pub says: String,
}

/// Something about the day that no recipe tells, but that calls for a caution.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Circumstance {
    /// A substitute teaches.
    Substitute,
    /// Bags are kept until the next day on purpose.
    KeptOvernight,
    /// Gloves are handed out.
    Gloves,
    /// Young children are in the room: a club, a family night, brothers and sisters.
    YoungChildren,
    /// Somebody in the class is allergic to yeast or mold. Nobody's name is kept.
    YeastAllergy,
}

impl Circumstance {
    /// All circumstances.
    pub const ALL: [Self; 5] = [
        Self::Substitute,
        Self::KeptOvernight,
        Self::Gloves,
        Self::YoungChildren,
        Self::YeastAllergy,
    ];

    /// The words used in plans.
    pub const fn words(self) -> &'static str {
        match self {
            Self::Substitute => "substitute",
            Self::KeptOvernight => "kept overnight",
            Self::Gloves => "gloves",
            Self::YoungChildren => "young children",
            Self::YeastAllergy => "yeast allergy",
        }
    }
}

/// A caution that the teacher has answered.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Answered {
    /// Code of the caution, such as `S10`.
    pub caution: String,
    /// What was done about it.
    pub answer: String,
}

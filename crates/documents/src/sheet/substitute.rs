//! Two pages for somebody who stands in for the teacher.

use super::{Entry, Imprint, Stretch};

/// The pack for a substitute: the reduced-hazard variant of a plan on two pages.
#[derive(Debug, Clone, PartialEq, serde::Serialize)]
pub struct SubstitutePack {
    /// School, sheet code, language.
    pub imprint: Imprint,
    /// The plan's title.
    pub title: String,
    /// What the class does, in a sentence.
    pub about: String,
    /// When each period does what; at most as many as fit.
    pub hours: Vec<SubstituteHour>,
    /// What is said of periods that do not stand there; mostly empty.
    pub more_hours: String,
    /// The parts of a period along the ruler.
    pub stretches: Vec<Stretch>,
    /// Minutes from bell to bell.
    pub length: f64,
    /// What to do: minute after the bell, what, who.
    pub steps: Vec<SubstituteStep>,
    /// What may not be done.
    pub never: Vec<String>,
    /// Bags that are not made on such a day; mostly empty.
    pub left_out: String,
    /// What lies ready, to be ticked.
    pub ready: Vec<String>,
    /// What to do if something goes wrong.
    pub trouble: Vec<Entry>,
    /// Whom to ask about what, with room to write.
    pub ask: Vec<String>,
}

/// The clock of one period.
#[derive(Debug, Clone, PartialEq, Eq, serde::Serialize)]
pub struct SubstituteHour {
    /// Its name.
    pub period: String,
    /// Groups and bags, such as "8, 28".
    pub count: String,
    /// Bell, water in, last zero reading, finished bags may be opened, last reading of the last
    /// group, bell.
    pub times: [String; 6],
}

/// One thing to do.
#[derive(Debug, Clone, PartialEq, Eq, serde::Serialize)]
pub struct SubstituteStep {
    /// Minute after the bell.
    pub minute: String,
    /// What is done.
    pub what: String,
    /// Who does it.
    pub who: String,
}

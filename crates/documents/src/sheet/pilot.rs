//! A pilot: what to do and where to write it, and what it taught.

use super::{Caution, Entry, Imprint};
use crate::chart::{BeforeAfterRow, Moment, Reading};

/// What to do in a pilot, with room for what is read.
#[derive(Debug, Clone, PartialEq, serde::Serialize)]
pub struct PilotSheet {
    /// School, sheet code, language.
    pub imprint: Imprint,
    /// Over the page.
    pub title: String,
    /// The plan and how long it takes.
    pub aside: String,
    /// What is written once, such as the date, the room and the names of lots.
    pub heads: Vec<String>,
    /// What to lay out.
    pub tools: Vec<String>,
    /// What to do when.
    pub steps: Vec<PilotStep>,
    /// Bags with yeast.
    pub bags: Vec<PilotBagRow>,
    /// Minutes at which they are read, the zero reading first.
    pub minutes: Vec<String>,
    /// Tables that are filled in one by one.
    pub tables: Vec<PilotTable>,
    /// How to hand it in.
    pub notes: Vec<Entry>,
    /// What could hurt somebody.
    pub cautions: Vec<Caution>,
}

/// One step.
#[derive(Debug, Clone, PartialEq, Eq, serde::Serialize)]
pub struct PilotStep {
    /// The minute of the pilot.
    pub minute: String,
    /// What to do.
    pub says: String,
}

/// A bag with yeast.
#[derive(Debug, Clone, PartialEq, Eq, serde::Serialize)]
pub struct PilotBagRow {
    /// Its letter.
    pub letter: String,
    /// What it is there for.
    pub says: String,
    /// What goes into it.
    pub recipe: Vec<String>,
}

/// A table of values to be read one by one.
#[derive(Debug, Clone, PartialEq, Eq, serde::Serialize)]
pub struct PilotTable {
    /// Its name.
    pub name: String,
    /// How to do it.
    pub how: String,
    /// The heading under which it is typed.
    pub typed: String,
    /// What stands in the first column, such as `50 mL`.
    pub rows: Vec<String>,
    /// What is read for each, with its unit.
    pub read: String,
}

/// What a pilot taught.
#[derive(Debug, Clone, PartialEq, serde::Serialize)]
pub struct PilotReport {
    /// School, sheet code, language.
    pub imprint: Imprint,
    /// Over the page.
    pub title: String,
    /// The plan and the day of the pilot.
    pub aside: String,
    /// What was measured and where it is kept, in a few words.
    pub summary: String,
    /// Numbers before and after.
    pub changes: Vec<BeforeAfterRow>,
    /// Bags with yeast before and after.
    pub bags: Vec<PilotBagPicture>,
    /// The plan's treatments at the last reading before and after.
    pub treatments: Vec<BeforeAfterRow>,
    /// What the readings leave open, and anything else to know.
    pub notes: Vec<Entry>,
}

/// One bag before and after.
#[derive(Debug, Clone, PartialEq, serde::Serialize)]
pub struct PilotBagPicture {
    /// What it is called.
    pub name: String,
    /// What was expected before.
    pub before: Vec<Moment>,
    /// What is expected now.
    pub after: Vec<Moment>,
    /// What was read.
    pub readings: Vec<Reading>,
}

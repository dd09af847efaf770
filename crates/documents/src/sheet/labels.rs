//! Stick-on labels for bags and for the cards on them.

use super::Imprint;
use crate::chart::Look;
use crate::page::Grid;

/// Labels on their sheets.
#[derive(Debug, Clone, PartialEq, serde::Serialize)]
pub struct Labels {
    /// School, sheet code, language.
    pub imprint: Imprint,
    /// The plan's title.
    pub title: String,
    /// What stands in the margin of every sheet: how to print it.
    pub margin: String,
    /// Where the labels of a sheet lie.
    pub grid: Grid,
    /// Sheet by sheet.
    pub sheets: Vec<Vec<Label>>,
}

/// One label.
#[derive(Debug, Clone, PartialEq, serde::Serialize)]
pub struct Label {
    /// The cell of its sheet that it is printed on, counted along the rows from 0.
    pub cell: u32,
    /// Number of its period, as in the code; 0 for a spare label.
    pub period: u8,
    /// Whether it is the first of its period; a reader of the file finds it by a bookmark.
    pub first: bool,
    /// What people say for the bag, such as `4A`; empty, as the code is, for a spare label.
    pub name: String,
    /// What the group calls itself; empty if it has only its number.
    pub group: String,
    /// The code, such as `P3-04A-5`.
    pub code: String,
    /// What the square code holds.
    pub square: String,
    /// The square code in words, for those who cannot see it.
    pub square_says: String,
    /// The mark beside the words, if they name a treatment.
    pub look: Option<Look>,
    /// The treatment, or what is to be done with a card; of a spare label, that it is one.
    pub says: String,
    /// What is written onto a spare label by hand, a line each; empty for the label of a bag.
    pub by_hand: Vec<String>,
}

/// A page to be held against a sheet of labels.
#[derive(Debug, Clone, PartialEq, serde::Serialize)]
pub struct TestPrint {
    /// School, sheet code, language.
    pub imprint: Imprint,
    /// What it is.
    pub title: String,
    /// Which sheet of labels it is for.
    pub sheet: String,
    /// Where its labels lie.
    pub grid: Grid,
    /// What to do, step by step; each stands in a label of its own.
    pub steps: Vec<String>,
    /// Beside the lines to measure.
    pub measure: String,
}

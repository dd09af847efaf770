//! The address of the day, for the wall.

use super::Imprint;

/// How students come in, on one page to be read from a bench.
#[derive(Debug, Clone, PartialEq, serde::Serialize)]
pub struct JoinSheet {
    /// School, sheet code, language.
    pub imprint: Imprint,
    /// Over the page.
    pub title: String,
    /// The investigation and its days.
    pub aside: String,
    /// Over the address.
    pub open: String,
    /// The address as it is typed.
    pub address: String,
    /// What the square code holds.
    pub square: String,
    /// The square code in words, for those who cannot see it.
    pub square_says: String,
    /// Beside the square code.
    pub camera: String,
    /// What to do then, step by step.
    pub steps: Vec<String>,
    /// What to do if the page is lost; no step.
    pub again: String,
}

//! Squared paper: how many minutes and millimeters it shows.

#[cfg(feature = "pdf")]
use super::hand::{self, Face};
use super::{Head, Imprint};
#[cfg(feature = "pdf")]
use crate::page::PdfError;
use serde::Serialize;

/// The scale of squared paper.
#[derive(Debug, Clone, PartialEq, Eq, Hash, Serialize)]
pub struct Squares {
    /// Minutes from the left edge to the right.
    pub last: u32,
    /// Minutes with a strong line, the left edge not among them.
    pub steps: Vec<u32>,
    /// Millimeters from the lower edge to the upper.
    pub top: u32,
    /// Millimeters between strong lines.
    pub major: u32,
}

/// Sheets of squared paper, each for everybody who reads at these minutes.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct GraphPaper {
    /// School and language.
    pub imprint: Imprint,
    /// The plan's title.
    pub title: String,
    /// One for each set of planned minutes.
    pub sheets: Vec<GraphSheet>,
}

/// One sheet.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct GraphSheet {
    /// What it is; nobody's in particular.
    #[serde(flatten)]
    pub head: Head,
    /// Its scale.
    #[serde(flatten)]
    pub squares: Squares,
}

/// The squared paper as a PDF.
///
/// # Errors
/// [`PdfError`] if the layout engine refuses; no text on it can make it do so.
#[cfg(feature = "pdf")]
pub fn graph_paper_pdf(paper: &GraphPaper, face: Face) -> Result<Vec<u8>, PdfError> {
    hand::set("graph paper", include_str!("graph_paper.typ"), paper, face, &["graph-"])
}

//! The sheet on the wall where every group writes how far its cards rose, and draws a dot for it.

#[cfg(feature = "pdf")]
use super::hand::{self, Face};
use super::{Head, Imprint};
use crate::chart::Look;
#[cfg(feature = "pdf")]
use crate::page::PdfError;
use serde::Serialize;

/// The tally sheets of a plan.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct TallySheets {
    /// School and language.
    pub imprint: Imprint,
    /// The plan's title.
    pub title: String,
    /// One sheet a period.
    pub sheets: Vec<TallySheet>,
}

/// One period's sheet.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct TallySheet {
    /// Whose it is.
    #[serde(flatten)]
    pub head: Head,
    /// Marks below zero on the line on which dots are drawn.
    pub below: u32,
    /// Marks above zero; what each stands for is left to be written.
    pub above: u32,
    /// A row a treatment.
    pub rows: Vec<TallyRow>,
}

/// One treatment.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct TallyRow {
    /// What it is called.
    pub treatment: String,
    /// Its mark.
    pub look: Look,
    /// Its bags in this period.
    pub bags: Vec<TallyBag>,
}

/// One bag.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct TallyBag {
    /// What people say, such as `5A`.
    pub name: String,
    /// Boxes for the digits of a rise in whole mm.
    pub digits: u32,
}

/// The tally sheets as a PDF.
///
/// # Errors
/// [`PdfError`] if the layout engine refuses; no text on the sheets can make it do so.
#[cfg(feature = "pdf")]
pub fn tally_pdf(sheets: &TallySheets, face: Face) -> Result<Vec<u8>, PdfError> {
    hand::set("tally sheets", include_str!("tally.typ"), sheets, face, &["tally-"])
}

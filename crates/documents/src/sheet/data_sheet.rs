//! The data sheet of a group: its guess, a box for every planned height, odd things, its curve.

#[cfg(feature = "pdf")]
use super::hand::{self, Face};
use super::{Head, Imprint, Squares};
use crate::chart::Look;
#[cfg(feature = "pdf")]
use crate::page::PdfError;
use serde::Serialize;

/// The data sheets of a plan.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct DataSheets {
    /// School and language.
    pub imprint: Imprint,
    /// The plan's title.
    pub title: String,
    /// One sheet a group.
    pub sheets: Vec<DataSheet>,
}

/// One group's sheet.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct DataSheet {
    /// Whose it is.
    #[serde(flatten)]
    pub head: Head,
    /// Whether it has a box for a guess; the teacher's bench guesses nothing.
    pub guess: bool,
    /// Planned minutes, the zero reading first.
    pub minutes: Vec<u32>,
    /// Columns that stand beside each other; further minutes stand in a table below.
    pub across: u32,
    /// A row a bag, in the order in which they are typed in.
    pub rows: Vec<DataRow>,
    /// Lines for odd things.
    pub odd: u32,
    /// Squares for the curve, if there is a reading to draw.
    pub curve: Option<Squares>,
}

/// One bag.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct DataRow {
    /// Its code.
    pub code: String,
    /// What people say, such as `5A`.
    pub name: String,
    /// Its letter.
    pub letter: String,
    /// The mark of its treatment.
    pub look: Look,
    /// Its treatment.
    pub treatment: String,
    /// Boxes for the digits of a height in whole mm.
    pub digits: u32,
    /// When each height is planned, such as `10:34`; one for each minute.
    pub times: Vec<String>,
}

/// The data sheets as a PDF, a sheet a page as long as the readings fit.
///
/// # Errors
/// [`PdfError`] if the layout engine refuses; no text on the sheets can make it do so.
#[cfg(feature = "pdf")]
pub fn data_sheets_pdf(sheets: &DataSheets, face: Face) -> Result<Vec<u8>, PdfError> {
    let starts = [
        "data-",
        "card-missed",
        "bench-guess",
        "bench-odd",
        "bench-list",
        "bench-curve",
        "odd-",
        "state-locked",
    ];
    hand::set("data sheets", include_str!("data_sheet.typ"), sheets, face, &starts)
}

//! Height gauges: strips of paper with a scale in millimeters, true to size, to cut out and fold.

#[cfg(feature = "pdf")]
use super::hand::{self, Face};
use super::{Head, Imprint};
#[cfg(feature = "pdf")]
use crate::page::{Paper, PdfError};
use serde::Serialize;

/// Sheets of strips.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Gauges {
    /// School and language.
    pub imprint: Imprint,
    /// The plan's title.
    pub title: String,
    /// The sheets.
    pub sheets: Vec<GaugeSheet>,
}

/// One sheet of strips that are all alike.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct GaugeSheet {
    /// What it is; nobody's in particular.
    #[serde(flatten)]
    pub head: Head,
    /// What to do with them.
    pub steps: Vec<String>,
    /// Width of a strip, both faces (mm).
    pub wide: f64,
    /// Height of its scale (mm).
    pub top: u32,
    /// What stands above the scale (mm).
    pub cap: f64,
    /// Strips beside each other.
    pub across: u32,
    /// Strips on the sheet.
    pub count: u32,
}

impl GaugeSheet {
    /// Width of a strip, both faces (mm): four fit beside the upright check line on A4 and Letter.
    pub const WIDE: f64 = 40.0;
    /// What stands above the scale (mm).
    pub const CAP: f64 = 8.0;
    /// Strips beside each other.
    pub const ACROSS: u32 = 4;

    /// Strips with a scale that high (mm) that fit on a sheet of paper, in large print or not: what
    /// heading, steps and check line leave of it, a gap of 4 mm below each row.
    #[cfg(feature = "pdf")]
    pub fn fits(paper: Paper, top: u32, large: bool) -> u32 {
        let rest = if large { 115.0 } else { 88.0 };
        let left = paper.millimeters().1 - rest;
        let rows = (left / (f64::from(top) + Self::CAP + 4.0)).floor().max(1.0);
        Self::ACROSS * rows as u32
    }
}

/// The gauges as a PDF.
///
/// # Errors
/// [`PdfError`] if the layout engine refuses; no text on the sheets can make it do so.
#[cfg(feature = "pdf")]
pub fn gauges_pdf(gauges: &Gauges, face: Face) -> Result<Vec<u8>, PdfError> {
    hand::set("height gauges", include_str!("gauge.typ"), gauges, face, &["gauge-"])
}

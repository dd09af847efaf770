//! From a template and values to a PDF.
//!
//! Every sheet is a small template that asks the house template for the page, the margin column and the
//! rules. Values reach it as JSON, never as markup, so no text can change the layout's meaning.

#[cfg(feature = "pdf")]
mod fonts;
#[cfg(feature = "pdf")]
mod icons;
mod label_sheet;
#[cfg(feature = "pdf")]
mod press;
#[cfg(feature = "pdf")]
mod proof;

#[cfg(feature = "pdf")]
pub(crate) use icons::ICONS;
pub use label_sheet::{Grid, LabelSheet};
#[cfg(feature = "pdf")]
pub(crate) use press::press;
#[cfg(feature = "pdf")]
pub use proof::prints;

/// The paper a sheet is laid out for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum Paper {
    /// US Letter, 8.5 by 11 inches.
    #[default]
    Letter,
    /// ISO 216 A4, 210 by 297 millimeters.
    A4,
}

impl Paper {
    /// The name that templates know.
    #[cfg(feature = "pdf")]
    const fn name(self) -> &'static str {
        match self {
            Self::Letter => "us-letter",
            Self::A4 => "a4",
        }
    }

    /// Width and height in millimeters.
    pub const fn millimeters(self) -> (f64, f64) {
        match self {
            Self::Letter => (8.5 * 25.4, 11.0 * 25.4),
            Self::A4 => (210.0, 297.0),
        }
    }

    /// The width of the entries beside the margin column, in points of 1/72 inch.
    ///
    /// The paper less two margins of 0.6 in, the margin column of 1.15 in and the gap of 12 pt beside it.
    #[cfg(feature = "pdf")]
    pub(crate) fn entry_width(self) -> f64 {
        self.millimeters().0 / 25.4 * 72.0 - (2.0 * 0.6 + 1.15) * 72.0 - 12.0
    }
}

/// Why a sheet could not be made. No text a teacher writes should lead here; if it does, it is our fault.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum PdfError {
    /// The values could not be handed to the template.
    #[error("the {sheet} could not be set: {cause}. This is a fault of Barm, not of your plan")]
    Values {
        /// Which sheet.
        sheet: &'static str,
        /// What the serializer said.
        cause: String,
    },
    /// The page could not be laid out.
    #[error(
        "the {sheet} could not be laid out: {cause}. This is a fault of Barm, not of your plan"
    )]
    Layout {
        /// Which sheet.
        sheet: &'static str,
        /// What the layout engine said.
        cause: String,
    },
    /// The laid-out page could not be written as an accessible PDF.
    #[error(
        "the {sheet} could not be written: {cause}. This is a fault of Barm, not of your plan"
    )]
    Export {
        /// Which sheet.
        sheet: &'static str,
        /// What the writer said.
        cause: String,
    },
}

//! The planning sheet of a group: the questions of the planning page, in its order, to be written on.

#[cfg(feature = "pdf")]
use super::hand::{self, Face};
use super::{Head, Imprint};
use crate::chart::Look;
#[cfg(feature = "pdf")]
use crate::page::PdfError;
use serde::Serialize;

/// The planning sheets of a plan.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct PlanningSheets {
    /// School and language.
    pub imprint: Imprint,
    /// The plan's title.
    pub title: String,
    /// One sheet a group.
    pub sheets: Vec<PlanningSheet>,
}

/// One group's sheet. What is given is printed; what is not is left to be written.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct PlanningSheet {
    /// Whose it is.
    #[serde(flatten)]
    pub head: Head,
    /// What the class asks.
    pub big_question: String,
    /// What is in the cupboard.
    pub cupboard: Vec<String>,
    /// The group's questions, if they are given.
    pub asks: Vec<String>,
    /// What is known about them, in whole sentences; may be empty.
    pub known: Vec<String>,
    /// Things that may be changed.
    pub variables: Vec<PlanningVariable>,
    /// Kinds of bag, if they are given.
    pub levels: Vec<PlanningLevel>,
    /// Lines for kinds of bag.
    pub kinds: u32,
    /// What they are compared with, if it is given.
    pub beside: Vec<String>,
    /// Bags of the teacher that they can be compared with.
    pub controls: Vec<String>,
    /// What all bags of the class have.
    pub same: Vec<String>,
    /// Bags of each kind, if it is given; 0 if not.
    pub bags: u32,
}

/// Something that may be changed.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct PlanningVariable {
    /// What it is called.
    pub name: String,
    /// Whether it is the one.
    pub ticked: bool,
}

/// A kind of bag.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct PlanningLevel {
    /// What it is called.
    pub name: String,
    /// Its mark.
    pub look: Look,
}

/// The planning sheets as a PDF, a sheet a page.
///
/// # Errors
/// [`PdfError`] if the layout engine refuses; no text on the sheets can make it do so.
#[cfg(feature = "pdf")]
pub fn planning_pdf(sheets: &PlanningSheets, face: Face) -> Result<Vec<u8>, PdfError> {
    let starts = ["together-", "card-known"];
    hand::set("planning sheets", include_str!("planning.typ"), sheets, face, &starts)
}

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
    /// The plan of a group that follows the class's plan, a block a question; empty for a group that
    /// plans its own bags.
    pub given: Vec<PlanningQuestion>,
    /// What is known about the questions, in whole sentences; may be empty.
    pub known: Vec<String>,
    /// What is in the cupboard.
    pub cupboard: Vec<String>,
    /// Questions that a group which plans its own bags is given.
    pub asks: Vec<String>,
    /// Things that it may change.
    pub variables: Vec<String>,
    /// Lines for its kinds of bag.
    pub kinds: u32,
    /// Bags of the teacher that they can be compared with.
    pub controls: Vec<String>,
    /// What all bags of the class have.
    pub same: Vec<String>,
    /// A food and its amount, as a group may write what else its bags have; nothing without food.
    pub example: Option<(String, String)>,
}

/// One question with the bags that answer it.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct PlanningQuestion {
    /// The question.
    pub asks: String,
    /// Things that may be changed, the one that it changes ticked.
    pub variables: Vec<PlanningVariable>,
    /// Its kinds of bag.
    pub levels: Vec<PlanningLevel>,
}

/// Something that may be changed.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct PlanningVariable {
    /// What it is called.
    pub name: String,
    /// Whether it is the one.
    pub ticked: bool,
}

/// A kind of bag, and what it is compared with.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct PlanningLevel {
    /// The kind.
    pub kind: PlanningKind,
    /// What it is compared with, if anything.
    pub beside: Option<PlanningKind>,
}

/// A kind of bag, and which bags of the group are of it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct PlanningKind {
    /// What it is called.
    pub name: String,
    /// Its mark.
    pub look: Look,
    /// Which bags, such as `Bags: A, B`; empty where the group has none of it.
    pub bags: String,
}

/// The planning sheets as a PDF, a sheet a page.
///
/// # Errors
/// [`PdfError`] if the layout engine refuses; no text on the sheets can make it do so.
#[cfg(feature = "pdf")]
pub fn planning_pdf(sheets: &PlanningSheets, face: Face) -> Result<Vec<u8>, PdfError> {
    let starts = ["together-", "planning-", "card-known", "card-none"];
    hand::set("planning sheets", include_str!("planning.typ"), sheets, face, &starts)
}

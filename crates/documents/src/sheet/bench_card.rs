//! The card on a group's bench: its question, what to do step by step, what can hurt.

#[cfg(feature = "pdf")]
use super::hand::{self, Face};
use super::{Head, HeadBag, Imprint};
#[cfg(feature = "pdf")]
use crate::page::PdfError;
use serde::Serialize;

/// The cards of a plan.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct BenchCards {
    /// School and language.
    pub imprint: Imprint,
    /// The plan's title.
    pub title: String,
    /// One card a group.
    pub cards: Vec<BenchCard>,
}

/// One group's card.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct BenchCard {
    /// Whose it is.
    #[serde(flatten)]
    pub head: Head,
    /// The group's questions; none leaves a line to write one.
    pub asks: Vec<String>,
    /// What is known about them, in whole sentences; may be empty.
    pub known: Vec<String>,
    /// Whether the group writes itself what it changes and what goes into its bags.
    pub own_plan: bool,
    /// What all bags of the class have, for a group that plans its own.
    pub same: Vec<String>,
    /// What to do.
    pub steps: Vec<CardStep>,
    /// The group's bags.
    pub bags: Vec<HeadBag>,
    /// What goes into them, a row a thing; empty for a group that plans its own.
    pub things: Vec<CardThing>,
    /// Empty rows in place of them.
    pub blanks: u32,
    /// What can hurt, a sentence or a few each.
    pub care: Vec<String>,
}

/// One step.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize)]
pub struct CardStep {
    /// Name of its icon.
    pub icon: &'static str,
    /// What is said first, in bold.
    pub strong: Option<String>,
    /// What to do.
    pub says: String,
    /// What differs from bag to bag: the letters of the bags, and what to do with them.
    pub own: Vec<CardOwn>,
    /// Whether the table of what goes in follows.
    pub recipe: bool,
    /// Lines to write on that follow.
    pub lines: u32,
}

/// What to do with some of the bags.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct CardOwn {
    /// Letters of the bags.
    pub whose: String,
    /// What to do.
    pub says: String,
}

/// A thing that goes into bags.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct CardThing {
    /// What it is called.
    pub thing: String,
    /// How much of it goes into each bag; nothing where none does.
    pub cells: Vec<Option<CardAmount>>,
}

/// How much, in both kinds of unit.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct CardAmount {
    /// As the plan writes it.
    pub amount: String,
    /// In the other kind of unit.
    pub other: Option<String>,
}

/// The cards as a PDF, a card a page; in large print a card may take two.
///
/// # Errors
/// [`PdfError`] if the layout engine refuses; no text on the cards can make it do so.
#[cfg(feature = "pdf")]
pub fn bench_cards_pdf(cards: &BenchCards, face: Face) -> Result<Vec<u8>, PdfError> {
    let starts = ["card-", "care", "bench-steps", "bench-after", "bench-plan"];
    hand::set("bench cards", include_str!("bench_card.typ"), cards, face, &starts)
}

//! The running head of the teacher's pages of an investigation.

use crate::desk::room::Kind;
use maud::{Markup, html};

/// A part of an investigation.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Part {
    /// Planning.
    Plan,
    /// What the groups propose.
    Approve,
    /// Preparing.
    Prepare,
    /// What the class found.
    Results,
    /// All investigations.
    Shelf,
}

/// The title and the parts, one of them marked.
pub(super) fn head(title: &str, id: Option<i64>, here: Part, kind: Kind) -> Markup {
    let current = |part: Part| (part == here).then_some("page");
    let says = match kind {
        Kind::Real => None,
        Kind::Rehearsal => Some("Rehearsal. Nothing here counts."),
        Kind::Invented => Some("Made-up class. Nothing here is real."),
    };
    html! {
        header.head {
            h1 { (title) }
            nav aria-label="Parts" {
                @if let Some(id) = id {
                    a href={ "/i/" (id) "/plan" } aria-current=[current(Part::Plan)] { "Plan" }
                    a href={ "/i/" (id) "/approve" } aria-current=[current(Part::Approve)] { "Approve" }
                    a href={ "/i/" (id) "/prepare" } aria-current=[current(Part::Prepare)] { "Prepare" }
                    a href={ "/i/" (id) "/run" } { "Run" }
                    a href={ "/i/" (id) "/results" } aria-current=[current(Part::Results)] { "Results" }
                }
                a href="/shelf" aria-current=[current(Part::Shelf)] { "Shelf" }
            }
        }
        @if let Some(says) = says { p.madeup { (says) } }
    }
}

/// What a page is for and what comes next, in one line.
pub(super) fn lead(says: &str) -> Markup {
    html! { p.lead { (says) } }
}

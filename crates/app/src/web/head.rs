//! The running head of the teacher's pages of an investigation.

use crate::desk::room::Kind;
use crate::desk::{Wording, say};
use barm_domain::record::older_version;
use maud::{Markup, html};

/// A part of an investigation.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Part {
    /// Planning.
    Plan,
    /// What the groups propose.
    Approve,
    /// Trying the yeast, the bags and the meter.
    Pilot,
    /// Preparing.
    Prepare,
    /// Printing.
    Print,
    /// Practicing it.
    Rehearse,
    /// The class day.
    Run,
    /// Typing what is on paper.
    Paper,
    /// What the class found.
    Results,
    /// All investigations.
    Shelf,
}

/// The title and the parts, one of them marked.
pub(super) fn head(w: Wording, title: &str, id: Option<i64>, here: Part, kind: Kind) -> Markup {
    html! {
        div.head {
            h1 { (title) }
            (parts(w, id, here))
        }
        (made_up(w, kind))
    }
}

/// The parts of an investigation and the way to the shelf, one of them marked.
pub(super) fn parts(w: Wording, id: Option<i64>, here: Part) -> Markup {
    let current = |part: Part| (part == here).then_some("page");
    let all = [
        (Part::Plan, "plan", say!(w, "head-plan")),
        (Part::Approve, "approve", say!(w, "head-approve")),
        (Part::Pilot, "pilot", say!(w, "head-pilot")),
        (Part::Prepare, "prepare", say!(w, "head-prepare")),
        (Part::Print, "print", say!(w, "head-print")),
        (Part::Rehearse, "rehearse", say!(w, "head-rehearse")),
        (Part::Run, "run", say!(w, "head-run")),
        (Part::Paper, "enter", say!(w, "head-paper")),
        (Part::Results, "results", say!(w, "head-results")),
    ];
    html! {
        nav aria-label=(say!(w, "head-parts")) {
            @if let Some(id) = id {
                @for (part, address, says) in all {
                    a href={ "/i/" (id) "/" (address) } aria-current=[current(part)] { (says) }
                }
            }
            a href="/shelf" aria-current=[current(Part::Shelf)] { (say!(w, "head-shelf")) }
        }
    }
}

/// Says that nothing here happened in a class.
pub(super) fn made_up(w: Wording, kind: Kind) -> Markup {
    let says = match kind {
        Kind::Real => return html! {},
        Kind::Rehearsal => say!(w, "head-rehearsal"),
        Kind::Invented => say!(w, "head-invented"),
    };
    html! { p.madeup { (says) } }
}

/// The name of a file that is handed out: of what was read in no class, it says so first.
pub(super) fn file_name(kind: Kind, name: &str) -> String {
    match kind {
        Kind::Real => name.to_owned(),
        Kind::Rehearsal => format!("rehearsal-{name}"),
        Kind::Invented => format!("made-up-{name}"),
    }
}

/// What a page is for and what comes next, in one line.
pub(super) fn lead(says: &str) -> Markup {
    html! { p.lead { (says) } }
}

/// One line about the lots that a forecast goes by, with the way to them; nothing if no pilot tried any.
pub(super) fn by_pilot(w: Wording, id: i64, says: Option<&str>) -> Markup {
    html! {
        @if let Some(says) = says {
            p.small { (says) " " a href={ "/i/" (id) "/pilot" } { (say!(w, "head-by-pilot")) } }
        }
    }
}

/// What `(plan 1)` behind a name means, if one of the names that a page shows has it.
pub(super) fn older_names<'n>(w: Wording, names: impl IntoIterator<Item = &'n str>) -> Markup {
    let version = names.into_iter().find_map(older_version);
    html! {
        @if let Some(version) = version {
            p.small.soft.addrow { (say!(w, "head-older-plan", version = version.to_string())) }
        }
    }
}

/// What to do where no printer is at hand: the program itself prints nothing.
pub(super) fn no_printer(w: Wording) -> Markup {
    html! { p.small.soft { (say!(w, "head-no-printer")) } }
}

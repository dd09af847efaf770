//! What is told of a roster, as markup that a script puts in.

use crate::desk::room::roster::{NotTaken, Offer};
use crate::desk::{Wording, say};
use maud::{Markup, html};

/// Its classes, to be chosen.
pub(super) fn offer(w: Wording, offer: &Offer) -> Markup {
    let students: usize = offer.sections.iter().map(|(.., students)| students).sum();
    html! {
        p {
            b { (say!(w, "roster-offers", count = offer.sections.len())) } " "
            (say!(w, "roster-offers-says", students = students))
        }
        @if !offer.passed.is_empty() {
            details { summary { span { (say!(w, "roster-passed")) } }
                ul.plain { @for says in &offer.passed { li { (says) } } }
            }
        }
        input type="hidden" value=(offer.on) data-part="on";
        div.fields {
            @for (place, (period, guessed, now)) in offer.periods.iter().enumerate() {
                @let name = format!("of-{place}");
                div.one.wide {
                    label for=(name) { (say!(w, "roster-which", period = period)) }
                    span.fld.wide { select id=(name) data-part="of" {
                        option value="-" {
                            @if *now > 0 { (say!(w, "roster-as-it-is", count = *now)) }
                            @else { (say!(w, "roster-no-class")) }
                        }
                        @for (at, (title, code, students)) in offer.sections.iter().enumerate() {
                            option value=(at) selected[*guessed == Some(at)] {
                                (title.words())
                                @if let Some(code) = code { " (" (code.words()) ")" }
                                ", " (say!(w, "roster-students", count = *students))
                            }
                        }
                    } }
                }
            }
        }
        div.btns.addrow { button.btn.main type="button" id="take" { (say!(w, "roster-take")) } }
    }
}

/// That it is on disk.
pub(super) fn taken(w: Wording, id: i64, count: usize) -> Markup {
    html! { p data-taken={ "/i/" (id) "/roster?did=taken" } { b { (say!(w, "roster-taken-of", count = count)) } } }
}

/// Why nothing was taken.
pub(super) fn refused(w: Wording, why: &NotTaken) -> Markup {
    let says = match why {
        NotTaken::Refused(refused) => format!("{refused}."),
        NotTaken::Nothing => say!(w, "roster-nothing"),
        NotTaken::Twice(title) => say!(w, "roster-twice", class = title.words()),
        NotTaken::Gone => say!(w, "roster-not-chosen"),
    };
    html! { p.fault { (says) " " b { (say!(w, "roster-nothing-kept")) } } }
}

//! What is said of a sheet, beneath its grid.

use super::words::cell;
use crate::desk::room::benches::{millimeters, name};
use crate::desk::room::sheets::{Judged, JudgedCell, State, Wrong};
use crate::desk::{Wording, say};
use crate::web::signs;
use barm_domain::code::BagCode;
use maud::{Markup, html};

/// What cannot be taken, what is corrected, and what looks odd.
pub(super) fn said(w: Wording, judged: &Judged) -> Markup {
    let of = |one: &JudgedCell| {
        let bag = one.bag.parse::<BagCode>().map_or_else(|_| one.bag.clone(), name);
        (cell(w, &bag, Some(one.minute)), bag)
    };
    let wrong = judged.cells.iter().filter_map(|one| {
        let (cell, bag) = of(one);
        Some(match &one.state {
            State::Wrong(Wrong::Height(why)) => {
                say!(w, "paper-wrong-height", cell = &cell, why = why)
            }
            State::Wrong(Wrong::Time(text)) => {
                say!(w, "paper-wrong-time", bag = &bag, text = text)
            }
            State::Wrong(Wrong::NoZero) => say!(w, "paper-wrong-no-zero", cell = &cell),
            State::Wrong(Wrong::NotHere) => say!(w, "paper-wrong-not-here", cell = &cell),
            State::NotCounted(why) => say!(w, "paper-not-counted", cell = &cell, why = why),
            _ => return None,
        })
    });
    let mut wrong: Vec<String> = wrong.collect();
    wrong.dedup();
    let fixed = judged.cells.iter().filter_map(|one| {
        let mm = millimeters(one.mm?);
        match &one.state {
            State::Corrects(was) => {
                let was = millimeters(*was);
                Some(say!(w, "paper-corrects", cell = &of(one).0, was = &was, mm = &mm))
            }
            State::Chooses => Some(say!(w, "paper-chooses", cell = &of(one).0, mm = &mm)),
            _ => None,
        }
    });
    let fixed: Vec<String> = fixed.collect();
    html! {
        @if !wrong.is_empty() {
            div.fault { h2 { (say!(w, "paper-wrong-head")) } ul.plain { @for says in &wrong { li { (says) } } } }
        }
        @if !fixed.is_empty() {
            h2 { (say!(w, "paper-fixed-head")) }
            ul.plain { @for says in &fixed { li { (says) } } }
        }
        @if !judged.odd.is_empty() {
            h2 { (say!(w, "paper-odd-head")) }
            p.small.soft { (say!(w, "paper-odd-lead")) }
            ul.plain.oddlist {
                @for (code, minute, tag, says) in &judged.odd {
                    li { (signs::doubt(tag)) span { b { (cell(w, &name(*code), *minute)) ". " } (says) } }
                }
            }
        }
    }
}

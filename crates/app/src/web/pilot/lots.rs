//! The lots there are, and how they were before.

use crate::desk::room::pilot::Past;
use crate::desk::{Wording, say};
use barm_domain::pilot::LotLine;
use maud::{Markup, html};

/// Every lot with what can be done with it.
pub(super) fn lots(w: Wording, lots: &[LotLine]) -> Markup {
    html! {
        p.soft { (say!(w, "pilot-lots-says")) }
        ul.plain.lots {
            @for (place, line) in lots.iter().enumerate() { li { (one(w, place, line)) } }
        }
    }
}

fn one(w: Wording, place: usize, line: &LotLine) -> Markup {
    let parts: Vec<&str> = line.parts.iter().map(|part| part.says()).collect();
    let dates: Vec<String> = line.dates.iter().map(ToString::to_string).collect();
    let button = |act: &str, says: String, named: String| {
        html! {
            button.btn.quiet type="submit" form="sheet" name="do" value={ (act) " " (place) } aria-label=(named) { (says) }
        }
    };
    html! {
        div {
            b { (line.name) } ", " (line.sort)
            @if line.in_use { " " strong.used { (say!(w, "pilot-in-use")) } }
            br;
            span.small.soft { (dates.join(", ")) ": " (parts.join(", ")) }
        }
        div.btns {
            @if line.in_use {
                (button("leave", say!(w, "pilot-leave"), say!(w, "pilot-leave-named", lot = &line.name, sort = &line.sort)))
            } @else {
                (button("choose", say!(w, "pilot-use"), say!(w, "pilot-use-named", lot = &line.name, sort = &line.sort)))
            }
            (button("out", say!(w, "pilot-out"), say!(w, "pilot-out-named", lot = &line.name, sort = &line.sort)))
        }
    }
}

/// What there was before, the newest first; the first is what undoing leads to.
pub(super) fn past(w: Wording, past: &[Past]) -> Markup {
    let [last, older @ ..] = past else { return html! {} };
    html! {
        p { (says(w, last)) }
        div.btns { (back(w, last, &say!(w, "pilot-undo"))) }
        @if !older.is_empty() {
            details {
                summary { (say!(w, "pilot-older", count = older.len())) }
                ul.plain.lots { @for one in older { li {
                    div { (says(w, one)) }
                    div.btns { (back(w, one, &say!(w, "pilot-back"))) }
                } } }
            }
        }
    }
}

fn back(w: Wording, past: &Past, says: &str) -> Markup {
    let version = past.version.to_string();
    html! {
        button.btn.quiet type="submit" form="sheet" name="do" value={ "back " (version) }
            aria-label=(say!(w, "pilot-back-named", what = says, version = &version)) { (says) }
    }
}

fn says(w: Wording, past: &Past) -> Markup {
    html! {
        time datetime=(past.saved.strftime("%Y-%m-%dT%H:%M:%SZ")) { (past.saved.strftime("%Y-%m-%d %H:%M UTC")) }
        ". "
        (past.by_pilot.clone().unwrap_or_else(|| say!(w, "pilot-as-usual")))
        @if !past.parts.is_empty() {
            " " (say!(w, "pilot-on-sheet", parts = past.parts.join(", ")))
        }
    }
}

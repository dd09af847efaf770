//! The line at the breath meter: whose bag is next, what was shown, and what clean air showed.

use super::page::Around;
use crate::desk::room::run::MeterLine;
use crate::desk::{Wording, say};
use crate::web::words::lay;
use maud::{Markup, html};

/// The line with its forms.
pub(super) fn line(w: Wording, around: &Around, home: &str, line: &MeterLine) -> Markup {
    html! {
        div data-part="meter" { (next(w, line)) }
        (form(w, around, home, line))
        div data-part="air" { (air(w, around, home, line)) }
    }
}

fn next(w: Wording, line: &MeterLine) -> Markup {
    html! {
        ol.meter {
            @if line.shown.is_empty() { li { (say!(w, "meter-warm")) } }
            @if line.blank_next { li { (say!(w, "meter-blank")) } }
            @match line.next() {
                Some((name, _)) => li {
                    (lay!(w, "meter-now", bag = html! { b { (name) } }))
                },
                None => li { (say!(w, "meter-none")) },
            }
        }
        @if line.waiting.len() > 1 {
            p.soft {
                @let after: Vec<&str> =
                    line.waiting.iter().skip(1).map(|(name, _)| name.as_str()).collect();
                (say!(w, "meter-after", bags = after.join(", ")))
            }
        }
        @if !line.shown.is_empty() {
            p {
                (lay!(w, "meter-shown", values = html! {
                    @for (at, (name, percent, _)) in line.shown.iter().enumerate() {
                        @if at > 0 { ", " } (name) " " b { (format!("{percent:.2}")) }
                    }
                }))
            }
        }
    }
}

fn form(w: Wording, around: &Around, home: &str, line: &MeterLine) -> Markup {
    html! {
        form.line method="post" action=(home) data-act data-clear {
            (around.field)
            input type="hidden" name="key" value=(around.key);
            input type="hidden" name="do" value="meter";
            label for="m-bag" { (say!(w, "meter-bag")) }
            input id="m-bag" name="bag" size="6" required
                value=[line.next().map(|(name, _)| name.as_str())];
            label for="m-pc" { (say!(w, "meter-percent")) }
            input id="m-pc" name="percent" size="6" required inputmode="decimal" placeholder="0.12";
            label for="m-air" { (say!(w, "meter-blank-before")) }
            input id="m-air" name="air" size="6" inputmode="decimal" placeholder="0.00";
            button.btn { (say!(w, "meter-note")) }
        }
    }
}

/// What clean air showed, turn by turn, to be set right.
fn air(w: Wording, around: &Around, home: &str, line: &MeterLine) -> Markup {
    let shown = |percent: Option<f64>| {
        percent.map_or_else(|| "–".to_owned(), |percent| format!("{percent:.2}"))
    };
    html! {
        @if !line.air.is_empty() {
            form.line method="post" action=(home) data-act data-clear {
                (around.field)
                input type="hidden" name="key" value=(around.key);
                input type="hidden" name="do" value="air";
                label for="a-turn" { (say!(w, "meter-air")) }
                select id="a-turn" name="turn" {
                    @for (turn, percent) in &line.air {
                        option value=(turn) {
                            (say!(w, "meter-air-turn", turn = turn.to_string(), percent = shown(*percent)))
                        }
                    }
                }
                label for="a-pc" { (say!(w, "meter-air-right")) }
                input id="a-pc" name="air" size="6" required inputmode="decimal" placeholder="0.00";
                button.btn.quiet { (say!(w, "meter-note")) }
            }
        }
    }
}

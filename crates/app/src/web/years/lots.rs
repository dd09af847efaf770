//! How active each lot was over its days, as markup.

use crate::desk::shared::{LotsFound, by_says, lot_name, lot_says, lots_picture};
use crate::desk::{Wording, say};
use maud::{Markup, PreEscaped, html};

/// A picture, a sentence a lot, and a table.
pub(super) fn lots(w: Wording, found: &LotsFound) -> Markup {
    html! {
        section.sec id="lots" {
            div.mg { h2 { (say!(w, "years-lots")) } p.note { (say!(w, "years-lots-note")) } }
            div.bd {
                @if found.lots.is_empty() { p { (say!(w, "years-lots-none")) } }
                @else {
                    div.chartbox {
                        div.wid { (PreEscaped(lots_picture(w, &found.lots, 960.0))) }
                        div.nar { (PreEscaped(lots_picture(w, &found.lots, 340.0))) }
                    }
                    ul.plain { @for lot in &found.lots { li { (lot_says(w, lot)) } } }
                    details {
                        summary { (say!(w, "years-lots-table")) }
                        (table(w, found))
                    }
                }
                @if found.working > 0 {
                    p.soft { (say!(w, "years-lots-working", count = found.working)) }
                }
            }
        }
    }
}

fn table(w: Wording, found: &LotsFound) -> Markup {
    html! {
        div.scrolls tabindex="0" {
            table {
                thead { tr {
                    th { (say!(w, "years-lot")) }
                    th { (say!(w, "years-lot-date")) }
                    th { (say!(w, "years-lot-by")) }
                    th { (say!(w, "years-lots-usual")) }
                } }
                tbody { @for lot in &found.lots { @for day in &lot.days {
                    @let [value, low, high] = day.times_usual().map(|one| format!("{one:.2}"));
                    tr {
                        td { (lot_name(lot)) }
                        td.nowrap { (day.date) }
                        td { (by_says(w, day)) }
                        td.nowrap { (say!(w, "years-lot-between", value = value, low = low, high = high)) }
                    }
                } } }
            }
        }
    }
}

//! The prepare page as markup.

use crate::desk::drawings::mark;
use crate::desk::room::prepare::PrepareView;
use crate::desk::{PrepSheet, WaterMix, Wording, say};
use crate::web::head::{Part, by_pilot, head, lead, no_printer, older_names};
use maud::{Markup, PreEscaped, html};

/// The whole page.
pub(super) fn page(w: Wording, view: &PrepareView) -> Markup {
    html! {
        div.sheet {
            header {
            (head(w, &view.title, Some(view.id), Part::Prepare, view.kind))
            (lead(&say!(w, "prepare-lead")))
            }
            main {
                @match &view.sheet {
                    Ok(sheet) => (parts(w, view, sheet)),
                    Err(why) => (stuck(w, view, why)),
                }
            }
        }
    }
}

fn stuck(w: Wording, view: &PrepareView, why: &str) -> Markup {
    html! {
        section.sec {
            div.mg { h2 { (say!(w, "prepare-not-yet")) } }
            div.bd {
                div.fault { p { b { (say!(w, "prepare-cannot")) } " " (why) } }
                div.btns.addrow { a.btn.main href={ "/i/" (view.id) "/plan" } { (say!(w, "prepare-to-plan")) } }
            }
        }
    }
}

fn section(head: &str, body: &Markup) -> Markup {
    html! { section.sec { div.mg { h2 { (head) } } div.bd { (body) } } }
}

fn parts(w: Wording, view: &PrepareView, sheet: &PrepSheet) -> Markup {
    let id = view.id;
    html! {
        @if view.faults > 0 {
            div.fault.aroundform {
                p {
                    b { (say!(w, "prepare-faults")) } " " (say!(w, "prepare-mend")) " "
                    a href={ "/i/" (id) "/plan" } { (say!(w, "prepare-to-plan")) }
                }
            }
        }
        (section(&say!(w, "prepare-paper"), &html! {
            p.soft { (say!(w, "prepare-made-now")) " " (sheet.summary) }
            @for (period, bags) in &view.kept {
                p { (say!(w, "prepare-as-sealed", period = period, count = *bags)) }
            }
            ul.papers {
                li { a.btn.main href={ "/i/" (id) "/prep.pdf" } { (say!(w, "prepare-sheet")) } }
                li { a.btn.quiet href={ "/i/" (id) "/forecast.pdf" } { (say!(w, "prepare-forecast")) } }
                li { a.btn.quiet href={ "/i/" (id) "/prep.pdf?paper=a4" } { (say!(w, "prepare-sheet-a4")) } }
            }
            (by_pilot(w, id, view.by_pilot.as_deref()))
            (no_printer(w))
        }))
        (section(&say!(w, "prepare-buy"), &shopping(w, sheet)))
        @if !sheet.stocks.is_empty() { (section(&say!(w, "prepare-stocks"), &stocks(w, sheet))) }
        (section(&say!(w, "prepare-water"), &water(w, sheet)))
        (section(&say!(w, "prepare-trays"), &trays(w, sheet)))
        (section(&say!(w, "prepare-in-all"), &html! {
            div.scrolls tabindex="0" { table { tbody { @for total in &sheet.totals {
                tr { th scope="row" { (total.what) } td.r { (total.amount) } td { (total.note) } }
            } } } }
            @for note in &sheet.notes { p.small.soft { b { (note.head) ": " } (note.says) } }
        }))
        (section(&say!(w, "prepare-cautions"), &cautions(w, sheet)))
    }
}

fn shopping(w: Wording, sheet: &PrepSheet) -> Markup {
    html! {
        div.scrolls tabindex="0" { table {
            thead { tr {
                th scope="col" { (say!(w, "prepare-what")) }
                th scope="col" { (say!(w, "prepare-needs")) }
                th scope="col" { (say!(w, "prepare-stock")) }
                th scope="col" { (say!(w, "prepare-buy")) }
                th.r scope="col" { (say!(w, "prepare-cost")) }
            } }
            tbody { @for one in &sheet.shopping { tr {
                th scope="row" { (one.item) }
                td { (one.need) }
                td { (one.in_stock) }
                td { @if one.packs.is_empty() { span.soft { (say!(w, "prepare-enough")) } } @else { b { (one.packs) } } }
                td.r { (one.cost) }
            } } }
        } }
        p.addrow {
            b {
                @match &sheet.cost {
                    Some(cost) => (say!(w, "prepare-cost-all", cost = cost)),
                    None => (say!(w, "prepare-no-price")),
                }
            }
            " "
            span.soft { (sheet.cost_note) }
        }
    }
}

fn stocks(w: Wording, sheet: &PrepSheet) -> Markup {
    html! {
        p.soft { (say!(w, "prepare-dust")) }
        @for stock in &sheet.stocks {
            div.fields.single {
                div.one.wide {
                    h3 { (stock.name) ": " (stock.makes) }
                    p { (stock.recipe) }
                    p.soft { (say!(w, "prepare-serves", whom = &stock.serves)) }
                }
            }
        }
    }
}

fn water(w: Wording, sheet: &PrepSheet) -> Markup {
    let row = |mix: &WaterMix| {
        html! { tr {
            th scope="row" { (mix.period) }
            td.r { (mix.clock) } td.r { (mix.hot) } td.r { (mix.cold) }
            td { (mix.jug) } td { (mix.bag) }
        } }
    };
    html! {
        div.scrolls tabindex="0" { table {
            thead { tr {
                th scope="col" { (say!(w, "prepare-period")) }
                th.r scope="col" { (say!(w, "prepare-mix-at")) }
                th.r scope="col" { (say!(w, "prepare-hot")) }
                th.r scope="col" { (say!(w, "prepare-cold")) }
                th scope="col" { (say!(w, "prepare-in-jug")) }
                th scope="col" { (say!(w, "prepare-in-bag")) }
            } }
            tbody { @for mix in &sheet.water { (row(mix)) } }
        } }
        p.small.soft { (sheet.water_note) }
    }
}

fn trays(w: Wording, sheet: &PrepSheet) -> Markup {
    html! {
        @let trays = sheet.trays.iter().flat_map(|period| &period.trays);
        (older_names(w, trays.flat_map(|tray| &tray.bags).map(|bag| bag.treatment.as_str())))
        @for period in &sheet.trays {
            details {
                summary { span { b { (period.period) } ", " (period.clock) ", " (say!(w, "prepare-tray-count", count = period.trays.len())) } }
                @if !period.every_tray.is_empty() {
                    p { b { (say!(w, "prepare-every-tray")) } " " (period.every_tray.join(", ")) "." }
                }
                @for tray in &period.trays {
                    div.tray {
                        h3 { (say!(w, "prepare-group", group = tray.group.to_string())) }
                        div {
                            ul { @for bag in &tray.bags {
                                li {
                                    span.mk { (PreEscaped(mark(bag.look, 16.0))) }
                                    span.code { (bag.code) }
                                    span { (bag.treatment) }
                                }
                            } }
                            @if !tray.also.is_empty() { p.small.soft { (say!(w, "prepare-also", things = tray.also.join(", "))) } }
                        }
                    }
                }
            }
        }
    }
}

fn cautions(w: Wording, sheet: &PrepSheet) -> Markup {
    html! {
        p.soft { (say!(w, "prepare-rules-first")) }
        ul.plain.cautions {
            @for one in &sheet.cautions {
                li {
                    span.code { (one.code) } " " (one.says)
                    @if let Some(source) = &one.source { span.small.soft { " " (source) } }
                }
            }
        }
    }
}

//! The prepare page as markup.

use crate::desk::drawings::mark;
use crate::desk::room::prepare::PrepareView;
use crate::desk::{PrepSheet, WaterMix};
use crate::web::head::{Part, head, lead};
use maud::{Markup, PreEscaped, html};

/// The whole page.
pub(super) fn page(view: &PrepareView) -> Markup {
    html! {
        div.sheet {
            (head(&view.title, Some(view.id), Part::Prepare, view.kind))
            (lead("What to buy, mix and lay out, worked out from the bag list. Print it, shop, set \
                   the trays; on the day, run."))
            main {
                @match &view.sheet {
                    Ok(sheet) => (parts(view, sheet)),
                    Err(why) => (stuck(view, why)),
                }
            }
        }
    }
}

fn stuck(view: &PrepareView, why: &str) -> Markup {
    html! {
        section.sec {
            div.mg { h2 { "Not yet" } }
            div.bd {
                div.fault { p { b { "This plan cannot be prepared yet." } " " (why) } }
                div.btns.addrow { a.btn.main href={ "/i/" (view.id) "/plan" } { "Back to the plan" } }
            }
        }
    }
}

fn section(head: &str, body: &Markup) -> Markup {
    html! { section.sec { div.mg { h2 { (head) } } div.bd { (body) } } }
}

fn parts(view: &PrepareView, sheet: &PrepSheet) -> Markup {
    let id = view.id;
    html! {
        @if view.faults > 0 {
            div.fault.aroundform {
                p {
                    b { "The plan has faults. " }
                    "Mend them before you buy anything: "
                    a href={ "/i/" (id) "/plan" } { "to the plan" } "."
                }
            }
        }
        (section("Paper", &html! {
            p.soft { "Made now, from the newest plan. " (sheet.summary) }
            ul.papers {
                li { a.btn.main href={ "/i/" (id) "/prep.pdf" } { "Prep sheet" } }
                li { a.btn.quiet href={ "/i/" (id) "/forecast.pdf" } { "Forecast, for you only" } }
                li { a.btn.quiet href={ "/i/" (id) "/prep.pdf?paper=a4" } { "Prep sheet on A4" } }
            }
        }))
        (section("Buy", &shopping(sheet)))
        @if !sheet.stocks.is_empty() { (section("Make before school", &stocks(sheet))) }
        (section("Water", &water(sheet)))
        (section("Trays", &trays(sheet)))
        (section("In all", &html! {
            div.scrolls { table { tbody { @for total in &sheet.totals {
                tr { th scope="row" { (total.what) } td.r { (total.amount) } td { (total.note) } }
            } } } }
            @for note in &sheet.notes { p.small.soft { b { (note.head) ": " } (note.says) } }
        }))
        (section("Cautions", &cautions(sheet)))
    }
}

fn shopping(sheet: &PrepSheet) -> Markup {
    html! {
        div.scrolls { table {
            thead { tr {
                th scope="col" { "What" }
                th scope="col" { "The day needs" }
                th scope="col" { "In stock" }
                th scope="col" { "Buy" }
                th.r scope="col" { "Cost" }
            } }
            tbody { @for one in &sheet.shopping { tr {
                th scope="row" { (one.item) }
                td { (one.need) }
                td { (one.in_stock) }
                td { @if one.packs.is_empty() { span.soft { "enough in stock" } } @else { b { (one.packs) } } }
                td.r { (one.cost) }
            } } }
        } }
        p.addrow { b { "In all: " (sheet.cost.as_deref().unwrap_or("no price known")) ". " } span.soft { (sheet.cost_note) } }
    }
}

fn stocks(sheet: &PrepSheet) -> Markup {
    html! {
        p.soft { "You make these, never students: enzyme dust." }
        @for stock in &sheet.stocks {
            div.fields.single {
                div.one.wide {
                    h3 { (stock.name) ": " (stock.makes) }
                    p { (stock.recipe) }
                    p.soft { "For " (stock.serves) "." }
                }
            }
        }
    }
}

fn water(sheet: &PrepSheet) -> Markup {
    let row = |mix: &WaterMix| {
        html! { tr {
            th scope="row" { (mix.period) }
            td.r { (mix.clock) } td.r { (mix.hot) } td.r { (mix.cold) }
            td { (mix.jug) } td { (mix.bag) }
        } }
    };
    html! {
        div.scrolls { table {
            thead { tr {
                th scope="col" { "Period" }
                th.r scope="col" { "Mix at" }
                th.r scope="col" { "Hot" }
                th.r scope="col" { "Cold" }
                th scope="col" { "In the jug then" }
                th scope="col" { "In the bag" }
            } }
            tbody { @for mix in &sheet.water { (row(mix)) } }
        } }
        p.small.soft { (sheet.water_note) }
    }
}

fn trays(sheet: &PrepSheet) -> Markup {
    html! {
        @for period in &sheet.trays {
            details {
                summary { span { b { (period.period) } ", " (period.clock) ", " (period.trays.len()) " trays" } }
                @if !period.every_tray.is_empty() {
                    p { b { "On every tray: " } (period.every_tray.join(", ")) "." }
                }
                @for tray in &period.trays {
                    div.tray {
                        h3 { "Group " (tray.group) }
                        div {
                            ul { @for bag in &tray.bags {
                                li {
                                    span.mk { (PreEscaped(mark(bag.look, 16.0))) }
                                    span.code { (bag.code) }
                                    span { (bag.treatment) }
                                }
                            } }
                            @if !tray.also.is_empty() { p.small.soft { "Also: " (tray.also.join(", ")) "." } }
                        }
                    }
                }
            }
        }
    }
}

fn cautions(sheet: &PrepSheet) -> Markup {
    html! {
        p.soft { "For what is in this plan. Your school's and state's rules come first." }
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

//! The page of every bag as markup.

use super::curves::curves;
use crate::desk::room::every_bag::{BagRow, EveryBagView, Quantity};
use crate::desk::{Wording, say};
use crate::web::address::segment;
use crate::web::head::{Part, head, lead};
use barm_domain::words::figure;
use maud::{Markup, PreEscaped, html};

/// The whole page.
pub(super) fn page(w: Wording, view: &EveryBagView) -> Markup {
    let quantity = view.wanted.quantity;
    html! {
        div.sheet {
            header {
            (head(w, &view.title, Some(view.id), Part::Results, view.kind))
            (lead(&say!(w, "bags-lead")))
            }
            main {
                (ways(w, view))
                @match quantity {
                    Quantity::Rise => p.soft { (view.compared) },
                    Quantity::Gas => p.soft { (say!(w, "bags-gas-note")) },
                    Quantity::Ethanol => p.soft { (say!(w, "bags-ethanol-note")) },
                }
                section.sec {
                    div.mg { h2 { (say!(w, "bags-dots")) } }
                    div.bd { @match &view.dots {
                        None => p { (say!(w, "bags-none")) },
                        Some(pictures) => {
                            (drawn(pictures))
                            p {
                                a href={ "/i/" (view.id) "/bags.svg?" (query(view.wanted.period.as_deref(), quantity)) } { (say!(w, "bags-picture")) }
                                " · "
                                a href={ "/i/" (view.id) "/data.csv" } { (say!(w, "bags-data")) }
                            }
                        },
                    } }
                }
                @if let Some(shown) = &view.curves {
                    section.sec {
                        div.mg { h2 { (say!(w, "bags-curves")) } }
                        div.bd {
                            (curves(w, shown))
                            @let own = view.wanted.period.as_deref();
                            @let of = own.map(|name| format!("?period={}", segment(name)));
                            p { a href={ "/i/" (view.id) "/curves.csv" (of.unwrap_or_default()) } { (say!(w, "curves-csv")) } }
                        }
                    }
                }
                section.sec {
                    div.mg { h2 { (say!(w, "bags-rows")) } }
                    div.bd { (rows(w, view)) }
                }
            }
        }
    }
}

fn drawn(pictures: &[String; 2]) -> Markup {
    html! {
        div.chartbox {
            div.wid { (PreEscaped(&pictures[0])) }
            div.nar { (PreEscaped(&pictures[1])) }
        }
    }
}

fn query(period: Option<&str>, quantity: Quantity) -> String {
    let period = period.map(|name| format!("period={}&", segment(name))).unwrap_or_default();
    format!("{period}show={}", quantity.word())
}

/// To other periods and quantities.
fn ways(w: Wording, view: &EveryBagView) -> Markup {
    let own = view.wanted.period.as_deref();
    let quantity = view.wanted.quantity;
    let periods =
        std::iter::once(None).chain(view.periods.iter().map(|name| Some(name.as_str())));
    let called = |period: Option<&str>| match period {
        None => say!(w, "bags-all"),
        Some(name) => say!(w, "bags-period", period = name),
    };
    let named = |one: Quantity| match one {
        Quantity::Rise => say!(w, "bags-rise"),
        Quantity::Gas => say!(w, "bags-gas"),
        Quantity::Ethanol => say!(w, "bags-ethanol"),
    };
    html! {
        nav.ways {
            p { @for (at, period) in periods.enumerate() {
                @if at > 0 { " · " }
                @if period == own { b aria-current="page" { (called(period)) } }
                @else { a href={ "/i/" (view.id) "/bags?" (query(period, quantity)) } { (called(period)) } }
            } }
            p { @for (at, one) in Quantity::ALL.into_iter().enumerate() {
                @if at > 0 { " · " }
                @if one == quantity { b aria-current="true" { (named(one)) } }
                @else { a href={ "/i/" (view.id) "/bags?" (query(own, one)) } { (named(one)) } }
            } }
        }
    }
}

fn rows(w: Wording, view: &EveryBagView) -> Markup {
    html! {
        div.scrolls tabindex="0" {
            table {
                thead { tr {
                    th { (say!(w, "bags-bag")) }
                    th { (say!(w, "bags-group")) }
                    th { (say!(w, "bags-kind")) }
                    th { (say!(w, "bags-value")) " " (view.wanted.quantity.unit()) }
                    th { (say!(w, "bags-held-back")) }
                    th { (say!(w, "bags-known")) }
                } }
                tbody { @for row in &view.rows { (bag(w, view.id, row)) } }
            }
        }
    }
}

fn bag(w: Wording, id: i64, row: &BagRow) -> Markup {
    let to = format!("/i/{id}/run/{}/bag/{}", segment(&row.period), segment(&row.code));
    html! {
        tr {
            td.nowrap { a href=(to) { (row.code) } }
            td { (row.group) }
            td { (row.treatment) }
            td.nowrap { @match &row.value {
                Some(is) => (say!(w, "bags-between", value = figure(is.value), low = figure(is.low), high = figure(is.high))),
                None => "–",
            } }
            td { (row.held_back.unwrap_or("–")) }
            td { (row.says.join(" ")) }
        }
    }
}

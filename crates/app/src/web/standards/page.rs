//! Standards as markup: the table first, then the words.

use super::words_form;
use crate::desk::room::standards::{StandardRow, StandardsView};
use crate::desk::{Wording, say};
use crate::web::head::{Part, head, lead};
use barm_domain::standards::{Product, Set, WordedFault, without_product};
use maud::{Markup, html};

/// The whole page.
pub(super) fn page(
    w: Wording,
    view: &StandardsView,
    field: &Markup,
    done: Option<&str>,
    faults: &[WordedFault],
) -> Markup {
    let id = view.id;
    let sets = [
        Some(Set::Expectation),
        Some(Set::Practice),
        Some(Set::Concept),
        Some(Set::Mathematics),
        Some(Set::Literacy),
        None,
    ];
    html! {
        div.sheet {
            header {
            (head(w, &view.title, Some(id), Part::Results, view.kind))
            (lead(&say!(w, "standards-lead")))
            }
            div role="status" {
                @if let Some(done) = done { p.done { (done) } }
                @if !faults.is_empty() {
                    div.fault {
                        p { (say!(w, "marks-rubric-faults")) }
                        ul { @for fault in faults { li { (fault) "." } } }
                    }
                }
            }
            main {
                p { a href={ "/i/" (id) "/marks" } { (say!(w, "roster-marks")) } }
                @for set in sets {
                    @let rows: Vec<&StandardRow> = view.rows.iter().filter(|row| row.set == set).collect();
                    @if !rows.is_empty() {
                        section.sec {
                            div.mg { h2 { (set_called(w, set)) } }
                            div.bd { (table(w, view, &rows)) }
                        }
                    }
                }
                section.sec {
                    div.mg { h2 { (say!(w, "standards-none-head")) } }
                    div.bd {
                        p { (say!(w, "standards-none-says")) }
                        ul.plain { @for (code, why) in without_product() { li { b { (code) } ": " (why) } } }
                    }
                }
                (words_form::form(w, view, field, !faults.is_empty()))
            }
        }
    }
}

fn set_called(w: Wording, set: Option<Set>) -> String {
    match set {
        Some(Set::Expectation) => say!(w, "standards-expectation"),
        Some(Set::Practice) => say!(w, "standards-practice"),
        Some(Set::Concept) => say!(w, "standards-concept"),
        Some(Set::Mathematics) => say!(w, "standards-mathematics"),
        Some(Set::Literacy) => say!(w, "standards-literacy"),
        None => say!(w, "standards-own"),
    }
}

/// What a product is called.
pub(super) fn called(w: Wording, product: Product) -> String {
    match product {
        Product::FairTest => say!(w, "standards-fair-test"),
        Product::Readings => say!(w, "standards-readings"),
        Product::Evidence => say!(w, "standards-evidence"),
        Product::Reasoning => say!(w, "standards-reasoning"),
        Product::Review => say!(w, "standards-review"),
        Product::Analysis => say!(w, "standards-analysis"),
    }
}

fn table(w: Wording, view: &StandardsView, rows: &[&StandardRow]) -> Markup {
    html! {
        div.scrolls tabindex="0" {
            table.standards {
                thead { tr {
                    th scope="col" { (say!(w, "standards-standard")) }
                    th scope="col" { (say!(w, "standards-shown")) }
                    @for product in Product::ALL { th.r scope="col" { (called(w, product)) } }
                } }
                tbody { @for row in rows { (line(w, view, row)) } }
            }
        }
    }
}

fn line(w: Wording, view: &StandardsView, row: &StandardRow) -> Markup {
    let (groups, of) = (row.groups.to_string(), view.groups.to_string());
    html! {
        tr {
            th scope="row" {
                b { (row.code) } " " (row.words)
                @if row.from_memory { " " span.soft { (say!(w, "standards-from-memory")) } }
            }
            td {
                @if row.groups > 0 { b { "✓" } " " (say!(w, "standards-groups", groups = groups, of = of)) }
                @else { span.soft { (say!(w, "standards-no-product")) } }
            }
            @for product in Product::ALL {
                td.r {
                    @if row.products.contains(&product) {
                        (view.handed_in.get(&product).copied().unwrap_or_default())
                    }
                }
            }
        }
    }
}

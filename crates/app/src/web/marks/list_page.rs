//! The list of marks as markup.

use crate::desk::room::marks::{MarksView, Standing};
use crate::desk::{Wording, say};
use crate::web::address::segment;
use crate::web::head::{Part, head, lead};
use maud::{Markup, html};

/// The whole page.
pub(super) fn page(w: Wording, view: &MarksView, field: &Markup, done: Option<&str>) -> Markup {
    let id = view.id;
    html! {
        div.sheet {
            header {
            (head(w, &view.title, Some(id), Part::Results, view.kind))
            (lead(&say!(w, "marks-lead")))
            }
            p.done role="status" { (done.unwrap_or_default()) }
            main {
                p {
                    a href={ "/i/" (id) "/claims" } { (say!(w, "results-claims")) } " · "
                    a href={ "/i/" (id) "/marks/rubric" } { (say!(w, "marks-rubric")) }
                }
                @for (period, groups) in &view.periods {
                    section.sec {
                        div.mg {
                            h2 { (say!(w, "claims-period", period = period)) }
                            form method="post" action={ "/i/" (id) "/marks" } {
                                (field)
                                input type="hidden" name="period" value=(period);
                                button.btn type="submit" { (say!(w, "marks-hand-out")) }
                            }
                        }
                        div.bd {
                            div.scrolls tabindex="0" {
                                table {
                                    thead { tr {
                                        th { (say!(w, "marks-group")) }
                                        th { (say!(w, "marks-claim")) }
                                        th { (say!(w, "marks-standing")) }
                                    } }
                                    tbody { @for one in groups { (row(w, id, period, one)) } }
                                }
                            }
                        }
                    }
                }
            }
        }
    }
}

fn row(w: Wording, id: i64, period: &str, one: &Standing) -> Markup {
    let to = format!("/i/{id}/marks/{}/{}", segment(period), one.group);
    html! {
        tr {
            td { a href=(to) { (say!(w, "approve-group", period = period, group = one.group.to_string())) } }
            td { @if one.claimed { (say!(w, "marks-claimed")) } @else { span.soft { (say!(w, "marks-no-claim")) } } }
            td {
                @match one.sum {
                    Some((sum, of)) => (say!(w, "marks-sum", sum = sum.to_string(), of = of.to_string())),
                    None => span.soft { (say!(w, "marks-open", count = one.open)) },
                }
            }
        }
    }
}

//! The page of claims as markup.

use crate::desk::room::claims::{ClaimsView, OfGroup, OfPeriod};
use crate::desk::{Wording, say};
use crate::web::head::{Part, head, lead};
use barm_domain::claim::Says;
use maud::{Markup, html};

/// The whole page.
pub(super) fn page(
    w: Wording,
    view: &ClaimsView,
    field: &Markup,
    done: Option<&str>,
) -> Markup {
    let none = view.periods.iter().all(|period| period.claims.is_empty());
    html! {
        div.sheet {
            header {
            (head(w, &view.title, Some(view.id), Part::Results, view.kind))
            (lead(&say!(w, "claims-lead")))
            }
            p.done role="status" { (done.unwrap_or_default()) }
            main {
                p {
                    a href={ "/i/" (view.id) "/results" } { (say!(w, "claims-results")) } " · "
                    a href={ "/i/" (view.id) "/marks" } { (say!(w, "claims-marks")) }
                }
                @if none {
                    section.sec {
                        div.mg { h2 { (say!(w, "claims-not-yet")) } }
                        div.bd { p { (say!(w, "claims-none")) } }
                    }
                } @else {
                    p.soft { (say!(w, "claims-no-mark")) }
                    @for period in &view.periods { (of_period(w, view.id, period, field)) }
                }
            }
        }
    }
}

fn of_period(w: Wording, id: i64, period: &OfPeriod, field: &Markup) -> Markup {
    let missing: Vec<String> = period.missing.iter().map(ToString::to_string).collect();
    html! {
        section.sec {
            div.mg {
                h2 { (say!(w, "claims-period", period = &period.name)) }
                @if !missing.is_empty() {
                    p.note { (say!(w, "claims-missing", groups = missing.join(", "), count = missing.len())) }
                }
                @if period.claims.len() > 1 || period.opened {
                    form method="post" action={ "/i/" (id) "/claims" } {
                        (field)
                        input type="hidden" name="period" value=(period.name);
                        @if period.opened {
                            p.note { (say!(w, "claims-are-open")) }
                            button.btn.quiet type="submit" name="do" value="close" { (say!(w, "claims-close")) }
                        } @else {
                            button.btn type="submit" name="do" value="open" { (say!(w, "claims-open")) }
                        }
                    }
                }
            }
            div.bd { @for one in &period.claims { (claim_shown(w, &period.name, one)) } }
        }
    }
}

/// One group's claim beside what the data say of it.
pub(in crate::web) fn claim_shown(w: Wording, period: &str, one: &OfGroup) -> Markup {
    let claim = &one.claim;
    let who = say!(w, "approve-group", period = period, group = one.group.to_string());
    html! {
        article.prop aria-label=(who) {
            header { h3 { (who) } }
            p.asks {
                (say!(w, "claims-pair", treatment = &claim.treatment, beside = &one.beside)) ": "
                (direction(w, &claim.says))
                @if !claim.by.is_empty() { ", " (claim.by) }
            }
            dl.what {
                dt { (say!(w, "claims-question")) } dd { (one.asks) }
                dt { (say!(w, "claims-evidence")) } dd { (written(w, &claim.evidence)) }
                dt { (say!(w, "claims-reasoning")) } dd { (written(w, &claim.reasoning)) }
                dt { (say!(w, "claims-facts")) }
                dd { ul.plain { @for fact in &one.facts { li { (fact) } } } }
            }
            @if !one.heard.is_empty() {
                details {
                    summary { (say!(w, "claims-heard", count = one.heard.len())) }
                    ul.plain {
                        @for wrote in &one.heard {
                            li {
                                b { (say!(w, "claims-reader", group = wrote.reader.to_string())) } " "
                                (wrote.convinces)
                                @if !wrote.asks.is_empty() { " " span.soft { (say!(w, "claims-would-ask", question = &wrote.asks)) } }
                            }
                        }
                    }
                }
            }
        }
    }
}

fn written(w: Wording, text: &str) -> Markup {
    html! {
        @if text.is_empty() { span.soft { (say!(w, "claims-nothing-written")) } } @else { (text) }
    }
}

fn direction(w: Wording, says: &str) -> String {
    match Says::ALL.into_iter().find(|one| one.word() == says) {
        Some(Says::More) => say!(w, "claims-more"),
        Some(Says::Less) => say!(w, "claims-less"),
        Some(Says::NoReadableDifference) => say!(w, "claims-no-difference"),
        None => String::new(),
    }
}

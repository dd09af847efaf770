//! Classes and years beside each other, as markup.

use super::lots::lots;
use crate::desk::room::Kind;
use crate::desk::shared::{LotsFound, OverYears, YearsFound, years_picture};
use crate::desk::{Wording, say};
use crate::web::head::{Part, head, lead};
use maud::{Markup, PreEscaped, html};

/// The whole page.
pub(super) fn page(w: Wording, found: &YearsFound, of_lots: &LotsFound) -> Markup {
    let (several, one): (Vec<&OverYears>, Vec<&OverYears>) =
        found.years.differences.iter().partition(|one| one.classes.len() > 1);
    html! {
        div.sheet {
            header {
            (head(w, &say!(w, "years-title"), None, Part::Shelf, Kind::Real))
            (lead(&say!(w, "years-lead")))
            }
            main {
                section.sec {
                    div.mg { h2 { (say!(w, "years-classes")) } p.note { (say!(w, "years-all-of")) } }
                    div.bd { (classes(w, found)) }
                }
                @for of in &several { (difference(w, found, of)) }
                @if several.is_empty() && found.classes.len() > 1 {
                    p.soft { (say!(w, "years-apart")) }
                }
                @if !one.is_empty() && found.classes.len() > 1 {
                    section.sec {
                        div.mg { h2 { (say!(w, "years-once")) } }
                        div.bd { ul.plain { @for of in &one { li { (said(w, of)) } } } }
                    }
                }
                (lots(w, of_lots))
            }
        }
    }
}

fn said(w: Wording, of: &OverYears) -> String {
    say!(w, "years-beside", treatment = of.treatment_says(), reference = of.reference_says())
}

fn classes(w: Wording, found: &YearsFound) -> Markup {
    html! {
        @if found.classes.len() < 2 { p { (say!(w, "years-none")) } }
        ul.plain {
            @for class in &found.classes {
                @let rows = class.shared.rows();
                li {
                    b { (class.name) } " "
                    span.soft { (say!(w, "years-bags", bags = rows.bags.len().to_string(), heights = rows.readings.len().to_string())) }
                }
            }
            @for one in &found.years.passed_over { li.soft { (one.says(&found.classes)) } }
            @for (name, why) in &found.not_read {
                li.soft { (say!(w, "years-not-read", name = name.display().to_string(), why = why)) }
            }
        }
        p.small { a href="/package" { (say!(w, "take-title")) } }
    }
}

fn difference(w: Wording, found: &YearsFound, of: &OverYears) -> Markup {
    html! {
        section.sec {
            div.mg { h2 { (said(w, of)) } p.note { (say!(w, "years-minute", minute = format!("{:.0}", of.minute))) } }
            div.bd {
                div.chartbox {
                    div.wid { (PreEscaped(years_picture(&found.classes, of, 960.0))) }
                    div.nar { (PreEscaped(years_picture(&found.classes, of, 340.0))) }
                }
                @for says in of.says() { p { (says) } }
            }
        }
    }
}

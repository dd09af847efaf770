//! The print page as markup.

use super::asked::{Asked, Wrong};
use crate::desk::room::print::PrintView;
use crate::desk::{Catalog, LabelSheet, Wording, say};
use crate::web::head::{Part, by_pilot, head, lead};
use barm_domain::plan::Inquiry;
use maud::{Markup, html};

/// The whole page. `here` is the address by which other devices reach the program now, if they do.
pub(super) fn page(
    w: Wording,
    view: &PrintView,
    asked: &Asked,
    wrong: &[Wrong],
    here: Option<&str>,
) -> Markup {
    html! {
        div.sheet {
            header {
            (head(w, &view.title, Some(view.id), Part::Print, view.kind))
            (lead(&say!(w, "print-lead")))
            }
            main {
                section.sec {
                    div.mg { h2 { (say!(w, "print-how")) } p.note { (say!(w, "print-how-note")) } }
                    div.bd { (how(w, view, asked, wrong, here)) }
                }
                section.sec {
                    div.mg { h2 { (say!(w, "print-what")) } p.note { (say!(w, "print-what-note")) } }
                    div.bd { (parts(w, view, asked)) }
                }
            }
        }
    }
}

fn parts(w: Wording, view: &PrintView, asked: &Asked) -> Markup {
    let query = asked.query();
    html! {
        ul.plain.prints {
            @for part in &view.parts {
                li { a href={ "/i/" (view.id) "/print/" (part.file) (query) } { (part.says) } }
            }
        }
        @if !view.not_yet.is_empty() {
            p.small.soft { (say!(w, "print-not-yet", parts = view.not_yet.join("; "))) }
        }
        (by_pilot(w, view.id, view.by_pilot.as_deref()))
        p.small.soft { (say!(w, "print-no-printer")) }
    }
}

/// A choice: its name in the address, what stands over it, what is chosen and what can be.
fn choice(
    name: &'static str,
    label: &str,
    chosen: &str,
    offered: &[(String, String)],
) -> Markup {
    html! {
        div.one.wide[name == "labels"].clock[name == "labels"] {
            label for=(name) { (label) }
            span.fld { select id=(name) name=(name) {
                @for (value, says) in offered {
                    option value=(value) selected[value == chosen] { (says) }
                }
            } }
        }
    }
}

fn how(
    w: Wording,
    view: &PrintView,
    asked: &Asked,
    wrong: &[Wrong],
    here: Option<&str>,
) -> Markup {
    let own = |value: &str, says: String| (value.to_owned(), says);
    let papers =
        [own("letter", say!(w, "print-paper-letter")), own("a4", say!(w, "print-paper-a4"))];
    let languages: Vec<_> =
        Catalog::all().map(|one| own(one.code(), one.say("language-name"))).collect();
    let usual = own("", say!(w, "print-sheet-usual"));
    let sheet = |sheet: &LabelSheet| {
        let says = match sheet {
            LabelSheet::ThirtyUp => say!(w, "print-sheet-30"),
            LabelSheet::TenUp => say!(w, "print-sheet-10"),
            LabelSheet::TwentyOneUp => say!(w, "print-sheet-21"),
        };
        own(sheet.key(), says)
    };
    let sheets: Vec<_> =
        std::iter::once(usual).chain(LabelSheet::ALL.iter().map(sheet)).collect();
    let all = own("", say!(w, "print-period-all"));
    let period = |name: &String| own(name, say!(w, "print-period-name", period = name.clone()));
    let periods: Vec<_> = std::iter::once(all).chain(view.periods.iter().map(period)).collect();
    let planned = own("", say!(w, "print-level-own"));
    let level = |level: Inquiry| {
        let says = match level {
            Inquiry::Confirmation => say!(w, "print-level-confirmation"),
            Inquiry::Structured => say!(w, "print-level-structured"),
            Inquiry::Guided => say!(w, "print-level-guided"),
            Inquiry::Open => say!(w, "print-level-open"),
        };
        own(level.word(), says)
    };
    let levels: Vec<_> = std::iter::once(planned).chain(Inquiry::ALL.map(level)).collect();
    let sizes =
        [own("", say!(w, "print-size-usual")), own("large", say!(w, "print-size-large"))];
    let fault = |field: &str| wrong.iter().find(|(name, _)| *name == field);
    html! {
        form.editform method="get" action={ "/i/" (view.id) "/print" } {
            div.fields {
                (choice("paper", &say!(w, "print-paper"), &asked.paper, &papers))
                (choice("language", &say!(w, "print-language"), &asked.language, &languages))
                (choice("large", &say!(w, "print-size"), &asked.large, &sizes))
                (choice("period", &say!(w, "print-period"), &asked.period, &periods))
                (choice("level", &say!(w, "print-level"), &asked.level, &levels))
            }
            div.fields {
                (choice("labels", &say!(w, "print-sheet"), &asked.labels, &sheets))
                div.one {
                    label for="start" { (say!(w, "print-start")) }
                    span.fld {
                        input id="start" name="start" type="number" min="1" inputmode="numeric"
                            value=(if asked.start.is_empty() { "1" } else { &asked.start })
                            aria-describedby="start-says";
                    }
                }
                div.saying {
                    p.small.soft id="start-says" { (say!(w, "print-start-says")) }
                    @if let Some((_, cells)) = fault("start") {
                        div.fault { p { (say!(w, "print-start-wrong", cells = cells.clone())) } }
                    }
                }
            }
            div.fields {
                div.one.wide {
                    label for="address" { (say!(w, "print-address")) }
                    span.fld {
                        input id="address" name="address" type="text" inputmode="url" autocomplete="off"
                            spellcheck="false" value=(asked.address) aria-describedby="address-says";
                    }
                }
                div.saying {
                    p.small.soft id="address-says" {
                        (say!(w, "print-address-says")) " "
                        @if let Some(here) = here { (say!(w, "print-address-now", address = here)) }
                    }
                    @if let Some((_, says)) = fault("address") {
                        div.fault { p { (say!(w, "print-address-wrong")) " " (says) "." } }
                    }
                }
            }
            div.btns.addrow { button.btn.main type="submit" { (say!(w, "print-use")) } }
        }
    }
}

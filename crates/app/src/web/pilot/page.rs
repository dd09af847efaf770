//! The pilot page as markup.

use super::lots::{lots, past};
use super::sheet::sheet;
use crate::desk::room::pilot::{Learned, Looked, PilotView, ToDo};
use crate::desk::{Wording, say};
use crate::web::head::{Part, head, lead, no_printer};
use crate::web::plan::chart;
use maud::{Markup, html};

/// What the page needs beside its view.
pub(super) struct Around<'a> {
    /// The hidden field of every form.
    pub(super) field: Markup,
    /// What was just done, or why not.
    pub(super) done: Option<&'a str>,
    /// What is wrong with what was typed and is about no one field.
    pub(super) rest: &'a [String],
    /// A file that was looked at, and what it would teach.
    pub(super) looked: Option<&'a (String, Looked)>,
}

/// The whole page. Every button sends the whole sheet, so that nothing that was typed is lost.
pub(super) fn page(w: Wording, view: &PilotView, around: &Around<'_>) -> Markup {
    html! {
        div.sheet {
            header {
            (head(w, &view.title, Some(view.id), Part::Pilot, view.kind))
            (lead(&say!(w, "pilot-lead")))
            }
            p.done role="status" id="done" { (around.done.unwrap_or_default()) }
            main {
                p { (view.by_pilot.clone().unwrap_or_else(|| say!(w, "pilot-as-usual"))) }
                @if view.sealed_before > 0 {
                    p.small.soft { (say!(w, "pilot-sealed", count = view.sealed_before)) }
                }
                @if view.unreadable { p.fault { (say!(w, "pilot-unreadable")) } }
                form id="sheet" method="post" action={ "/i/" (view.id) "/pilot" } {
                    (around.field)
                    input type="hidden" name="from" value=(view.version);
                }
                @match &view.to_do {
                    Err(why) => (section(w, "to-do", &html! {
                        div.fault { p { b { (say!(w, "pilot-none")) } " " (why) } }
                    })),
                    Ok(to_do) => {
                        (section(w, "to-do", &self::to_do(w, view.id, to_do)))
                        (section(w, "read", &sheet(w, to_do, around.rest)))
                        (section(w, "file", &file(w, view.id, around)))
                    }
                }
                @if let Some(learned) = &view.learned {
                    (section(w, "learned", &self::learned(w, view.id, learned)))
                }
                @if !view.lots.is_empty() { (section(w, "lots", &lots(w, &view.lots))) }
                @if !view.past.is_empty() { (section(w, "past", &past(w, &view.past))) }
            }
        }
    }
}

fn section(w: Wording, id: &str, body: &Markup) -> Markup {
    let says = match id {
        "to-do" => say!(w, "pilot-to-do"),
        "read" => say!(w, "pilot-read"),
        "file" => say!(w, "pilot-file"),
        "learned" => say!(w, "pilot-learned"),
        "lots" => say!(w, "pilot-lots"),
        _ => say!(w, "pilot-past"),
    };
    html! { section.sec id=(id) { div.mg { h2 { (says) } } div.bd { (body) } } }
}

fn to_do(w: Wording, id: i64, to_do: &ToDo) -> Markup {
    html! {
        p { (say!(w, "pilot-any-part")) }
        ul.papers {
            li { a.btn.main href={ "/i/" (id) "/pilot.pdf" } { (say!(w, "pilot-sheet")) } }
            li { a.btn.quiet href={ "/i/" (id) "/pilot.pdf?paper=a4" } { (say!(w, "pilot-sheet-a4")) } }
            li { a.btn.quiet href={ "/i/" (id) "/pilot.csv" } { (say!(w, "pilot-blank")) } }
        }
        (no_printer(w))
        h3.addrow { (say!(w, "pilot-lay-out")) }
        ul.tools { @for tool in &to_do.tools { li { (tool) } } }
        @if !to_do.bags.is_empty() {
            h3.addrow { (say!(w, "pilot-bags")) }
            div.scrolls tabindex="0" { table {
                thead { tr {
                    th scope="col" { (say!(w, "pilot-letter")) }
                    th scope="col" { (say!(w, "pilot-goes-in")) }
                    th scope="col" { (say!(w, "pilot-tells")) }
                } }
                tbody { @for (letter, tells, recipe) in &to_do.bags { tr {
                    th scope="row" { (letter) } td { (recipe) } td { (tells) }
                } } }
            } }
        }
        details {
            summary { (say!(w, "pilot-steps")) }
            div.scrolls tabindex="0" { table {
                thead { tr {
                    th.r scope="col" { (say!(w, "pilot-step-minute")) }
                    th scope="col" { (say!(w, "pilot-step-what")) }
                } }
                tbody { @for (minute, says) in &to_do.steps { tr {
                    th.r scope="row" { (minute) } td { (says) }
                } } }
            } }
        }
        h3.addrow { (say!(w, "pilot-cautions")) }
        p.soft { (say!(w, "prepare-rules-first")) }
        ul.plain.cautions {
            @for (code, says, source) in &to_do.cautions {
                li {
                    span.code { (code) } " " (says)
                    @if let Some(source) = source { span.small.soft { " " (source) } }
                }
            }
        }
    }
}

fn file(w: Wording, id: i64, around: &Around<'_>) -> Markup {
    let typed = around.looked.map_or("", |(file, _)| file.as_str());
    html! {
        div.opener data-opener data-large=(say!(w, "start-too-large")) data-no-text=(say!(w, "start-no-text"))
            data-read=(say!(w, "pilot-file-read", file = "{file}")) {
            p { (say!(w, "pilot-file-says")) }
            div id="wrong" role="status" {}
            div hidden data-pick {
                label for="pick" { (say!(w, "pilot-choose-file")) }
                input id="pick" type="file" accept=".csv,.txt,text/csv,text/plain";
            }
            div {
                label for="brought" { (say!(w, "pilot-paste")) }
                textarea.rawtext id="brought" name="file" form="sheet" rows="6" spellcheck="false" { (typed) }
            }
            div.btns {
                button.btn.quiet type="submit" form="sheet" name="do" value="look" { (say!(w, "pilot-look")) }
            }
            @if let Some((_, looked)) = around.looked { (self::looked(w, id, looked)) }
        }
    }
}

fn looked(w: Wording, id: i64, looked: &Looked) -> Markup {
    match looked {
        Looked::Wrong(wrong) => html! {
            div.fault id="looked" {
                p { b { (say!(w, "pilot-file-wrong", count = wrong.len())) } }
                ol.atlines { @for (line, says) in wrong { li {
                    b.line { @if *line > 0 { (say!(w, "start-line", line = line.to_string())) } }
                    span { (says) }
                } } }
            }
        },
        Looked::Sound(lesson) => html! {
            div.looked id="looked" {
                h3 { (say!(w, "pilot-file-would")) }
                (learned(w, id, &Learned::of(w, lesson)))
                div.btns {
                    button.btn.main type="submit" form="sheet" name="do" value="keep" { (say!(w, "pilot-keep")) }
                }
            }
        },
    }
}

/// What was learned, as pictures and in words.
fn learned(w: Wording, id: i64, learned: &Learned) -> Markup {
    html! {
        @if learned.outgrown { p { (say!(w, "pilot-outgrown")) } }
        @if !learned.summary.is_empty() { p { (learned.summary) } }
        @for note in &learned.notes { div.warns { p { (note) } } }
        @if let Some(one) = &learned.changes { (chart(w, one, true)) }
        @if let Some(one) = &learned.treatments { (chart(w, one, true)) }
        @for one in &learned.bags {
            details { summary { (one.asks) } (chart(w, one, false)) }
        }
        @if !learned.unmoved.is_empty() {
            details {
                summary { (say!(w, "pilot-unmoved", count = learned.unmoved.len())) }
                p { (learned.unmoved.join("; ")) "." }
            }
        }
        @if learned.working {
            p.soft data-working { (say!(w, "pilot-working")) " " a href={ "/i/" (id) "/pilot" } { (say!(w, "pilot-again")) } }
        }
    }
}

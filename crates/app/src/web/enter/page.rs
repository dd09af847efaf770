//! The grid as markup.

use super::answer::home;
use super::words::cell;
use crate::desk::drawings::mark;
use crate::desk::room::benches::millimeters;
use crate::desk::room::sheets::{Cell, Fate, Row, SheetView};
use crate::desk::{Wording, say};
use crate::web::head::{Part, head, lead, older_names};
use maud::{Markup, PreEscaped, html};

/// What the page needs beside its view.
pub(super) struct Around {
    /// What is said beneath the grid.
    pub(super) said: Markup,
    /// What was done last.
    pub(super) done: Option<String>,
    /// Whether a code was typed that no sheet has.
    pub(super) unknown: bool,
}

/// The whole page.
pub(super) fn page(w: Wording, view: &SheetView, around: &Around) -> Markup {
    let next = view.next.as_ref().map(|(period, group)| home(view.id, period, *group));
    html! {
        div.sheet.enter data-enter=(home(view.id, &view.period, view.group)) data-next=[next.as_deref()]
            data-file={ "/i/" (view.id) "/enter/file" } {
            header {
            (head(w, &view.title, Some(view.id), Part::Paper, view.kind))
            (lead(&say!(w, "paper-lead")))
            }
            noscript { p.fault { (say!(w, "paper-no-script")) } }
            main {
                (named(w, view.id, around.unknown))
                (which(w, view))
                div.again id="again-lead" hidden { p { b { (say!(w, "paper-again-lead")) } } }
                form id="grid" autocomplete="off" {
                    (grid(w, view))
                    p.small.soft { (say!(w, "paper-keys")) }
                    div.enterbar {
                        div.btns {
                            @if view.next.is_some() {
                                button.btn.main type="submit" id="save-next" data-do="next" { (say!(w, "paper-save-next")) }
                                button.btn type="submit" id="save" data-do="stay" { (say!(w, "paper-save")) }
                            } @else {
                                button.btn.main type="submit" id="save" data-do="stay" { (say!(w, "paper-save")) }
                            }
                            button.btn.quiet type="button" id="again" { (say!(w, "paper-again")) }
                            button.btn.main type="button" id="compare" hidden { (say!(w, "paper-compare")) }
                            button.btn.quiet type="button" id="again-leave" hidden { (say!(w, "paper-again-leave")) }
                        }
                        p.status id="status" role="status"
                            data-unsaved=(say!(w, "paper-unsaved", count = "{count}")) data-none=(say!(w, "paper-unsaved-none"))
                            data-silent=(say!(w, "paper-silent")) data-left=(say!(w, "paper-left", count = "{count}"))
                            data-same=(say!(w, "paper-same")) data-chosen=(say!(w, "paper-chosen"))
                            data-empty=(say!(w, "paper-again-empty")) {
                            (around.done.as_deref().unwrap_or_default())
                        }
                    }
                }
                section.differ id="differ" hidden aria-live="polite"
                    data-first=(say!(w, "paper-first")) data-second=(say!(w, "paper-second")) data-blank=(say!(w, "paper-blank")) {
                    h2 { (say!(w, "paper-differ-head")) }
                    ul.plain id="differ-list" {}
                }
                div.said id="said" aria-live="polite" { (around.said) }
                (older_names(w, view.rows.iter().map(|row| row.treatment.as_str())))
                (before(w, view))
                (file(w))
                @if view.next.is_none() {
                    p.full { (say!(w, "paper-all-full")) " " a href={ "/i/" (view.id) "/results" } { (say!(w, "paper-to-results")) } }
                }
            }
        }
    }
}

/// A sheet by the code that stands on it.
fn named(w: Wording, id: i64, unknown: bool) -> Markup {
    html! {
        form.named method="get" action={ "/i/" (id) "/enter" } role="search" {
            label for="sheet" { (say!(w, "paper-sheet")) }
            span.fld.bad[unknown] {
                input id="sheet" name="sheet" size="10" maxlength="20" required autocomplete="off"
                    autocapitalize="characters" spellcheck="false"
                    aria-invalid=[unknown.then_some("true")] aria-describedby="sheet-hint";
            }
            button.btn.quiet type="submit" { (say!(w, "paper-sheet-go")) }
            span.small.soft id="sheet-hint" {
                @if unknown { span.fault role="alert" { (say!(w, "paper-sheet-unknown")) } }
                @else { (say!(w, "paper-sheet-hint")) }
            }
        }
    }
}

/// Which sheet: periods, then groups with how much is in.
fn which(w: Wording, view: &SheetView) -> Markup {
    html! {
        nav.which aria-label=(say!(w, "paper-periods")) {
            span.lab { (say!(w, "paper-period")) }
            @for (period, group) in &view.periods {
                a.tab href=(home(view.id, period, *group))
                    aria-current=[(*period == view.period).then_some("true")] { (period) }
            }
        }
        nav.which aria-label=(say!(w, "paper-groups")) {
            span.lab { (say!(w, "paper-group")) }
            @for tab in &view.groups {
                a.tab href=(home(view.id, &view.period, tab.group))
                    aria-current=[(tab.group == view.group).then_some("page")] {
                    b { (tab.name) }
                    small { (say!(w, "paper-tab", done = tab.done, of = tab.of)) }
                }
            }
        }
    }
}

fn grid(w: Wording, view: &SheetView) -> Markup {
    html! {
        div.scrolls {
            table.grid {
                caption.vh { (say!(w, "paper-caption", period = &view.period)) }
                thead { tr {
                    th scope="col" { (say!(w, "paper-bag")) }
                    th scope="col" { (say!(w, "paper-zero-at")) }
                    @for minute in &view.minutes {
                        th scope="col" {
                            @if *minute == 0 { (say!(w, "paper-zero")) } @else { (minute) small { " " (say!(w, "paper-minute")) } }
                        }
                    }
                } }
                tbody { @for row in &view.rows { (line(w, row)) } }
            }
        }
    }
}

fn line(w: Wording, row: &Row) -> Markup {
    let fate = row.fate.map(|fate| match fate {
        Fate::Vented => say!(w, "paper-vented"),
        Fate::Lost => say!(w, "paper-lost"),
        Fate::SetAside => say!(w, "paper-set-aside"),
    });
    html! {
        tr {
            th scope="row" {
                span.mk { (PreEscaped(mark(row.look, 16.0))) }
                b.bag { (row.name) }
                span.treat { (row.treatment) @if let Some(fate) = &fate { ", " (fate) } }
            }
            td.at {
                @if row.zero_known {
                    (row.zero_at)
                } @else {
                    input type="text" size="7" data-zero=(row.code) value=(row.zero_at)
                        data-there=(row.zero_at)
                        aria-label=(say!(w, "paper-zero-at-of", bag = &row.name));
                }
            }
            @for one in &row.cells { td { (field(w, row, one)) } }
        }
    }
}

fn field(w: Wording, row: &Row, one: &Cell) -> Markup {
    let there: Vec<String> = one.there.iter().map(|mm| millimeters(*mm)).collect();
    let value = if one.is_open() { String::new() } else { there.join("") };
    let open = one.is_open().then(|| there.join(" / "));
    html! {
        input type="text" size="4" maxlength="24" autocapitalize="off" spellcheck="false"
            data-bag=(row.code) data-minute=(one.minute) data-there=(value) value=(value)
            data-name=(cell(w, &row.name, Some(one.minute)))
            aria-label=(cell(w, &row.name, Some(one.minute)));
        @if let Some(open) = open { small.open { (open) } }
    }
}

/// Where two heights stand, and what stood before, with the way back.
fn before(w: Wording, view: &SheetView) -> Markup {
    let all: Vec<(&Row, &Cell)> =
        view.rows.iter().flat_map(|row| row.cells.iter().map(move |one| (row, one))).collect();
    let open: Vec<_> = all.iter().filter(|(_, one)| one.is_open()).collect();
    let was: Vec<_> =
        all.iter().filter(|(_, one)| !one.is_open() && !one.was.is_empty()).collect();
    html! {
        @if !open.is_empty() {
            h2 { (say!(w, "paper-open-head")) }
            ul.plain { @for (row, one) in &open {
                @let heights: Vec<String> = one.there.iter().map(|mm| millimeters(*mm)).collect();
                li { (say!(w, "paper-open", cell = cell(w, &row.name, Some(one.minute)), heights = heights.join(", "))) }
            } }
        }
        @if !was.is_empty() {
            h2 { (say!(w, "paper-was-head")) }
            ul.plain.waslist { @for (row, one) in &was {
                @let last = one.was.last().map(|mm| millimeters(*mm)).unwrap_or_default();
                @let all: Vec<String> = one.was.iter().map(|mm| millimeters(*mm)).collect();
                li {
                    span { (say!(w, "paper-was", cell = cell(w, &row.name, Some(one.minute)), was = all.join(", "))) }
                    button.btn.quiet type="button" data-back=(last) data-of=(row.code) data-at=(one.minute) {
                        (say!(w, "paper-put-back", was = &last))
                    }
                }
            } }
        }
    }
}

fn file(w: Wording) -> Markup {
    html! {
        section.sec id="file" {
            div.mg { h2 { (say!(w, "paper-file-head")) } }
            div.bd {
                p { (say!(w, "paper-file-lead")) }
                div.opener {
                    div { label for="pick" { (say!(w, "paper-file-pick")) } input type="file" id="pick" accept=".csv,.txt,.tsv,text/csv,text/plain"; }
                    div {
                        label for="pasted" { (say!(w, "paper-file-paste")) }
                        textarea.rawtext id="pasted" rows="4" spellcheck="false" {}
                    }
                    div.btns { button.btn type="button" id="file-look" { (say!(w, "paper-file-look")) } }
                }
                div id="file-said" role="status" data-silent=(say!(w, "paper-silent")) data-nothing=(say!(w, "paper-file-nothing")) {}
            }
        }
    }
}

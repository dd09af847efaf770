//! Shelf and start as markup.

use crate::desk::room::Kind;
use crate::desk::start::{AtLine, NotYet, OnShelf, ShelfView, Typed, cupboard};
use crate::desk::{Wording, say};
use crate::web::head::{Part, head, lead};
use barm_domain::plan::Inquiry;
use barm_domain::ready::{QUESTIONS, Ready};
use jiff::Timestamp;
use maud::{Markup, html};

/// All investigations, the newest on top.
pub(super) fn shelf(w: Wording, view: &ShelfView, field: &Markup) -> Markup {
    let lines = &view.lines;
    let own = lines.iter().filter(|line| line.kind == Kind::Real).count();
    // Nothing else is started where a rehearsal lies.
    let rehearsal = lines.iter().any(|line| line.kind == Kind::Rehearsal);
    let kind = if rehearsal { Kind::Rehearsal } else { Kind::Real };
    html! {
        div.sheet {
            header {
            (head(w, &say!(w, "shelf-title"), None, Part::Shelf, kind))
            (lead(&say!(w, "shelf-lead")))
            }
            @if let Some((what, at)) = &view.damaged { (damaged(w, what, *at)) }
            main data-counting[view.counting] {
                section.sec {
                    div.mg { h2 { (say!(w, "shelf-head")) } }
                    div.bd {
                        @if !lines.is_empty() || !view.asked.is_empty() { (find(w, &view.asked)) }
                        div.scrolls tabindex="0" { table.shelf.ghost[lines.is_empty()] {
                            thead { tr {
                                th scope="col" { (say!(w, "shelf-day")) }
                                th scope="col" { (say!(w, "shelf-question")) }
                                th.r scope="col" { (say!(w, "shelf-bags")) }
                                th scope="col" { (say!(w, "shelf-stands")) }
                            } }
                            tbody {
                                @if lines.is_empty() && !view.asked.is_empty() {
                                    tr { td colspan="4" { (say!(w, "shelf-not-found", asked = &view.asked)) } }
                                } @else if lines.is_empty() {
                                    tr { td colspan="4" { (say!(w, "shelf-empty")) } }
                                    tr { td colspan="4" {} }
                                    tr { td colspan="4" {} }
                                }
                                @for one in lines { (line(w, one)) }
                            }
                        } }
                        @if view.counting {
                            p.small role="status" { (say!(w, "shelf-counting-says")) " " a href="/shelf" { (say!(w, "shelf-again")) } }
                        }
                        p.note {
                            (say!(w, "shelf-keeps"))
                        }
                        @if rehearsal { p { (say!(w, "start-in-a-rehearsal")) } } @else {
                        br;
                        div.btns {
                            a.btn.main href="/start" { (say!(w, "shelf-start")) }
                            a.btn.quiet href="/start#file" { (say!(w, "shelf-open")) }
                            a.btn.quiet href="/package" { (say!(w, "take-title")) }
                            @if lines.iter().all(|line| line.kind != Kind::Invented) {
                                (invented_button(w, field))
                            }
                        }
                        @if own == 0 {
                            p.small.soft { (say!(w, "shelf-invented")) }
                        }
                        }
                        @if !rehearsal && !lines.is_empty() { (use_again(w, lines, field)) }
                        p.small { a href="/years" { (say!(w, "years-title")) } }
                        p.small { a href="/backups" { (say!(w, "shelf-backups")) } }
                        p.small { a href="/kept" { (say!(w, "people-title")) } }
                        p.small { a href="/teacher/passphrase" { (say!(w, "shelf-sign-out")) } }
                    }
                }
            }
        }
    }
}

/// What a full check found, and what to do about it.
fn damaged(w: Wording, what: &str, at: Timestamp) -> Markup {
    html! {
        div.fault role="alert" {
            p { b { (say!(w, "shelf-damaged", at = at.strftime("%Y-%m-%d %H:%M UTC").to_string())) } " " (what) }
            ol {
                li { (say!(w, "shelf-damaged-copy")) }
                li { (say!(w, "shelf-damaged-paper")) }
                li { (say!(w, "shelf-damaged-restore")) " " a href="/backups" { (say!(w, "shelf-backups")) } }
            }
        }
    }
}

fn line(w: Wording, one: &OnShelf) -> Markup {
    let stands = match one.kind {
        Kind::Real => one.stands.clone(),
        Kind::Rehearsal => say!(w, "shelf-rehearsal", stands = &one.stands),
        Kind::Invented => say!(w, "shelf-made-up", stands = &one.stands),
    };
    html! {
        tr {
            td.nowrap { (one.day) }
            td {
                a href={ "/i/" (one.id) "/plan" } { (one.title) }
                @if let Some(holds) = &one.holds { br; code.small { (holds) } }
            }
            td.r { @if let Some(bags) = one.bags { (bags) } }
            td { (stands) }
        }
    }
}

/// Looks for words in all plans.
fn find(w: Wording, asked: &str) -> Markup {
    html! {
        form method="get" action="/shelf" role="search" {
            div.fields { div.one.wide {
                label for="find" { (say!(w, "shelf-find")) }
                span.fld.wide { input id="find" name="find" type="search" value=(asked) maxlength="100" autocomplete="off"; }
            } }
            div.btns {
                button.btn.quiet type="submit" { (say!(w, "shelf-find-go")) }
                @if !asked.is_empty() { a.btn.quiet href="/shelf" { (say!(w, "shelf-find-all")) } }
            }
        }
    }
}

/// A plan once more, with other days.
fn use_again(w: Wording, lines: &[OnShelf], field: &Markup) -> Markup {
    html! {
        details {
            summary { (say!(w, "shelf-use-again")) }
            form method="post" action="/start/again" {
                (field)
                div.fields {
                    div.one {
                        label for="again-id" { (say!(w, "shelf-use-which")) }
                        span.fld { select id="again-id" name="id" {
                            @for one in lines { option value=(one.id) { (one.day) " " (one.title) } }
                        } }
                    }
                    div.one {
                        label for="again-day" { (say!(w, "shelf-use-day")) }
                        span.fld { input id="again-day" name="day" type="date" required; }
                    }
                }
                div.btns { button.btn.quiet type="submit" { (say!(w, "shelf-use-go")) } }
                p.small.soft { (say!(w, "shelf-use-says")) }
            }
        }
    }
}

fn invented_button(w: Wording, field: &Markup) -> Markup {
    html! {
        form method="post" action="/start/invented" {
            (field)
            button.btn.quiet type="submit" { (say!(w, "start-made-up-go")) }
        }
    }
}

/// What a level of inquiry leaves to the students.
fn level(w: Wording, inquiry: Inquiry) -> String {
    match inquiry {
        Inquiry::Confirmation => say!(w, "start-confirmation"),
        Inquiry::Structured => say!(w, "start-structured"),
        Inquiry::Guided => say!(w, "start-guided"),
        Inquiry::Open => say!(w, "start-open"),
    }
}

/// The ways to start.
pub(super) fn lessons(
    w: Wording,
    field: &Markup,
    brought: Option<(&str, &[AtLine])>,
) -> Markup {
    html! {
        div.sheet {
            header {
            (head(w, &say!(w, "start-head"), None, Part::Shelf, Kind::Real))
            (lead(&say!(w, "start-lead")))
            }
            main {
                section.sec {
                    div.mg { h2 { (say!(w, "start-ready")) } }
                    div.bd { ul.lessons { @for ready in Ready::ALL { (ready_line(w, ready)) } } }
                }
                section.sec id="file" {
                    div.mg { h2 { (say!(w, "start-file")) } }
                    div.bd { (file(w, field, brought)) }
                }
                section.sec {
                    div.mg { h2 { (say!(w, "start-made-up")) } }
                    div.bd {
                        p { (say!(w, "start-made-up-says")) }
                        div.btns.addrow { (invented_button(w, field)) }
                    }
                }
            }
        }
    }
}

fn ready_line(w: Wording, ready: Ready) -> Markup {
    html! {
        li {
            h3 { (ready.title()) }
            p { (ready.says()) }
            p.small.soft {
                (level(w, ready.inquiry())) " "
                (say!(w, "start-from", minutes = ready.good_from_min().to_string()))
            }
            a.btn.act href={ "/start/ready/" (ready.name()) }
                aria-label=(say!(w, "start-take-it", title = ready.title())) {
                (say!(w, "start-take"))
            }
        }
    }
}

/// Faults of a file that are shown at once.
const MOST_SHOWN: usize = 12;

fn file(w: Wording, field: &Markup, brought: Option<(&str, &[AtLine])>) -> Markup {
    html! {
        p { (say!(w, "start-file-says")) }
        form.opener method="post" action="/start/file#file" data-opener
            data-large=(say!(w, "start-too-large")) data-no-text=(say!(w, "start-no-text"))
            data-read=(say!(w, "start-read", file = "{file}")) {
            (field)
            div id="wrong" role="status" {
                @if let Some((_, wrong)) = brought {
                    div.fault {
                        p { b { (say!(w, "start-cannot")) } " " (say!(w, "start-mend")) }
                        ol.atlines { @for one in wrong.iter().take(MOST_SHOWN) { li {
                            b.line { (say!(w, "start-line", line = one.line)) }
                            @if !one.stands.is_empty() { code { (one.stands) } }
                            span { (one.says) }
                        } } }
                        @if wrong.len() > MOST_SHOWN {
                            p { (say!(w, "start-more", count = wrong.len() - MOST_SHOWN)) }
                        }
                    }
                }
            }
            div hidden data-pick {
                label for="pick" { (say!(w, "start-choose")) }
                input id="pick" type="file" accept=".toml,text/plain,application/toml";
            }
            div {
                label for="brought" { (say!(w, "start-paste")) }
                textarea.rawtext id="brought" name="text" rows="6" spellcheck="false"
                    aria-describedby="wrong" { (brought.map(|(text, _)| text).unwrap_or_default()) }
            }
            div.btns { button.btn type="submit" { (say!(w, "start-open-it")) } }
        }
    }
}

/// The six questions of a ready plan.
pub(super) fn six(
    w: Wording,
    ready: Ready,
    typed: &Typed,
    not: Option<&NotYet>,
    field: &Markup,
) -> Markup {
    html! {
        div.sheet.startpage {
            header {
            (head(w, ready.title(), None, Part::Shelf, Kind::Real))
            (lead(&say!(w, "start-six-lead")))
            }
            main {
                form method="post" action={ "/start/ready/" (ready.name()) "#wrong-answer" } {
                    (field)
                    (question(1, not, &html! {
                        (entry("date", &say!(w, "start-day"), &typed.date, "date"))
                        (entry("start", &say!(w, "start-bell"), &typed.start, "text"))
                        (entry("altitude", &say!(w, "start-altitude"), &typed.altitude, "text"))
                        (entry("zone", &say!(w, "start-zone"), &typed.zone, "text"))
                        p.small.soft.one.wide { (say!(w, "start-when-hint")) }
                    }))
                    (question(2, not, &html! {
                        (entry("periods", &say!(w, "start-periods"), &typed.periods, "text"))
                        (entry("groups", &say!(w, "start-groups"), &typed.groups, "text"))
                        (entry("students", &say!(w, "start-students"), &typed.students, "text"))
                    }))
                    (question(3, not, &html! {
                        p.small.soft.one.wide { (say!(w, "start-cupboard-hint")) }
                        (ticks(typed))
                    }))
                    (question(4, not, &html! {
                        div.one {
                            label for="bag" { (say!(w, "start-bag")) }
                            span.fld { input id="bag" name="bag" value=(typed.bag) list="bags" autocomplete="off"; }
                            datalist id="bags" {
                                @for bag in ["snack", "sandwich", "quart", "gallon"] { option value=(bag) {} }
                            }
                        }
                        p.small.soft { (say!(w, "start-bag-hint")) }
                    }))
                    (question(5, not, &html! {
                        (entry("water", &say!(w, "start-water"), &typed.water, "text"))
                        p.small.soft { (say!(w, "start-water-hint")) }
                    }))
                    (question(6, not, &entry("length", &say!(w, "start-length"), &typed.length, "text")))
                    div.btns {
                        button.btn.main type="submit" { (say!(w, "start-write")) }
                        a.btn.quiet href="/start" { (say!(w, "start-another")) }
                    }
                }
            }
        }
    }
}

fn question(number: usize, not: Option<&NotYet>, body: &Markup) -> Markup {
    let wrong = not.filter(|not| not.question == number);
    html! {
        div.question {
            span.n aria-hidden="true" { (number) }
            fieldset {
                legend { h2 { (QUESTIONS[number - 1]) } }
                div.fields.single { (body) }
                @if let Some(wrong) = wrong {
                    div.fault role="alert" id="wrong-answer" { p { (wrong.says) } }
                }
            }
        }
    }
}

fn entry(name: &str, label: &str, value: &str, kind: &str) -> Markup {
    let day = kind == "date";
    html! {
        div.one {
            label for=(name) { (label) }
            span.fld {
                input id=(name) name=(name) type=(kind) value=(value) required[day]
                    autocomplete="off";
            }
        }
    }
}

fn ticks(typed: &Typed) -> Markup {
    html! {
        ul.ticklist.wide.one {
            @for (id, name) in cupboard() {
                li { label {
                    input type="checkbox" name="food" value=(id)
                        checked[typed.cupboard.iter().any(|one| one == id)];
                    (name)
                } }
            }
        }
    }
}

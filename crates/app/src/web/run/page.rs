//! The run page: the clock first, then what needs the teacher beside what is read now.

use super::{lists, tools};
use crate::desk::room::Kind;
use crate::desk::room::hour::{Hour, Stage, clock};
use crate::desk::room::run::{Done, RunView};
use crate::web::address::segment;
use crate::web::ruler::{self, ruler};
use crate::web::signs::since;
use barm_domain::schedule::PhaseKind;
use maud::{Markup, html};

/// What the page needs beside its view.
pub(super) struct Around {
    /// The hidden field that every form must hold.
    pub(super) field: Markup,
    /// The key of the next entry where no script makes one.
    pub(super) key: String,
    /// What could not be done, and why.
    pub(super) fault: Option<String>,
    /// The bag that was picked to write for.
    pub(super) picked: Option<String>,
    /// Who is in, and how to come in.
    pub(super) joining: Markup,
}

/// The whole page.
pub(super) fn page(view: &RunView, around: &Around) -> Markup {
    let home = format!("/i/{}/run/{}", view.investigation, segment(&view.hour.period));
    let stage = view.hour.stage;
    html! {
        div.sheet.run data-live={ "/i/" (view.investigation) "/events" }
            data-version={ "/i/" (view.investigation) "/version" }
            data-now=(view.hour.now.as_millisecond()) data-stage=(stage_word(stage))
            data-quiet[view.needs.is_empty()] {
            header.head {
                h1 { "Period " (view.hour.period) " " small data-part="summary" { (view.summary) } }
                (parts(view.investigation))
            }
            main {
                (made_up(view.kind))
                div.runhead data-part="clock" { (head(&view.hour)) }
                form id="act" method="post" action=(home) data-act {
                    (around.field)
                    input type="hidden" name="key" value=(around.key);
                }
                div data-part="call" { @if let Some(call) = &view.call { (lists::call(call)) } }
                div data-part="stage" { (stage_block(view)) }
                div.cols {
                    section.grp id="needs" data-part="needs" data-rows { (lists::needs(view, &home)) }
                    section.grp id="now" data-part="now" data-rows { (lists::now(view, &home)) }
                }
                section.grp id="next" data-part="next" data-rows { (lists::next(view, &home)) }
                (tools::tools(view, around, &home))
                (keys())
            }
            (bar(view, around, &home))
        }
    }
}

/// The stage in a word, by which the style shows and hides lists.
const fn stage_word(stage: Stage) -> &'static str {
    match stage {
        Stage::Before => "before",
        Stage::Running => "running",
        Stage::Standing(_) => "standing",
        Stage::PastBell | Stage::Over => "closing",
    }
}

/// The parts of the program, this one marked.
pub(super) fn parts(id: i64) -> Markup {
    html! {
        nav aria-label="Parts" {
            a href={ "/i/" (id) "/plan" } { "Plan" }
            a href={ "/i/" (id) "/prepare" } { "Prepare" }
            a href={ "/i/" (id) "/run" } aria-current="page" { "Run" }
            a href={ "/i/" (id) "/results" } { "Results" }
            a href="/shelf" { "Shelf" }
        }
    }
}

/// Says that nothing here happened in a class.
pub(in crate::web) fn made_up(kind: Kind) -> Markup {
    let says = match kind {
        Kind::Real => return html! {},
        Kind::Rehearsal => "Rehearsal. Nothing here counts.",
        Kind::Invented => "Made-up class. Nothing here is real.",
    };
    html! { p.madeup { (says) } }
}

pub(super) fn head(hour: &Hour) -> Markup {
    let interval = hour.interval_min;
    let says = match hour.stage {
        Stage::Before => {
            format!("The period as a ruler: {} to the bell at {}.", hour.starts, hour.bell)
        }
        _ => format!(
            "The period as a ruler: {} to the bell at {}. It is {}.",
            hour.starts, hour.bell, hour.now_says
        ),
    };
    let words = ruler::Words {
        says,
        bell: "bell".to_owned(),
        phase: Box::new(move |kind| match kind {
            PhaseKind::SetUp => "set up".to_owned(),
            PhaseKind::Read => format!("read every {interval} minutes"),
            PhaseKind::Vent => "vent".to_owned(),
            PhaseKind::Clean => "clean".to_owned(),
        }),
    };
    let left = clock(hour.left_s());
    html! {
        (ruler(hour, &words, 1.0))
        div.bellclock role="timer" {
            @match hour.bell_at {
                Some(bell) => time data-to=(bell.as_millisecond()) { (left) },
                None => span { (left) },
            }
            small { "to the bell" }
        }
    }
}

pub(super) fn done(done: Option<&Done>, fault: Option<&str>) -> Markup {
    html! {
        @if let Some(fault) = fault {
            p.fault { b { "Not done. " } (sentence(fault)) }
        } @else if let Some(done) = done {
            p {
                (done.says)
                @if let Some(back) = &done.back {
                    " "
                    button.plain id="back" form="act" name="do" value=(back)
                        data-until=(done.until.as_millisecond()) { "Take it back" }
                }
            }
        }
    }
}

/// Starts large and ends with a point.
fn sentence(text: &str) -> String {
    let mut letters = text.chars();
    let first = letters.next().map(|first| first.to_uppercase().to_string());
    let end = if text.ends_with('.') { "" } else { "." };
    format!("{}{}{end}", first.unwrap_or_default(), letters.as_str())
}

/// What stands where the period does not simply run.
fn stage_block(view: &RunView) -> Markup {
    let now = view.hour.now;
    match (view.hour.stage, &view.replan) {
        (Stage::Before, _) => html! {
            section.begin {
                div {
                    h2 { "Ready for the bell at " (view.hour.starts) "?" }
                    ul.ready { @for thing in &view.ready { li { (thing) } } }
                }
                button.btn.main.big id="begin" form="act" name="do" value="begin" { "Start the clock" }
            }
        },
        (Stage::Standing(_), Some(replan)) => html! {
            section.standing aria-label="All clocks stand still" {
                div {
                    h2 { "All clocks stand still, for " (since(replan.since, now)) }
                    p { (replan.says) " The yeast goes on: results use the true minutes." }
                }
                div.btns {
                    button.btn.main id="go-on" form="act" name="do" value="go-on" { "Go on" }
                    @if let Some(shared) = replan.shared {
                        button.btn form="act" name="do" value={ "go-on " (shared) } {
                            "Go on, last reading for all at " (shared) " min"
                        }
                    }
                }
            }
        },
        (Stage::PastBell | Stage::Over, _) => html! {
            @if let Some(changeover) = &view.changeover { (tools::changeover(view, changeover)) }
        },
        _ => html! {},
    }
}

/// What can be done without a mouse. Keys only move the focus, and can be switched off.
fn keys() -> Markup {
    html! {
        p.keys {
            button.plain id="keys" type="button" aria-pressed="true" hidden { "Keys: on" }
            span {
                kbd { "w" } " write a height " kbd { "n" } " needs you " kbd { "r" } " read now "
                kbd { "x" } " next " kbd { "s" } " stop the clocks. A key moves there; Enter does it."
            }
        }
    }
}

/// The line at the foot: write a height, stop the clocks, what was done last.
fn bar(view: &RunView, around: &Around, home: &str) -> Markup {
    let stage = view.hour.stage;
    html! {
        section.runbar aria-label="Write a height" {
            form.write id="write" method="post" action=(home) data-act data-clear autocomplete="off" {
                (around.field)
                input type="hidden" name="key" value=(around.key);
                input type="hidden" name="do" value="write";
                label for="w-bag" { "Bag" }
                input id="w-bag" name="bag" size="6" required placeholder="5A"
                    autocapitalize="characters" spellcheck="false" value=[around.picked.as_deref()];
                label for="w-mm" { "mm" }
                input id="w-mm" name="mm" size="5" required inputmode="decimal" placeholder="12"
                    autofocus[around.picked.is_some()];
                button.btn { "Write" }
            }
            div.btns data-part="stop" {
                @match stage {
                    Stage::Running => {
                        button.btn id="stop" form="act" name="do" value="stop" { "Stop the clocks" }
                    },
                    Stage::PastBell => {
                        button.btn id="stop" form="act" name="do" value="end" { "End the period" }
                    },
                    _ => {},
                }
            }
            p.linkline id="link" role="status"
                data-silent="The program does not answer. Clocks go on here; write on paper." {}
            div.doneline data-part="done" role="status" {
                (done(view.done.as_ref(), around.fault.as_deref()))
            }
        }
    }
}

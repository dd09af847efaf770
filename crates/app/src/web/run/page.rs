//! The run page: the clock first, then what needs the teacher beside what is read now.

use super::{lists, tools};
use crate::desk::room::hour::{Hour, Stage, clock};
use crate::desk::room::run::{Done, RunView};
use crate::desk::{Wording, say};
use crate::web::address::segment;
use crate::web::head::{Part, by_pilot, lead, made_up, parts};
use crate::web::ruler::{self, ruler};
use crate::web::signs::{since, until};
use crate::web::words::lay;
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
pub(super) fn page(w: Wording, view: &RunView, around: &Around) -> Markup {
    let home = format!("/i/{}/run/{}", view.investigation, segment(&view.hour.period));
    let stage = view.hour.stage;
    html! {
        div.sheet.run data-live={ "/i/" (view.investigation) "/events" }
            data-version={ "/i/" (view.investigation) "/version" }
            data-now=(view.hour.now.as_millisecond()) data-stage=(stage_word(stage))
            data-quiet[view.needs.is_empty()] {
            header {
            div.head {
                h1 { (say!(w, "run-head", period = &view.hour.period)) " " small data-part="summary" { (view.summary) } }
                (parts(w, Some(view.investigation), Part::Run))
            }
            (lead(&say!(w, "run-lead")))
            }
            main {
                (made_up(w, view.kind))
                (by_pilot(w, view.investigation, view.by_pilot.as_deref()))
                div.runhead data-part="clock" { (head(w, &view.hour)) }
                form id="act" method="post" action=(home) data-act {
                    (around.field)
                    input type="hidden" name="key" value=(around.key);
                }
                div data-part="call" { @if let Some(call) = &view.call { (lists::call(w, call)) } }
                div data-part="stage" { (stage_block(w, view)) }
                div.cols {
                    section.grp id="needs" data-part="needs" data-rows { (lists::needs(w, view, &home)) }
                    section.grp id="now" data-part="now" data-rows { (lists::now(w, view, &home)) }
                }
                section.grp id="next" data-part="next" data-rows { (lists::next(w, view, &home)) }
                (tools::tools(w, view, around, &home))
                (keys(w))
            }
            (bar(w, view, around, &home))
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

pub(super) fn head(w: Wording, hour: &Hour) -> Markup {
    let interval = hour.interval_min;
    let says = match hour.stage {
        Stage::Before => {
            say!(w, "run-ruler", start = &hour.starts, bell = &hour.bell)
        }
        _ => say!(
            w,
            "run-ruler-now",
            start = &hour.starts,
            bell = &hour.bell,
            now = &hour.now_says,
        ),
    };
    let words = ruler::Words {
        says,
        bell: say!(w, "run-bell"),
        phase: Box::new(move |kind| match kind {
            PhaseKind::SetUp => say!(w, "phase-set-up"),
            PhaseKind::Read => say!(w, "phase-read", minutes = interval.to_string()),
            PhaseKind::Vent => say!(w, "phase-vent"),
            PhaseKind::Clean => say!(w, "phase-clean"),
        }),
    };
    let left = clock(hour.left_s());
    html! {
        (ruler(hour, &words, 1.0))
        div.bellclock role="timer" {
            @match hour.bell_at {
                Some(bell) => (until(bell, hour.now)),
                None => span { (left) },
            }
            small { (say!(w, "run-to-bell")) }
        }
    }
}

pub(super) fn done(w: Wording, done: Option<&Done>, fault: Option<&str>) -> Markup {
    html! {
        @if let Some(fault) = fault {
            p.fault { b { (say!(w, "run-not-done")) } " " (fault) }
        } @else if let Some(done) = done {
            p {
                (done.says)
                @if let Some(back) = &done.back {
                    " "
                    button.plain id="back" form="act" name="do" value=(back)
                        data-until=(done.until.as_millisecond()) { (say!(w, "run-take-back")) }
                }
            }
        }
    }
}

/// What stands where the period does not simply run.
fn stage_block(w: Wording, view: &RunView) -> Markup {
    let now = view.hour.now;
    match (view.hour.stage, &view.replan) {
        (Stage::Before, _) => html! {
            section.begin {
                div {
                    h2 { (say!(w, "run-ready", bell = &view.hour.starts)) }
                    ul.ready { @for thing in &view.ready { li { (thing) } } }
                }
                button.btn.main.big id="begin" form="act" name="do" value="begin" { (say!(w, "run-begin")) }
            }
        },
        (Stage::Standing(_), Some(replan)) => html! {
            section.standing aria-label=(say!(w, "run-standing")) {
                div {
                    h2 { (lay!(w, "run-standing-for", time = since(replan.since, now))) }
                    p { (replan.says) " " (say!(w, "run-yeast-goes-on")) }
                }
                div.btns {
                    button.btn.main id="go-on" form="act" name="do" value="go-on" { (say!(w, "run-go-on")) }
                    @if let Some(shared) = replan.shared {
                        button.btn form="act" name="do" value={ "go-on " (shared) } {
                            (say!(w, "run-go-on-last", minute = shared.to_string()))
                        }
                    }
                }
            }
        },
        (Stage::PastBell | Stage::Over, _) => html! {
            @if let Some(changeover) = &view.changeover { (tools::changeover(w, view, changeover)) }
        },
        _ => html! {},
    }
}

/// What can be done without a mouse. Keys only move the focus, and can be switched off.
fn keys(w: Wording) -> Markup {
    html! {
        p.keys {
            button.plain id="keys" type="button" aria-pressed="true" hidden
                data-on=(say!(w, "run-keys-on")) data-off=(say!(w, "run-keys-off")) {
                (say!(w, "run-keys-on"))
            }
            span {
                (lay!(
                    w,
                    "run-keys",
                    write = html! { kbd { "w" } },
                    needs = html! { kbd { "n" } },
                    now = html! { kbd { "r" } },
                    next = html! { kbd { "x" } },
                    stop = html! { kbd { "s" } },
                ))
            }
        }
    }
}

/// The line at the foot: write a height, stop the clocks, what was done last.
fn bar(w: Wording, view: &RunView, around: &Around, home: &str) -> Markup {
    let stage = view.hour.stage;
    html! {
        section.runbar aria-label=(say!(w, "run-write-height")) {
            form.write id="write" method="post" action=(home) data-act data-clear autocomplete="off" {
                (around.field)
                input type="hidden" name="key" value=(around.key);
                input type="hidden" name="do" value="write";
                label for="w-bag" { (say!(w, "run-bag")) }
                input id="w-bag" name="bag" size="6" required placeholder="5A"
                    autocapitalize="characters" spellcheck="false" value=[around.picked.as_deref()];
                label for="w-mm" { "mm" }
                input id="w-mm" name="mm" size="5" required inputmode="decimal" placeholder="12"
                    autofocus[around.picked.is_some()];
                button.btn { (say!(w, "run-write")) }
            }
            div.btns data-part="stop" {
                @match stage {
                    Stage::Running => {
                        button.btn id="stop" form="act" name="do" value="stop" { (say!(w, "run-stop")) }
                    },
                    Stage::PastBell => {
                        button.btn id="stop" form="act" name="do" value="end" { (say!(w, "run-end")) }
                    },
                    _ => {},
                }
            }
            p.linkline id="link" role="status"
                data-silent=(say!(w, "run-silent")) {}
            div.doneline data-part="done" role="status" {
                (done(w, view.done.as_ref(), around.fault.as_deref()))
            }
        }
    }
}

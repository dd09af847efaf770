//! Below the lists: roles, the meter's line, jugs, what is open, who is in, and the end.

use super::meter;
use super::page::Around;
use crate::desk::room::hour::Stage;
use crate::desk::room::run::{Changeover, RoleRow, RunView};
use crate::desk::{Wording, say};
use crate::web::address::segment;
use crate::web::words::lay;
use barm_domain::record::Lent;
use maud::{Markup, html};

/// All of them.
pub(super) fn tools(w: Wording, view: &RunView, around: &Around, home: &str) -> Markup {
    let meter = view.meter.as_ref().map(|line| match line.waiting.len() {
        0 => say!(w, "meter-line"),
        waiting => say!(w, "meter-line-waiting", count = waiting),
    });
    html! {
        section.grp.tools aria-label=(say!(w, "tools-label")) {
            details id="roles" {
                summary data-part="roles-head" { (counted(w, view)) }
                div data-part="roles" { (roles(w, view)) }
            }
            @if let (Some(line), Some(head)) = (&view.meter, meter) {
                details id="meter" {
                    summary data-part="meter-head" { (head) }
                    (meter::line(w, around, home, line))
                }
            }
            details id="jug" {
                summary { (say!(w, "jug-head")) }
                ul.plain data-part="jugs" {
                    @if view.jugs.is_empty() { li.soft { (say!(w, "jug-none")) } }
                    @for (_, says) in &view.jugs { li { (says) } }
                }
                form.line method="post" action=(home) data-act data-clear {
                    (around.field)
                    input type="hidden" name="key" value=(around.key);
                    input type="hidden" name="do" value="jug";
                    label for="jug-no" { (say!(w, "jug-number")) }
                    input id="jug-no" name="jug" size="3" required inputmode="numeric" value="1";
                    label for="jug-c" { "°C" }
                    input id="jug-c" name="celsius" size="5" required inputmode="decimal";
                    button.btn { (say!(w, "jug-note")) }
                }
            }
            details id="faces" {
                summary { (say!(w, "face-head")) }
                ul.plain.faces data-part="faces" {
                    @for face in &view.faces {
                        li {
                            span { (face.says) ": " b { @if face.open { (say!(w, "face-is-open")) } @else { (say!(w, "face-is-closed")) } } }
                            button.btn.quiet form="act" name="do" value=(face.sends)
                                id={ "face-" (face.sends.split_once(' ').map_or("", |(_, rest)| rest).replace(' ', "-")) } {
                                @if face.open { (say!(w, "face-close")) } @else { (say!(w, "face-open")) }
                            }
                        }
                    }
                }
            }
            details id="joined" {
                summary { (say!(w, "codes-devices")) }
                div data-part="joined" { (around.joining) }
            }
            details id="hours" {
                summary { (say!(w, "hours-head")) }
                form.line method="post" action=(home) data-act data-clear {
                    (around.field)
                    input type="hidden" name="key" value=(around.key);
                    input type="hidden" name="do" value="last";
                    label for="last-min" { (say!(w, "hours-last")) }
                    input id="last-min" name="minute" size="4" required inputmode="numeric";
                    button.btn { (say!(w, "hours-change")) }
                }
                div.btns data-part="end" {
                    @match view.hour.stage {
                        Stage::Over => {
                            button.btn.quiet form="act" name="do" value="go-on" id="end" { (say!(w, "hours-open-again")) }
                        },
                        Stage::Before => p.soft { (say!(w, "hours-not-started")) },
                        _ => {
                            button.btn.quiet form="act" name="do" value="end" id="end" { (say!(w, "run-end")) }
                        },
                    }
                }
            }
        }
    }
}

fn counted(w: Wording, view: &RunView) -> String {
    let short = view.roles.iter().filter(|row| row.here.is_some_and(|here| here < row.planned));
    match short.count() {
        0 => say!(w, "tools-roles"),
        more => say!(w, "tools-roles-short", count = more),
    }
}

/// How many are here: one tap, no names.
fn roles(w: Wording, view: &RunView) -> Markup {
    html! {
        p.soft { (say!(w, "tools-roles-tap")) }
        ul.plain.roles {
            @for row in &view.roles {
                li {
                    b { (say!(w, "list-group", group = row.group.to_string())) }
                    @if let Some(label) = &row.label { " " span.soft { (label) } }
                    div.btns role="group"
                        aria-label=(say!(w, "tools-students-of", group = row.group.to_string())) {
                        @for students in 0..=row.planned.max(4) {
                            @let on = row.here == Some(students);
                            button.btn.quiet.n aria-pressed=(on) form="act" name="do"
                                value={ "here " (row.group) " " (students) }
                                id={ "here-" (row.group) "-" (students) } { (students) }
                        }
                    }
                    p {
                        @if row.here.is_none() { span.soft { (say!(w, "tools-planned", count = row.planned)) " " } }
                        (row.says)
                    }
                    (lent(w, row))
                }
            }
        }
    }
}

/// For a group that is absent or whose bags failed: numbers in the place of its own, and back.
fn lent(w: Wording, row: &RoleRow) -> Markup {
    let group = row.group;
    html! {
        @if let Some(lent) = row.stand_in {
            p.lent { b { (lent_word(w, lent)) } " " (say!(w, "tools-lent")) }
        }
        @if !row.class_data && row.stand_in.is_none() { p.soft { (say!(w, "tools-lend-none-yet")) } }
        div.btns role="group" aria-label=(say!(w, "tools-lend", group = group.to_string())) {
            @if row.class_data && row.stand_in != Some(Lent::ClassData) {
                button.btn.quiet form="act" name="do" value={ "lend-class " (group) }
                    id={ "lend-class-" (group) } { (say!(w, "tools-lend-class")) }
            }
            @if row.has_bags && !matches!(row.stand_in, Some(Lent::Simulated { .. })) {
                button.btn.quiet form="act" name="do" value={ "lend-run " (group) }
                    id={ "lend-run-" (group) } { (say!(w, "tools-lend-simulated")) }
            }
            @if row.stand_in.is_some() {
                button.btn.quiet form="act" name="do" value={ "own-numbers " (group) }
                    id={ "own-numbers-" (group) } { (say!(w, "tools-own-numbers")) }
            }
        }
    }
}

/// What a group works with, in the words that its own page uses.
pub(in crate::web) fn lent_word(w: Wording, lent: Lent) -> String {
    match lent {
        Lent::ClassData => say!(w, "lent-class"),
        Lent::Simulated { .. } => say!(w, "lent-simulated"),
    }
}

/// Six ticks between two classes. They stay on this computer; nothing of a bag hangs on them.
pub(super) fn changeover(w: Wording, view: &RunView, changeover: &Changeover) -> Markup {
    let period = &view.hour.period;
    html! {
        section.changeover data-ticks={ "changeover-" (view.investigation) "-" (period) } {
            div {
                h2 { (say!(w, "change-head")) }
                @match &changeover.next {
                    Some((name, bell)) => p {
                        (lay!(
                            w,
                            "change-next-begins",
                            period = html! { b { (name) } },
                            bell = html! { b { (bell) } },
                        ))
                    },
                    None => p { (say!(w, "change-was-last")) },
                }
                ul.plain.tickrows {
                    @for (at, tick) in changeover.ticks.iter().enumerate() {
                        li { label.tick { input type="checkbox" id={ "co-" (at) }; span { (tick) } } }
                    }
                }
            }
            @if let Some((name, _)) = &changeover.next {
                div {
                    h3 { (say!(w, "change-needs", period = name)) }
                    ul.ready { @for thing in &changeover.ready { li { (thing) } } }
                    a.btn href={ "/i/" (view.investigation) "/run/" (segment(name)) } { (say!(w, "change-go", period = name)) }
                }
            }
        }
    }
}

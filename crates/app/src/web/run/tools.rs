//! Below the lists: roles, the meter's line, jugs, what is open, who is in, and the end.

use super::page::Around;
use crate::desk::room::hour::Stage;
use crate::desk::room::run::{Changeover, MeterLine, RunView};
use crate::web::address::segment;
use maud::{Markup, html};

/// All of them.
pub(super) fn tools(view: &RunView, around: &Around, home: &str) -> Markup {
    let meter = view.meter.as_ref().map(|line| match line.waiting.len() {
        0 => "Meter line".to_owned(),
        waiting => format!("Meter line: {waiting} waiting"),
    });
    html! {
        section.grp.tools aria-label="More" {
            details id="roles" {
                summary data-part="roles-head" { "Roles" (counted(view)) }
                div data-part="roles" { (roles(view)) }
            }
            @if let (Some(line), Some(head)) = (&view.meter, meter) {
                details id="meter" {
                    summary data-part="meter-head" { (head) }
                    div data-part="meter" { (meter_line(line)) }
                    (meter_form(around, home, line))
                }
            }
            details id="jug" {
                summary { "Jugs" }
                ul.plain data-part="jugs" {
                    @if view.jugs.is_empty() { li.soft { "No jug was measured yet." } }
                    @for (_, says) in &view.jugs { li { (says) } }
                }
                form.line method="post" action=(home) data-act data-clear {
                    (around.field)
                    input type="hidden" name="key" value=(around.key);
                    input type="hidden" name="do" value="jug";
                    label for="jug-no" { "Jug" }
                    input id="jug-no" name="jug" size="3" required inputmode="numeric" value="1";
                    label for="jug-c" { "°C" }
                    input id="jug-c" name="celsius" size="5" required inputmode="decimal";
                    button.btn { "Note the jug" }
                }
            }
            details id="faces" {
                summary { "Open to the class" }
                ul.plain.faces data-part="faces" {
                    @for face in &view.faces {
                        li {
                            span { (face.says) ": " b { @if face.open { "open" } @else { "closed" } } }
                            button.btn.quiet form="act" name="do" value=(face.sends)
                                id={ "face-" (face.sends.split_once(' ').map_or("", |(_, rest)| rest).replace(' ', "-")) } {
                                @if face.open { "Close" } @else { "Open" }
                            }
                        }
                    }
                }
            }
            details id="joined" {
                summary { "Codes and devices" }
                div data-part="joined" { (around.joining) }
            }
            details id="hours" {
                summary { "Last reading and end" }
                form.line method="post" action=(home) data-act data-clear {
                    (around.field)
                    input type="hidden" name="key" value=(around.key);
                    input type="hidden" name="do" value="last";
                    label for="last-min" { "Last reading at minute" }
                    input id="last-min" name="minute" size="4" required inputmode="numeric";
                    button.btn { "Change it" }
                }
                div.btns data-part="end" {
                    @match view.hour.stage {
                        Stage::Over => {
                            button.btn.quiet form="act" name="do" value="go-on" id="end" { "Open it again" }
                        },
                        Stage::Before => p.soft { "The clock was not started." },
                        _ => {
                            button.btn.quiet form="act" name="do" value="end" id="end" { "End the period" }
                        },
                    }
                }
            }
        }
    }
}

fn counted(view: &RunView) -> String {
    let short = view.roles.iter().filter(|row| row.here.is_some_and(|here| here < row.planned));
    match short.count() {
        0 => String::new(),
        1 => ": 1 group is short".to_owned(),
        more => format!(": {more} groups are short"),
    }
}

/// How many are here: one tap, no names.
fn roles(view: &RunView) -> Markup {
    html! {
        p.soft { "Tap how many are at the bench. Roles are dealt anew; nobody is named." }
        ul.plain.roles {
            @for row in &view.roles {
                li {
                    b { "Group " (row.group) }
                    @if let Some(label) = &row.label { " " span.soft { (label) } }
                    div.btns role="group" aria-label={ "Students of group " (row.group) } {
                        @for students in 0..=row.planned.max(4) {
                            @let on = row.here == Some(students);
                            button.btn.quiet.n aria-pressed=(on) form="act" name="do"
                                value={ "here " (row.group) " " (students) }
                                id={ "here-" (row.group) "-" (students) } { (students) }
                        }
                    }
                    p {
                        @if row.stand_in {
                            "Works with class data. Its numbers never count."
                        } @else {
                            @if row.here.is_none() { span.soft { "By the plan, about " (row.planned) ". " } }
                            (row.says)
                        }
                        @if row.here == Some(0) && !row.stand_in {
                            " "
                            button.plain form="act" name="do" value={ "stand-in " (row.group) }
                                id={ "stand-in-" (row.group) } { "Let it stand in" }
                        }
                    }
                }
            }
        }
    }
}

fn meter_line(line: &MeterLine) -> Markup {
    html! {
        ol.meter {
            @if line.shown.is_empty() { li { "Switch the meter on and let it warm up until it is ready." } }
            @if line.blank_next { li { "Push clean air through a fresh tube until it shows 0.00." } }
            @match line.next() {
                Some((name, _)) => li {
                    "Now bag " b { (name) } ": push its gas through the tube. Nobody blows into it."
                },
                None => li { "No bag waits. A bag comes here after its last reading, before it is vented." },
            }
        }
        @if line.waiting.len() > 1 {
            p.soft {
                "After it: "
                @for (at, (name, _)) in line.waiting.iter().enumerate().skip(1) {
                    @if at > 1 { ", " } (name)
                }
                ". The order is mixed, so that a drift of the meter favors no food."
            }
        }
        @if !line.shown.is_empty() {
            p {
                "Shown: "
                @for (at, (name, percent, _)) in line.shown.iter().enumerate() {
                    @if at > 0 { ", " } (name) " " b { (format!("{percent:.2}")) }
                }
                ". For comparing bags only; it is no amount of alcohol."
            }
        }
    }
}

fn meter_form(around: &Around, home: &str, line: &MeterLine) -> Markup {
    html! {
        form.line method="post" action=(home) data-act data-clear {
            (around.field)
            input type="hidden" name="key" value=(around.key);
            input type="hidden" name="do" value="meter";
            label for="m-bag" { "Bag" }
            input id="m-bag" name="bag" size="6" required
                value=[line.next().map(|(name, _)| name.as_str())];
            label for="m-pc" { "shown" }
            input id="m-pc" name="percent" size="6" required inputmode="decimal" placeholder="0.12";
            label.tick { input type="checkbox" name="blank" value="1" checked[line.blank_next]; " clean air before" }
            button.btn { "Note it" }
        }
    }
}

/// Six ticks between two classes. They stay on this computer; nothing of a bag hangs on them.
pub(super) fn changeover(view: &RunView, changeover: &Changeover) -> Markup {
    let period = &view.hour.period;
    html! {
        section.changeover data-ticks={ "changeover-" (view.investigation) "-" (period) } {
            div {
                h2 { "Changeover" }
                @match &changeover.next {
                    Some((name, bell)) => p { "Period " b { (name) } " begins at " b { (bell) } "." },
                    None => p { "This was the last class of the day." },
                }
                ul.plain.tickrows {
                    @for (at, tick) in changeover.ticks.iter().enumerate() {
                        li { label.tick { input type="checkbox" id={ "co-" (at) }; span { (tick) } } }
                    }
                }
            }
            @if let Some((name, _)) = &changeover.next {
                div {
                    h3 { "Period " (name) " needs" }
                    ul.ready { @for thing in &changeover.ready { li { (thing) } } }
                    a.btn href={ "/i/" (view.investigation) "/run/" (segment(name)) } { "Go to period " (name) }
                }
            }
        }
    }
}

//! The walk-round page: one hand, one glance.

use crate::desk::room::benches::{group_name, millimeters};
use crate::desk::room::hour::{Stage, clock};
use crate::desk::room::round::{RoundGroup, RoundView, Turn};
use crate::web::run::made_up;
use crate::web::signs;
use jiff::Timestamp;
use maud::{Markup, html};

/// The whole page.
pub(super) fn page(view: &RoundView) -> Markup {
    let hour = &view.hour;
    html! {
        main.round data-live="/round/events" data-version="/round/version"
            data-now=(hour.now.as_millisecond()) {
            header.head {
                h1 { "Period " (hour.period) }
                p.bellline data-part="clock" {
                    @match (hour.stage, hour.bell_at) {
                        (Stage::Standing(_), _) => "Clocks stand still",
                        (Stage::Before, _) => { "starts at " (hour.starts) },
                        (Stage::Over, _) => "over",
                        (_, Some(bell)) => { b { (signs::until(bell, hour.now)) } " to the bell" },
                        (_, None) => { b { (clock(hour.left_s())) } " to the bell" },
                    }
                }
            }
            (made_up(view.kind))
            section data-part="wrong" data-rows {
                h2 { "Look at " small { (view.wrong.len()) } }
                @if view.wrong.is_empty() { p.empty { "No bag looks wrong." } }
                ul.plain {
                    @for (bag, tag, says) in &view.wrong {
                        li.rrow data-row={ "wrong-" (bag.name) "-" (tag) } {
                            b.rname { (bag.name) }
                            div { (signs::doubt(tag)) p { (says) } }
                        }
                    }
                }
            }
            section data-part="groups" data-rows {
                h2 { "Groups" }
                ul.plain {
                    @for group in &view.groups {
                        li.rrow.due[matches!(group.turn, Turn::Due(_) | Turn::Late(_))]
                            data-row={ "group-" (group.group) } { (row(group, hour.now)) }
                    }
                }
            }
            p.linkline id="link" role="status" data-silent="No answer from your computer. Clocks go on." {}
        }
    }
}

fn row(group: &RoundGroup, now: Timestamp) -> Markup {
    html! {
        b.rname { (group_name(group.group)) }
        div {
            p.turnline {
                @match group.turn {
                    Turn::Late(since) => { (signs::late(&html! { "Late " (signs::since(since, now)) })) " " b { (group.letters) } },
                    Turn::Due(_) => { (signs::due("Read now")) " " b { (group.letters) } },
                    Turn::At(at) => { "in " b { (signs::until(at, now)) } },
                    Turn::Zero => { "zero reading: " b { (group.letters) } },
                    Turn::Standing => "waits",
                    Turn::Over => "done",
                }
            }
            p.heights {
                @for bag in &group.bags {
                    span.nowrap {
                        (bag.code.letter()) " "
                        @match bag.height_mm { Some(mm) => { (millimeters(mm)) " mm" }, None => "–" }
                    }
                    " "
                }
            }
        }
    }
}

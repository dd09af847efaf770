//! The walk-round page: one hand, one glance.

use crate::desk::room::benches::{group_name, millimeters};
use crate::desk::room::hour::{Stage, clock};
use crate::desk::room::round::{RoundGroup, RoundView, Turn};
use crate::desk::{Wording, say};
use crate::web::head::{lead, made_up};
use crate::web::run::lent_word;
use crate::web::signs;
use crate::web::words::lay;
use jiff::Timestamp;
use maud::{Markup, html};

/// The whole page.
pub(super) fn page(w: Wording, view: &RoundView) -> Markup {
    let hour = &view.hour;
    html! {
        main.round data-live="/round/events" data-version="/round/version"
            data-now=(hour.now.as_millisecond()) {
            header.head {
                h1 { (say!(w, "round-head", period = &hour.period)) }
                p.bellline data-part="clock" {
                    @match (hour.stage, hour.bell_at) {
                        (Stage::Standing(_), _) => (say!(w, "round-standing")),
                        (Stage::Before, _) => (say!(w, "round-starts", time = &hour.starts)),
                        (Stage::Over, _) => (say!(w, "round-over")),
                        (_, Some(bell)) => {
                            (lay!(w, "round-to-bell", time = html! {
                                b { (signs::until(bell, hour.now)) }
                            }))
                        },
                        (_, None) => {
                            (lay!(w, "round-to-bell", time = html! {
                                b { (clock(hour.left_s())) }
                            }))
                        },
                    }
                }
            }
            (lead(&say!(w, "round-lead")))
            (made_up(w, view.kind))
            section data-part="wrong" data-rows {
                h2 { (say!(w, "round-look")) " " small { (view.wrong.len()) } }
                @if view.wrong.is_empty() { p.empty { (say!(w, "round-look-none")) } }
                ul.plain {
                    @for (bag, tag, says) in &view.wrong {
                        li.rrow data-row={ "wrong-" (bag.name) "-" (tag.key()) } {
                            b.rname { (bag.name) }
                            div { (signs::doubt(&tag.word(w))) p { (says) } }
                        }
                    }
                }
            }
            section data-part="groups" data-rows {
                h2 { (say!(w, "round-groups")) }
                ul.plain {
                    @for group in &view.groups {
                        li.rrow.due[matches!(group.turn, Turn::Due(_) | Turn::Late(_))]
                            data-row={ "group-" (group.group) } { (row(w, group, hour.now)) }
                    }
                }
            }
            p.linkline id="link" role="status" data-silent=(say!(w, "round-silent")) {}
        }
    }
}

fn row(w: Wording, group: &RoundGroup, now: Timestamp) -> Markup {
    html! {
        b.rname { (group_name(group.group)) }
        div {
            p.turnline {
                @match group.turn {
                    Turn::Late(since) => {
                        (signs::late_since(w, since, now)) " " b { (group.letters) }
                    },
                    Turn::Due(_) => {
                        (signs::due(&say!(w, "state-due"))) " " b { (group.letters) }
                    },
                    Turn::At(at) => {
                        (lay!(w, "round-in", time = html! { b { (signs::until(at, now)) } }))
                    },
                    Turn::Zero => {
                        (lay!(w, "round-zero", bags = html! { b { (group.letters) } }))
                    },
                    Turn::Standing => (say!(w, "round-waits")),
                    Turn::Lent(lent) => (signs::lent(&lent_word(w, lent))),
                    Turn::Over => (say!(w, "round-done")),
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

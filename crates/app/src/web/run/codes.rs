//! Codes to come in with, who came in, and how to put a device out.

use crate::desk::doors::{Joined, Part, PeriodCodes};
use crate::desk::{Wording, qr, say};
use crate::web::address::segment;
use crate::web::head::lead;
use crate::web::words::lay;
use maud::{Markup, PreEscaped, html};

/// Everything about coming in.
pub(super) struct Joining {
    /// The codes.
    pub(super) codes: PeriodCodes,
    /// Until when they work, local time; nothing if they do not work now.
    pub(super) works_until: Option<String>,
    /// Since when and last heard, local time, and the device.
    pub(super) devices: Vec<(String, String, Joined)>,
    /// Whether other devices can come in at all.
    pub(super) lan: bool,
    /// Where to go with a browser.
    pub(super) address: String,
}

/// On the run page: in short, with who is in.
pub(super) fn devices(
    w: Wording,
    id: i64,
    period: &str,
    joining: &Joining,
    field: &Markup,
) -> Markup {
    html! {
        p {
            (lay!(w, "codes-class", code = html! { b.code { (joining.codes.period) } })) " "
            @match &joining.works_until {
                Some(until) => (say!(w, "codes-until", time = until)),
                None => (say!(w, "codes-not-now")),
            }
            " "
            a href={ "/i/" (id) "/run/" (segment(period)) "/codes" } { (say!(w, "codes-all")) }
        }
        div.btns {
            @let (word, says) = match joining.works_until {
                Some(_) => ("close", say!(w, "codes-close")),
                None => ("open", say!(w, "codes-open")),
            };
            form method="post" action={ "/i/" (id) "/codes/" (segment(period)) "/" (word) } {
                (field)
                button.btn.quiet { (says) }
            }
        }
        @if joining.devices.is_empty() {
            p.soft { (say!(w, "codes-nobody")) }
        } @else {
            table.devices {
                thead { tr {
                    th { (say!(w, "codes-device")) }
                    th { (say!(w, "codes-since")) }
                    th { (say!(w, "codes-heard")) }
                    td {}
                } }
                tbody {
                    @for (since, seen, one) in &joining.devices {
                        tr {
                            td { (part(w, one)) }
                            td { (since) }
                            td { (seen) }
                            td.r {
                                form method="post" action={ "/i/" (id) "/devices/out" } {
                                    (field)
                                    input type="hidden" name="device" value=(one.name);
                                    input type="hidden" name="period" value=(period);
                                    button.btn.quiet
                                        aria-label=(say!(w, "codes-put-out-who", device = part(w, one))) {
                                        (say!(w, "codes-put-out"))
                                    }
                                }
                            }
                        }
                    }
                }
            }
        }
    }
}

fn part(w: Wording, one: &Joined) -> String {
    match (one.seat.part, one.seat.group) {
        (Part::Group, Some(group)) => say!(w, "codes-group", group = group.to_string()),
        (Part::Group, None) => say!(w, "codes-a-group"),
        (Part::Wall, _) => say!(w, "codes-wall-page"),
        (Part::Round, _) => say!(w, "codes-round-page"),
        (Part::Aide, _) => say!(w, "codes-aide"),
        (Part::Teacher, _) => say!(w, "codes-you"),
    }
}

/// How to find out before the class whether devices reach this computer, and what to do if not.
fn first_try(w: Wording) -> Markup {
    html! {
        div.sec.noprint {
            div.mg { h2 { (say!(w, "codes-try")) } p.note { (say!(w, "codes-try-when")) } }
            div.bd {
                ol.todo {
                    li { (say!(w, "codes-try-open")) }
                    li { (say!(w, "codes-try-join")) }
                    li { (say!(w, "codes-try-leave")) }
                }
                p { b { (say!(w, "codes-nothing")) } " " (say!(w, "codes-nothing-says")) }
            }
        }
    }
}

/// In large print: a card for each group, then the pages.
pub(super) fn print(
    w: Wording,
    id: i64,
    period: &str,
    joining: &Joining,
    field: &Markup,
) -> Markup {
    let codes = &joining.codes;
    let join = format!("{}/join", joining.address);
    html! {
        div.sheet.run {
            header {
            div.head {
                h1 { (say!(w, "codes-head", period = period)) }
                nav.noprint aria-label=(say!(w, "head-parts")) {
                    a href={ "/i/" (id) "/run/" (segment(period)) } { (say!(w, "codes-back")) }
                }
            }
            div.noprint { (lead(&say!(w, "codes-lead"))) }
            }
            main {
                div.sec {
                    div.mg { h2 { (say!(w, "codes-everybody")) } }
                    div.bd {
                        @if joining.lan {
                            p { (lay!(w, "codes-open-address", address = html! { b.bigcode { (join) } })) }
                        }
                        p {
                            (lay!(w, "codes-class-code", code = html! {
                                b.bigcode { (codes.period) }
                            }))
                        }
                        @if !joining.lan {
                            p.fault {
                                b { (say!(w, "codes-no-network")) } " " (say!(w, "codes-one-device"))
                            }
                            form.addrow method="post"
                                action={ "/i/" (id) "/run/" (segment(period)) "/codes/let-in" } {
                                (field)
                                button.btn.main { (say!(w, "codes-let-in")) }
                            }
                            p.small.soft { (say!(w, "codes-let-in-says")) }
                        } @else {
                            (PreEscaped(qr(&join, &say!(w, "codes-address"))))
                        }
                        p.noprint {
                            @match &joining.works_until {
                                Some(until) => (say!(w, "codes-until", time = until)),
                                None => (say!(w, "codes-not-now-why")),
                            }
                        }
                        p.noprint.small.soft { (say!(w, "codes-no-printer")) }
                    }
                }
                @if joining.lan { (first_try(w)) }
                div.sec {
                    div.mg {
                        h2 { (say!(w, "codes-groups")) }
                        p.note { (say!(w, "codes-groups-note")) }
                    }
                    div.bd.codes {
                        @for (group, code) in &codes.groups {
                            div.codecard {
                                h3 { (say!(w, "codes-group", group = group.to_string())) }
                                p.code { (code) }
                                @if joining.lan {
                                    (PreEscaped(qr(
                                        &format!("{join}?group={code}"),
                                        &say!(w, "codes-square", group = group.to_string()),
                                    )))
                                }
                            }
                        }
                    }
                }
                div.sec {
                    div.mg {
                        h2 { (say!(w, "codes-pages")) }
                        p.note { (say!(w, "codes-pages-note")) }
                    }
                    div.bd.codes {
                        @for (name, code) in [
                            (say!(w, "codes-wall"), &codes.wall),
                            (say!(w, "codes-round"), &codes.round),
                            (say!(w, "codes-aide"), &codes.aide),
                        ] {
                            div.codecard {
                                h3 { (name) }
                                p.code { (code) }
                            }
                        }
                    }
                }
            }
        }
    }
}

//! Codes to come in with, who came in, and how to put a device out.

use crate::desk::doors::{Joined, Part, PeriodCodes};
use crate::desk::qr;
use crate::web::address::segment;
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
pub(super) fn devices(id: i64, period: &str, joining: &Joining, field: &Markup) -> Markup {
    html! {
        p {
            "Class code " b.code { (joining.codes.period) } ". "
            @match &joining.works_until {
                Some(until) => { "Codes of this period work until " (until) ". " },
                None => "Codes of this period do not work now. ",
            }
            a href={ "/i/" (id) "/run/" (segment(period)) "/codes" } { "All codes in large print" }
        }
        div.btns {
            @let (word, says) = match joining.works_until {
                Some(_) => ("close", "Close the codes"),
                None => ("open", "Let the codes work today"),
            };
            form method="post" action={ "/i/" (id) "/codes/" (segment(period)) "/" (word) } {
                (field)
                button.btn.quiet { (says) }
            }
        }
        @if joining.devices.is_empty() {
            p.soft { "No device has joined." }
        } @else {
            table.devices {
                thead { tr { th { "Device" } th { "Since" } th { "Heard" } th {} } }
                tbody {
                    @for (since, seen, one) in &joining.devices {
                        tr {
                            td { (part(one)) }
                            td { (since) }
                            td { (seen) }
                            td.r {
                                form method="post" action={ "/i/" (id) "/devices/out" } {
                                    (field)
                                    input type="hidden" name="device" value=(one.name);
                                    button.btn.quiet { "Put it out" }
                                }
                            }
                        }
                    }
                }
            }
        }
    }
}

fn part(one: &Joined) -> String {
    match (one.seat.part, one.seat.group) {
        (Part::Group, Some(group)) => format!("Group {group}"),
        (Part::Group, None) => "A group".to_owned(),
        (Part::Wall, _) => "Wall page".to_owned(),
        (Part::Round, _) => "Walk-round page".to_owned(),
        (Part::Aide, _) => "Aide".to_owned(),
        (Part::Teacher, _) => "You".to_owned(),
    }
}

/// How to find out before the class whether devices reach this computer, and what to do if not.
fn first_try() -> Markup {
    html! {
        div.sec.noprint {
            div.mg { h2 { "Try it" } p.note { "Before the class." } }
            div.bd {
                ol.todo {
                    li { "Take one phone in the same network as this computer and open the address." }
                    li { "“Join your group” must come. Type the class code and the code of group 1." }
                    li { "On the group’s page choose “Next group” to leave it again." }
                }
                p {
                    b { "Nothing comes? " }
                    "Many school networks keep devices apart, and a firewall may have to let Barm \
                     answer. Use a hotspot or a router of your own, hand one device round, or write on \
                     paper and type it in on the run page."
                }
            }
        }
    }
}

/// In large print: a card for each group, then the pages.
pub(super) fn print(id: i64, period: &str, joining: &Joining) -> Markup {
    let codes = &joining.codes;
    let join = format!("{}/join", joining.address);
    html! {
        div.sheet.run {
            header.head {
                h1 { "Period " (period) ": how to join" }
                nav.noprint aria-label="Parts" { a href={ "/i/" (id) "/run/" (segment(period)) } { "Back to the run page" } }
            }
            main {
                div.sec {
                    div.mg { h2 { "Everybody" } }
                    div.bd {
                        p { "Open " b.bigcode { (join) } }
                        p { "Class code " b.bigcode { (codes.period) } }
                        @if !joining.lan {
                            p.fault {
                                b { "Other devices cannot come in now. " }
                                "One device is enough: groups write on paper, and you type on the run \
                                 page. To let others in, stop the program and start it with "
                                code { "barm serve --lan" } "."
                            }
                        }
                        (PreEscaped(qr(&join, "Address to join")))
                        p.noprint.small.soft {
                            "No printer? Copy each group’s code onto a slip for its tray. Do not show \
                             this page to the class: every group would see every code."
                        }
                    }
                }
                @if joining.lan { (first_try()) }
                div.sec {
                    div.mg { h2 { "Groups" } p.note { "One card a tray." } }
                    div.bd.codes {
                        @for (group, code) in &codes.groups {
                            div.codecard {
                                h3 { "Group " (group) }
                                p.code { (code) }
                            }
                        }
                    }
                }
                div.sec {
                    div.mg { h2 { "Pages" } p.note { "They only read." } }
                    div.bd.codes {
                        @for (name, code) in [("Wall", &codes.wall), ("Walk-round", &codes.round), ("Aide", &codes.aide)] {
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

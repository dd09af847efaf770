//! The rehearsal page as markup.

use super::practice::Playing;
use crate::desk::rehearse::{Report, WentWrong};
use crate::desk::room::{Kind, Room};
use crate::desk::{DeskError, Wording, say};
use crate::web::address::segment;
use crate::web::head::{Part, by_pilot, head, lead};
use crate::web::host;
use crate::web::words::lay;
use axum::http::HeaderMap;
use jiff::Timestamp;
use maud::{Markup, html};

/// How fast the clock may run, and what is chosen first.
const SPEEDS: [u32; 4] = [1, 5, 10, 30];
const USUAL: u32 = 10;

/// What the page shows.
pub(super) struct View {
    id: i64,
    /// Title of the investigation.
    pub(super) title: String,
    kind: Kind,
    /// Name and length (minutes) of each period.
    periods: Vec<(String, f64)>,
    playing: Option<Playing>,
    /// One line about the lots that forecasts go by, if a pilot tried any.
    by_pilot: Option<String>,
    /// The host by which the rehearsal's pages are asked for.
    host: &'static str,
    now: Timestamp,
}

impl View {
    pub(super) fn of(
        room: &Room,
        playing: Option<Playing>,
        headers: &HeaderMap,
        now: Timestamp,
    ) -> Self {
        let (title, periods, by_pilot) = room.read(|scene| {
            let periods = scene.plan.periods.iter();
            let periods = periods.map(|one| (one.name.clone(), one.length_min)).collect();
            (scene.plan.title.clone(), periods, scene.by_pilot())
        });
        // A browser keeps who is signed in by the name of the host, whatever the port: under
        // another name, signing in there signs nobody out here.
        let by_number = host::named(headers).is_some_and(|host| host.starts_with("127."));
        let host = if by_number { "localhost" } else { "127.0.0.1" };
        Self { id: room.id, title, kind: room.kind, periods, playing, by_pilot, host, now }
    }
}

/// The whole page.
pub(super) fn page(w: Wording, view: &View, field: &Markup) -> Markup {
    html! {
        div.sheet data-live="" data-version={ "/i/" (view.id) "/rehearse/state" }
            data-now=(view.now.as_millisecond()) {
            header {
            (head(w, &view.title, Some(view.id), Part::Rehearse, view.kind))
            (lead(&say!(w, "rehearse-lead")))
            }
            main {
                @if view.kind == Kind::Rehearsal {
                    p { (say!(w, "rehearse-of-a-rehearsal")) }
                } @else {
                    div data-part="played" {
                        @if let Some(playing) = &view.playing { (played(w, view, playing, field)) }
                    }
                    section.sec {
                        div.mg { h2 { (say!(w, "rehearse-how")) } }
                        div.bd {
                            (how(w, view, field))
                            (by_pilot(w, view.id, view.by_pilot.as_deref()))
                        }
                    }
                }
            }
        }
    }
}

fn how(w: Wording, view: &View, field: &Markup) -> Markup {
    let longest = view.periods.iter().map(|(_, length)| *length).fold(0.0, f64::max);
    let chosen =
        view.playing.as_ref().map(|playing| playing.beside.stage.script.period.clone());
    html! {
        form.editform method="post" action={ "/i/" (view.id) "/rehearse" } {
            (field)
            div.fields {
                div.one {
                    label for="period" { (say!(w, "rehearse-period")) }
                    span.fld { select id="period" name="period" {
                        @for (name, _) in &view.periods {
                            option value=(name) selected[chosen.as_ref() == Some(name)] {
                                (say!(w, "rehearse-period-name", period = name))
                            }
                        }
                    } }
                }
                div.one.wide.clock {
                    label for="speed" { (say!(w, "rehearse-speed")) }
                    span.fld { select id="speed" name="speed" {
                        @for speed in SPEEDS {
                            option value=(speed) selected[speed == USUAL] {
                                @if speed == 1 { (say!(w, "rehearse-speed-true")) }
                                @else {
                                    (say!(
                                        w,
                                        "rehearse-speed-as",
                                        speed = speed.to_string(),
                                        minutes = (longest / f64::from(speed)).ceil() as usize
                                    ))
                                }
                            }
                        }
                    } }
                }
                div.one {
                    label for="class" { (say!(w, "rehearse-class")) }
                    span.fld {
                        input id="class" name="class" type="number" min="1" max="9999" value="1"
                            required aria-describedby="class-says";
                    }
                }
            }
            p.small.soft id="class-says" { (say!(w, "rehearse-class-says")) }
            div.btns.addrow { button.btn.main type="submit" { (say!(w, "rehearse-go")) } }
            p.small.soft.addrow { (say!(w, "rehearse-apart")) }
        }
    }
}

fn played(w: Wording, view: &View, playing: &Playing, field: &Markup) -> Markup {
    let stage = &playing.beside.stage;
    let address = format!(
        "http://{}:{}/i/{}/run/{}",
        view.host,
        playing.port,
        stage.room.id,
        segment(&stage.script.period)
    );
    let (done, of) = playing.beside.so_far();
    html! {
        @if !playing.is_over() {
            section.sec {
                div.mg { h2 { (say!(w, "rehearse-runs")) } }
                div.bd {
                    p { (lay!(w, "rehearse-passphrase", passphrase = html! { b.code { (stage.passphrase) } })) }
                    p { (say!(w, "rehearse-bell")) }
                    div.btns.addrow {
                        a.btn.main href=(address) target="_blank" rel="noopener" { (say!(w, "rehearse-open")) }
                        form method="post" action={ "/i/" (view.id) "/rehearse/stop" } {
                            (field)
                            button.btn.quiet type="submit" { (say!(w, "rehearse-stop")) }
                        }
                    }
                    p.small.soft { (lay!(w, "rehearse-there", address = html! { span.code { (address) } })) }
                    p.soft role="status" {
                        (say!(w, "rehearse-so-far", done = done.to_string(), of = of.to_string()))
                    }
                }
            }
        }
        @if let Some(report) = playing.beside.went(|went| how_it_went(w, went)) {
            section.sec {
                div.mg { h2 { (say!(w, "rehearse-over")) } }
                div.bd { (report) }
            }
        }
    }
}

fn how_it_went(w: Wording, went: &Result<Report, DeskError>) -> Markup {
    let report = match went {
        Ok(report) => report,
        Err(error) => return html! { div.fault { p { (error) } } },
    };
    let wrong = report.went_wrong();
    let shown = wrong.iter().filter(|one| one.shown).count();
    html! {
        @if report.sent < report.of { p { (say!(w, "rehearse-stopped")) } }
        p {
            (say!(
                w,
                "rehearse-entries",
                sent = report.sent.to_string(),
                of = report.of.to_string(),
                saved = report.saved.to_string(),
                refused = report.refused.to_string()
            ))
        }
        @if wrong.is_empty() {
            p { (say!(w, "rehearse-nothing")) }
        } @else {
            div.scrolls { table {
                thead { tr {
                    th scope="col" { (say!(w, "rehearse-bag")) }
                    th.r scope="col" { (say!(w, "rehearse-minute")) }
                    th scope="col" { (say!(w, "rehearse-what")) }
                    th scope="col" { (say!(w, "rehearse-seen")) }
                } }
                tbody { @for one in &wrong { (line(w, one)) } }
            } }
            p.small.soft {
                (say!(w, "rehearse-tally", shown = shown.to_string(), all = wrong.len().to_string()))
            }
        }
    }
}

fn line(w: Wording, one: &WentWrong) -> Markup {
    html! {
        tr {
            th scope="row" { (one.bag) }
            td.r { @if let Some(minute) = one.minute { (minute) } }
            td { (one.what) }
            td {
                @if one.shown { b { (say!(w, "rehearse-shown")) } }
                @else { (say!(w, "rehearse-not-shown")) }
            }
        }
    }
}

//! The wall page: readable from the last bench.

use super::band::band;
use super::found::found;
use crate::desk::room::Kind;
use crate::desk::room::benches::group_name;
use crate::desk::room::hour::{Hour, Stage, clock};
use crate::desk::room::wall::WallView;
use crate::desk::{Catalog, ChartWords, Prompted, qr};
use crate::web::head::lead;
use crate::web::ruler::{self, ruler};
use crate::web::signs::{icon, until};
use barm_domain::schedule::PhaseKind;
use maud::{Markup, PreEscaped, html};

/// How a group joins, and where a page goes on after the address has changed.
pub(super) struct HowToJoin {
    /// Address to type, such as `http://192.168.1.20:8420`.
    pub(super) address: String,
    /// Whether other devices reach it.
    pub(super) far: bool,
    /// The class code of this period, while it works.
    pub(super) code: Option<String>,
}

/// The whole page.
pub(super) fn page(
    view: &WallView,
    join: Option<&HowToJoin>,
    asked: Option<&Prompted>,
    words: &'static Catalog,
) -> Markup {
    let hour = &view.hour;
    let early = join.filter(|_| hour.is_early());
    html! {
        main.wall data-live="/wall/events" data-version="/wall/version"
            data-now=(hour.now.as_millisecond()) {
            header {
                div.toprow {
                    (lead(&words.say("wall-lead")))
                    (made_up(view.kind, words))
                    nav.lang aria-label=(words.say("language-choose")) {
                        @for other in Catalog::all().filter(|other| other.code() != words.code()) {
                            a href={ "?lang=" (other.code()) } lang=(other.code()) {
                                (other.say("language-name"))
                            }
                        }
                    }
                }
                div data-part="ruler" { (ruler(hour, &ruler_words(hour, words), 1.75)) }
            }
            div.left data-part="clock" { (left(view, asked, words)) }
            section.cv data-part="right" { (right(view, early, words)) }
            footer {
                span { (icon("hand-off", 44)) " " (words.say("wall-rule-hands")) }
                span { (icon("ruler", 44)) " " (words.say("wall-rule-ruler")) }
                span { (icon("card", 44)) " " (words.say("wall-rule-eye")) }
                div.place data-part="place" { @if let Some(join) = join { (place(join, words)) } }
            }
            p.linkline id="link" role="status" data-silent=(words.say("link-silent")) {}
        }
    }
}

/// Where devices find the program now, all through the period: as a link, and for cameras.
fn place(join: &HowToJoin, words: &Catalog) -> Markup {
    let address = format!("{}/join", join.address);
    html! {
        @if join.far {
            (PreEscaped(qr(&address, &words.say("wall-place-square"))))
            p { (words.say("wall-place")) br; a.code href=(address) { (join.address) } }
        }
    }
}

fn made_up(kind: Kind, words: &Catalog) -> Markup {
    let key = match kind {
        Kind::Real => return html! {},
        Kind::Rehearsal => "bench-rehearsal",
        Kind::Invented => "bench-invented",
    };
    html! { p.madeup { (words.say(key)) } }
}

/// The words on the ruler in a language.
fn ruler_words(hour: &Hour, words: &'static Catalog) -> ruler::Words {
    let values = [
        ("start", hour.starts.as_str()),
        ("bell", hour.bell.as_str()),
        ("now", hour.now_says.as_str()),
    ];
    let interval = hour.interval_min.to_string();
    ruler::Words {
        says: words.say_with("wall-ruler", &values),
        bell: words.say("wall-bell"),
        phase: Box::new(move |kind| match kind {
            PhaseKind::SetUp => words.say("phase-set-up"),
            PhaseKind::Read => words.say_with("phase-read", &[("minutes", &interval)]),
            PhaseKind::Vent => words.say("phase-vent"),
            PhaseKind::Clean => words.say("phase-clean"),
        }),
    }
}

fn left(view: &WallView, asked: Option<&Prompted>, words: &Catalog) -> Markup {
    let hour = &view.hour;
    let period = [("period", hour.period.as_str())];
    html! {
        @match hour.stage {
            Stage::Before => {
                h1.w1 { (words.say_with("wall-before", &period)) }
                div.bell { (hour.starts) }
            },
            Stage::Over => {
                h1.w1 { (words.say_with("wall-period", &period)) }
                p.big { (words.say("wall-ended")) }
            },
            _ => {
                h1.w1 { (words.say_with("wall-title", &period)) }
                div.bell role="timer" {
                    @match hour.bell_at {
                        Some(bell) => (until(bell, hour.now)),
                        None => (clock(hour.left_s())),
                    }
                }
            },
        }
        @match hour.stage {
            Stage::Standing(_) => {
                section.now {
                    h2 { (words.say("wall-stopped")) }
                    p.w1 { (words.say("wall-stopped-lead")) }
                }
            },
            Stage::PastBell => { p.big { (words.say("wall-past-bell")) } },
            Stage::Running => { (reads(view, words)) },
            Stage::Before | Stage::Over => {},
        }
        @if let Some(asked) = asked {
            div.question {
                p.big { (asked.asks) }
                @if !asked.rests_on.is_empty() { p.w1 { (asked.rests_on) } }
            }
        }
        @for (simulated, key) in [(false, "wall-lent-class"), (true, "wall-lent-simulated")] {
            @let groups = listed(view, simulated);
            @if !groups.is_empty() {
                p.standin.st.away { (words.say_with(key, &[("groups", &groups)])) }
            }
        }
    }
}

fn reads(view: &WallView, words: &Catalog) -> Markup {
    let many = view.now.len() > 4;
    html! {
        @if view.now.is_empty() {
            section.now.none { h2 { (words.say("wall-nobody")) } }
        } @else {
            section.now {
                h2 { (words.say(if view.now.len() == 1 { "wall-read-one" } else { "wall-read-now" })) }
                div.who.many[many] { @for group in &view.now { span { (group_name(*group)) } } }
            }
        }
        @if !view.next.is_empty() {
            div.nx {
                @for (at, (group, when, zero)) in view.next.iter().enumerate() {
                    span { @if at == 0 { (words.say("wall-next-group")) } }
                    b { (group_name(*group)) }
                    span { (around(words, if *zero { "wall-next-zero" } else { "wall-next-in" }, &until(*when, view.hour.now))) }
                }
            }
        }
    }
}

/// A text with something living in its one open place.
fn around(words: &Catalog, key: &str, inner: &Markup) -> Markup {
    let pattern = words.pattern(key);
    let (before, after) = pattern.split_once("{time}").unwrap_or((&pattern, ""));
    html! { (before) (inner) (after) }
}

fn right(view: &WallView, join: Option<&HowToJoin>, words: &'static Catalog) -> Markup {
    let chart_words = ChartWords::of(words);
    html! {
        @if let Some(join) = join {
            div.howto {
                h2 { (words.say("wall-join")) }
                p.w1 { (words.say("wall-join-address")) }
                p.address.code { (join.address) }
                @if let Some(code) = &join.code {
                    p.w1 { (words.say("wall-join-code")) }
                    p.address.code { (code) }
                }
                p.w1 { (words.say("wall-join-group")) }
            }
        } @else if let Some(all) = &view.found {
            (found(all, words))
        } @else if let Some(curves) = &view.curves {
            @let title = words.say(if curves.day { "wall-curves-day" } else { "wall-curves" });
            h2 { (title) }
            p.w1.soft { (words.say("wall-curves-lead")) }
            @if curves.bags() == 0 { p.w1 { (words.say("bench-curve-empty")) } }
            @else {
                div.wid { (PreEscaped(curves.svg(&title, chart_words, true))) }
                div.nar { (PreEscaped(curves.svg(&title, chart_words, false))) }
                (band(&curves.bands(), false, words))
                @if let Some(version) = curves.older_version() {
                    p.w1.soft { (words.say_with("bench-older-plan", &[("version", &version.to_string())])) }
                }
            }
        } @else {
            div.quiet {
                h2 { (words.say("wall-how")) }
                ol.w1 {
                    li { (words.say("wall-how-1")) }
                    li { (words.say("wall-how-2")) }
                    li { (words.say("wall-how-3")) }
                }
            }
        }
    }
}

/// Groups with numbers that are not their own, of the one kind or of the other.
fn listed(view: &WallView, simulated: bool) -> String {
    let groups = view.stand_ins.iter().filter(|(_, made_up)| *made_up == simulated);
    groups.map(|(group, _)| group_name(*group)).collect::<Vec<_>>().join(", ")
}

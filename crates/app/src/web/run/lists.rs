//! The three lists of the run page, and the call above them.

use crate::desk::drawings;
use crate::desk::room::benches::{Tag, millimeters};
use crate::desk::room::hour::Stage;
use crate::desk::room::run::{Bench, Call, Need, NeedTag, Offer, RunBag, RunView, When};
use crate::web::signs;
use jiff::Timestamp;
use maud::{Markup, PreEscaped, html};

/// The one sentence to the whole class.
pub(super) fn call(call: &Call) -> Markup {
    html! {
        section.call aria-label="Whole class" {
            div {
                h2 { (call.head) }
                p { (call.says) }
            }
            div.btns {
                a.btn.main href="#jug" { "Note a jug" }
                a.btn href="#why" { "See why" }
            }
        }
        details.why id="why" {
            summary { "What it may be" }
            ul { @for why in &call.why { li { (why) } } }
        }
    }
}

/// What needs the teacher.
pub(super) fn needs(view: &RunView, home: &str) -> Markup {
    let now = view.hour.now;
    html! {
        h2 id="needs-head" tabindex="-1" { "Needs you " small { (view.needs.len()) } }
        ul.plain {
            @if view.needs.is_empty() { li.empty { "Nothing. Walk the room." } }
            @for need in &view.needs {
                li.slip data-row={ (need.about) "-" (tag_key(&need.tag)) } {
                    span.bag { (about(need, home)) }
                    div.say {
                        p { (tag(&need.tag, now)) " " (need.says) }
                    }
                    @if !need.offers.is_empty() {
                        div.btns { @for offer in &need.offers { (offered(offer, home)) } }
                    }
                    @if let [bag] = need.bags.as_slice() { (spark(bag, 132.0, need.is_doubtful())) }
                }
            }
        }
    }
}

fn about(need: &Need, home: &str) -> Markup {
    match need.bags.as_slice() {
        [only] => html! { a.bagname href={ (home) "/bag/" (only.bag.code) } { (need.about) } },
        _ => html! { (need.about) },
    }
}

fn tag_key(tag: &NeedTag) -> &str {
    match tag {
        NeedTag::Doubt(word) => word,
        NeedTag::Late(_) => "late",
        NeedTag::Silent(_) => "silent",
    }
}

fn tag(tag: &NeedTag, now: Timestamp) -> Markup {
    match tag {
        NeedTag::Doubt(word) => signs::doubt(word),
        NeedTag::Late(since) => signs::late(&html! { "Late " (signs::since(*since, now)) }),
        NeedTag::Silent(since) => signs::away(&format!("Not heard since {since}")),
    }
}

/// All offers look alike: the page does not choose.
fn offered(offer: &Offer, home: &str) -> Markup {
    match &offer.sends {
        Some(sends) => html! {
            button.btn.quiet form="act" name="do" value=(sends) id={ "do-" (sends.replace(' ', "-")) } {
                (offer.says)
            }
        },
        None => {
            html! { a.btn.quiet href={ (home) "/bag/" (offer.bag) "#heights" } { (offer.says) } }
        }
    }
}

/// Who reads now.
pub(super) fn now(view: &RunView, home: &str) -> Markup {
    let minutes: Vec<u32> = view.now.iter().filter_map(|bench| bench.minute).collect();
    let minute = minutes.first().filter(|first| minutes.iter().all(|minute| minute == *first));
    html! {
        h2 id="now-head" tabindex="-1" {
            "Read now "
            small { @if let Some(minute) = minute { "reading at " (minute) " minutes" } }
        }
        @if view.now.is_empty() {
            p.empty {
                @match view.hour.stage {
                    Stage::Standing(_) => { "All clocks stand still." },
                    Stage::Over | Stage::PastBell => { "Nothing more is read." },
                    _ => { "Nobody at the moment." },
                }
            }
        } @else {
            table.duet {
                caption.vh { "Bags to be read now" }
                @for bench in &view.now { (due(bench, view.hour.now, home)) }
            }
        }
    }
}

fn due(bench: &Bench, now: Timestamp, home: &str) -> Markup {
    html! {
        tbody data-row={ "now-" (bench.group) } {
            @for (at, bag) in bench.bags.iter().enumerate() {
                tr.g[at == 0].end[at + 1 == bench.bags.len()] {
                    @if at == 0 {
                        th scope="rowgroup" rowspan=(bench.bags.len()) {
                            (signs::due("Read now"))
                            @if let When::Due(since) = bench.when {
                                span.since { "for " (signs::since(since, now)) }
                            }
                        }
                    }
                    td.bag { a.bagname href={ (home) "/bag/" (bag.bag.code) } { (bag.bag.name) } }
                    td { (mark(bag)) " " span.trn { (bag.bag.treatment) } }
                    td.r.mm { (pick(bag, home)) }
                    td.sp { (spark(bag, 126.0, false)) }
                }
            }
        }
    }
}

/// The last height; a tap on it writes the next one.
fn pick(bag: &RunBag, home: &str) -> Markup {
    let name = &bag.bag.name;
    let last = bag.bag.height_mm.map(millimeters);
    html! {
        a.pick href={ (home) "?bag=" (name) "#write" } data-pick=(name)
            aria-label={ "Write a height for " (name) @if let Some(last) = &last { ", last " (last) " mm" } } {
            @match &last {
                Some(last) => { (last) " " small { "mm" } },
                None => small { "write" },
            }
        }
    }
}

/// More groups than this fold to a line each.
const FOLD: usize = 12;

/// The others, by time.
pub(super) fn next(view: &RunView, home: &str) -> Markup {
    let folded = view.next.len() > FOLD;
    html! {
        h2 id="next-head" tabindex="-1" {
            @match view.hour.stage {
                Stage::Before => "Groups ",
                Stage::PastBell | Stage::Over => "All bags ",
                _ => "Next ",
            }
            small {
                @match view.hour.stage {
                    Stage::Before => "who makes which bag",
                    Stage::PastBell | Stage::Over => "last height, curve on its forecast band",
                    _ => "time to go, last height, curve on its forecast band",
                }
            }
        }
        @if view.next.is_empty() && view.now.is_empty() {
            p.empty { "This period has no bags yet. Give them out on the plan page." }
        }
        div.nextgrid.folded[folded] {
            @for bench in &view.next { (bench_block(bench, view.hour.now, home, folded)) }
        }
    }
}

fn bench_block(bench: &Bench, now: Timestamp, home: &str, folded: bool) -> Markup {
    let who = if bench.group == 0 {
        "Your bench".to_owned()
    } else {
        format!("Group {}", bench.group)
    };
    html! {
        div.ng data-row={ "next-" (bench.group) } {
            h3 {
                @if bench.when == When::NotBegun { b { (who) } }
                @else { b { (when(bench, now)) } " " (who) }
                @if bench.stand_in { " " span.soft { "stands in" } }
            }
            @if folded {
                p.foldline {
                    @for bag in &bench.bags {
                        span.nowrap {
                            a.bagname href={ (home) "/bag/" (bag.bag.code) } { (bag.bag.name) } " "
                            @if let Some(mm) = bag.bag.height_mm { (millimeters(mm)) " mm" } @else { "–" }
                        }
                        " "
                    }
                }
            } @else {
                table.next {
                    caption.vh { (who) }
                    tbody { @for bag in &bench.bags { (row(bag, home)) } }
                }
            }
        }
    }
}

fn when(bench: &Bench, now: Timestamp) -> Markup {
    match bench.when {
        When::Due(at) | When::At(at) => html! {
            @if at > now { (signs::until(at, now)) } @else { "now" }
        },
        When::Zero(at) if at > now => html! { (signs::until(at, now)) small { " zero" } },
        When::Zero(_) => html! { "zero now" },
        When::NotBegun => html! {},
        When::Standing => html! { "waits" },
        When::Over => html! { "done" },
    }
}

fn row(bag: &RunBag, home: &str) -> Markup {
    html! {
        tr {
            td.num { a.bagname href={ (home) "/bag/" (bag.bag.code) } { (bag.bag.name) } }
            td { (mark(bag)) " " (bag.bag.treatment) }
            td.r.nowrap {
                @match bag.bag.height_mm {
                    Some(mm) => { b { (millimeters(mm)) } " mm" },
                    None => span.soft { "–" },
                }
            }
            td.nt {
                @match bag.bag.tag {
                    Some(Tag::Late) => (signs::late(&html! { "Late" })),
                    Some(Tag::Doubtful) => (signs::doubt("Look")),
                    Some(Tag::SetAside) => (signs::away("Set aside")),
                    Some(Tag::Vented) => (signs::done("vented")),
                    Some(Tag::Lost) => (signs::away("Lost")),
                    None if bag.bag.rises.len() > 1 => (spark(bag, 84.0, false)),
                    None if bag.bag.rises.len() == 1 => span.soft { "zero in" },
                    None => {},
                }
            }
        }
    }
}

/// The mark of a bag's treatment, beside its name.
pub(super) fn mark(bag: &RunBag) -> Markup {
    PreEscaped(drawings::mark(bag.bag.look, 18.0))
}

/// The curve of a bag on its forecast.
pub(super) fn spark(bag: &RunBag, width: f64, doubtful: bool) -> Markup {
    PreEscaped(drawings::spark(bag, width, doubtful))
}

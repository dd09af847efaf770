//! The three lists of the run page, and the call above them.

use super::tools::lent_word;
use crate::desk::drawings;
use crate::desk::room::benches::{Tag, millimeters};
use crate::desk::room::hour::Stage;
use crate::desk::room::run::{Bench, Call, Need, NeedTag, Offer, RunBag, RunView, When};
use crate::desk::{Wording, say};
use crate::web::head::older_names;
use crate::web::signs;
use crate::web::soft::soft;
use crate::web::words::lay;
use jiff::Timestamp;
use maud::{Markup, PreEscaped, html};

/// The one sentence to the whole class.
pub(super) fn call(w: Wording, call: &Call) -> Markup {
    html! {
        section.call aria-label=(say!(w, "call-label")) {
            div {
                h2 { (call.head) }
                p { (call.says) }
            }
            div.btns {
                a.btn.main href="#jug" { (say!(w, "call-note-jug")) }
                a.btn href="#why" { (say!(w, "call-see-why")) }
            }
        }
        details.why id="why" {
            summary { (say!(w, "call-why")) }
            ul { @for why in &call.why { li { (why) } } }
        }
    }
}

/// What needs the teacher.
pub(super) fn needs(w: Wording, view: &RunView, home: &str) -> Markup {
    let now = view.hour.now;
    html! {
        h2 id="needs-head" tabindex="-1" { (say!(w, "need-head")) " " small { (view.needs.len()) } }
        ul.plain {
            @if view.needs.is_empty() { li.empty { (say!(w, "need-none")) } }
            @for need in &view.needs {
                li.slip data-row={ (need.about) "-" (tag_key(&need.tag)) } {
                    span.bag { (about(need, home)) }
                    div.say {
                        p { (tag(w, &need.tag, now)) " " (need.says) }
                    }
                    @if !need.offers.is_empty() {
                        div.btns { @for offer in &need.offers { (offered(offer, home)) } }
                    }
                    @if let [bag] = need.bags.as_slice() { (spark(w, bag, 132.0, need.is_doubtful())) }
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

const fn tag_key(tag: &NeedTag) -> &'static str {
    match tag {
        NeedTag::Doubt(doubt) => doubt.key(),
        NeedTag::Late(_) => "late",
        NeedTag::Silent(_) => "silent",
    }
}

fn tag(w: Wording, tag: &NeedTag, now: Timestamp) -> Markup {
    match tag {
        NeedTag::Doubt(doubt) => signs::doubt(&doubt.word(w)),
        NeedTag::Late(since) => signs::late_since(w, *since, now),
        NeedTag::Silent(since) => signs::away(&say!(w, "need-not-heard", time = since)),
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
pub(super) fn now(w: Wording, view: &RunView, home: &str) -> Markup {
    let minutes: Vec<u32> = view.now.iter().filter_map(|bench| bench.minute).collect();
    let minute = minutes.first().filter(|first| minutes.iter().all(|minute| minute == *first));
    html! {
        h2 id="now-head" tabindex="-1" {
            (say!(w, "state-due")) " "
            small {
                @if let Some(minute) = minute {
                    (say!(w, "list-reading-at", minute = minute.to_string()))
                }
            }
        }
        @if view.now.is_empty() {
            p.empty {
                @match view.hour.stage {
                    Stage::Standing(_) => (say!(w, "list-standing")),
                    Stage::Over | Stage::PastBell => (say!(w, "list-over")),
                    _ => (say!(w, "list-nobody")),
                }
            }
        } @else {
            table.duet {
                caption.vh { (say!(w, "list-due-caption")) }
                @for bench in &view.now { (due(w, bench, view.hour.now, home)) }
            }
        }
    }
}

fn due(w: Wording, bench: &Bench, now: Timestamp, home: &str) -> Markup {
    html! {
        tbody data-row={ "now-" (bench.group) } {
            @for (at, bag) in bench.bags.iter().enumerate() {
                tr.g[at == 0].end[at + 1 == bench.bags.len()] {
                    @if at == 0 {
                        th scope="rowgroup" rowspan=(bench.bags.len()) {
                            (signs::due(&say!(w, "state-due")))
                            @if let When::Due(since) = bench.when {
                                span.since { (lay!(w, "list-for", time = signs::since(since, now))) }
                            }
                        }
                    }
                    td.bag { a.bagname href={ (home) "/bag/" (bag.bag.code) } { (bag.bag.name) } }
                    td { (mark(bag)) " " span.trn { (soft(&bag.bag.treatment)) } }
                    td.r.mm { (pick(w, bag, home)) }
                    td.sp { (spark(w, bag, 126.0, false)) }
                }
            }
        }
    }
}

/// The last height; a tap on it writes the next one.
fn pick(w: Wording, bag: &RunBag, home: &str) -> Markup {
    let name = &bag.bag.name;
    let last = bag.bag.height_mm.map(millimeters);
    let label = match &last {
        Some(last) => say!(w, "list-write-for-last", bag = name, mm = last),
        None => say!(w, "list-write-for", bag = name),
    };
    html! {
        a.pick href={ (home) "?bag=" (name) "#write" } data-pick=(name)
            aria-label=(label) {
            @match &last {
                Some(last) => { (last) " " small { "mm" } },
                None => small { (say!(w, "list-write")) },
            }
        }
    }
}

/// More groups than this fold to a line each.
const FOLD: usize = 12;

/// The others, by time.
pub(super) fn next(w: Wording, view: &RunView, home: &str) -> Markup {
    let folded = view.next.len() > FOLD;
    html! {
        h2 id="next-head" tabindex="-1" {
            @match view.hour.stage {
                Stage::Before => (say!(w, "list-groups")),
                Stage::PastBell | Stage::Over => (say!(w, "list-all-bags")),
                _ => (say!(w, "list-next")),
            }
            " "
            small {
                @match view.hour.stage {
                    Stage::Before => (say!(w, "list-groups-how")),
                    Stage::PastBell | Stage::Over => (say!(w, "list-all-how")),
                    _ => (say!(w, "list-next-how")),
                }
            }
        }
        @if view.next.is_empty() && view.now.is_empty() {
            p.empty { (say!(w, "list-no-bags")) }
        }
        div.nextgrid.folded[folded] {
            @for bench in &view.next { (bench_block(w, bench, view.hour.now, home, folded)) }
        }
        @let bags = view.now.iter().chain(&view.next).flat_map(|bench| &bench.bags);
        (older_names(w, bags.map(|bag| bag.bag.treatment.as_str())))
    }
}

fn bench_block(w: Wording, bench: &Bench, now: Timestamp, home: &str, folded: bool) -> Markup {
    let who = if bench.group == 0 {
        say!(w, "list-your-bench")
    } else {
        say!(w, "list-group", group = bench.group.to_string())
    };
    html! {
        div.ng data-row={ "next-" (bench.group) } {
            h3 {
                @match (bench.stand_in, &bench.when) {
                    (Some(_), _) => { b { (signs::lent(&say!(w, "list-lent"))) } " " (who) },
                    (None, When::NotBegun) => b { (who) },
                    (None, _) => { b { (when(w, bench, now)) } " " (who) },
                }
            }
            @if folded {
                p.foldline {
                    @if let Some(lent) = bench.stand_in { (lent_word(w, lent)) " " }
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
                    @match bench.stand_in {
                        Some(lent) => caption.lentsays { span.vh { (who) ": " } (lent_word(w, lent)) },
                        None => caption.vh { (who) },
                    }
                    tbody { @for bag in &bench.bags { (row(w, bag, home)) } }
                }
            }
        }
    }
}

fn when(w: Wording, bench: &Bench, now: Timestamp) -> Markup {
    match bench.when {
        When::Due(at) | When::At(at) => html! {
            @if at > now { (signs::until(at, now)) } @else { (say!(w, "list-now")) }
        },
        When::Zero(at) if at > now => {
            html! { (signs::until(at, now)) small { " " (say!(w, "list-zero")) } }
        }
        When::Zero(_) => html! { (say!(w, "list-zero-now")) },
        When::NotBegun => html! {},
        When::Standing => html! { (say!(w, "list-waits")) },
        When::Over => html! { (say!(w, "list-done")) },
    }
}

fn row(w: Wording, bag: &RunBag, home: &str) -> Markup {
    html! {
        tr {
            td.num { a.bagname href={ (home) "/bag/" (bag.bag.code) } { (bag.bag.name) } }
            td { (mark(bag)) " " (soft(&bag.bag.treatment)) }
            td.r.nowrap {
                @match bag.bag.height_mm {
                    Some(mm) => { b { (millimeters(mm)) } " mm" },
                    None => span.soft { "–" },
                }
            }
            td.nt {
                @match bag.bag.tag {
                    Some(Tag::Late) => (signs::late(&html! { (say!(w, "state-late")) })),
                    Some(Tag::Doubtful) => (signs::doubt(&say!(w, "list-look"))),
                    Some(Tag::SetAside) => (signs::away(&say!(w, "list-set-aside"))),
                    Some(Tag::Vented) => (signs::done(&say!(w, "list-vented"))),
                    Some(Tag::Lost) => (signs::away(&say!(w, "list-lost"))),
                    None if bag.bag.rises.len() > 1 => (spark(w, bag, 84.0, false)),
                    None if bag.bag.rises.len() == 1 => span.soft { (say!(w, "list-zero-in")) },
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

/// The curve of a bag on its forecast, large.
pub(super) fn curve(w: Wording, bag: &RunBag, width: f64) -> Markup {
    PreEscaped(drawings::bag_curve(w, bag, width))
}

/// The curve of a bag on its forecast.
pub(super) fn spark(w: Wording, bag: &RunBag, width: f64, doubtful: bool) -> Markup {
    PreEscaped(drawings::spark(w, bag, width, doubtful))
}

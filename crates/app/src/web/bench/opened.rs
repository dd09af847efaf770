//! What the teacher gave or opened to a group, drawn here: the page's script only puts it in.

use super::amounts::amounts;
use crate::desk::room::benches::millimeters;
use crate::desk::room::opened::{ClassCurves, Found, LentNumbers, Opened};
use crate::desk::{Catalog, ChartWords};
use crate::web::wall::{band, verdicts, waiting};
use maud::{Markup, PreEscaped, html};

/// All that is open.
pub(super) fn drawn(opened: &Opened, words: &'static Catalog) -> Markup {
    html! {
        @if let Some(numbers) = &opened.lent { (lent(numbers, words)) }
        @if let Some(curves) = &opened.curves { (class(curves, words)) }
        @if let Some(all) = &opened.found { (found(all, words)) }
    }
}

/// Numbers in the place of the group's own: a mark, a picture, and a table.
fn lent(numbers: &LentNumbers, words: &'static Catalog) -> Markup {
    let (mark, lead) = if numbers.simulated {
        ("lent-simulated", "lent-simulated-lead")
    } else {
        ("lent-class", "lent-class-lead")
    };
    let mark = words.say(mark);
    html! {
        section.lent {
            h2 { (mark) }
            p { (words.say(lead)) " " (words.say("lent-never")) }
            p.lead { (words.say("lent-next")) }
            @if numbers.kinds.is_empty() {
                p.soft { (words.say("lent-empty")) }
            } @else {
                (picture(&numbers.curves, &mark, words))
                p { (words.say("lent-table")) }
                @for kind in &numbers.kinds {
                    @let name = words.treatment(&kind.treatment);
                    div.fixw tabindex="0" role="group" aria-label={ (mark) ": " (name) } {
                        table.wrote {
                            caption { b { (name) } " " span.soft { (mark) } }
                            thead { tr {
                                td {}
                                @for minute in &numbers.minutes { th scope="col" { (minute) " min" } }
                            } }
                            tbody {
                                @for (at, heights) in kind.heights.iter().enumerate() {
                                    tr {
                                        th scope="row" {
                                            (words.say_with("lent-bag", &[("number", &(at + 1).to_string())]))
                                        }
                                        @for mm in heights {
                                            td { @if let Some(mm) = mm { (millimeters(*mm)) } @else { "–" } }
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
}

/// How the cards of the class rise.
fn class(curves: &ClassCurves, words: &'static Catalog) -> Markup {
    let title = words.say(if curves.day { "wall-curves-day" } else { "wall-curves" });
    html! {
        section.class {
            h2 { (title) }
            p.soft { (words.say("wall-curves-lead")) }
            @if curves.is_empty() { p { (words.say("class-empty")) } }
            @else { (picture(curves, &title, words)) }
        }
    }
}

/// Curves as a picture and in sentences.
fn picture(curves: &ClassCurves, title: &str, words: &'static Catalog) -> Markup {
    let chart_words = ChartWords::of(words);
    let name = |treatment: &str| words.treatment(treatment);
    html! {
        @if !curves.is_empty() {
            div.chartbox { (PreEscaped(curves.svg(title, chart_words, name))) }
            ul.plain {
                @for range in curves.ranges() {
                    @let (low, high) = (millimeters(range.mm.0), millimeters(range.mm.1));
                    @let key = match (range.bags, low == high) {
                        (1, _) => "class-bag",
                        (_, true) => "class-same",
                        _ => "class-range",
                    };
                    li { (words.say_with(key, &[
                        ("treatment", &name(&range.treatment)),
                        ("bags", &range.bags.to_string()),
                        ("low", &low),
                        ("high", &high),
                        ("minute", &millimeters(range.minute)),
                    ])) }
                }
            }
            (band(&curves.bands(), true, words))
        }
    }
}

/// What the class found: a verdict a line, then how much.
fn found(all: &Found, words: &'static Catalog) -> Markup {
    html! {
        section.found {
            h2 { (words.say("found-head")) }
            p.soft { (words.say("found-lead")) }
            @for answer in &all.answers {
                h3 { (answer.asks) }
                ul.plain {
                    @for said in verdicts(answer, words) {
                        li {
                            b { (said.verdict) } ": " (said.says)
                            @if let Some(hangs) = &said.hangs { " " span.soft { (hangs) } }
                        }
                    }
                    @if let Some(says) = waiting(answer, words) { li.soft { (says) } }
                }
            }
            (amounts(&all.amounts, words))
        }
    }
}

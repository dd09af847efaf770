//! What the class found, large: a verdict a line, and how high the cards of each treatment rose.

use crate::desk::Catalog;
use crate::desk::room::benches::millimeters;
use crate::desk::room::every_bag::Quantity;
use crate::desk::room::opened::{Amounts, Answered, Found};
use maud::{Markup, html};

/// Question by question, in the place of the curves.
pub(super) fn found(all: &Found, words: &'static Catalog) -> Markup {
    let heights = all.amounts.iter().find(|amounts| amounts.quantity == Quantity::Rise);
    html! {
        div.found {
            h2 { (words.say("found-head")) }
            @for answer in &all.answers { (one(answer, heights, words)) }
            @if let Some(heights) = heights {
                p.soft { (words.say_with(
                    "wall-found-note",
                    &[("minute", &millimeters(heights.minute.round()))],
                )) }
            }
        }
    }
}

fn one(answer: &Answered, heights: Option<&Amounts>, words: &'static Catalog) -> Markup {
    html! {
        h3 { (answer.asks) }
        ul.plain {
            @if answer.told.is_empty() && answer.not_run.is_empty() {
                li { (words.say("found-nothing")) }
            }
            @for (treatment, reference, told, hangs) in &answer.told {
                @let (name, other) = (words.treatment(treatment), words.treatment(reference));
                li {
                    b { (words.say(&format!("found-{}", told.word()))) }
                    span {
                        (words.say_with(
                            &format!("found-{}-says", told.word()),
                            &[("treatment", &name), ("reference", &other)],
                        ))
                        @if *hangs { " " (words.say("found-hangs")) }
                    }
                    span.mm { @if let Some(mean) = mean(heights, treatment) { (mean) " mm" } }
                }
            }
            @if !answer.not_run.is_empty() {
                @let names: Vec<String> =
                    answer.not_run.iter().map(|name| words.treatment(name)).collect();
                li.soft {
                    b {}
                    span { (words.say_with("found-not-run", &[("treatments", &names.join(", "))])) }
                }
            }
        }
    }
}

/// The mean rise of a treatment.
fn mean(heights: Option<&Amounts>, treatment: &str) -> Option<String> {
    let row = heights?.rows.iter().find(|row| row.treatment == treatment)?;
    // A tenth each, so that they line up; never `-0.0`.
    Some(format!("{:.1}", (row.mean * 10.0).round() / 10.0 + 0.0))
}

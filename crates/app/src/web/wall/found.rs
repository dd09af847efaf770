//! What the class found, large: a verdict a line, and how high the cards of each treatment rose.

use super::verdicts::{verdicts, waiting};
use crate::desk::Catalog;
use crate::desk::room::benches::millimeters;
use crate::desk::room::every_bag::Quantity;
use crate::desk::room::opened::{Amounts, Answered, Found};
use barm_domain::words::tenths;
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
            @for said in verdicts(answer, words) {
                li {
                    b { (said.verdict) }
                    span { (said.says) @if let Some(hangs) = &said.hangs { " " (hangs) } }
                    span.mm { @if let Some(mean) = mean(heights, said.treatment) { (mean) " mm" } }
                }
            }
            @if let Some(says) = waiting(answer, words) { li.soft { b {} span { (says) } } }
        }
    }
}

/// The mean rise of a treatment, a tenth each, so that they line up.
fn mean(heights: Option<&Amounts>, treatment: &str) -> Option<String> {
    let row = heights?.rows.iter().find(|row| row.treatment == treatment)?;
    Some(tenths(row.mean))
}

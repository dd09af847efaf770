//! What was foretold of the curves of a class, in sentences for students. It is there once the teacher opened it.

use crate::desk::Catalog;
use crate::desk::room::benches::millimeters;
use crate::desk::room::foretold::BandRow;
use barm_domain::outlook::{Outside, Side};
use maud::{Markup, html};

/// What the band is, and which averages left it; with `numbers` what was foretold of each.
pub(in crate::web) fn band(rows: &[BandRow], numbers: bool, words: &Catalog) -> Markup {
    html! {
        @if !rows.is_empty() {
            p.soft.w1 { (words.say("band-lead")) }
            @let left = rows.iter().flat_map(|row| row.left.iter().map(move |one| (row, one)));
            ul.plain.w1 {
                @for (row, one) in left { li { (left_says(row, one, words)) } }
                @if numbers { @for row in rows {
                    @if let Some((minute, _, at)) = row.at.last() {
                        li { (words.say_with("band-range", &[
                            ("treatment", &words.treatment(&row.treatment)),
                            ("low", &millimeters(at.low)),
                            ("high", &millimeters(at.high)),
                            ("minute", &millimeters(*minute)),
                        ])) }
                    }
                } }
            }
        }
    }
}

fn left_says(row: &BandRow, left: &Outside, words: &Catalog) -> String {
    let key = match (left.side, left.lasts) {
        (Side::Higher, true) => "band-higher",
        (Side::Higher, false) => "band-higher-once",
        (Side::Lower, true) => "band-lower",
        (Side::Lower, false) => "band-lower-once",
    };
    words.say_with(
        key,
        &[
            ("treatment", &words.treatment(&row.treatment)),
            ("from", &millimeters(left.from_min)),
            ("until", &millimeters(left.until_min)),
        ],
    )
}

//! Curves of a class on what was foretold of them, as markup: a picture, sentences and a table.

use crate::desk::room::foretold::{BandRow, CurvesShown};
use crate::desk::{Wording, say};
use barm_domain::outlook::{Outside, Side};
use barm_domain::words::tenths;
use maud::{Markup, PreEscaped, html};

/// All of it.
pub(in crate::web) fn curves(w: Wording, shown: &CurvesShown) -> Markup {
    let rows = &shown.rows;
    let kept = rows.iter().filter(|row| row.left.is_empty() && !row.at.is_empty());
    let kept: Vec<&str> = kept.map(|row| row.treatment.as_str()).collect();
    let left = rows.iter().flat_map(|row| row.left.iter().map(move |one| (row, one)));
    html! {
        div.chartbox {
            div.wid { (PreEscaped(&shown.pictures[0])) }
            div.nar { (PreEscaped(&shown.pictures[1])) }
        }
        p.soft {
            (say!(w, "curves-lines"))
            @if !rows.is_empty() { " " (say!(w, "curves-band")) }
            @if shown.first_day && !rows.is_empty() { " " (say!(w, "curves-first-day")) }
        }
        @if shown.working { p.soft { (say!(w, "curves-working")) } }
        @if !rows.is_empty() {
            ul.plain {
                @for (row, outside) in left { li { (left_says(w, &row.treatment, outside)) } }
                @if !kept.is_empty() {
                    li { (say!(w, "curves-kept", treatments = kept.join(", "))) }
                }
            }
            @if rows.iter().any(|row| !row.left.is_empty()) {
                p.soft { (say!(w, "curves-left-note")) }
            }
            details {
                summary { (say!(w, "curves-table")) }
                (table(w, rows))
            }
        }
    }
}

/// Where an average left its band, in a sentence.
fn left_says(w: Wording, treatment: &str, outside: &Outside) -> String {
    let (from, until) = (minute(outside.from_min), minute(outside.until_min));
    match (outside.side, outside.lasts) {
        (Side::Higher, true) => say!(w, "curves-higher", treatment = treatment, from = from),
        (Side::Lower, true) => say!(w, "curves-lower", treatment = treatment, from = from),
        (Side::Higher, false) => {
            say!(w, "curves-higher-once", treatment = treatment, from = from, until = until)
        }
        (Side::Lower, false) => {
            say!(w, "curves-lower-once", treatment = treatment, from = from, until = until)
        }
    }
}

fn table(w: Wording, rows: &[BandRow]) -> Markup {
    html! {
        div.scrolls tabindex="0" {
            table {
                thead { tr {
                    th { (say!(w, "bags-kind")) }
                    th { (say!(w, "curves-minute")) }
                    th { (say!(w, "curves-mean")) }
                    th { (say!(w, "curves-foretold")) }
                } }
                tbody { @for row in rows { @for (at, mean, foretold) in &row.at {
                    tr {
                        td { (row.treatment) }
                        td { (minute(*at)) }
                        td { (tenths(*mean)) }
                        td.nowrap { (say!(w, "curves-between", low = tenths(foretold.low), high = tenths(foretold.high))) }
                    }
                } } }
            }
        }
    }
}

/// Whole where it is whole.
fn minute(value: f64) -> String {
    if (value - value.round()).abs() < 0.05 {
        format!("{value:.0}")
    } else {
        format!("{value:.1}")
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use barm_domain::outlook::ForetoldAt;

    fn shown(left: Vec<Outside>) -> CurvesShown {
        let at = vec![(4.0, 3.26, ForetoldAt { median: 2.0, low: -0.01, high: 3.0 })];
        CurvesShown {
            pictures: ["<svg id=\"wide\"/>".into(), "<svg id=\"narrow\"/>".into()],
            rows: vec![BandRow { treatment: "Oats <raw>".into(), at, left }],
            working: false,
            first_day: false,
        }
    }

    fn outside(side: Side, lasts: bool) -> Outside {
        Outside { side, from_min: 8.0, until_min: 12.0, lasts }
    }

    #[test]
    fn an_average_that_left_its_band_is_told_in_a_sentence_and_a_row() {
        let w = Wording::english();
        let page = |left| curves(w, &shown(left)).into_string();
        let said = page(vec![outside(Side::Higher, true)]);
        assert!(
            said.contains(
                "Oats &lt;raw&gt;: the average rose higher than foretold from minute 8 on."
            ),
            "{said}"
        );
        assert!(said.contains("8 of 10 bags") && said.contains(">3.3<"), "{said}");
        assert!(said.contains("0.0 to 3.0") && !said.contains("-0.0"), "{said}");
        let said = page(vec![outside(Side::Lower, false)]);
        assert!(said.contains("less than foretold from minute 8 to minute 12"), "{said}");
        let said = page(Vec::new());
        assert!(
            said.contains("within what was foretold") && !said.contains("higher"),
            "{said}"
        );
    }

    #[test]
    fn without_a_band_nothing_is_said_of_one() {
        let bare = CurvesShown { rows: Vec::new(), working: true, ..shown(Vec::new()) };
        let said = curves(Wording::english(), &bare).into_string();
        assert!(said.contains("still being worked out") && !said.contains("8 of 10"), "{said}");
    }
}

//! Dots, gaps and slopes in words, each at its grade.

use super::number::{bags, sentence_start, short, tenths};
use super::{Voice, mid_sentence};
use crate::result::{LadderGap, TreatmentDots};
use barm_science::statistics::ladder::Gap;

impl Voice {
    /// Grade 6: the center and spread of one treatment's dots; nothing without a bag.
    pub fn dots(self, dots: &TreatmentDots) -> Option<String> {
        let rises = dots.rises?;
        let treatment = sentence_start(&dots.treatment);
        let mean = tenths(rises.mean);
        Some(match rises.n {
            1 => format!("{treatment}: 1 bag, which rose {mean} mm."),
            count => format!(
                "{treatment}: {}, mean {mean} mm, MAD {} mm (average distance from the mean).",
                bags(count),
                tenths(rises.mad)
            ),
        })
    }

    /// Grade 6: whether two dot plots overlap; nothing where one of them has no dot.
    pub fn overlap(self, gap: &LadderGap) -> Option<String> {
        gap.gap?;
        let (treatment, reference) =
            (mid_sentence(&gap.treatment), mid_sentence(&gap.reference));
        Some(match gap.overlap {
            Some(overlap) => format!(
                "The dots of {treatment} and {reference} overlap from {} to {} mm.",
                tenths(overlap.low),
                tenths(overlap.high)
            ),
            None => format!("The dots of {treatment} and {reference} do not overlap."),
        })
    }

    /// Grade 7: the gap in MADs and the multiple that so many bags need; nothing without both.
    /// A gap that stands out and yet is smaller than `readable_mm` is said to be so.
    pub fn gap(self, gap: &LadderGap, readable_mm: f64) -> Option<String> {
        let counted = gap.gap?;
        let in_mads = tenths(counted.in_mads?);
        let found = format!("The gap of {} mm is {in_mads} MADs", tenths(counted.gap.abs()));
        let many = match counted.gaps {
            0 | 1 => "this many bags".to_owned(),
            gaps => format!("this many bags and {gaps} gaps"),
        };
        let said = match counted.needed.map(tenths) {
            None if counted.one_groups_bags => format!(
                "{found}, but these are one group's bags: it may be that group's way of working."
            ),
            None => format!("{found}, but one bag cannot show a spread."),
            Some(needed) if counted.stands_out() => {
                let but = if counted.gap.abs() < readable_mm {
                    format!(" But {} mm is the least that can be read.", short(readable_mm))
                } else {
                    String::new()
                };
                format!("{found}. With {many} {needed} is enough to stand out.{but}")
            }
            Some(needed) => {
                format!("{found}. With {many} it takes {needed} to stand out.")
            }
        };
        let least = format!(
            " Bags differ less than a ruler shows, so {} mm counts as their MAD.",
            tenths(counted.mad)
        );
        Some(if counted.mad_is_reading_doubt { said + &least } else { said })
    }

    /// Grade 7: what follows from a gap in MADs, in a few words.
    ///
    /// Not to be chance and to be large enough to read are two things, so a gap that is only the
    /// first is never left standing beside "no readable rise" without a word.
    pub fn gap_in_brief(self, gap: &Gap, readable_mm: f64) -> String {
        match (gap.in_mads, gap.needed) {
            (_, None) if gap.one_groups_bags => {
                "one group's bags: a leaning at most".to_owned()
            }
            (_, None) => "one bag is too few".to_owned(),
            (None, _) => "the bags did not differ at all".to_owned(),
            _ if !gap.stands_out() => "may be chance".to_owned(),
            _ if gap.gap.abs() < readable_mm => format!(
                "more than chance, but under {} mm: too small to read",
                short(readable_mm)
            ),
            _ => "larger than chance makes".to_owned(),
        }
    }

    /// Whether treatments beside one another can be told from each other, and not only from their
    /// reference; nothing where there are no two of them.
    pub fn neighbors(self, gaps: &[LadderGap], readable_mm: f64) -> Vec<String> {
        let said = |gap: &LadderGap| {
            let counted = gap.gap?;
            let (higher, lower) =
                (sentence_start(&gap.treatment), mid_sentence(&gap.reference));
            let between = tenths(counted.gap.abs());
            Some(if counted.stands_out() && counted.gap.abs() >= readable_mm {
                format!("{higher} rose more than {lower}: {between} mm between the means.")
            } else {
                format!(
                    "{higher} and {lower} cannot be told apart: {between} mm between the means."
                )
            })
        };
        let all: Vec<String> = gaps.iter().filter_map(said).collect();
        if all.is_empty() {
            return all;
        }
        let lead = "Beside each other, though nobody asked before the day:".to_owned();
        std::iter::once(lead).chain(all).collect()
    }

    /// Grade 8: the difference in largest slope; nothing without both slopes.
    pub fn slope(self, gap: &LadderGap) -> Option<String> {
        let slope = gap.slope_gap?;
        let (treatment, reference) =
            (sentence_start(&gap.treatment), mid_sentence(&gap.reference));
        let way = if slope < 0.0 { "slower" } else { "faster" };
        Some(format!(
            "{treatment} rose {:.2} mm per minute {way} than {reference} at its fastest.",
            slope.abs()
        ))
    }

    /// A minute, as `minute 12` or `minute 12.5`.
    pub(super) fn minute(self, minute: f64) -> String {
        format!("minute {}", short(minute))
    }
}

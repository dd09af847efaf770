//! Dots, gaps and slopes in words, each at its grade.

use super::number::{bags, sentence_start, short, tenths};
use super::{Voice, mid_sentence};
use crate::result::{LadderGap, TreatmentDots};

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
    pub fn gap(self, gap: &LadderGap) -> Option<String> {
        let counted = gap.gap?;
        let in_mads = tenths(counted.in_mads?);
        let found = format!("The gap of {} mm is {in_mads} MADs", tenths(counted.gap.abs()));
        Some(match counted.needed.map(tenths) {
            None => format!("{found}, but one bag cannot show a spread."),
            Some(needed) if counted.stands_out() => {
                format!("{found}; with this many bags {needed} is enough to stand out.")
            }
            Some(needed) => {
                format!("{found}; with this many bags it takes {needed} to stand out.")
            }
        })
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

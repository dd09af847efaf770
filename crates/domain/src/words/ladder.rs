//! Dots, gaps and slopes in words, each at its grade.

use super::number::{bags, sentence_start, short, tenths};
use super::{Voice, mid_sentence};
use crate::result::{LadderGap, TreatmentDots};

impl Voice {
    /// Grade 6: the center and spread of one treatment's dots; nothing without a bag.
    pub fn dots(self, dots: &TreatmentDots) -> Option<String> {
        let rises = dots.rises?;
        Some(format!(
            "{}: {}, mean {} mm, and on average {} mm away from it.",
            sentence_start(&dots.treatment),
            bags(rises.n),
            tenths(rises.mean),
            tenths(rises.mad)
        ))
    }

    /// Grade 6: whether two dot plots overlap.
    pub fn overlap(self, gap: &LadderGap) -> String {
        let (treatment, reference) =
            (mid_sentence(&gap.treatment), mid_sentence(&gap.reference));
        match gap.overlap {
            Some(overlap) => format!(
                "The dots of {treatment} and {reference} overlap from {} to {} mm.",
                tenths(overlap.low),
                tenths(overlap.high)
            ),
            None => format!("The dots of {treatment} and {reference} do not overlap."),
        }
    }

    /// Grade 7: the gap in MADs and the multiple that so many bags need; nothing without both.
    pub fn gap(self, gap: &LadderGap) -> Option<String> {
        let counted = gap.gap?;
        let in_mads = counted.in_mads?;
        let found =
            format!("The gap of {} mm is {} MADs", tenths(counted.gap.abs()), tenths(in_mads));
        Some(match counted.needed {
            None => format!("{found}, but one bag cannot show a spread."),
            Some(needed) => {
                let stands = if counted.stands_out() { "and" } else { "but" };
                format!(
                    "{found}, {stands} with so few bags it takes {} to stand out.",
                    tenths(needed)
                )
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

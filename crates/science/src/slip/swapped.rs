//! Two unlike bags of a group taken for one another from the start.

use super::beside::Beside;
use super::sound::Sound;
use super::weighed::Weighed;
use super::{Followed, Rates, What};

pub(super) fn weigh(
    bags: &[Followed],
    beside: &Beside<'_>,
    alone: &[Option<(Sound, Weighed)>],
    rates: &Rates,
    weighed: &mut [Option<Weighed>],
) {
    for (a, bag) in bags.iter().enumerate() {
        for (b, other) in bags.iter().enumerate().skip(a + 1) {
            if bag.group != other.group || bag.treatment == other.treatment {
                continue;
            }
            let (Some((_, heard_a)), Some((_, heard_b))) = (&alone[a], &alone[b]) else {
                continue;
            };
            let (Some(a_as_b), Some(b_as_a)) =
                (as_other(beside, bag, b, other), as_other(beside, other, a, bag))
            else {
                continue;
            };
            let log = a_as_b + b_as_a;
            let (evidence_a, evidence_b) = (heard_a.evidence(), heard_b.evidence());
            for (at, with, other_evidence) in [(a, b, evidence_b), (b, a, evidence_a)] {
                if let Some(own) = &mut weighed[at] {
                    own.add(What::Swapped { with }, rates.swapped, log - other_evidence);
                }
            }
        }
    }
}

/// ln probability of a bag's heights if it were made as another.
fn as_other(
    beside: &Beside<'_>,
    bag: &Followed,
    place: usize,
    other: &Followed,
) -> Option<f64> {
    let made =
        Followed { course: other.course.clone(), treatment: other.treatment, ..bag.clone() };
    Some(Sound::of(&made, beside.of_bag(place, &made), beside.rulers[place])?.log)
}

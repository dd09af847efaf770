//! Why a verdict is what it is.

use super::number::{bags, short, tenths};
use super::{Voice, mid_sentence};
use crate::result::{Compared, Judged};
use barm_science::statistics::compare::NotComparable;
use barm_science::statistics::verdict::Reason;

impl Voice {
    /// What decided a verdict, in one sentence.
    pub(super) fn reason(self, judged: &Judged, compared: &Compared) -> String {
        match &judged.verdict.reason {
            Reason::BeyondChance { .. } => {
                "Bags differ by chance, but hardly ever by so much.".to_owned()
            }
            Reason::OneBag { n, n_reference } => format!(
                "There are only {} and {} to compare: one odd bag could do this.",
                bags(*n),
                bags(*n_reference)
            ),
            Reason::OneGroup { .. } => {
                "One group made all bags of one kind, so it may be their \
                                        way of working."
                    .to_owned()
            }
            Reason::GroupsAssumed => {
                "Each kind was made by groups of its own, too few to see how \
                                      much groups differ, so it may be their way of working."
                    .to_owned()
            }
            Reason::SmallerThanReadable { readable, .. } => format!(
                "It is smaller than the {} mm that can be read on a bag.",
                short(*readable)
            ),
            Reason::OnlyJust { .. } => {
                "It is only just more than chance may do; more bags would tell.".to_owned()
            }
            Reason::OnlyAlone { .. } => {
                "Chance alone may still have done this; more bags would tell.".to_owned()
            }
            Reason::WithinChance { low, high } if self.speaks_of_intervals() => {
                format!("Anything from {} to {} is possible.", signed(*low), signed(*high))
            }
            Reason::WithinChance { .. } => {
                "Bags of the same kind differ too much among themselves.".to_owned()
            }
            Reason::NobodyRose { readable, .. } if is_small_but_steady(judged, *readable) => {
                format!(
                    "No bag rose by {} mm: the difference may be real, but it is too small to read.",
                    short(*readable)
                )
            }
            Reason::NobodyRose { highest, readable } => format!(
                "No bag rose by {} mm; the highest reached {} mm.",
                short(*readable),
                tenths(*highest)
            ),
            Reason::NotComparable(why) => self.not_comparable(why, compared),
            other => format!("{other}."),
        }
    }

    fn not_comparable(self, why: &NotComparable, compared: &Compared) -> String {
        match why {
            NotComparable::NoBags { n: 0, .. } => {
                no_bags(&compared.treatment, compared.left_out)
            }
            NotComparable::NoBags { .. } => {
                no_bags(&compared.reference, compared.left_out_reference)
            }
            NotComparable::NoSharedBlock => {
                "They were never made in the same period, so periods and treatments are mixed up."
                    .to_owned()
            }
            NotComparable::TooFewBags { .. } => {
                "No bag has a second one like it, so chance cannot be judged.".to_owned()
            }
            NotComparable::NoSpread => {
                "All bags of a kind read exactly the same, so chance cannot be judged.".to_owned()
            }
            NotComparable::Itself => "It is its own reference.".to_owned(),
            other => format!("{other}."),
        }
    }
}

/// Whether the interval of a difference leaves 0 out, though the difference is too small to read.
fn is_small_but_steady(judged: &Judged, readable_mm: f64) -> bool {
    judged.difference.is_some_and(|found| {
        (found.low > 0.0 || found.high < 0.0) && found.difference.abs() < readable_mm
    })
}

fn no_bags(name: &str, left_out: usize) -> String {
    let name = mid_sentence(name);
    match left_out {
        0 => format!("No bag of {name} was made."),
        1 => format!("The one bag of {name} gives no rise to compare."),
        count => format!("None of the {} of {name} gives a rise to compare.", bags(count)),
    }
}

/// A difference with its direction: `4.1 mm less`.
fn signed(difference: f64) -> String {
    let way = if difference < 0.0 { "less" } else { "more" };
    format!("{} mm {way}", tenths(difference.abs()))
}

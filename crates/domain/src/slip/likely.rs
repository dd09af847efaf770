//! How likely each slip is, by the forecast, the class and the sister bags: for the teacher only.

use super::{Expected, Followed};
use crate::record::{Bag, Height, Key};
use barm_science::slip::{self as science, Course, Rates, Suspected};

/// What a bag is suspected of, with its heights as they were weighed.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Likely {
    /// Each slip with its probability.
    pub suspected: Suspected,
    /// First entry of each height, the zero reading first; the places of a
    /// [`barm_science::slip::What`] count these.
    pub heights: Vec<Key>,
}

/// How likely each slip is in the bags of one period, in the order given.
#[must_use]
pub fn likely(period: &[Followed<'_>]) -> Vec<Likely> {
    let bags = weighable(period);
    let suspected = science::suspects(&bags, &Rates::default());
    period
        .iter()
        .zip(suspected)
        .map(|(followed, suspected)| {
            let heights = read(followed.own.bag).into_iter();
            Likely { suspected, heights: heights.map(|height| height.key).collect() }
        })
        .collect()
}

/// The bags as they are weighed.
pub(super) fn weighable(period: &[Followed<'_>]) -> Vec<science::Followed> {
    let mut names: Vec<&str> = period.iter().map(|followed| followed.treatment).collect();
    names.sort_unstable();
    names.dedup();
    period
        .iter()
        .map(|followed| {
            let own = &followed.own;
            let heights = read(own.bag).into_iter().filter_map(|height| {
                Some(science::Height {
                    minute: own.bag.minute_at(height.measured)?,
                    mm: height.height_mm,
                    planned: planned(own.bag, height),
                    sure: height.is_confirmed(),
                })
            });
            science::Followed {
                heights: heights.collect(),
                course: course(followed.band),
                treatment: names.binary_search(&followed.treatment).unwrap_or_default(),
                group: usize::from(own.code.group()),
                enzyme: followed.enzyme,
                full_mm: own.full_height_mm,
            }
        })
        .collect()
}

/// The heights of a bag that can be weighed, by time: the zero reading and what came after it,
/// without those that wait for a choice. None without a zero reading, and none of a bag that is
/// set aside.
pub(super) fn read(bag: &Bag) -> Vec<&Height> {
    let Some(zero) = bag.zero.as_ref().filter(|zero| !zero.rival) else { return Vec::new() };
    let after = bag.readings.iter().filter(|height| {
        !height.rival
            && height.measured > zero.measured
            && bag.vented.is_none_or(|vented| height.measured <= vented)
    });
    std::iter::once(zero).chain(after).collect()
}

/// The planned minute of a height, 0 of the zero reading.
fn planned(bag: &Bag, height: &Height) -> Option<u32> {
    let is_zero = bag.zero.as_ref().is_some_and(|zero| zero.key == height.key);
    if is_zero { Some(0) } else { height.planned }
}

fn course(band: &[Expected]) -> Course {
    let points = band.iter().map(|at| (at.minute, at.low_mm, at.median_mm, at.high_mm));
    Course::of_band(points)
}

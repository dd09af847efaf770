//! The one minute at which all bags are compared.

use std::collections::BTreeMap;

/// Share of all bags that must have been read that late.
const OF_ALL: f64 = 0.8;

/// Share of the bags of each treatment, and of each period, that must have been read that late.
const OF_EACH: f64 = 0.5;

/// What decides about the common minute: one bag with a zero reading and a later one.
#[derive(Debug, Clone, Copy)]
pub(super) struct Reach<'a> {
    /// Its treatment.
    pub(super) treatment: &'a str,
    /// Its period.
    pub(super) period: &'a str,
    /// Minute of its last reading.
    pub(super) last: f64,
}

/// The latest multiple of the reading interval that nearly all bags reach: four in five of all,
/// and half of each treatment and of each period.
///
/// Taking the latest minute that every single bag reaches would let one bag that was spilled at
/// minute 4 throw away the whole day. The rule looks at when bags were read, never at how high
/// they stood. `bell` is the minute at which the first of the periods ends: later readings do not
/// count here.
pub(super) fn common_minute(
    reaches: &[Reach<'_>],
    interval_min: f64,
    bell: f64,
) -> Option<f64> {
    let step = if interval_min.is_finite() && interval_min > 0.0 { interval_min } else { 1.0 };
    let latest = reaches.iter().map(|reach| reach.last).fold(0.0, f64::max);
    // A reading within half an interval stands for the minute it was meant for.
    let steps = ((latest + 0.5 * step) / step).floor().min((bell / step).floor());
    let mut minute = steps * step;
    while minute > 0.0 {
        if enough(reaches, minute - 0.5 * step) {
            return Some(minute);
        }
        minute -= step;
    }
    None
}

fn enough(reaches: &[Reach<'_>], at_least: f64) -> bool {
    let mut of_each: BTreeMap<(bool, &str), (usize, usize)> = BTreeMap::new();
    let mut reached = 0;
    for reach in reaches {
        let there = usize::from(reach.last >= at_least);
        reached += there;
        for key in [(true, reach.treatment), (false, reach.period)] {
            let counts = of_each.entry(key).or_default();
            counts.0 += there;
            counts.1 += 1;
        }
    }
    let share = |(there, all): (usize, usize)| there as f64 / all as f64;
    !reaches.is_empty()
        && share((reached, reaches.len())) >= OF_ALL
        && of_each.values().all(|&counts| share(counts) >= OF_EACH)
}

#[cfg(test)]
mod tests {
    use super::{Reach, common_minute};

    fn reaches(lasts: &[(&'static str, &'static str, f64)]) -> Vec<Reach<'static>> {
        lasts
            .iter()
            .map(|&(treatment, period, last)| Reach { treatment, period, last })
            .collect()
    }

    #[test]
    fn one_early_bag_in_ten_does_not_decide() {
        let mut day = vec![("a", "1", 24.0); 5];
        day.extend([("b", "1", 24.0); 4]);
        day.push(("b", "1", 4.0));
        assert_eq!(common_minute(&reaches(&day), 4.0, 31.0), Some(24.0));
    }

    #[test]
    fn a_short_period_decides_for_all() {
        let mut day =
            vec![("a", "1", 24.0), ("b", "1", 23.0), ("a", "3", 24.0), ("b", "3", 24.0)];
        day.extend([("a", "2", 16.0), ("b", "2", 15.0)]);
        assert_eq!(common_minute(&reaches(&day), 4.0, 31.0), Some(16.0));
    }

    #[test]
    fn a_treatment_vented_early_decides_for_all() {
        let mut day = vec![("a", "1", 24.0); 9];
        day.extend([("b", "1", 12.0), ("b", "1", 13.0)]);
        assert_eq!(common_minute(&reaches(&day), 4.0, 31.0), Some(12.0));
    }

    #[test]
    fn readings_after_the_bell_do_not_count() {
        let day = [("a", "1", 40.0), ("b", "1", 40.0)];
        assert_eq!(common_minute(&reaches(&day), 4.0, 31.0), Some(28.0));
    }

    #[test]
    fn nothing_is_common_to_no_bags() {
        assert_eq!(common_minute(&[], 4.0, 31.0), None);
        assert_eq!(common_minute(&reaches(&[("a", "1", 1.0)]), 4.0, 31.0), None);
        assert_eq!(common_minute(&reaches(&[("a", "1", 7.0)]), f64::NAN, 31.0), Some(7.0));
    }
}

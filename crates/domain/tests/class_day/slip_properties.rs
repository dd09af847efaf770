//! Slips for any bag: none where there is none, and the true height among the mends.

use crate::day::{bag, key};
use crate::slip::{FULL_MM, alike, bag_of, own, seen, series};
use barm_domain::record::Bag;
use barm_domain::slip::{
    Expected, Followed, Mend, Slip, SlipKind, WrittenIn, class_call, seen_by_group,
    seen_by_teacher,
};
use proptest::prelude::*;

fn cases() -> ProptestConfig {
    let cases = crate::size::counts(64, 256, 4096);
    ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(cases) }
}

/// Heights in whole millimeters of a bag that rises for 24 minutes by at most 1.25 mm a minute
/// and stays under its full height, each read 1 mm off at most.
fn a_true_series() -> impl Strategy<Value = Vec<f64>> {
    let slant = prop::collection::vec(-1i32..=1, 7);
    (8u32..14, prop::collection::vec(0u32..=5, 6), slant).prop_map(|(zero, steps, slant)| {
        let mut height = zero;
        let mut heights = vec![f64::from(zero)];
        for (step, slant) in steps.iter().zip(slant) {
            height += step;
            heights.push(f64::from(height) + f64::from(slant));
        }
        heights
    })
}

/// What somebody writes who reads in another unit.
fn written(mm: f64, unit: WrittenIn) -> f64 {
    let value = mm / unit.factor();
    match unit {
        // A ruler in inches is read to sixteenths, written with two places.
        WrittenIn::Inches => ((16.0 * value).round() / 16.0 * 100.0).round() / 100.0,
        WrittenIn::Eighths => value.round(),
        WrittenIn::Centimeters | WrittenIn::PointLost => value,
    }
}

proptest! {
    #![proptest_config(cases())]

    #[test]
    fn a_true_series_is_left_alone(heights in a_true_series()) {
        prop_assert_eq!(seen(&series(&heights)), []);
    }

    /// One reading in another unit is found, and what was meant is among the offers, to within
    /// what such a ruler can be read to.
    #[test]
    fn another_unit_is_seen(heights in a_true_series(), at in 1usize..7, unit in 0usize..4) {
        let unit = WrittenIn::ALL[unit];
        let wrote = written(heights[at], unit);
        // A number that is still in line with the others cannot be seen by anybody.
        let (before, after) = (heights[at - 1], wrote);
        prop_assume!(before - after > 3.0 || after > 1.2 * FULL_MM);
        let mut slipped = heights.clone();
        slipped[at] = wrote;
        let slips = seen(&series(&slipped));
        let slip = slips.iter().find(|slip| slip.reading == Some(key(at as u128)));
        let slip = slip.expect("a slip of that reading");
        let is_unit = matches!(slip.kind, SlipKind::Unit { .. });
        prop_assert!(is_unit, "{:?}", slip);
        let within = match unit {
            WrittenIn::Eighths => 25.4 / 16.0 + 0.1,
            WrittenIn::Inches => 25.4 / 32.0 + 0.3,
            WrittenIn::Centimeters | WrittenIn::PointLost => 0.1,
        };
        let offered = slip.mends.iter().any(|mend| match mend {
            Mend::Write(mm) => (mm - heights[at]).abs() <= within,
            _ => false,
        });
        prop_assert!(offered, "{} written as {wrote}: {:?}", heights[at], slip.mends);
    }

    /// A group's slips are among the teacher's whatever the forecast and other groups say, and
    /// every slip can be left as it is, looked at again or chosen.
    #[test]
    fn a_group_sees_a_part_of_what_the_teacher_sees(
        heights in prop::collection::vec(0u32..90, 1..7),
        rate in 0.0f64..2.0,
        other in a_true_series(),
    ) {
        let heights: Vec<f64> = heights.into_iter().map(f64::from).collect();
        let found = bag_of(&series(&heights));
        let sister: Bag = bag_of(&series(&other));
        let band: Vec<Expected> = (0..=24)
            .map(|minute| {
                let minute = f64::from(minute);
                let median_mm = rate * minute;
                let (low_mm, high_mm) = (0.8 * median_mm, 1.2 * median_mm);
                Expected { minute, low_mm, median_mm, high_mm }
            })
            .collect();
        let own = own(&found, bag(1, 1, 0));
        let group = seen_by_group(own);
        let sister = crate::slip::own(&sister, bag(1, 2, 0));
        let period = [alike(own, &band, false), alike(sister, &band, false)];
        let teacher = seen_by_teacher(&period, &[]).remove(0);
        // The teacher alone is told how likely it is: that rests on forecast and sisters.
        prop_assert!(group.iter().all(|slip| slip.probability.is_none()));
        let untold = |slip: &Slip| Slip { probability: None, ..slip.clone() };
        let same: Vec<Slip> = teacher[..group.len()].iter().map(untold).collect();
        prop_assert_eq!(&same[..], &group[..]);
        for slip in &teacher {
            prop_assert!(!slip.mends.is_empty());
            prop_assert!(slip.probability.is_none_or(|p| (-1e-9..=1.0 + 1e-9).contains(&p)));
        }
    }

    /// No call while the median forecast is under 3 mm, nor while a third of the bags do as
    /// expected.
    #[test]
    fn the_class_is_not_called_lightly(
        low in 0usize..8,
        fine in 0usize..8,
        rate in 0.0f64..1.5,
        readings in 1usize..6,
    ) {
        let band: Vec<Expected> = (0..=24)
            .map(|minute| {
                let median_mm = rate * f64::from(minute);
                let (low_mm, high_mm) = (0.7 * median_mm, 1.3 * median_mm);
                Expected { minute: f64::from(minute), low_mm, median_mm, high_mm }
            })
            .collect();
        let flat = bag_of(&series(&vec![8.0; readings + 1]));
        let rising: Vec<f64> =
            (0..=readings).map(|nth| 8.0 + (rate * 4.0 * nth as f64).round()).collect();
        let rising = bag_of(&series(&rising));
        let bags: Vec<Followed<'_>> = (0..low + fine)
            .map(|nth| {
                let code = bag(1, 1 + u8::try_from(nth % 4).expect("small"), nth / 4);
                alike(own(if nth < low { &flat } else { &rising }, code), &band, false)
            })
            .collect();
        let call = class_call(&bags);
        let median = rate * 4.0 * readings as f64;
        if median < 3.0 || 3 * fine >= low + fine || low < 4 {
            prop_assert_eq!(call, None);
        } else if median > 5.0 && fine == 0 {
            prop_assert!(call.is_some());
        }
    }
}

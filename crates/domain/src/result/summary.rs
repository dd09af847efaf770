//! The one summary of each bag: a curve is one observation, not six.

use super::Measured;
use super::curve::{Curve, measured};
use super::hint::Hint;
use barm_science::statistics::slope::steepest;

/// One bag in a few numbers.
#[derive(Debug, Clone, PartialEq)]
pub struct Summary {
    /// The minute whose height counts: that of the reading nearest to the common minute, or the
    /// common minute itself where the height lies between two readings.
    pub minute: f64,
    /// Rise above the bag's own zero at that minute (mm), with the reading doubt, 95 %.
    pub rise_mm: Measured,
    /// Largest slope over three readings in a row (two, if there are no more) up to that minute
    /// (mm/min).
    pub steepest_mm_per_min: Option<f64>,
    /// Minute at which the rise first reached what is readable, between two readings if need be.
    pub readable_at_min: Option<f64>,
}

/// Readings in a row over which a slope is taken.
const STRETCH: usize = 3;

impl Summary {
    /// The summary of a curve at the common minute; `interval_min` is the time between readings
    /// and `readable_mm` the smallest rise that counts.
    ///
    /// # Errors
    /// The hint that says why there is none.
    pub(super) fn of(
        curve: &Curve,
        common: f64,
        interval_min: f64,
        readable_mm: f64,
    ) -> Result<(Self, Option<Hint>), Hint> {
        let (minute, rise_mm, hint) = at(curve, common, 0.5 * interval_min)?;
        let points = curve.points(common.max(minute));
        let (minutes, rises): (Vec<f64>, Vec<f64>) = points.iter().copied().unzip();
        let points_in_row = STRETCH.min(minutes.len());
        let steepest = steepest(&minutes, &rises, points_in_row).ok().flatten();
        let summary = Self {
            minute,
            rise_mm,
            steepest_mm_per_min: steepest.map(|steepest| steepest.line.slope),
            readable_at_min: first_at(&curve.points(f64::INFINITY), readable_mm),
        };
        Ok((summary, hint))
    }
}

/// The rise at the common minute.
fn at(
    curve: &Curve,
    common: f64,
    half_interval: f64,
) -> Result<(f64, Measured, Option<Hint>), Hint> {
    if curve.readings == 0 {
        return Err(Hint::NotRead);
    }
    if curve.zero_mm.is_none() {
        return Err(Hint::NoZero);
    }
    let last = curve.last_minute().ok_or(Hint::OnlyZero)?;
    let off = |minute: f64| (minute - common).abs();
    let nearest = curve.rises.iter().min_by(|a, b| off(a.minute).total_cmp(&off(b.minute)));
    if let Some(near) = nearest.filter(|near| off(near.minute) <= half_interval + 1e-9) {
        return Ok((near.minute, near.rise_mm, None));
    }
    let points = curve.points(f64::INFINITY);
    let between = points.windows(2).find(|pair| pair[0].0 <= common && common <= pair[1].0);
    let Some(pair) = between else { return Err(Hint::StoppedEarly { last }) };
    let ((before, low), (after, high)) = (pair[0], pair[1]);
    let share = (common - before) / (after - before);
    let rise = measured(low + share * (high - low));
    Ok((common, rise, Some(Hint::Between { before, after })))
}

/// The minute at which a curve first reaches a rise, on the straight line between two readings.
fn first_at(points: &[(f64, f64)], rise_mm: f64) -> Option<f64> {
    let pair = points.windows(2).find(|pair| pair[1].1 >= rise_mm)?;
    let ((from, low), (to, high)) = (pair[0], pair[1]);
    let share = if high > low { ((rise_mm - low) / (high - low)).clamp(0.0, 1.0) } else { 1.0 };
    Some(from + share * (to - from))
}

#[cfg(test)]
mod tests {
    use super::{Hint, Summary};
    use crate::reading::Reading;
    use crate::result::curve::Curve;

    fn curve(points: &[(f64, f64)]) -> Curve {
        let readings: Vec<Reading> = points
            .iter()
            .map(|&(minute, height_mm)| Reading {
                bag: "P1-01A-C".into(),
                minute,
                height_mm,
                line: 0,
                event: None,
            })
            .collect();
        Curve::of(&readings)
    }

    fn summary(points: &[(f64, f64)], common: f64) -> Result<(Summary, Option<Hint>), Hint> {
        Summary::of(&curve(points), common, 4.0, 3.0)
    }

    #[test]
    fn the_reading_nearest_to_the_common_minute_counts() {
        let (summary, hint) =
            summary(&[(0.0, 5.0), (4.0, 6.0), (8.0, 10.0), (13.5, 19.0)], 12.0).unwrap();
        assert!((summary.minute - 13.5).abs() < 1e-9 && hint.is_none());
        assert!((summary.rise_mm.value - 14.0).abs() < 1e-9);
        // ±2 × 0.71 mm for a difference of two readings with parallax.
        assert!((summary.rise_mm.high - 15.41).abs() < 0.01, "{:?}", summary.rise_mm);
    }

    #[test]
    fn a_missed_reading_is_bridged_and_said() {
        let (summary, hint) = summary(&[(0.0, 5.0), (8.0, 9.0), (16.0, 17.0)], 12.0).unwrap();
        assert!((summary.rise_mm.value - 8.0).abs() < 1e-9);
        assert_eq!(hint, Some(Hint::Between { before: 8.0, after: 16.0 }));
    }

    #[test]
    fn bags_without_a_summary_say_why() {
        assert_eq!(summary(&[], 12.0).unwrap_err(), Hint::NotRead);
        assert_eq!(summary(&[(4.0, 5.0), (12.0, 7.0)], 12.0).unwrap_err(), Hint::NoZero);
        assert_eq!(summary(&[(0.0, 5.0)], 12.0).unwrap_err(), Hint::OnlyZero);
        let early = summary(&[(0.0, 5.0), (4.0, 6.0)], 12.0).unwrap_err();
        assert_eq!(early, Hint::StoppedEarly { last: 4.0 });
    }

    #[test]
    fn slope_and_first_readable_rise_come_from_the_curve() {
        let points = [(0.0, 5.0), (4.0, 5.0), (8.0, 11.0), (12.0, 17.0), (16.0, 18.0)];
        let (summary, _) = summary(&points, 16.0).unwrap();
        // From 5 to 17 mm in 8 min, and 3 of the 6 mm between minutes 4 and 8.
        assert!((summary.steepest_mm_per_min.unwrap() - 1.5).abs() < 1e-9);
        assert!((summary.readable_at_min.unwrap() - 6.0).abs() < 1e-9);
    }
}

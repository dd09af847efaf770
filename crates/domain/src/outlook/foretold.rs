//! The band that was foretold for a treatment, and where the average of a class left it.

use super::Curve;
use barm_science::ruler::usual_difference_sd_mm;

/// Where 8 of 10 bags of a treatment were foretold to rise, at whole minutes from the zero reading on (mm).
#[derive(Debug, Clone, PartialEq)]
pub struct Foretold {
    /// The treatment.
    pub treatment: String,
    /// Median and band. Of bags that were foretold by several forecasts the band holds all of theirs.
    band: Curve,
}

/// What was foretold for one minute (mm of rise).
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ForetoldAt {
    /// Half of all bags below.
    pub median: f64,
    /// 1 bag in 10 below.
    pub low: f64,
    /// 1 bag in 10 above.
    pub high: f64,
}

/// On which side of its band an average lies.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Side {
    /// It rose higher than foretold.
    Higher,
    /// It rose less than foretold.
    Lower,
}

/// A stretch over which an average lies outside its band.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Outside {
    /// On which side.
    pub side: Side,
    /// The first minute of it.
    pub from_min: f64,
    /// The last minute of it.
    pub until_min: f64,
    /// Whether nothing was read after it, so that it may go on.
    pub lasts: bool,
}

impl Foretold {
    /// What these forecasts of rise say together: from the lowest to the highest edge of all bands, so that at least
    /// 8 of 10 bags of each lie within. The median is that of the first. Nothing of no forecast; minutes that not all
    /// of them reach are left out.
    pub fn of<'a>(treatment: &str, rises: impl IntoIterator<Item = &'a Curve>) -> Option<Self> {
        let mut rises = rises.into_iter();
        let first = rises.next()?.clone();
        let band = rises.fold(first, |all, one| Curve {
            low: all.low.iter().zip(&one.low).map(|(a, b)| a.min(*b)).collect(),
            high: all.high.iter().zip(&one.high).map(|(a, b)| a.max(*b)).collect(),
            median: all.median,
        });
        let minutes = band.low.len().min(band.high.len()).min(band.median.len());
        (minutes > 0).then(|| Self { treatment: treatment.to_owned(), band })
    }

    /// What was foretold for that minute, between two whole minutes on a straight line; nothing where the forecast
    /// does not reach.
    pub fn at(&self, minute: f64) -> Option<ForetoldAt> {
        let of = |values: &[f64]| {
            let last = values.len().checked_sub(1)?;
            // A late reading of the last minute is compared with the last minute.
            if !(0.0..=last as f64 + 0.5).contains(&minute) {
                return None;
            }
            let below = (minute.floor() as usize).min(last);
            let above = (below + 1).min(last);
            let (a, b) = (values[below], values[above]);
            Some(a + (minute - below as f64).clamp(0.0, 1.0) * (b - a))
        };
        let Curve { median, low, high } = &self.band;
        Some(ForetoldAt { median: of(median)?, low: of(low)?, high: of(high)? })
    }

    /// The whole minutes that it reaches, each with what was foretold.
    pub fn minutes(&self) -> impl Iterator<Item = (f64, ForetoldAt)> {
        (0..).map(f64::from).map_while(|minute| Some((minute, self.at(minute)?)))
    }

    /// Where an average over bags (minute, mm of rise) lies outside the band, stretch by stretch.
    ///
    /// Only what a ruler can tell counts: an average lies outside where it is farther from the band than one rise is
    /// usually misread ([`usual_difference_sd_mm`]), so that the first millimeters, over which a band is hairline,
    /// are not called a surprise. Nor is a single reading outside, after which the average came back.
    pub fn left_by(&self, mean: &[(f64, f64)]) -> Vec<Outside> {
        let doubt = usual_difference_sd_mm();
        let side = |minute: f64, rise: f64| {
            let band = self.at(minute)?;
            if rise > band.high + doubt {
                Some(Side::Higher)
            } else if rise < band.low - doubt {
                Some(Side::Lower)
            } else {
                None
            }
        };
        let mut left: Vec<Outside> = Vec::new();
        let mut open = false;
        for &(minute, rise) in mean.iter().filter(|(minute, _)| self.at(*minute).is_some()) {
            let is = side(minute, rise);
            match (is, left.last_mut()) {
                (Some(side), Some(last)) if open && last.side == side => {
                    last.until_min = minute;
                }
                (Some(side), _) => left.push(Outside {
                    side,
                    from_min: minute,
                    until_min: minute,
                    lasts: false,
                }),
                (None, _) => {}
            }
            open = is.is_some();
        }
        if let Some(last) = left.last_mut().filter(|_| open) {
            last.lasts = true;
        }
        left.retain(|one| one.lasts || one.until_min > one.from_min);
        left
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn curve(low: f64, median: f64, high: f64) -> Curve {
        let line = |per_min: f64| (0..=20).map(|minute| per_min * f64::from(minute)).collect();
        Curve { low: line(low), median: line(median), high: line(high) }
    }

    fn foretold() -> Foretold {
        Foretold::of("Honey", [&curve(0.8, 1.0, 1.2)]).expect("a band")
    }

    fn read(rise: impl Fn(f64) -> f64) -> Vec<(f64, f64)> {
        (0..=5).map(|step| 4.0 * f64::from(step)).map(|minute| (minute, rise(minute))).collect()
    }

    #[test]
    fn between_two_minutes_lies_what_is_between() {
        let at = foretold().at(7.5).expect("foretold");
        assert!((at.median - 7.5).abs() < 1e-12 && (at.low - 6.0).abs() < 1e-12);
        assert!(foretold().at(-0.1).is_none() && foretold().at(21.0).is_none());
        assert_eq!(
            foretold().at(20.4),
            foretold().at(20.0),
            "a little late is the last minute"
        );
        assert_eq!(foretold().minutes().count(), 21);
    }

    #[test]
    fn an_average_that_stays_above_is_told_from_its_first_minute_on() {
        let left = foretold().left_by(&read(|minute| 1.5 * minute));
        assert_eq!(left.len(), 1);
        // 6 mm against 4.8 mm at minute 4: farther than one rise is misread.
        assert_eq!((left[0].side, left[0].from_min), (Side::Higher, 4.0));
        assert!(left[0].lasts && (left[0].until_min - 20.0).abs() < 1e-12);
    }

    #[test]
    fn an_average_that_comes_back_is_told_with_its_end() {
        let dips = |minute: f64| if (7.0..13.0).contains(&minute) { 2.0 } else { minute };
        let left = foretold().left_by(&read(dips));
        let told = Outside { side: Side::Lower, from_min: 8.0, until_min: 12.0, lasts: false };
        assert_eq!(left, [told]);
        // From one side to the other without a minute between them are two stretches.
        let once = |minute: f64| if (7.0..9.0).contains(&minute) { 2.0 } else { minute };
        assert!(foretold().left_by(&read(once)).is_empty(), "one reading is no stretch");
        let swings = |minute: f64| if minute < 10.0 { 2.0 * minute } else { 0.0 };
        let sides: Vec<Side> =
            foretold().left_by(&read(swings)).iter().map(|one| one.side).collect();
        assert_eq!(sides, [Side::Higher, Side::Lower]);
    }

    #[test]
    fn what_a_ruler_cannot_tell_is_no_surprise() {
        let near = |minute: f64| 1.2 * minute + 0.5;
        assert!(foretold().left_by(&read(near)).is_empty());
        assert!(foretold().left_by(&[]).is_empty());
        // Nothing is said of minutes that nobody foretold.
        assert!(foretold().left_by(&[(40.0, 90.0)]).is_empty());
    }

    #[test]
    fn bags_by_several_forecasts_have_the_band_that_holds_them_all() {
        let (one, other) = (curve(0.8, 1.0, 1.2), curve(0.5, 0.7, 1.1));
        let both = Foretold::of("Honey", [&one, &other]).expect("a band");
        let at = both.at(10.0).expect("foretold");
        assert!((at.low - 5.0).abs() < 1e-12 && (at.high - 12.0).abs() < 1e-12);
        assert!(Foretold::of("Honey", []).is_none());
    }

    proptest! {
        #[test]
        fn an_average_within_its_band_is_never_called_a_surprise(
            shares in proptest::collection::vec(0.0_f64..=1.0, 1..20),
        ) {
            let band = foretold();
            let mean: Vec<(f64, f64)> = shares.iter().enumerate().map(|(minute, share)| {
                let at = band.at(minute as f64).expect("foretold");
                (minute as f64, at.low + share * (at.high - at.low))
            }).collect();
            prop_assert!(band.left_by(&mean).is_empty());
        }

        #[test]
        fn stretches_are_in_order_and_apart(
            rises in proptest::collection::vec(-5.0_f64..40.0, 1..20),
        ) {
            let mean: Vec<(f64, f64)> =
                rises.iter().enumerate().map(|(minute, rise)| (minute as f64, *rise)).collect();
            let left = foretold().left_by(&mean);
            prop_assert!(left.iter().all(|one| one.from_min <= one.until_min));
            prop_assert!(left.windows(2).all(|two| two[0].until_min < two[1].from_min));
            let last = mean.last().map(|(minute, _)| *minute);
            for one in &left {
                prop_assert!(!one.lasts || Some(one.until_min) == last);
            }
        }
    }
}

//! From numbers to places: a scale with round steps.

/// A straight scale with its tick marks.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Scale {
    low: f64,
    high: f64,
    /// The labeled places, rising.
    pub(super) ticks: Vec<f64>,
    /// Decimals that tell the ticks apart.
    pub(super) digits: usize,
    from: f64,
    to: f64,
}

impl Scale {
    /// A scale that holds `least` to `most`, drawn between `from` and `to`, with about `wanted` steps of
    /// 1, 2 or 5 times a power of ten; its ends are ticks.
    pub(super) fn round(least: f64, most: f64, wanted: usize, from: f64, to: f64) -> Self {
        let least = if least.is_finite() { least } else { 0.0 };
        let most = if most.is_finite() { most.max(least + 1e-6) } else { least + 1.0 };
        let rough = (most - least) / wanted.max(1) as f64;
        let power = 10f64.powi(rough.log10().floor() as i32);
        let step = [1.0, 2.0, 5.0, 10.0]
            .into_iter()
            .map(|times| times * power)
            .find(|step| *step >= rough * 0.999)
            .unwrap_or(10.0 * power);
        let first = (least / step + 1e-9).floor();
        let last = (most / step - 1e-9).ceil();
        let ticks: Vec<f64> =
            (0..=(last - first) as usize).map(|k| (first + k as f64) * step).collect();
        let digits = if step >= 1.0 { 0 } else { (-step.log10().floor()) as usize };
        Self { low: first * step, high: last * step, ticks, digits, from, to }
    }

    /// As [`Self::round`], but an end that would lie more than a third of a step beyond the values is drawn in, so
    /// that no paper is wasted; the ends need not be ticks.
    pub(super) fn loose(least: f64, most: f64, wanted: usize, from: f64, to: f64) -> Self {
        let mut scale = Self::round(least, most, wanted, from, to);
        if let [first, second, ..] = scale.ticks[..] {
            let step = second - first;
            let (least, most) = (least.min(most), most.max(least));
            if least - scale.low > step / 3.0 {
                scale.low = least - step * 0.15;
            }
            if scale.high - most > step / 3.0 {
                scale.high = most + step * 0.15;
            }
            let inside = scale.low - 1e-9..=scale.high + 1e-9;
            scale.ticks.retain(|tick| inside.contains(tick));
        }
        scale
    }

    /// A scale of whole minutes from 0 to `most`; it ends at `most` and, if it can, has a tick there.
    pub(super) fn minutes(
        last_tick: f64,
        most: f64,
        wanted: usize,
        from: f64,
        to: f64,
    ) -> Self {
        let last_tick = if last_tick.is_finite() && last_tick > 0.0 { last_tick } else { 1.0 };
        let high = if most.is_finite() { most.max(last_tick) } else { last_tick };
        let wanted = wanted.max(1) as f64;
        let steps =
            [1.0, 2.0, 3.0, 4.0, 5.0, 6.0, 8.0, 10.0, 12.0, 15.0, 20.0, 30.0, 60.0, 120.0];
        let divides = |step: &f64| {
            let parts = last_tick / step;
            parts <= wanted && (parts - parts.round()).abs() < 1e-6
        };
        let step = steps.into_iter().find(divides).unwrap_or_else(|| {
            let fits = |step: &f64| last_tick / step <= wanted;
            steps.into_iter().find(fits).unwrap_or(last_tick / wanted)
        });
        let ticks = (0..=(last_tick / step + 1e-6) as usize).map(|k| k as f64 * step).collect();
        Self { low: 0.0, high, ticks, digits: 0, from, to }
    }

    /// The place of `value`.
    pub(super) fn at(&self, value: f64) -> f64 {
        self.from + (value - self.low) / (self.high - self.low) * (self.to - self.from)
    }

    /// The highest tick.
    pub(super) fn last(&self) -> f64 {
        self.ticks.last().copied().unwrap_or(self.high)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn a_period_is_ticked_at_its_readings() {
        assert_eq!(
            Scale::minutes(24.0, 31.0, 7, 0.0, 310.0).ticks,
            [0.0, 4.0, 8.0, 12.0, 16.0, 20.0, 24.0]
        );
        assert_eq!(
            Scale::minutes(25.0, 25.0, 7, 0.0, 100.0).ticks,
            [0.0, 5.0, 10.0, 15.0, 20.0, 25.0]
        );
    }

    proptest! {
        #[test]
        fn all_values_lie_between_the_ends(least in -50.0..50.0, span in 0.0..200.0, wanted in 2usize..8) {
            let scale = Scale::round(least, least + span, wanted, 0.0, 100.0);
            prop_assert!(scale.at(least) >= -1e-6 && scale.at(least + span) <= 100.0 + 1e-3);
            prop_assert!((2..=wanted + 2).contains(&scale.ticks.len()), "{:?}", scale);
            let loose = Scale::loose(least, least + span, wanted, 0.0, 100.0);
            prop_assert!(loose.at(least) >= -1e-6 && loose.at(least + span) <= 100.0 + 1e-3);
            prop_assert!(!loose.ticks.is_empty() && loose.ticks.iter().all(|tick| {
                (-1e-6..=100.0 + 1e-6).contains(&loose.at(*tick))
            }), "{:?}", loose);
        }
    }
}

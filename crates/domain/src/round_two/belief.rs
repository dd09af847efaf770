//! What is believed of treatments after round one.

use crate::outlook::{Look, OutlookError, forecast};
use crate::plan::{Plan, Treatment};
use crate::power::{Expected, Rises, expected};
use crate::prep::Worth;
use barm_science::statistics::expected_gain::Belief;
use std::collections::BTreeMap;

/// Possible days that stand for what round one left open.
const DAYS: usize = 128;

/// What one treatment's bags are expected to do in a second round.
#[derive(Debug, Clone, PartialEq)]
pub struct Foreseen {
    /// The treatment.
    pub treatment: String,
    /// Rise of a bag (mm) at the minute of comparison: 10th percentile, median, 90th percentile.
    pub rise_mm: (f64, f64, f64),
}

/// A treatment that was followed.
pub(super) struct Followed {
    rises: Rises,
    foreseen: Foreseen,
}

/// What is believed of every treatment that could be made.
pub(super) struct Beliefs {
    rises: BTreeMap<String, Rises>,
    foreseen: BTreeMap<String, Foreseen>,
}

impl Beliefs {
    /// With nothing in it yet.
    pub(super) const fn none() -> Self {
        Self { rises: BTreeMap::new(), foreseen: BTreeMap::new() }
    }

    /// Follows a treatment by what `plan` knows of its lots, a class's day among it.
    ///
    /// # Errors
    /// [`OutlookError`] says why it cannot be followed.
    pub(super) fn followed(
        plan: &Plan,
        treatment: &Treatment,
        minute: f64,
    ) -> Result<Followed, OutlookError> {
        let look = Look { draws: DAYS, ..Look::default() };
        let made: Expected = expected(plan, treatment, DAYS, look.seed)?;
        let ahead = forecast(plan, treatment, look)?.forecast;
        let at = (minute.max(0.0).round() as usize).min(ahead.last_minute() as usize);
        let band = ahead.rise_mm().band();
        let of = |values: &[f64]| values.get(at).copied().unwrap_or_default();
        let rise_mm = (of(&band.low), of(&band.median), of(&band.high));
        let foreseen = Foreseen { treatment: treatment.name.clone(), rise_mm };
        Ok(Followed { rises: made.at(minute), foreseen })
    }

    /// Takes in a treatment that was followed.
    pub(super) fn add(&mut self, followed: Followed) {
        let Followed { rises, foreseen } = followed;
        self.rises.insert(foreseen.treatment.clone(), rises);
        self.foreseen.insert(foreseen.treatment.clone(), foreseen);
    }

    /// Whether a treatment was followed.
    pub(super) fn has(&self, treatment: &str) -> bool {
        self.rises.contains_key(treatment)
    }

    /// What a treatment is expected to do.
    pub(super) fn foreseen(&self, treatment: &str) -> Option<&Foreseen> {
        self.foreseen.get(treatment)
    }

    /// How much more a treatment truly rises than another (mm), day by day, in rising order; each day as
    /// likely as the next.
    pub(super) fn apart(&self, treatment: &str, reference: &str) -> Option<Vec<f64>> {
        Some(self.rises.get(treatment)?.less(self.rises.get(reference)?))
    }

    /// What bags of one group are expected to differ by (mm), over both treatments.
    pub(super) fn bag_sd_mm(&self, treatment: &str, reference: &str) -> Option<f64> {
        let (own, other) = (self.rises.get(treatment)?, self.rises.get(reference)?);
        Some(libm::sqrt(0.5 * (own.spreads.bag + other.spreads.bag)))
    }
}

/// The same as statistics take it.
pub(super) fn draws(apart: &[f64]) -> Belief {
    Belief::Draws(apart.to_vec())
}

/// 10th percentile, median and 90th percentile of values in rising order.
pub(super) fn band(sorted: &[f64]) -> Option<(f64, f64, f64)> {
    let at = |share: f64| {
        let place = (share * sorted.len() as f64) as usize;
        sorted.get(place.min(sorted.len().checked_sub(1)?)).copied()
    };
    Some((at(0.1)?, at(0.5)?, at(0.9)?))
}

/// What the bags of a plan are worth; nothing where they cannot be prepared.
pub(super) fn worth(plan: &Plan) -> Option<Worth> {
    let prep = crate::prep::prep(plan).ok()?;
    Some(crate::prep::worth(plan, &prep))
}

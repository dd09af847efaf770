//! What a bag really does.

use super::chance::seed_of;
use crate::outlook::{OutlookError, setup_on};
use crate::plan::{Plan, PlannedBag};
use barm_science::forecast::{Span, Streams, forecast_from};

/// The rise of one bag, minute by minute.
#[derive(Debug, Clone, PartialEq)]
pub struct Truth {
    rises: Vec<f64>,
}

impl Truth {
    /// One possible course of a bag on the day that belongs to a seed, with the plan's lots in use.
    ///
    /// # Errors
    /// [`OutlookError`] if its treatment cannot be followed.
    pub fn of(
        plan: &Plan,
        bag: &PlannedBag,
        last_minute: u32,
        seed: u64,
    ) -> Result<Self, OutlookError> {
        let one = Self::many(plan, bag, last_minute, seed, 1)?;
        Ok(one.into_iter().next().unwrap_or(Self { rises: vec![0.0] }))
    }

    /// As many possible courses of a bag, each on a day of its own: the first courses of all bags
    /// belong to one day, the second to another, and so on.
    ///
    /// # Errors
    /// [`OutlookError`] if its treatment cannot be followed.
    pub(crate) fn many(
        plan: &Plan,
        bag: &PlannedBag,
        last_minute: u32,
        seed: u64,
        days: usize,
    ) -> Result<Vec<Self>, OutlookError> {
        let day = plan.period(&bag.period).and_then(|period| plan.day(&period.day));
        let day = day.ok_or(OutlookError::NoDay)?;
        let Some(treatment) = plan.treatment(&bag.treatment) else {
            // A bag of no treatment holds nothing that could rise; the check of the plan names it.
            return Ok(vec![Self { rises: vec![0.0] }; days]);
        };
        let setup = setup_on(plan, day, treatment)?;
        let span = Span { last_minute, draws: days, until_hours: 0.0 };
        let streams = Streams {
            day: seed_of(seed, &day.name),
            period: seed_of(seed, &bag.period),
            group: seed_of(seed, &format!("{}, {}", bag.period, bag.group)),
            bag: seed_of(seed, &bag.code),
        };
        let prior = plan.known.prior();
        let made = forecast_from(&setup, &span, &streams, &prior).map_err(|source| {
            OutlookError::Setup { treatment: treatment.name.clone(), source }
        })?;
        let course = |day| Self { rises: made.rise_mm().draw(day).to_vec() };
        Ok((0..days).map(course).collect())
    }

    /// Rise above the zero reading (mm) at a minute after it; at the last minute known, later.
    pub fn rise_mm(&self, minute: f64) -> f64 {
        let last = self.rises.len().saturating_sub(1);
        let minute = minute.clamp(0.0, last as f64);
        let below = minute.floor() as usize;
        let above = (below + 1).min(last);
        let at = |place: usize| self.rises.get(place).copied().unwrap_or(0.0);
        at(below) + (minute - below as f64) * (at(above) - at(below))
    }
}

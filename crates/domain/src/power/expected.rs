//! What the forecast says of a treatment's bags: how they rise from day to day, and how bags of one
//! day differ.

use crate::outlook::{OutlookError, setup_on};
use crate::plan::{Plan, Treatment};
use crate::rehearsal::seed_of;
use barm_science::forecast::{Series, Span, Streams, forecast_from};
use barm_science::ruler;
use barm_science::statistics::power::Spreads;

/// One treatment's bags on many possible days.
#[derive(Debug, Clone, PartialEq)]
pub struct Expected {
    /// Name of the treatment.
    pub treatment: String,
    /// Rises (mm) of a bag, of another of the same group, and of one of another group, day by day.
    bags: [Series; 3],
}

/// How the bags of a treatment rise up to one minute.
#[derive(Debug, Clone, PartialEq)]
pub struct Rises {
    /// Rise on each possible day (mm), the mean of the three bags.
    pub means_mm: Vec<f64>,
    /// How bags of one day and period differ (mm²), the reading doubt among it.
    pub spreads: Spreads,
    /// What is left of single bags in the variance of the means (mm²).
    left_mm2: f64,
}

/// Follows a treatment's bags on as many possible days, in the room and air of the plan's first day.
///
/// # Errors
/// [`OutlookError`] says why it cannot be followed.
pub fn expected(
    plan: &Plan,
    treatment: &Treatment,
    days: usize,
    seed: u64,
) -> Result<Expected, OutlookError> {
    let day = plan.days.first().ok_or(OutlookError::NoDay)?;
    let setup = setup_on(plan, day, treatment)?;
    let last_minute = plan.common_last_reading_min();
    if last_minute == 0 {
        return Err(OutlookError::NoTime);
    }
    let span = Span { last_minute, draws: days, until_hours: 0.0 };
    let prior = plan.known.prior();
    let own = |what: &str| seed_of(seed, &format!("power/{}/{what}", treatment.name));
    let rises = |group: &str, bag: &str| {
        let streams = Streams { day: seed, period: seed, group: own(group), bag: own(bag) };
        let made = forecast_from(&setup, &span, &streams, &prior);
        made.map(|forecast| forecast.rise_mm().clone())
            .map_err(|source| OutlookError::Setup { treatment: treatment.name.clone(), source })
    };
    let bags =
        [rises("group 1", "bag 1")?, rises("group 1", "bag 2")?, rises("group 2", "bag 3")?];
    Ok(Expected { treatment: treatment.name.clone(), bags })
}

impl Expected {
    /// How these bags rise up to a minute, or to the last one known.
    ///
    /// Half the mean square of a difference between bags of two groups is the whole variance of a
    /// day, that between bags of one group what is the bag's own.
    pub fn at(&self, minute: f64) -> Rises {
        let minute = (minute.max(0.0).round() as u32).min(self.bags[0].last_minute());
        let [one, sister, other] = [0, 1, 2].map(|bag: usize| self.bags[bag].minute(minute));
        let within = half_mean_square(&one, &sister);
        let between = half_mean_square(&one, &other);
        let doubt = ruler::usual_difference_sd_mm();
        let group = (between - within).max(0.0);
        let mean = |((a, b), c): ((&f64, &f64), &f64)| (a + b + c) / 3.0;
        Rises {
            means_mm: one.iter().zip(&sister).zip(&other).map(mean).collect(),
            spreads: Spreads { bag: within + doubt * doubt, group },
            // Two of the three share what is their group's: (2² + 1²)/3².
            left_mm2: within / 3.0 + group * 5.0 / 9.0,
        }
    }
}

fn half_mean_square(one: &[f64], other: &[f64]) -> f64 {
    let squares: f64 = one.iter().zip(other).map(|(a, b)| (a - b) * (a - b)).sum();
    0.5 * squares / one.len().max(1) as f64
}

impl Rises {
    /// How much more these bags rise than those of `reference` (mm), day by day, in rising order;
    /// what single bags leave of chance in it is drawn in.
    pub fn less(&self, reference: &Self) -> Vec<f64> {
        let days = self.means_mm.iter().zip(&reference.means_mm);
        let mut apart: Vec<f64> = days.map(|(own, other)| own - other).collect();
        let count = apart.len().max(1) as f64;
        let mean = apart.iter().sum::<f64>() / count;
        let variance = apart.iter().map(|d| (d - mean) * (d - mean)).sum::<f64>() / count;
        let left = self.left_mm2 + reference.left_mm2;
        let true_share = if variance > 0.0 { (1.0 - left / variance).max(0.0) } else { 0.0 };
        let drawn_in = libm::sqrt(true_share);
        for one in &mut apart {
            *one = mean + drawn_in * (*one - mean);
        }
        apart.sort_by(f64::total_cmp);
        apart
    }
}

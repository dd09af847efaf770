//! What follows from the plan's own minutes: phases, and when bags are read after their zero reading.

use super::{Phase, PhaseKind};
use crate::plan::{Period, Plan};

/// Share of clearing in which bags are vented, before they are emptied (own rule: 2 of 6 minutes).
const VENTING: f64 = 1.0 / 3.0;

pub(super) fn phases(plan: &Plan, period: &Period) -> Vec<Phase> {
    let bell = period.length_min.max(0.0);
    let clearing = (bell - plan.timing.clearing_min).clamp(0.0, bell);
    let zero = plan.timing.mixing_min.clamp(0.0, clearing);
    let cleaning = clearing + VENTING * (bell - clearing);
    let ends = [
        (PhaseKind::SetUp, zero),
        (PhaseKind::Read, clearing),
        (PhaseKind::Vent, cleaning),
        (PhaseKind::Clean, bell),
    ];
    let mut from_min = 0.0;
    let phase = |(kind, to_min)| {
        let phase = Phase { kind, from_min, to_min };
        from_min = to_min;
        phase
    };
    ends.into_iter().map(phase).collect()
}

/// Planned minutes: multiples of the interval in whole minutes, up to the last reading of the plan
/// or of the day. A last reading of the day's own that lies between two is the last.
pub(super) fn minutes(plan: &Plan, period: &Period, of_day: Option<u32>) -> Vec<u32> {
    let timing = plan.timing;
    // A whole period at most, so that no odd number makes an endless list.
    let window = (period.length_min - timing.mixing_min - timing.clearing_min).min(1440.0);
    let of_plan = plan.last_reading_min(period).min(1440);
    let last = match of_day {
        Some(minute) if window >= 0.0 => minute.min(window as u32),
        _ => of_plan,
    };
    let step = timing.interval_min.max(0.5);
    let multiples = (1..).map(|n| (f64::from(n) * step + 1e-9) as u32);
    let mut minutes: Vec<u32> =
        multiples.take_while(|minute| *minute <= last).filter(|minute| *minute > 0).collect();
    if of_day.is_some() && last > 0 {
        minutes.push(last);
    }
    minutes.dedup();
    minutes
}

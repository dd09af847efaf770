//! Days whose room or air is another than on the plan's first.

use super::Treated;
use crate::bench;
use crate::plan::{Day, Plan, PlannedBag, Treatment};

/// What bags stand in that no forecast for the plan's first day speaks of: each treatment with
/// each day on which it has a bag in another room temperature or air pressure. Days alike are
/// named once.
pub fn further_days(plan: &Plan) -> Vec<(&Treatment, &Day)> {
    let mut found: Vec<(&Treatment, &Day)> = Vec::new();
    let Some(first) = plan.days.first() else { return found };
    for bag in &plan.bags {
        let (Some(day), Some(treatment)) = (day_of(plan, bag), plan.treatment(&bag.treatment))
        else {
            continue;
        };
        let known = |(named, other): &(&Treatment, &Day)| {
            named.name == treatment.name && is_alike(other, day)
        };
        if !is_alike(first, day) && !found.iter().any(known) {
            found.push((treatment, day));
        }
    }
    found
}

/// The day of a bag's period.
fn day_of<'a>(plan: &'a Plan, bag: &PlannedBag) -> Option<&'a Day> {
    plan.day(&plan.period(&bag.period)?.day)
}

fn is_alike(a: &Day, b: &Day) -> bool {
    air(a).is_some_and(|air_of_a| Some(air_of_a) == air(b))
}

/// Room temperature (°C) and air pressure (Pa) of a day, bit by bit.
fn air(day: &Day) -> Option<(u64, u64)> {
    let pressure_pa = bench::pressure(day).ok()?;
    Some((day.room_celsius.to_bits(), pressure_pa.to_bits()))
}

impl Treated {
    /// The forecast that speaks of a bag: of its treatment, in the room and air of its own day.
    pub fn of_bag<'a>(all: &'a [Self], plan: &Plan, bag: &PlannedBag) -> Option<&'a Self> {
        let own = air(day_of(plan, bag)?)?;
        all.iter().find(|treated| {
            let setup = &treated.setup;
            treated.treatment == bag.treatment
                && (setup.room_celsius.to_bits(), setup.pressure_pa.to_bits()) == own
        })
    }
}

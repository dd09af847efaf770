//! What going on after a stop would change, shown before it is done.

use crate::desk::room::Scene;
use crate::desk::room::benches::{Benches, group_name};
use crate::desk::room::hour::{Hour, Stage};
use crate::desk::wording::listed;
use crate::desk::{Wording, say};
use barm_domain::board::running_minutes;
use barm_domain::plan::Period;
use jiff::Timestamp;

/// The last readings if the clocks went on now.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Replan {
    /// Since when all clocks stand.
    pub(crate) since: Timestamp,
    /// What would be lost, in words.
    pub(crate) says: String,
    /// The last reading that every bench still reaches, if it is earlier than planned.
    pub(crate) shared: Option<u32>,
}

/// Only while the clocks stand.
pub(super) fn replan(
    scene: &Scene<'_>,
    w: Wording,
    period: &Period,
    hour: &Hour,
    benches: &Benches,
) -> Option<Replan> {
    let Stage::Standing(since) = hour.stage else { return None };
    let standing = scene.ledger.standing();
    let day = standing.periods.get(&period.name)?;
    let left = benches.schedule.clearing_min() - hour.now_min?;
    let planned = benches.schedule.last;
    let mut reaches: Vec<(u32, u32)> = Vec::new();
    for bench in &benches.bags {
        let bag = standing.bags.get(&bench.code);
        let Some(zero) = bag.and_then(|bag| bag.zero.as_ref()) else { continue };
        let own = running_minutes(day, zero.measured, hour.now) + left;
        let minutes = benches.schedule.minutes.iter().rev();
        let last =
            minutes.copied().find(|minute| f64::from(*minute) <= own + 0.02).unwrap_or(0);
        match reaches.iter_mut().find(|(group, _)| *group == bench.group) {
            Some((_, least)) => *least = last.min(*least),
            None => reaches.push((bench.group, last)),
        }
    }
    reaches.sort_unstable();
    let least = reaches.iter().map(|(_, last)| *last).min();
    let (says, shared) = match least {
        None => (say!(w, "replan-none"), None),
        Some(least) if least >= planned => {
            (say!(w, "replan-all", minute = planned.to_string()), None)
        }
        Some(0) => (say!(w, "replan-some-none"), None),
        Some(least) => {
            let short: Vec<String> = reaches
                .iter()
                .filter(|(_, last)| *last < planned)
                .map(|(group, last)| format!("{} ({last} min)", group_name(*group)))
                .collect();
            let (planned, minute) = (planned.to_string(), least.to_string());
            let says = if short.len() == reaches.len() {
                say!(w, "replan-nobody", planned = planned, minute = minute)
            } else {
                let groups = listed(w, &short);
                say!(w, "replan-not-all", planned = planned, groups = groups, minute = minute)
            };
            (says, Some(least))
        }
    };
    Some(Replan { since, says, shared })
}

//! The hour of one period on a page.

use super::super::clock::Hours;
use super::super::hour::Hour;
use super::super::{looks, period_number};
use super::{hazards, steps};
use crate::desk::print::Job;
use barm_documents::chart::Estimate;
use barm_documents::sheet::{GroupTimes, Hazard, Hoped, Lettered, RunSheet};
use barm_domain::code::BagCode;
use barm_domain::outlook::Entry;
use barm_domain::plan::{Period, Plan, PlannedBag};
use barm_domain::prep::Prep;
use barm_domain::schedule::{Schedule, schedule};

/// A sheet for each period that is printed.
pub(super) fn run_sheets(
    job: &Job<'_>,
    prep: &Prep,
    entries: &[Entry],
    all: &[Hazard],
) -> Vec<RunSheet> {
    job.periods().map(|period| one(job, period, prep, entries, all)).collect()
}

fn one(
    job: &Job<'_>,
    period: &Period,
    prep: &Prep,
    entries: &[Entry],
    all: &[Hazard],
) -> RunSheet {
    let (plan, hours) = (job.plan, Hours::from(job.wish.size));
    let schedule = schedule(plan, period, None);
    let hour = Hour::of(plan, period, &schedule);
    let bags: Vec<&PlannedBag> =
        plan.bags.iter().filter(|bag| bag.period == period.name).collect();
    let own: Vec<&Entry> = own(&bags, entries);
    let place =
        plan.periods.iter().position(|other| other.name == period.name).unwrap_or(0) + 1;
    RunSheet {
        period: format!("Period {}", period.name),
        sign: period_number(plan, &period.name).unwrap_or(place),
        summary: format!(
            "{}, {} groups, {} bags",
            hours.between(period.start, period.length_min),
            period.groups,
            bags.len()
        ),
        length: period.length_min,
        stretches: hour.stretches(),
        tight: hour.tight(hours, period),
        steps: steps::steps(
            &steps::Told { plan, period, schedule: &schedule, hour, hours },
            prep,
            &own,
        ),
        minutes: std::iter::once(0)
            .chain(schedule.minutes.iter().copied())
            .map(|m| m.to_string())
            .collect(),
        rows: rows(plan, period, &schedule, &bags, hours),
        hoped: own.iter().map(|entry| hoped(plan, entry)).collect(),
        heeds: hazards::in_the_hour(plan, period, all, &own),
        cautions: all.len(),
    }
}

/// The forecasts of the treatments that a period makes, each once, the highest first.
fn own<'a>(bags: &[&PlannedBag], entries: &'a [Entry]) -> Vec<&'a Entry> {
    let mut own: Vec<&Entry> = Vec::new();
    for entry in entries {
        let here = bags.iter().any(|bag| bag.treatment == entry.treatment);
        if here && own.iter().all(|other| other.treatment != entry.treatment) {
            own.push(entry);
        }
    }
    own.sort_by(|a, b| b.rise_mm.last().0.total_cmp(&a.rise_mm.last().0));
    own
}

fn hoped(plan: &Plan, entry: &Entry) -> Hoped {
    let (value, low, high) = entry.rise_mm.last();
    Hoped {
        name: entry.treatment.clone(),
        look: looks::look(plan, &entry.treatment),
        rise: Estimate { value, low, high },
    }
}

/// A row for each group that has bags, in the order in which they start.
fn rows(
    plan: &Plan,
    period: &Period,
    hour: &Schedule,
    bags: &[&PlannedBag],
    hours: Hours,
) -> Vec<GroupTimes> {
    let row = |&(group, start): &(u32, f64)| {
        let mut own: Vec<&&PlannedBag> = bags.iter().filter(|bag| bag.group == group).collect();
        own.sort_by_key(|bag| bag.place);
        let minutes = std::iter::once(0).chain(hour.minutes.iter().copied());
        (!own.is_empty()).then(|| GroupTimes {
            group: group_name(plan, period, group),
            bags: own.iter().map(|bag| lettered(plan, bag)).collect(),
            times: minutes
                .map(|m| hours.at_minute(period.start, start + f64::from(m)))
                .collect(),
        })
    };
    hour.starts.iter().filter_map(row).collect()
}

fn lettered(plan: &Plan, bag: &PlannedBag) -> Lettered {
    let code = bag.code.parse::<BagCode>().ok();
    Lettered {
        letter: code.map_or_else(String::new, |code| code.letter().to_string()),
        look: looks::look(plan, &bag.treatment),
    }
}

/// A group by its word or number.
pub(super) fn group_name(plan: &Plan, period: &Period, group: u32) -> String {
    if group == 0 {
        return "You".to_owned();
    }
    let settings = plan.group_settings.iter();
    let own = settings.filter(|set| set.period == period.name && set.group == group);
    own.filter_map(|set| set.label.clone()).next().unwrap_or_else(|| group.to_string())
}

//! Held bags on the bag list.

use super::carry::Carry;
use super::held::{Held, listed};
use crate::plan::{CONTROLS, GroupSetting, Plan, PlannedBag};

/// Puts a held bag on the list as it was sealed, with its period.
pub(super) fn put(carry: &mut Carry, newest: &Plan, held: &Held<'_>) {
    let Held { code, version, plan: old, bag } = *held;
    let name = carry.name(version, &bag.treatment);
    let treatment = name.cloned().unwrap_or_else(|| bag.treatment.clone());
    let mut question = bag.question.clone();
    if question != CONTROLS {
        question = carry.question(version, old, &question);
    }
    if !carry.answers(&question, &treatment) {
        carry.lend(&question, &treatment);
    }
    if !carry.answers(&question, &treatment) {
        let home = carry.plan.treatments().find(|(_, own)| own.name == treatment);
        question = home.map_or(question, |(home, _)| home.to_owned());
    }
    let now =
        listed(newest, code).filter(|now| (&now.period, now.group) == (&bag.period, bag.group));
    let (place, replicate) =
        now.map_or((bag.place, bag.replicate), |now| (now.place, now.replicate));
    let new = PlannedBag { question, treatment, place, replicate, ..bag.clone() };
    let plan = &mut carry.plan;
    period(plan, old, bag);
    plan.retired_codes.retain(|retired| *retired != new.code);
    plan.bags.retain(|own| own.code != new.code);
    let position =
        |bag: &PlannedBag| plan.periods.iter().position(|own| own.name == bag.period);
    let rank = |bag: &PlannedBag| (position(bag), bag.group, bag.place, bag.code.clone());
    let at = plan.bags.partition_point(|own| rank(own) < rank(&new));
    plan.bags.insert(at, new);
}

/// Sees to it that the plan has the period and the group of a held bag.
fn period(plan: &mut Plan, old: &Plan, bag: &PlannedBag) {
    let there = plan.periods.iter_mut().find(|period| period.name == bag.period);
    let new = match there {
        Some(period) if bag.group <= period.groups => return,
        Some(period) => {
            period.groups = bag.group;
            false
        }
        None => true,
    };
    let at = old.periods.iter().position(|period| period.name == bag.period);
    if let Some(at) = at.filter(|_| new) {
        let period = old.periods[at].clone();
        let day = old.days.iter().find(|day| day.name == period.day);
        if plan.days.iter().all(|day| day.name != period.day) {
            plan.days.extend(day.cloned());
        }
        plan.periods.insert(at.min(plan.periods.len()), period);
    }
    let own = |setting: &&GroupSetting| {
        setting.period == bag.period && (new || setting.group == bag.group)
    };
    let settings: Vec<_> = old.group_settings.iter().filter(own).cloned().collect();
    for setting in settings {
        let there = |known: &GroupSetting| {
            (&known.period, known.group) == (&setting.period, setting.group)
        };
        if !plan.group_settings.iter().any(there) {
            plan.group_settings.push(setting);
        }
    }
}

//! Roles at the benches: how many are here, and who does what. No names.

use crate::desk::room::Scene;
use barm_domain::plan::Period;

/// One group.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct RoleRow {
    /// Its number.
    pub(crate) group: u32,
    /// Its own label.
    pub(crate) label: Option<String>,
    /// Students counted.
    pub(crate) here: Option<u32>,
    /// Students by the plan, about.
    pub(crate) planned: u32,
    /// Who does what with so many.
    pub(crate) says: &'static str,
    /// Whether it works with numbers that are not its own.
    pub(crate) stand_in: bool,
}

/// All groups of a period.
pub(super) fn roles(scene: &Scene<'_>, period: &Period) -> Vec<RoleRow> {
    let planned = period.students.div_ceil(period.groups.max(1));
    let row = |group| {
        let standing = scene.ledger.standing().groups.get(&(period.name.clone(), group));
        let here = standing.and_then(|standing| standing.here);
        let mut settings = scene.plan.group_settings.iter();
        let own = settings.find(|own| own.period == period.name && own.group == group);
        RoleRow {
            group,
            label: own.and_then(|own| own.label.clone()),
            here,
            planned,
            says: dealt(here.unwrap_or(planned)),
            stand_in: standing.is_some_and(|standing| standing.stand_in.is_some()),
        }
    };
    (1..=period.groups).map(row).collect()
}

/// Four roles, dealt to so many.
pub(super) const fn dealt(students: u32) -> &'static str {
    match students {
        0 => "Nobody is here. Hand their bags to a neighbor, or let them stand in later.",
        1 => "One: joins a neighbor group. Read both sets of bags in turn.",
        2 => "Two: one reads and keeps time, one writes and fetches.",
        3 => "Three: one reads, one writes and keeps time, one fetches.",
        4 => "Four: one reads, one keeps time, one writes, one fetches.",
        _ => {
            "Five or more: one reads, one keeps time, one writes, one fetches, the others check \
              the ruler."
        }
    }
}

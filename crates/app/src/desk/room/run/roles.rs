//! Roles at the benches: how many are here, and who does what. No names.

use crate::desk::room::Scene;
use crate::desk::room::opened::has_class_data;
use crate::desk::{Wording, say};
use barm_domain::plan::Period;
use barm_domain::record::Lent;

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
    pub(crate) says: String,
    /// What it works with in the place of its own numbers.
    pub(crate) stand_in: Option<Lent>,
    /// Whether there are class data for it: another group's bag made alike that was read.
    pub(crate) class_data: bool,
    /// Whether it has bags, of which a run can be drawn.
    pub(crate) has_bags: bool,
}

/// All groups of a period.
pub(super) fn roles(scene: &Scene<'_>, w: Wording, period: &Period) -> Vec<RoleRow> {
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
            says: dealt(w, here.unwrap_or(planned)),
            stand_in: standing.and_then(|standing| standing.stand_in).map(|given| given.lent),
            class_data: has_class_data(scene, &period.name, group),
            has_bags: scene
                .plan
                .bags
                .iter()
                .any(|bag| bag.period == period.name && bag.group == group),
        }
    };
    (1..=period.groups).map(row).collect()
}

/// Four roles, dealt to so many.
fn dealt(w: Wording, students: u32) -> String {
    match students {
        0 => say!(w, "roles-0"),
        1 => say!(w, "roles-1"),
        2 => say!(w, "roles-2"),
        3 => say!(w, "roles-3"),
        4 => say!(w, "roles-4"),
        _ => say!(w, "roles-5"),
    }
}

//! Groups with nothing to make, with more bags than they can read, or with nobody in them.

use crate::finding::{Finding, Severity};
use crate::plan::{Period, Plan};
use crate::schedule::READ_MIN;

const READ: &str = "common practice, no source: half a minute for one reading of one bag";
/// So many groups are named; of more, only how many.
const NAMED: usize = 4;

pub(super) fn findings(plan: &Plan) -> Vec<Finding> {
    let periods = plan.periods.iter().enumerate();
    let thin = periods.clone().filter_map(|(p, period)| thin(p, period));
    // Without a list nobody has a bag yet, which is said elsewhere.
    if plan.bags.is_empty() {
        return thin.collect();
    }
    let others = periods.flat_map(|(p, period)| {
        idle(plan, p, period).into_iter().chain(crowded(plan, p, period))
    });
    thin.chain(others).collect()
}

/// Fewer students than groups: mostly the size of one group was written for that of the class.
fn thin(p: usize, period: &Period) -> Option<Finding> {
    let (students, groups) = (period.students, period.groups);
    (students < groups).then(|| {
        let message = format!(
            "Period “{}” has {students} students in {groups} groups, fewer than one a group.",
            period.name
        );
        let fix = "Write how many students the whole class has, or plan fewer groups.";
        let finding = Finding::new(Severity::Warning, "thin-groups", message, fix);
        finding.at(format!("period[{p}].students"))
    })
}

fn bags(plan: &Plan, period: &Period, group: u32) -> usize {
    let own = plan.bags.iter().filter(|bag| bag.period == period.name && bag.group == group);
    own.count()
}

fn idle(plan: &Plan, p: usize, period: &Period) -> Option<Finding> {
    let idle: Vec<String> = (1..=period.groups)
        .filter(|group| bags(plan, period, *group) == 0)
        .map(|group| group.to_string())
        .collect();
    let name = &period.name;
    let message = match &idle[..] {
        [] => return None,
        [one] if period.groups > 1 => {
            format!("Group {one} of period “{name}” has no bag to make.")
        }
        all if all.len() == period.groups as usize => {
            format!("No group of period “{name}” has a bag to make.")
        }
        all if all.len() > NAMED => {
            format!("{} groups of period “{name}” have no bag to make.", all.len())
        }
        all => {
            format!("Groups {} of period “{name}” have no bag to make.", all.join(", "))
        }
    };
    let fix =
        "Ask for more bags of each kind and have the bag list written, or plan fewer groups.";
    let finding = Finding::new(Severity::Warning, "idle-group", message, fix);
    Some(finding.at(format!("period[{p}].groups")))
}

/// The group of a period with most bags, if they cannot all be read before they are due again.
fn crowded(plan: &Plan, p: usize, period: &Period) -> Option<Finding> {
    let interval = plan.timing.interval_min;
    let group = (0..=period.groups).rev().max_by_key(|group| bags(plan, period, *group))?;
    let count = bags(plan, period, group);
    let most = (interval / READ_MIN + 1e-9).floor().max(0.0) as usize;
    (count > most).then(|| {
        let who = match group {
            0 => "The teacher's bench".to_owned(),
            group => format!("Group {group}"),
        };
        let message = format!(
            "{who} of period “{}” has {count} bags, and one can read {most} in {} min.",
            period.name,
            (interval * 10.0).round() / 10.0
        );
        let fix = "Give it fewer bags, plan more groups, or read less often.";
        let first = plan.bags.iter().position(|b| b.period == period.name && b.group == group);
        let at = first.map_or(format!("period[{p}].groups"), |bag| format!("bag[{bag}].group"));
        Finding::new(Severity::Warning, "crowded-group", message, fix).at(at).says(READ)
    })
}

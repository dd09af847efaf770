//! A period with as many bags in each group as a test wants.

use barm_domain::code::BagCode;
use barm_domain::plan::{CONTROLS, Control, Difference, Period, Plan, PlannedBag};
use barm_domain::schedule::{Course, Stop, Task, Turn, Upset, course};
use barm_domain::testing::{base_plan, period, question, treatment};

/// A plan with one period: so many bags at the teacher's bench, then in each group. 45 minutes, 14 to mix, 6
/// to clear, a reading every 4 minutes, water of 40 °C.
pub(crate) fn plan(bench: usize, groups: &[usize]) -> Plan {
    let mut bags = Vec::new();
    for (group, made) in (0..).zip(std::iter::once(&bench).chain(groups)) {
        for (code, place) in BagCode::all_of(1, group).take(*made).zip(1..) {
            let kinds = ["sugar", "starch", "honey", "syrup"];
            bags.push(PlannedBag {
                code: code.to_string(),
                period: "1".into(),
                group: u32::from(group),
                place,
                question: if group == 0 { CONTROLS } else { "q" }.into(),
                treatment: if group == 0 { "nothing" } else { kinds[place as usize % 4] }
                    .into(),
                replicate: place,
            });
        }
    }
    let kinds = ["sugar", "starch", "honey", "syrup"];
    let treatments = kinds.map(|name| treatment(name, Difference::default()));
    let nothing = treatment("nothing", Difference::default());
    Plan {
        periods: vec![Period { groups: groups.len() as u32, ..period("1") }],
        questions: vec![question("q", treatments.to_vec())],
        controls: vec![Control { treatment: nothing, per_period: bench as u32 }],
        bags,
        ..base_plan()
    }
}

pub(crate) fn as_planned(plan: &Plan) -> Course {
    course(plan, &plan.periods[0], &Upset::default())
}

pub(crate) fn stopped(plan: &Plan, from_min: f64, for_min: f64) -> Course {
    let stop = Some(Stop { from_min, for_min, done: None });
    course(plan, &plan.periods[0], &Upset { stop, length_min: None })
}

pub(crate) fn shortened(plan: &Plan, length_min: f64) -> Course {
    let upset = Upset { length_min: Some(length_min), stop: None };
    course(plan, &plan.periods[0], &upset)
}

/// Waves as minute and groups.
pub(crate) fn waves(course: &Course) -> Vec<(f64, Vec<u32>)> {
    course.waves.iter().map(|wave| (wave.at_min, wave.groups.clone())).collect()
}

/// Turns at the meters.
pub(crate) fn runs(course: &Course) -> Vec<&Turn> {
    course.turns.iter().filter(|turn| matches!(turn.task, Task::Meter { .. })).collect()
}

/// When the first bag of a group is read, with the planned minutes.
pub(crate) fn readings(course: &Course, group: u32) -> Vec<(u32, f64)> {
    let own = course.turns.iter().filter(|turn| turn.group == group && turn.place == 1);
    own.filter_map(|turn| match turn.task {
        Task::Reading { planned } => Some((planned, turn.at_min)),
        _ => None,
    })
    .collect()
}

//! A plan as a day to be shared out.

use super::day::{Arm, Day, Group};
use super::rule::Rule;
use crate::plan::{Period, Plan, Question};
use crate::schedule::{READ_MIN, RUN_MIN};

/// Most bags that one group makes: more cannot be read in time by one group.
pub const MOST_BAGS: u32 = 8;

/// How many bags a group makes unless it says otherwise: its control, and its share of the bags that
/// the plan asks for; at least 2, at most 6.
pub fn usual_bags(plan: &Plan) -> u32 {
    let asked: u32 = plan
        .questions
        .iter()
        .flat_map(|q| q.treatments.iter().map(|t| t.replicates.unwrap_or(q.replicates)))
        .sum();
    let groups: u32 = plan.periods.iter().map(|period| period.groups).sum();
    (1 + asked.div_ceil(groups.max(1))).clamp(2, 6)
}

/// The day of a plan with all its groups, none of which has a wish yet; every group makes `bags`.
pub(super) fn day(plan: &Plan, bags: u32) -> Day {
    let treatments: Vec<String> = plan.treatments().map(|(_, t)| t.name.clone()).collect();
    let place = |name: &str| treatments.iter().position(|known| known == name);
    let mut day = Day {
        periods: plan.periods.iter().map(|period| period.name.clone()).collect(),
        bench: plan
            .controls
            .iter()
            .filter(|control| control.per_period > 0)
            .filter_map(|control| Some((place(&control.treatment.name)?, control.per_period)))
            .collect(),
        ..Day::default()
    };
    for question in &plan.questions {
        let arms = arms(plan, question, day.questions.len(), &place, &day.bench);
        if !arms.is_empty() {
            day.questions.push(question.id.clone());
            day.arms.extend(arms);
        }
    }
    for (period, planned) in plan.periods.iter().enumerate() {
        day.groups.extend((1..=planned.groups).map(|number| Group {
            period,
            number,
            bags,
            own_bags: false,
            ranks: Vec::new(),
        }));
        day.rules.extend(tools(plan, period, planned));
    }
    day.treatments = treatments;
    day
}

/// The treatments of a question, parted by what they are compared with.
fn arms(
    plan: &Plan,
    question: &Question,
    number: usize,
    place: &impl Fn(&str) -> Option<usize>,
    bench: &[(usize, u32)],
) -> Vec<Arm> {
    let mut arms: Vec<Arm> = Vec::new();
    for treatment in plan.answering(question) {
        let reference = plan.beside(question, treatment).and_then(place);
        // A treatment that others are compared with is made as their reference.
        if reference.is_none() && plan.is_reference(question, &treatment.name) {
            continue;
        }
        let Some(own) = place(&treatment.name) else { continue };
        let is_own = question.treatments.iter().any(|one| one.name == treatment.name);
        let asked =
            if is_own { treatment.replicates.unwrap_or(question.replicates) } else { 0 };
        match arms.iter_mut().find(|arm| arm.reference == reference) {
            Some(arm) => {
                arm.treatments.push(own);
                arm.asked.push(asked);
            }
            None => arms.push(Arm {
                question: number,
                treatments: vec![own],
                asked: vec![asked],
                reference,
                shared: bench.iter().any(|(t, _)| Some(*t) == reference),
            }),
        }
    }
    arms
}

/// How many bags of a period its rulers and meters get round, as far as the plan counts them.
fn tools(plan: &Plan, period: usize, planned: &Period) -> Vec<Rule> {
    let turns = |minutes: f64, each: f64| (minutes / each + 1e-9).floor().max(0.0) as u32;
    let named = |count: u32, one: &str| match count {
        1 => format!("1 {one}"),
        count => format!("{count} {one}s"),
    };
    let rulers = plan.equipment.rulers.map(|rulers| Rule::Tools {
        period,
        tools: named(rulers, "ruler"),
        bags: rulers.saturating_mul(turns(plan.timing.interval_min, READ_MIN)),
    });
    let window = f64::from(plan.last_reading_min(planned));
    // A plan without a meter meters no bag.
    let meters = plan.equipment.meters.filter(|meters| *meters > 0);
    let meters = meters.map(|meters| Rule::Tools {
        period,
        tools: named(meters, "meter"),
        bags: meters.saturating_mul(turns(window, RUN_MIN)),
    });
    rulers.into_iter().chain(meters).collect()
}

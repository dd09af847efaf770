//! Plans of any size, and their lists.

use barm_domain::bag_list::{BagListError, write};
use barm_domain::plan::{Control, Difference, Period, Plan, Question, Recipe, Treatment};
use barm_domain::testing::{self, base_plan, period, question};
use proptest::prelude::*;
use std::collections::BTreeSet;

pub(crate) fn treatment(name: &str, beside: Option<String>) -> Treatment {
    Treatment { beside, ..testing::treatment(name, Difference::default()) }
}

/// A plan with so many groups in each period, and questions of `(treatments, replicates,
/// reference)`: the reference is a shared control (0), the first treatment (1), or none (2); the
/// last question compares each treatment with one of the first question's (3).
pub(crate) fn plan(groups: &[u32], questions: &[(usize, u32, u8)], controls: &[u32]) -> Plan {
    let periods = groups.iter().zip(1..).map(|(&groups, number)| Period {
        students: groups * 3,
        groups,
        ..period(&number.to_string())
    });
    let questions = questions.iter().enumerate().map(|(q, &(count, replicates, kind))| {
        let name = |t: usize| format!("treatment {q}.{t}");
        let treatments = (0..count)
            .map(|t| treatment(&name(t), (kind == 3 && q > 0).then(|| "treatment 0.0".into())))
            .collect();
        Question {
            reference: match kind {
                0 => Some("control 0".into()),
                1 => Some(name(0)),
                _ => None,
            },
            replicates,
            ..question(&format!("question {q}"), treatments)
        }
    });
    let controls = controls.iter().enumerate().map(|(c, &per_period)| Control {
        treatment: treatment(&format!("control {c}"), None),
        per_period,
    });
    let base = base_plan();
    Plan {
        days: Vec::new(),
        periods: periods.collect(),
        base: Recipe { yeast: None, ..base.base },
        questions: questions.collect(),
        controls: controls.collect(),
        ..base
    }
}

pub(crate) fn some_plan() -> impl Strategy<Value = Plan> {
    let groups = prop_oneof![
        prop::collection::vec(1u32..=10, 1..=5),
        (1u32..=10, 1usize..=5).prop_map(|(groups, periods)| vec![groups; periods]),
    ];
    let questions = prop::collection::vec((1usize..=5, 1u32..=9, 0u8..=3), 1..=3);
    let controls = prop::collection::vec(1u32..=3, 1..=3);
    (groups, questions, controls).prop_map(|(g, q, c)| plan(&g, &q, &c))
}

pub(crate) fn cases() -> ProptestConfig {
    let cases = crate::size::counts(64, 512, 4096);
    ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(cases) }
}

/// The list of a plan; `None` where it has more bags than codes, which only a crowded group can be.
pub(crate) fn listed(mut plan: Plan) -> Option<Plan> {
    match write(&plan) {
        Ok(list) => {
            plan.bags = list.bags;
            plan.retired_codes = list.retired;
            Some(plan)
        }
        Err(BagListError::NoCodeLeft { .. }) => {
            let groups: u32 = plan.periods.iter().map(|period| period.groups).sum();
            let dealt = plan.questions.iter().map(|q| q.replicates * q.treatments.len() as u32);
            let dealt: u32 = dealt.sum();
            let used = plan.bags.len() + plan.retired_codes.len();
            assert!(
                dealt + groups > 5 * groups || used > 0,
                "{dealt} bags over {groups} groups have codes enough"
            );
            None
        }
        Err(error) => panic!("{error}"),
    }
}

pub(crate) fn codes(plan: &Plan) -> BTreeSet<String> {
    plan.bags.iter().map(|bag| bag.code.clone()).collect()
}

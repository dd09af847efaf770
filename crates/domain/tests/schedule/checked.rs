//! What a check says about meters is what the schedule says.

use crate::school::{as_planned, plan, runs};
use barm_domain::check::check;
use barm_domain::finding::{Finding, Severity};
use barm_domain::plan::{Circumstance, Plan};
use barm_domain::schedule::at_meter;
use std::collections::BTreeSet;

fn few_meters(plan: &Plan) -> Option<Finding> {
    check(plan, &[]).into_iter().find(|finding| finding.code == "few-meters")
}

/// Ten groups, three bags each, and a control: 31 bags. One meter has three runs from 38:30 on, when the
/// first bags are read, to 41:40: the control's, and those of two of three kinds.
#[test]
fn one_meter_sees_some_kinds_only() {
    let mut plan = plan(1, &[3; 10]);
    plan.equipment.meters = Some(1);
    let nothing = few_meters(&plan).expect("nothing is compared");
    assert_eq!(nothing.severity, Severity::Warning);
    assert!(nothing.message.contains("no two of them are compared"), "{}", nothing.message);
    plan.questions[0].reference = Some("nothing".into());
    let some = few_meters(&plan).expect("a kind has no turn");
    assert_eq!(some.severity, Severity::Note);
    assert_eq!(
        some.message,
        "With one meter, 3 of the 31 bags of period “1” have a turn after the last reading; 1 of 4 \
         kinds of bag has none."
    );
    // Four meters take a control and three kinds at once.
    plan.equipment.meters = Some(4);
    assert_eq!(few_meters(&plan), None);
}

#[test]
fn without_a_meter_or_on_a_substitutes_day_there_is_nothing_to_say() {
    let mut plan = plan(1, &[3; 10]);
    for meters in [None, Some(0)] {
        plan.equipment.meters = meters;
        assert_eq!((few_meters(&plan), at_meter(&plan, &plan.periods[0])), (None, None));
    }
    plan.equipment.meters = Some(1);
    plan.circumstances = vec![Circumstance::Substitute];
    assert_eq!(few_meters(&plan), None);
}

#[test]
fn a_finding_there_is_just_where_the_course_leaves_a_kind_out() {
    for (bench, groups) in [(0, 1), (1, 2), (2, 5), (1, 10)] {
        for meters in 1..6 {
            for clearing in [3.0, 6.0, 12.0] {
                let mut plan = plan(bench, &vec![4; groups]);
                plan.equipment.meters = Some(meters);
                plan.timing.clearing_min = clearing;
                let course = as_planned(&plan);
                let codes: Vec<String> =
                    runs(&course).iter().map(|run| run.bag.clone()).collect();
                assert_eq!(at_meter(&plan, &plan.periods[0]), Some(codes.clone()));
                let kinds = |all: bool| -> BTreeSet<&str> {
                    let own = plan.bags.iter().filter(|bag| all || codes.contains(&bag.code));
                    own.map(|bag| bag.treatment.as_str()).collect()
                };
                assert_eq!(
                    few_meters(&plan).is_some(),
                    kinds(false) != kinds(true),
                    "{bench} {groups} {meters} {clearing}"
                );
            }
        }
    }
}

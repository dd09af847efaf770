//! The answer as a bag list: every ready plan becomes a fair one.

use barm_domain::assign::{Prepared, Row, STEPS, Taken, assign, check, prepare, with_bags};
use barm_domain::check::check as check_plan;
use barm_domain::finding::Severity;
use barm_domain::plan::Plan;
use barm_domain::ready::{Ready, USUAL, plan};
use barm_domain::testing::answers;

/// Every group ranks the questions of the plan, in turns.
fn all_wish(plan: &Plan) -> Vec<Row> {
    let ids: Vec<String> = plan.questions.iter().map(|question| question.id.clone()).collect();
    let mut rows = Vec::new();
    for period in &plan.periods {
        for group in 1..=period.groups {
            let mut choices = ids.clone();
            choices.rotate_left(group as usize % ids.len());
            rows.push(Row {
                line: rows.len() as u64 + 2,
                period: period.name.clone(),
                group: group.to_string(),
                choices,
                ..Row::default()
            });
        }
    }
    rows
}

fn prepared(plan: &Plan) -> Prepared {
    prepare(plan, &all_wish(plan), Taken::default()).unwrap()
}

#[test]
fn every_ready_plan_can_be_shared_out_and_is_fair_then() {
    for ready in Ready::ALL {
        for (periods, groups) in [(1, 6), (4, 8), (5, 10)] {
            let plan = plan(ready, &answers(periods, groups, &USUAL)).unwrap();
            let day = prepared(&plan).day;
            let found = assign(&day, 7, STEPS).unwrap_or_else(|e| panic!("{ready:?}: {e}"));
            assert!(found.proven && found.dealt, "{ready:?}");
            assert_eq!(check(&day, &found), Vec::<String>::new(), "{ready:?}");
            let new = with_bags(&plan, &day, &found).unwrap();
            let faults: Vec<String> = check_plan(&new, &[])
                .into_iter()
                .filter(|finding| finding.severity == Severity::Fault)
                .map(|finding| format!("{}: {}", finding.code, finding.message))
                .collect();
            // With one period and few groups not every treatment can have two bags.
            if periods > 1 {
                assert!(faults.is_empty(), "{ready:?}, {periods} x {groups}: {faults:?}");
            }
            for (question, id) in day.questions.iter().enumerate() {
                assert!(found.connected(&day, question), "{ready:?}: {id}");
            }
        }
    }
}

#[test]
fn bags_that_stay_with_their_group_keep_their_codes() {
    let old = plan(Ready::Enzyme, &answers(4, 8, &USUAL)).unwrap();
    let day = prepared(&old).day;
    let found = assign(&day, 7, STEPS).unwrap();
    let new = with_bags(&old, &day, &found).unwrap();
    let made: usize = found.groups.iter().map(|made| made.bags.len()).sum();
    let bench: usize =
        old.controls.iter().map(|control| control.per_period as usize).sum::<usize>() * 4;
    assert_eq!(new.bags.len(), made + bench);
    let mut kept = 0;
    for bag in &new.bags {
        let same = old.bags.iter().find(|one| one.code == bag.code);
        if let Some(same) = same {
            assert_eq!((&same.period, same.group), (&bag.period, bag.group));
            assert_eq!(same.treatment, bag.treatment);
            kept += 1;
        }
    }
    assert!(kept > 0);
    for bag in &old.bags {
        let stays = new.bags.iter().any(|one| one.code == bag.code);
        assert!(stays || new.retired_codes.contains(&bag.code), "{} is lost", bag.code);
    }
    // Shared out once more, nothing moves.
    let again = with_bags(&new, &day, &found).unwrap();
    assert_eq!((&again.bags, &again.retired_codes), (&new.bags, &new.retired_codes));
}

#[test]
fn what_lies_in_the_cupboard_is_a_limit_if_nothing_is_bought() {
    let mut plan = plan(Ready::WhichFood, &answers(4, 8, &USUAL)).unwrap();
    let bags = barm_domain::testing::amount("500 pieces");
    for material in &mut plan.materials {
        material.in_stock = (material.item == "bags").then(|| bags.clone());
    }
    let rows = all_wish(&plan);
    let taken = Taken { stock_only: true, ..Taken::default() };
    let day = prepare(&plan, &rows, taken).unwrap().day;
    let found = assign(&day, 7, STEPS).unwrap();
    assert_eq!(check(&day, &found), Vec::<String>::new());
    let few = barm_domain::testing::amount("20 pieces");
    for material in plan.materials.iter_mut().filter(|material| material.item == "bags") {
        material.in_stock = Some(few.clone());
    }
    let day = prepare(&plan, &rows, taken).unwrap().day;
    let refused = assign(&day, 7, STEPS).unwrap_err();
    let barm_domain::assign::NotAssigned::Clash(clash) = refused else { panic!("{refused}") };
    let words: Vec<String> =
        clash.rules.iter().map(|rule| day.rules[*rule].words(&day)).collect();
    assert!(words.iter().any(|words| words.contains("there is 20 of")), "{words:?}");
}

//! Approved proposals in the plan.

use crate::scene::{GROUPS, honey, open_lesson, read, warmth};
use barm_domain::check::check;
use barm_domain::finding::Severity;
use barm_domain::plan::{Plan, Variable};
use barm_domain::prep::prep;
use barm_domain::proposal::{ApproveError, Written, approve};

fn of_group<'p>(plan: &'p Plan, period: &str, group: u32) -> Vec<&'p str> {
    let own = plan.bags.iter().filter(|bag| bag.period == period && bag.group == group);
    own.map(|bag| bag.treatment.as_str()).collect()
}

fn faults(plan: &Plan) -> Vec<String> {
    let found = check(plan, &[]).into_iter().filter(|f| f.severity == Severity::Fault);
    found.map(|finding| format!("{}: {}", finding.code, finding.message)).collect()
}

#[test]
fn become_questions_treatments_and_bags() {
    let plan = open_lesson();
    let new = approve(&plan, &[read(&plan, &warmth("1", 2))]).unwrap();
    let question =
        new.questions.iter().find(|q| q.variable == Variable::WaterTemperature).unwrap();
    assert_eq!(question.treatments.len(), 3);
    assert_eq!(question.reference.as_deref(), Some("20 °C"));
    assert_eq!(
        of_group(&new, "1", 2),
        ["20 °C", "20 °C", "30 °C", "30 °C", "40 °C", "40 °C"],
        "the group makes what it asked for and nothing else"
    );
    assert_eq!(of_group(&plan, "1", 3), of_group(&new, "1", 3), "nobody else is touched");
    assert_eq!(faults(&new), Vec::<String>::new());
    assert!(prep(&new).is_ok());
}

#[test]
fn the_same_question_is_shared_over_periods() {
    let plan = open_lesson();
    let new =
        approve(&plan, &[read(&plan, &warmth("1", 1)), read(&plan, &warmth("2", 3))]).unwrap();
    let asked = new.questions.iter().filter(|q| q.variable == Variable::WaterTemperature);
    assert_eq!(asked.count(), 1);
    let made = new.bags.iter().filter(|bag| bag.treatment == "30 °C").count();
    assert_eq!(made, 4);
    // One after the other gives the same.
    let first = approve(&plan, &[read(&plan, &warmth("1", 1))]).unwrap();
    let second = approve(&first, &[read(&first, &warmth("2", 3))]).unwrap();
    assert_eq!(second.questions, new.questions);
}

#[test]
fn when_all_are_approved_nothing_of_the_placeholder_is_left_and_no_code_comes_twice() {
    let plan = open_lesson();
    let mut all = Vec::new();
    for period in ["1", "2"] {
        for group in 1..=GROUPS {
            let written =
                if group % 2 == 0 { warmth(period, group) } else { honey(period, group) };
            all.push(read(&plan, &written));
        }
    }
    let new = approve(&plan, &all).unwrap();
    assert_eq!(faults(&new), Vec::<String>::new());
    assert!(new.treatment("White wheat flour").is_none(), "nobody makes it");
    let mut codes: Vec<&String> =
        new.bags.iter().map(|bag| &bag.code).chain(&new.retired_codes).collect();
    let count = codes.len();
    codes.sort();
    codes.dedup();
    assert_eq!(codes.len(), count);
    for old in &plan.bags {
        assert!(codes.contains(&&old.code), "{} is on the list or retired", old.code);
    }
}

#[test]
fn doing_it_twice_changes_nothing() {
    let plan = open_lesson();
    let once = approve(&plan, &[read(&plan, &honey("1", 1))]).unwrap();
    let twice = approve(&once, &[read(&once, &honey("1", 1))]).unwrap();
    assert_eq!(once, twice);
}

#[test]
fn without_a_reference_there_is_nothing_to_approve() {
    let plan = open_lesson();
    let written = Written { beside: String::new(), ..honey("1", 1) };
    let refused = approve(&plan, &[read(&plan, &written)]);
    assert!(matches!(refused, Err(ApproveError::NoReference { .. })));
}

#[test]
fn no_word_of_a_group_comes_into_the_plan() {
    let plan = open_lesson();
    let mark = "Zwitschermaschine";
    for mut written in [honey("1", 1), warmth("2", 2)] {
        written.asks = format!("Does {mark} like it?");
        let new = approve(&plan, &[read(&plan, &written)]).unwrap();
        assert!(!format!("{new:?}").contains(mark));
        // Nor can it hide where a bag is described: what cannot be weighed is no proposal.
        for place in ["levels", "keeps"] {
            let mut hidden = written.clone();
            match place {
                "levels" => hidden.levels[0] = format!("{} {mark}", hidden.levels[0]),
                _ => hidden.keeps = format!("white sugar {mark} + 0.5 g"),
            }
            if let Ok(proposal) = hidden.read(&plan) {
                let new = approve(&plan, &[proposal]).unwrap();
                assert!(!format!("{new:?}").contains(mark), "{place}");
            }
        }
        let hidden = Written { beside: format!("No food {mark}"), ..written.clone() };
        if let Ok(new) = approve(&plan, &[read(&plan, &hidden)]) {
            assert!(!format!("{new:?}").contains(mark));
        }
    }
}

#[test]
fn the_question_is_worded_from_what_is_changed() {
    let plan = open_lesson();
    let asks = |written: &Written| read(&plan, written).asks;
    assert_eq!(
        asks(&warmth("1", 1)),
        "What difference does the temperature of the water make: 20 °C, 30 °C or 40 °C?"
    );
    assert_eq!(
        asks(&honey("1", 1)),
        "What difference does the food make: honey or white sugar?"
    );
}

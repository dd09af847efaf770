//! What teachers do to a plan after bags were sealed.

use crate::school::{School, lesson};
use barm_domain::plan::{Plan, Variable};
use barm_domain::proposal::{Written, approve};
use barm_domain::ready::{Ready, swap};
use barm_domain::record::{Counted, Subject, Truth, What};
use barm_domain::result::analyze;
use std::sync::Arc;

fn held(school: &School) -> Arc<Plan> {
    school.holds().unwrap_or_else(|why| panic!("{why}")).plan
}

fn treatment(plan: &Plan, code: &str) -> String {
    let bag = plan.bags.iter().find(|bag| bag.code == code).expect("listed");
    bag.treatment.clone()
}

fn without_list(plan: &Plan) -> Plan {
    plan.clone()
}

#[test]
fn nothing_is_held_while_the_plan_says_the_same() {
    let mut school = School::of(lesson(Ready::WhichFood));
    for code in school.group("1", 1) {
        school.seal(&code);
    }
    let other =
        Plan { title: "Another title".into(), grade: 7, ..without_list(school.newest()) };
    school.save(other);
    let bound = school.bound();
    assert!(Arc::ptr_eq(&bound.plan, school.newest()), "it is the newest plan itself");
    assert!(bound.kept.is_empty());
}

#[test]
fn a_group_that_was_read_keeps_its_bags_when_its_proposal_is_approved() {
    let mut school = School::of(lesson(Ready::OwnQuestion));
    let codes = school.group("1", 2);
    for code in &codes {
        school.seal(code);
    }
    let before = held(&school);
    let written = Written {
        period: "1".into(),
        group: 2,
        asks: "Does warm water help?".into(),
        changes: "water temperature".into(),
        levels: vec!["20 °C".into(), "30 °C".into()],
        keeps: "white sugar + 0.5 g".into(),
        beside: "20 °C".into(),
        bags: 2,
    };
    let plan = school.newest();
    let proposal = written.read(plan).expect("a proposal");
    let new = approve(plan, &[proposal]).expect("approved");
    assert!(new.bags.iter().all(|bag| !codes.contains(&bag.code)), "they leave the list");
    school.save_as_it_is(new);
    let bound = school.holds().unwrap_or_else(|why| panic!("{why}"));
    assert_eq!(bound.kept.len(), codes.len());
    for code in &codes {
        assert_eq!(treatment(&bound.plan, code), treatment(&before, code));
    }
    // What they say is the same, bag for bag.
    let counted = Counted::of(school.ledger.known(), school.ledger.standing());
    let read = |plan: &Plan| {
        let result = analyze(plan, &[], &counted.readings, &counted.set_aside);
        assert_eq!(result.rejected, []);
        let read = result.bags.iter().filter(|bag| bag.summary.is_some()).count();
        assert_eq!(read, codes.len());
    };
    read(&before);
    read(&bound.plan);
    assert!(
        bound.plan.bags.iter().any(|bag| bag.treatment == "30 °C"),
        "and the new ones are there"
    );
}

#[test]
fn one_group_fewer_loses_no_sealed_bag() {
    let mut school = School::of(lesson(Ready::WhichFood));
    let codes = school.group("2", 4);
    for code in &codes {
        school.seal(code);
    }
    let mut fewer = Plan::clone(school.newest());
    fewer.periods[1].groups = 3;
    school.save(fewer);
    assert!(codes.iter().all(|code| school.newest().retired_codes.contains(code)));
    let plan = held(&school);
    assert_eq!(plan.periods[1].groups, 4);
    assert!(codes.iter().all(|code| !plan.retired_codes.contains(code)));
}

#[test]
fn a_period_that_is_taken_out_keeps_what_was_sealed_in_it() {
    let mut school = School::of(lesson(Ready::WhichFood));
    for code in school.group("2", 1) {
        school.seal(&code);
    }
    let mut fewer = Plan::clone(school.newest());
    fewer.periods.truncate(1);
    school.save(fewer);
    let plan = held(&school);
    assert_eq!(plan.periods.len(), 2);
}

#[test]
fn a_swap_renames_no_sealed_bag() {
    let mut school = School::of(lesson(Ready::WhichFood));
    let honey: Vec<String> = {
        let bags = school.newest().bags.iter().filter(|bag| bag.treatment == "Honey");
        bags.map(|bag| bag.code.clone()).collect()
    };
    assert!(honey.len() > 1);
    school.seal(&honey[0]);
    school.save(swap(school.newest(), "honey", "maple_syrup").expect("swapped"));
    let plan = held(&school);
    assert_eq!(treatment(&plan, &honey[0]), "Honey");
    assert_eq!(treatment(&plan, &honey[1]), "Maple syrup");
    // Both are compared with the same reference, in the same question.
    let asked = plan.questions.iter().find(|q| q.variable == Variable::Food).expect("asked");
    let beside = |name: &str| {
        let own = plan.treatment(name).expect("there");
        plan.beside(asked, own).map(str::to_owned)
    };
    assert!(beside("Honey").is_some());
    assert_eq!(beside("Honey"), beside("Maple syrup"));
}

#[test]
fn a_swap_after_all_were_sealed_leaves_the_results_as_they_were() {
    let mut school = School::of(lesson(Ready::WhichFood));
    let before = school.newest().clone();
    let codes: Vec<String> = before.bags.iter().map(|bag| bag.code.clone()).collect();
    for code in &codes {
        school.seal(code);
    }
    school.save(swap(school.newest(), "honey", "maple_syrup").expect("swapped"));
    let plan = held(&school);
    assert_eq!(plan.questions, before.questions);
    assert_eq!(plan.bags, before.bags);
}

#[test]
fn other_water_makes_another_treatment_of_the_same_name() {
    let mut school = School::of(lesson(Ready::WhichFood));
    let honey: Vec<String> = {
        let bags = school.newest().bags.iter().filter(|bag| bag.treatment == "Honey");
        bags.map(|bag| bag.code.clone()).collect()
    };
    school.seal(&honey[0]);
    let mut cooler = Plan::clone(school.newest());
    cooler.base.water_celsius = 36.0;
    school.save(cooler);
    let plan = held(&school);
    assert_eq!(treatment(&plan, &honey[0]), "Honey (plan 1)");
    assert_eq!(treatment(&plan, &honey[1]), "Honey");
    // Once the rest is sealed too, as it was.
    school.seal(&honey[1]);
    assert_eq!(treatment(&held(&school), &honey[0]), "Honey (plan 1)");
}

#[test]
fn sealed_bags_keep_the_places_from_which_marks_are_dealt() {
    let mut school = School::of(lesson(Ready::WhichFood));
    let names = |plan: &Plan| -> Vec<String> {
        plan.questions[0].treatments.iter().map(|own| own.name.clone()).collect()
    };
    let before = names(school.newest());
    let first = |name: &String| {
        let bags = &school.newest().bags;
        bags.iter().find(|bag| bag.treatment == *name).expect("a bag").code.clone()
    };
    let codes: Vec<String> = before.iter().map(first).collect();
    for code in &codes {
        school.seal(code);
    }
    let mut cooler = Plan::clone(school.newest());
    cooler.base.water_celsius = 36.0;
    school.save(cooler);
    let after = names(&held(&school));
    let sealed: Vec<String> = before.iter().map(|name| format!("{name} (plan 1)")).collect();
    assert_eq!(after[..before.len()], sealed, "sealed ones first, as they stood");
    assert_eq!(after[before.len()..], before, "then what has their names now");
}

#[test]
fn there_and_back_is_the_same_treatment() {
    let mut school = School::of(lesson(Ready::WhichFood));
    let bags = school.newest().bags.iter().filter(|bag| bag.treatment == "Honey");
    let honey: Vec<String> = bags.map(|bag| bag.code.clone()).collect();
    school.seal(&honey[0]);
    let first = Plan::clone(school.newest());
    let mut cooler = first.clone();
    cooler.base.water_celsius = 36.0;
    school.save(cooler);
    school.seal(&honey[1]);
    school.save(first);
    let plan = held(&school);
    assert_eq!(treatment(&plan, &honey[0]), "Honey");
    assert_eq!(treatment(&plan, &honey[1]), "Honey (plan 2)");
}

#[test]
fn a_bag_that_was_read_but_never_sealed_is_held_to_the_plan_of_its_zero_reading() {
    let mut school = School::of(lesson(Ready::WhichFood));
    let codes = school.group("1", 4);
    school.read(&codes[0], None);
    let mut fewer = Plan::clone(school.newest());
    fewer.periods[0].groups = 3;
    fewer.base.water_celsius = 36.0;
    school.save(fewer);
    held(&school);
}

#[test]
fn a_label_is_set_right_in_the_words_of_its_own_version() {
    let mut school = School::of(lesson(Ready::WhichFood));
    let code = school.group("1", 1)[0].clone();
    let bag = school.seal(&code);
    let other =
        if treatment(school.newest(), &code) == "Honey" { "White sugar" } else { "Honey" };
    let made = school.newest().recipe(school.newest().treatment(other).expect("there"));
    let mut cooler = Plan::clone(school.newest());
    cooler.base.water_celsius = 36.0;
    school.save(cooler);
    let truth = |treatment: &str| {
        What::SetRight(Truth { treatment: Some(treatment.into()), group: Some(2) })
    };
    for said in [other.to_owned(), format!("{other} (plan 1)")] {
        school.enter(Subject::Bag(bag), truth(&said));
        assert_eq!(school.ledger.standing().refused, []);
        let bound = school.bound();
        let plan = bound.plan_in_truth();
        let own = bound.in_truth(bag).expect("listed");
        assert_eq!(own.group, 2);
        assert_eq!(own.treatment, format!("{other} (plan 1)"), "said as {said}");
        assert_eq!(plan.recipe(plan.treatment(&own.treatment).expect("there")), made);
    }
}

#[test]
fn a_rule_that_set_a_bag_aside_stays() {
    let mut school = School::of(lesson(Ready::WhichFood));
    let rule = school.newest().set_aside_rules[0].clone();
    let code = school.group("1", 1)[0].clone();
    let bag = school.seal(&code);
    school.enter(Subject::Bag(bag), What::SetAside { rule: rule.id.clone() });
    let mut without = Plan::clone(school.newest());
    without.set_aside_rules.clear();
    school.save(without);
    assert_eq!(held(&school).set_aside_rules, [rule]);
}

//! One question over the shared data of several classes.

use crate::plan::demo;
use crate::rebuilt::unsaid;
use barm_domain::result;
use barm_domain::shared::{Rows, Shared, Unsaid};
use barm_domain::years::{Class, Difference, PassedOver, Years};
use barm_science::statistics::meta::{Between, Study, pool};

/// A class with these rows.
fn class(name: &str, rows: Rows, made_up: bool) -> Class {
    let shared = Shared::new(rows).expect("rows");
    let unsaid = Unsaid { interval_min: Some(4.0), made_up, ..unsaid() };
    let investigation = shared.investigation(&unsaid).expect("it comes back");
    Class { name: name.into(), shared, investigation }
}

/// The demo with every rise of bags with maple syrup so many times as high.
fn stretched(name: &str, factor: f64) -> Class {
    let (plan, _, shared) = demo();
    let mut rows = shared.rows().clone();
    let maple: Vec<String> = plan
        .bags
        .iter()
        .filter(|bag| bag.treatment == "Maple syrup")
        .map(|bag| bag.code.clone())
        .collect();
    let zero: Vec<(String, f64)> = rows
        .readings
        .iter()
        .filter(|row| row.minute < 0.5)
        .map(|row| (row.bag.to_string(), row.height_mm))
        .collect();
    for row in &mut rows.readings {
        let code = row.bag.to_string();
        let own = zero.iter().find(|(bag, _)| *bag == code);
        if let (true, Some((_, zero))) = (maple.contains(&code), own) {
            row.height_mm = zero + factor * (row.height_mm - zero);
        }
    }
    class(name, rows, false)
}

fn maple(years: &Years) -> &Difference {
    let of = |one: &&Difference| one.treatment_says().starts_with("maple syrup");
    years.differences.iter().find(of).expect("maple syrup is compared")
}

/// What a class found by itself of its maple syrup.
fn alone(class: &Class) -> Study {
    let own = &class.investigation;
    let result = result::analyze(&own.plan, &[], &own.readings, &own.set_aside);
    let mut all = result.questions.iter().flat_map(|answer| &answer.comparisons);
    let maple = all.find(|one| one.treatment.contains("maple")).expect("compared");
    let told = maple.with.difference.expect("told");
    Study::estimated(told.difference, told.se, told.df)
}

#[test]
fn classes_are_put_together_from_what_each_found_by_itself() {
    let classes = [0.7, 1.0, 1.2, 1.5].map(|factor| stretched(&format!("{factor}"), factor));
    let years = Years::of(&classes);
    assert!(years.passed_over.is_empty());
    assert!(years.differences.iter().all(|one| one.classes.len() == 4));
    assert!(years.differences.len() >= 8, "{}", years.differences.len());
    let found = maple(&years);
    // All read at the same minutes, so that the common minute is each one's own.
    let studies = classes.each_ref().map(alone);
    let expected = pool(&studies, Between::Reml).expect("a summary");
    let together = found.together.as_ref().expect("a summary");
    assert!((together.mean.estimate - expected.mean.estimate).abs() < 1e-9);
    assert_eq!(found.classes.len(), 4);
    for (one, study) in found.classes.iter().zip(&studies) {
        let told = one.difference.expect("told");
        assert!((told.estimate - study.estimate).abs() < 1e-9);
        assert!(told.low < told.estimate && told.estimate < told.high);
    }
    let (low, high) = found.next.expect("of three and more");
    assert!(
        low < together.mean.low && together.mean.high < high,
        "the next class is less sure"
    );
    // Maple syrup was made to differ, the others are the same in all.
    let tau = |one: &Difference| one.together.as_ref().unwrap().between.unwrap().tau();
    assert!(tau(found) > 1.0, "{}", tau(found));
    let others = years.differences.iter().filter(|one| *one != found);
    for other in others {
        assert!(tau(other) < 1e-9, "{}: {}", other.treatment_says(), tau(other));
    }
    let says = found.says().join(" ");
    assert!(says.starts_with("Over 4 classes, “maple syrup 0.8 g” rose "), "{says}");
    assert!(says.contains("more than “no food”") && says.contains("truly differ"), "{says}");
}

#[test]
fn the_order_of_classes_changes_no_number() {
    let [one, two, three] = [0.8, 1.0, 1.4].map(|factor| stretched("a", factor));
    let first = Years::of(&[one.clone(), two.clone(), three.clone()]);
    let second = Years::of(&[three, one, two]);
    let mean = |years: &Years| maple(years).together.as_ref().unwrap().mean;
    assert!((mean(&first).estimate - mean(&second).estimate).abs() < 1e-9);
    assert!((mean(&first).low - mean(&second).low).abs() < 1e-9);
    assert_eq!(first.differences.len(), second.differences.len());
}

#[test]
fn classes_are_compared_at_the_latest_minute_that_all_have() {
    let (long, mut short) = (stretched("long", 1.0), stretched("short", 1.1));
    let mut rows = short.shared.rows().clone();
    rows.readings.retain(|row| row.minute < 13.0);
    short = class("short", rows, false);
    let years = Years::of(&[long, short]);
    assert!(years.differences.iter().all(|one| (one.minute - 12.0).abs() < 1e-9));
    assert!(maple(&years).next.is_none(), "two classes say nothing of the next");
    assert!(maple(&years).says().iter().any(|says| says.contains("a third would")));
}

#[test]
fn the_same_data_count_once_and_invented_ones_not_beside_real_ones() {
    let real = stretched("first", 1.0);
    let copy = Class { name: "copy".into(), ..real.clone() };
    let other = stretched("other", 1.2);
    let invented = class("rehearsal", stretched("", 2.0).shared.rows().clone(), true);
    let classes = [real, copy, other, invented.clone()];
    let years = Years::of(&classes);
    assert_eq!(
        years.passed_over,
        [PassedOver::Same { class: 1, other: 0 }, PassedOver::MadeUp { class: 3 }]
    );
    let said: Vec<String> = years.passed_over.iter().map(|one| one.says(&classes)).collect();
    assert_eq!(said[0], "copy holds the same data as first and counts once.");
    assert_eq!(maple(&years).classes.iter().map(|one| one.class).collect::<Vec<_>>(), [0, 2]);
    // Where all are invented, they are compared with each other.
    assert!(Years::of(&[invented]).passed_over.is_empty());
}

#[test]
fn bags_that_were_made_otherwise_are_another_question() {
    let with = |factor: f64| {
        let mut rows = stretched("", 1.1).shared.rows().clone();
        for row in rows.ingredients.iter_mut().filter(|row| row.item.id().contains("maple")) {
            row.amount *= factor;
        }
        class("other", rows, false)
    };
    let first = stretched("first", 1.0);
    let near = Years::of(&[first.clone(), with(1.2)]);
    assert_eq!(maple(&near).classes.len(), 2);
    let says = maple(&near).says().join(" ");
    assert!(says.contains("not quite the same: maple syrup 0.8 to 0.96 g"), "{says}");
    let far = Years::of(&[first, with(2.0)]);
    let own: Vec<usize> = far
        .differences
        .iter()
        .filter(|one| one.treatment_says().starts_with("maple"))
        .map(|one| one.classes.len())
        .collect();
    assert_eq!(own, [1, 1]);
}

#[test]
fn a_class_alone_is_its_own_answer() {
    let years = Years::of(&[stretched("only", 1.0)]);
    let found = maple(&years);
    let told = found.classes[0].difference.expect("told");
    assert_eq!(found.together.as_ref().expect("one").mean, told);
    assert!(found.says()[0].starts_with("In one class alone"), "{:?}", found.says());
    assert_eq!(Years::of(&[]).differences.len(), 0);
}

//! What happens in classes, and what may then be said.

use crate::class::{Class, compared, treatment};
use barm_domain::result::Compared;
use barm_science::statistics::verdict::{Code, Direction};

const PERIODS: [&str; 4] = ["1", "2", "3", "4"];

/// Maple syrup against no food, a bag of each in every period.
fn maple(maple: [f64; 4], none: [f64; 4]) -> Class {
    let mut class = Class::foods(&PERIODS, &["Maple syrup"]);
    for (at, period) in PERIODS.into_iter().enumerate() {
        class.grow("Maple syrup", period, maple[at]);
        class.grow("No food", period, none[at]);
    }
    class
}

#[track_caller]
fn check(compared: &Compared, code: Code) {
    let verdict = &compared.with.verdict;
    assert_eq!(verdict.code, code, "{}: {}", compared.treatment, verdict.reason);
}

#[test]
fn a_big_difference_in_every_period_is_clear() {
    let result = maple([14.0, 13.0, 15.0, 14.0], [1.0, 0.0, 1.0, 1.0]).result();
    let maple = compared(&result, "Maple syrup");
    check(maple, Code::Clear);
    assert_eq!(maple.with.verdict.direction, Some(Direction::More));
    let difference = maple.with.difference.unwrap();
    assert!((difference.difference - 13.25).abs() < 1e-9);
    assert!(difference.low > 0.0 && difference.high < 20.0);
    assert_eq!(maple.with, maple.without);
}

#[test]
fn a_difference_between_periods_is_not_held_against_the_food() {
    // Period 4 is cold: both rise little there, and the difference stays.
    let result = maple([22.0, 16.0, 13.0, 9.0], [13.0, 8.0, 4.0, 1.0]).result();
    check(compared(&result, "Maple syrup"), Code::Clear);
}

#[test]
fn bags_that_differ_among_themselves_leave_it_unclear() {
    let result = maple([14.0, 2.0, 9.0, 1.0], [1.0, 12.0, 2.0, 8.0]).result();
    check(compared(&result, "Maple syrup"), Code::Unclear);
}

#[test]
fn flat_bags_are_no_rise() {
    let result = maple([1.0, 0.0, 1.0, 2.0], [0.0, 0.0, 1.0, 1.0]).result();
    check(compared(&result, "Maple syrup"), Code::NoRise);
    let flat = maple([0.0; 4], [0.0; 4]).result();
    check(compared(&flat, "Maple syrup"), Code::NoRise);
}

#[test]
fn one_bag_of_each_cannot_be_judged() {
    let mut class = Class::foods(&["1"], &["Maple syrup"]);
    class.grow("Maple syrup", "1", 14.0);
    class.grow("No food", "1", 1.0);
    check(compared(&class.result(), "Maple syrup"), Code::NotComparable);
}

#[test]
fn one_bag_beside_others_with_repeats_only_leans() {
    let mut class = Class::foods(&PERIODS, &["Maple syrup", "Oat flour"]);
    class.grow("Maple syrup", "1", 14.0);
    for period in PERIODS {
        class.grow("Oat flour", period, 5.0);
        class.grow("No food", period, 1.0);
        class.grow("No food", period, 2.0);
    }
    check(compared(&class.result(), "Maple syrup"), Code::Leaning);
    check(compared(&class.result(), "Oat flour"), Code::Clear);
}

#[test]
fn one_period_is_enough_where_several_groups_made_both() {
    let mut class = Class::foods(&["1"], &["Maple syrup"]);
    for (maple, none) in [(14.0, 1.0), (13.0, 0.0), (15.0, 2.0)] {
        class.grow("Maple syrup", "1", maple);
        class.grow("No food", "1", none);
    }
    check(compared(&class.result(), "Maple syrup"), Code::Clear);
}

#[test]
fn a_treatment_that_one_group_made_alone_only_leans() {
    let mut class = Class::foods(&["1"], &["Maple syrup"]);
    for rise in [14.0, 13.0, 15.0] {
        let bag = class.add_by("Maple syrup", "1", 1);
        class.read(&bag, &[(0.0, 0.0), (24.0, rise)]);
        class.grow("No food", "1", 1.0);
    }
    check(compared(&class.result(), "Maple syrup"), Code::Leaning);
}

#[test]
fn a_treatment_that_nobody_made_is_not_comparable() {
    let mut class = maple([14.0, 13.0, 15.0, 14.0], [1.0, 0.0, 1.0, 1.0]);
    class.plan.questions[0].treatments.push(treatment("Banana", None));
    let result = class.result();
    check(compared(&result, "Banana"), Code::NotComparable);
    assert_eq!(compared(&result, "Banana").with.n, 0);
    check(compared(&result, "Maple syrup"), Code::Clear);
}

#[test]
fn periods_that_share_nothing_are_not_compared() {
    let mut class = Class::foods(&["1", "2"], &["Maple syrup"]);
    for rise in [14.0, 15.0] {
        class.grow("Maple syrup", "1", rise);
        class.grow("No food", "2", rise - 13.0);
    }
    let result = class.result();
    check(compared(&result, "Maple syrup"), Code::NotComparable);
}

#[test]
fn a_bag_set_aside_may_turn_the_verdict_and_both_are_shown() {
    let mut class = maple([14.0, 13.0, 15.0, 14.0], [1.0, 0.0, 1.0, 1.0]);
    let leaky = class.grow("Maple syrup", "2", -4.0);
    class.grow("No food", "2", 1.0);
    class.put_aside(&leaky, "Leak");
    let result = class.result();
    let maple = compared(&result, "Maple syrup");
    assert_eq!((maple.with.n, maple.without.n), (5, 4));
    assert_ne!(maple.with.verdict.code, Code::Clear);
    assert_eq!(maple.without.verdict.code, Code::Clear);
    assert!(maple.hangs_on_set_aside());
    assert_eq!(result.rejected, []);
    let set_aside: Vec<&str> =
        result.bags.iter().filter_map(|bag| bag.set_aside.as_deref()).collect();
    assert_eq!(set_aside, ["leak"]);
}

#[test]
fn bags_are_set_aside_by_rules_of_the_plan_only() {
    let mut class = maple([14.0, 13.0, 15.0, 1.0], [1.0, 0.0, 1.0, 1.0]);
    let low = class.plan.bags[6].code.clone();
    class.put_aside(&low, "too low");
    class.put_aside(&low, "leek");
    class.put_aside("P9-01A-W", "leak");
    let result = class.result();
    let reasons: Vec<&str> = result.rejected.iter().map(|r| r.reason.as_str()).collect();
    assert_eq!(reasons.len(), 3);
    assert!(reasons[0].contains("\"too low\" is no rule of the plan"), "{reasons:?}");
    assert!(reasons[1].contains("did you mean \"leak\"?"), "{reasons:?}");
    assert!(reasons[2].contains("no bag of this plan"), "{reasons:?}");
    assert_eq!(compared(&result, "Maple syrup").without.n, 4);
}

#[test]
fn a_bag_without_a_zero_is_left_out_and_counted() {
    let mut class = maple([14.0, 13.0, 15.0, 14.0], [1.0, 0.0, 1.0, 1.0]);
    let no_zero = class.add("Maple syrup", "1");
    class.read(&no_zero, &[(4.0, 3.0), (24.0, 30.0)]);
    let result = class.result();
    let maple = compared(&result, "Maple syrup");
    assert_eq!((maple.with.n, maple.left_out), (4, 1));
    check(maple, Code::Clear);
}

/// The interval holds for all comparisons of the question at once, so more comparisons widen it.
#[test]
fn more_comparisons_make_wider_intervals() {
    let half = |foods: &[&str]| {
        let mut class = Class::foods(&PERIODS, foods);
        for period in PERIODS {
            let shift = if period == "1" { 1.0 } else { -1.0 };
            for food in foods {
                class.grow(food, period, 9.0 + shift);
            }
            class.grow("No food", period, 1.0 - shift);
        }
        let difference = compared(&class.result(), foods[0]).with.difference.unwrap();
        (difference.high - difference.low) / (2.0 * difference.se)
    };
    // Two-sided 95 %: Student's t for 3 degrees of freedom, and Dunnett (1964), Biometrics 20,
    // 482-491, for 3 treatments and 9 or 5 degrees of freedom, both from memory. That treatments may
    // differ in spread costs some of the 9.
    assert!((half(&["Maple syrup"]) - 3.182).abs() < 0.001);
    let of_three = half(&["Maple syrup", "Oat flour", "Banana"]);
    assert!((2.81 - 0.005..3.29).contains(&of_three), "{of_three}");
}

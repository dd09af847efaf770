//! Codes of sheets of paper.

use barm_domain::plan::{Place, Plan};
use barm_domain::sheet_code::SheetCode;
use barm_domain::starter::{Answers, plan as starter};
use std::collections::BTreeSet;

/// Four periods of eight groups, with their bags.
fn plan() -> Plan {
    let answers = Answers {
        title: "What does yeast like to eat?".into(),
        date: jiff::civil::date(2027, 3, 9),
        zone: "America/Chicago".into(),
        place: Place::Altitude(200.0),
        first_start: jiff::civil::time(8, 10, 0, 0),
        length_min: 45.0,
        periods: 4,
        groups: 8,
        students: 24,
    };
    starter(&answers).unwrap()
}

/// The check character worked out by the formula of ISO/IEC 7064, MOD 37-2: with it, the sum of
/// value · 2^(n − i) is 1 modulo 37 (from memory; `code.rs` holds the code to a printed example).
fn sums_to_one(code: &str) -> bool {
    const ALPHABET: &str = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ*";
    let plain: Vec<char> = code.chars().filter(|c| *c != '-').collect();
    let weighted = plain.iter().rev().enumerate().map(|(power, c)| {
        let value = ALPHABET.find(*c).expect("a character of the code");
        value * (0..power).fold(1, |weight, _| 2 * weight % 37)
    });
    weighted.sum::<usize>() % 37 == 1
}

#[test]
fn every_group_has_a_code_of_its_own_that_leads_back_to_it() {
    let plan = plan();
    let mut seen = BTreeSet::new();
    for period in &plan.periods {
        for group in 0..=period.groups {
            let code = SheetCode::of(&plan, &period.name, group).unwrap().to_string();
            assert!(sums_to_one(&code), "{code}");
            assert_eq!(SheetCode::whose(&plan, &code), Some((period.name.clone(), group)));
            let spoken = code.to_lowercase().replace('-', " ");
            assert_eq!(SheetCode::whose(&plan, &spoken), Some((period.name.clone(), group)));
            assert!(seen.insert(code));
        }
    }
    assert!(seen.len() == 4 * 9);
}

#[test]
fn a_slip_leads_nowhere() {
    let plan = plan();
    let name = &plan.periods[0].name;
    let code = SheetCode::of(&plan, name, 1).unwrap().to_string();
    assert_eq!(SheetCode::whose(&plan, &code.replacen("01", "10", 1)), None);
    for wrong in ["", "P", "-", "P1-01", "1-01", &code[..code.len() - 1]] {
        assert_eq!(SheetCode::whose(&plan, wrong), None, "{wrong}");
    }
    assert_eq!(SheetCode::of(&plan, "no such period", 1), None);
    assert_eq!(SheetCode::of(&plan, name, 100), None);
}

/// A period keeps the number that its labels carry, whatever its place in the plan.
#[test]
fn the_number_of_a_period_is_that_of_its_labels() {
    let mut plan = plan();
    let name = plan.periods[1].name.clone();
    let before = SheetCode::of(&plan, &name, 1).unwrap();
    plan.periods.remove(0);
    assert_eq!(SheetCode::of(&plan, &name, 1), Some(before));
}

//! What the data say of a claim.

use crate::class::{Class, compared};
use barm_domain::claim::{Agrees, Claim, Fact, Found, Says, facts};
use barm_domain::plan::SetAsideRule;
use barm_science::statistics::verdict::Code;

const PERIODS: [&str; 4] = ["1", "2", "3", "4"];

/// In each period, group 1 makes both; what is clear over all.
fn class(maple: [f64; 4], none: [f64; 4]) -> Class {
    let mut class = Class::foods(&PERIODS, &["Maple syrup"]);
    for (at, period) in PERIODS.into_iter().enumerate() {
        for (treatment, rise) in [("Maple syrup", maple[at]), ("No food", none[at])] {
            let code = class.add_by(treatment, period, 1);
            class.read(&code, &[(0.0, 0.0), (12.0, rise / 2.0), (24.0, rise)]);
        }
    }
    class
}

fn claim(says: Says, by_mm: Option<f64>, evidence: &str) -> Claim {
    Claim {
        question: "food".into(),
        treatment: "Maple syrup".into(),
        says,
        by_mm,
        evidence: evidence.into(),
        reasoning: String::new(),
    }
}

fn of(class: &Class, claim: &Claim, group: (&str, u32)) -> Vec<Fact> {
    facts(&class.plan, &class.result(), claim, group)
}

#[test]
fn a_clear_class_agrees_with_its_own_direction_only() {
    let class = class([14.0, 13.0, 15.0, 14.0], [1.0, 0.0, 1.0, 1.0]);
    assert_eq!(compared(&class.result(), "Maple syrup").with.verdict.code, Code::Clear);
    for (says, class_says, own_says) in [
        (Says::More, Agrees::Yes, Agrees::Yes),
        (Says::Less, Agrees::No, Agrees::No),
        (Says::NoReadableDifference, Agrees::No, Agrees::No),
    ] {
        let told = of(&class, &claim(says, None, ""), ("2", 1));
        assert_eq!(told.len(), 2, "{told:?}");
        let Fact::Class { agrees, verdict, difference_mm } = &told[0] else {
            panic!("{told:?}")
        };
        assert_eq!((*agrees, *verdict), (class_says, Code::Clear));
        assert!((difference_mm.unwrap().value - 13.25).abs() < 1e-9);
        // The second period's own bags, by hand: 13 mm beside 0 mm.
        let own = Fact::Own { agrees: own_says, difference_mm: 13.0, bags: (1, 1) };
        assert_eq!(told[1], own);
    }
}

/// Bags that contradict each other settle nothing: every direction is left open by the class, and a group may still
/// have seen it in its own bags.
#[test]
fn an_open_class_leaves_every_claim_open() {
    let class = class([14.0, 2.0, 9.0, 1.0], [1.0, 12.0, 2.0, 8.0]);
    for says in Says::ALL {
        let told = of(&class, &claim(says, None, ""), ("2", 1));
        assert!(matches!(told[0], Fact::Class { agrees: Agrees::Open, .. }), "{told:?}");
        let wanted = if says == Says::Less { Agrees::Yes } else { Agrees::No };
        assert!(matches!(told[1], Fact::Own { agrees, .. } if agrees == wanted), "{told:?}");
    }
}

#[test]
fn where_nothing_rose_there_is_nothing_to_read() {
    let class = class([1.0, 0.0, 1.0, 2.0], [0.0, 0.0, 1.0, 1.0]);
    let told = of(&class, &claim(Says::NoReadableDifference, None, ""), ("1", 1));
    assert!(matches!(told[0], Fact::Class { agrees: Agrees::Yes, verdict: Code::NoRise, .. }));
    let told = of(&class, &claim(Says::More, None, ""), ("1", 1));
    assert!(matches!(told[0], Fact::Class { agrees: Agrees::No, .. }), "{told:?}");
}

#[test]
fn a_size_is_set_beside_the_interval_with_its_sign() {
    let class = class([1.0, 0.0, 1.0, 1.0], [14.0, 13.0, 15.0, 14.0]);
    for (says, by, within) in
        [(Says::Less, 13.0, true), (Says::More, 13.0, false), (Says::Less, 40.0, false)]
    {
        let told = of(&class, &claim(says, Some(by), ""), ("1", 1));
        let found = told.iter().find_map(|fact| match fact {
            Fact::Size { within, .. } => Some(*within),
            _ => None,
        });
        assert_eq!(found, Some(within), "{says:?} {by}: {told:?}");
    }
}

/// Group 1 of period 1: maple syrup 14 mm above a zero of 5 mm, no food 1 mm; class means 14 and 0.75 mm.
#[test]
fn numbers_of_the_evidence_are_found_where_they_stand() {
    let class = class([14.0, 13.0, 15.0, 14.0], [1.0, 0.0, 1.0, 1.0]);
    let code = class.plan.bags[0].code.clone();
    let evidence = "Ours went up 7 mm, then to 1.9 cm. The class had 0.75 mm without food, 13.3 mm more. 99 mm!";
    let told = of(&class, &claim(Says::More, None, evidence), ("1", 1));
    let found: Vec<&Found> = told
        .iter()
        .filter_map(|fact| match fact {
            Fact::Number { found, .. } => Some(found),
            _ => None,
        })
        .collect();
    assert_eq!(
        found,
        [
            &Found::Rise { bag: code.clone(), minute: 12.0 },
            &Found::Height { bag: code, minute: 24.0 },
            &Found::Mean { treatment: "No food".into() },
            &Found::Difference,
            &Found::Nowhere,
        ]
    );
}

/// 7 mm is where maple syrup was on its way, and where the bag without food ended: the end is meant.
#[test]
fn a_number_is_that_of_a_last_reading_before_that_of_another() {
    let class = class([14.0, 13.0, 15.0, 14.0], [7.0, 6.0, 7.0, 8.0]);
    let told = of(&class, &claim(Says::More, None, "Without food 7 mm."), ("1", 1));
    let bag = class.plan.bags.iter().find(|bag| bag.treatment == "No food").unwrap();
    let meant = Found::Rise { bag: bag.code.clone(), minute: 24.0 };
    assert!(
        told.iter().any(|fact| matches!(fact, Fact::Number { found, .. } if *found == meant)),
        "{told:?}"
    );
}

/// A bag that rose 9 mm above its zero of 5 mm by minute 12 and no further stood at 14 mm then and in the end. What is
/// written twice is told once.
#[test]
fn a_height_is_that_of_a_last_reading_and_is_told_once() {
    let mut class = class([14.0, 13.0, 15.0, 14.0], [1.0, 0.0, 1.0, 1.0]);
    let code = class.add_by("Maple syrup", "1", 2);
    class.read(&code, &[(0.0, 0.0), (12.0, 9.0), (24.0, 9.0)]);
    let told = of(&class, &claim(Says::More, None, "14 mm! Yes, 14 mm."), ("1", 2));
    let mut found = told.iter().filter_map(|fact| match fact {
        Fact::Number { found, .. } => Some(found),
        _ => None,
    });
    assert_eq!(found.next(), Some(&Found::Height { bag: code, minute: 24.0 }));
    assert_eq!(found.next(), None);
}

#[test]
fn a_group_without_one_side_is_told_so_and_bags_set_aside_are_named() {
    let mut class = class([14.0, 13.0, 15.0, 14.0], [1.0, 0.0, 1.0, 1.0]);
    let told = of(&class, &claim(Says::More, None, ""), ("1", 9));
    assert_eq!(told[1], Fact::OwnOneSided { bags: (0, 0) });
    let rule = SetAsideRule { id: "leak".into(), says: "it leaked".into() };
    class.plan.set_aside_rules.push(rule);
    let code = class.plan.bags[0].code.clone();
    class.put_aside(&code, "leak");
    let told = of(&class, &claim(Says::More, None, ""), ("1", 1));
    assert_eq!(told[1], Fact::OwnOneSided { bags: (0, 1) });
    assert!(told.contains(&Fact::SetAside { bag: code, rule: "leak".into() }), "{told:?}");
}

#[test]
fn a_claim_about_what_is_not_there_says_nothing() {
    let class = class([14.0, 13.0, 15.0, 14.0], [1.0, 0.0, 1.0, 1.0]);
    let elsewhere = Claim { question: "enzyme".into(), ..claim(Says::More, Some(3.0), "") };
    assert_eq!(of(&class, &elsewhere, ("1", 1)), []);
}

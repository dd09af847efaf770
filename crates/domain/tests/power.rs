//! What is foretold of a plan's bags, from spreads and by trying.

#[path = "../../science/tests/statistics/size.rs"]
mod size;

use barm_domain::bag_list;
use barm_domain::plan::{Plan, Question};
use barm_domain::power::{
    Chances, Expected, LEVEL, NoPower, Pair, QuestionPower, Trial, Tried, expected, gather,
    variants,
};
use barm_domain::rehearsal::Rates;
use barm_domain::testing::{base_plan, food, period, question, treatment};
use barm_domain::words::Voice;

/// Amounts of sugar beside one of them, so many bags of each, over so many periods.
fn sugars(amounts: &[(&str, &str)], replicates: u32, periods: &[&str]) -> Plan {
    let treatments =
        amounts.iter().map(|(name, amount)| treatment(name, food("table sugar", amount)));
    let asked = Question {
        reference: Some(amounts[0].0.into()),
        replicates,
        ..question("sugar", treatments.collect())
    };
    let mut plan = Plan {
        periods: periods.iter().map(|name| period(name)).collect(),
        questions: vec![asked],
        ..base_plan()
    };
    plan.bags = bag_list::write(&plan).expect("codes enough").bags;
    plan
}

fn trial(classes: usize) -> Trial {
    Trial { classes, seed: 11, rates: Rates::default() }
}

fn foretold(plan: &Plan, trial: &Trial, most: u32) -> Vec<QuestionPower> {
    let expected: Vec<Expected> = plan
        .treatments()
        .map(|(_, treatment)| expected(plan, treatment, 128, trial.seed).expect("a forecast"))
        .collect();
    let tried: Vec<Tried> = variants(plan, most, &[])
        .expect("bags")
        .into_iter()
        .map(|variant| {
            let classes = variant.classes(trial);
            let courses: Vec<_> = (0..variant.bags())
                .map(|bag| {
                    variant.follow(bag, classes, trial.seed).expect("it can be followed")
                })
                .collect();
            let outcomes = (0..classes)
                .map(|class| variant.class(&courses, class, trial).expect("its courses"))
                .collect();
            Tried { variant, outcomes }
        })
        .collect();
    gather(plan, &expected, &tried)
}

fn four_errors(chance: f64, classes: usize) -> f64 {
    4.0 * (chance.clamp(0.02, 0.98) * (1.0 - chance.clamp(0.02, 0.98)) / classes as f64).sqrt()
}

/// 0.05 beside chance: spreads are taken to be the same on all days.
#[test]
fn both_ways_agree_where_nothing_goes_wrong() {
    let classes = size::counts(60, 200, 800);
    for amounts in [
        [("Half", "0.4 g"), ("Little", "0.25 g"), ("Least", "0.12 g")],
        [("Half", "0.4 g"), ("Hardly less", "0.37 g"), ("None to speak of", "0.05 g")],
    ] {
        let plan = sugars(&amounts, 4, &["1", "2"]);
        let told = foretold(&plan, &trial(classes), 0);
        assert_eq!(told.len(), 1);
        assert!(told[0].bag_sd_mm.expect("a spread") > 0.7, "no less than reading leaves open");
        for pair in &told[0].pairs {
            let (said, tried) = (pair.own.by_spreads.unwrap(), pair.own.tried.unwrap());
            let allowed = 0.05 + four_errors(said, classes);
            assert!((said - tried).abs() < allowed, "{pair:?}");
            let (low, middle, high) = pair.apart_mm.expect("both forecasts");
            assert!(low <= middle && middle <= high && middle < 0.0, "{pair:?}");
        }
    }
}

/// Bags that differ in name only are called different no more often than the level says.
#[test]
fn where_there_is_no_difference_hardly_any_class_finds_one() {
    let classes = size::counts(60, 200, 1000);
    let plan = sugars(&[("One", "0.4 g"), ("The same", "0.4 g")], 4, &["1", "2"]);
    let told = foretold(&plan, &trial(classes), 0);
    let own = &told[0].pairs[0].own;
    assert!(own.by_spreads.unwrap() <= LEVEL, "{own:?}");
    assert!(own.tried.unwrap() <= LEVEL + four_errors(LEVEL, classes), "{own:?}");
    assert!(Voice::english(8).power(&told[0]).contains("no difference clearly"));
}

#[test]
fn more_bags_find_more_and_smaller_differences_and_slips_cost() {
    let classes = size::counts(24, 60, 300);
    let plan = sugars(&[("More", "0.5 g"), ("Less", "0.3 g")], 3, &["1"]);
    let told = foretold(&plan, &trial(classes), 6);
    let pair = &told[0].pairs[0];
    let each: Vec<u32> = pair.by_bags.iter().filter_map(|one| one.each).collect();
    assert_eq!(each, [1, 2, 3, 4, 5, 6]);
    let bags: Vec<usize> = pair.by_bags.iter().map(|one| one.bags).collect();
    assert_eq!(bags, [1, 2, 3, 4, 5, 6]);
    for two in pair.by_bags[1..].windows(2) {
        let (fewer, more) = (&two[0], &two[1]);
        assert!(more.usually_found_mm.unwrap() <= fewer.usually_found_mm.unwrap(), "{two:?}");
    }
    // More benches start later, so more bags may be compared a reading earlier, where they differ less: the
    // chance need not grow with each bag, but does over all.
    let chance = |at: usize| pair.by_bags[at].by_spreads.unwrap();
    assert!(chance(1) < chance(3) && chance(3) < chance(5), "{:?}", pair.by_bags);
    let without = pair.own.tried.unwrap();
    assert!(pair.own.with_slips <= without + four_errors(without, classes), "{:?}", pair.own);
    // The plan's own three bags are the three that are dealt.
    let three = &pair.by_bags[2];
    assert_eq!((three.bags, three.bags_reference), (pair.own.bags, pair.own.bags_reference));
    assert!((three.by_spreads.unwrap() - pair.own.by_spreads.unwrap()).abs() < 1e-9);
}

/// The verdict of the day never says "clear" of a single bag, and so says this why.
#[test]
fn what_can_never_be_clear_is_said_with_its_reason() {
    let plan = sugars(&[("A lot", "0.8 g"), ("None", "0.01 g")], 1, &["1"]);
    let told = foretold(&plan, &trial(8), 2);
    let own = &told[0].pairs[0].own;
    assert!(own.never.as_ref().expect("a reason").contains("make at least two"), "{own:?}");
    assert_eq!((own.tried, own.usually_found_mm), (Some(0.0), None));
    assert!(own.by_spreads.is_none_or(|chance| chance.abs() < 1e-12));
    let advice = Voice::english(8).power(&told[0]);
    assert!(
        advice.starts_with("With 1 bag of each you will probably see no difference"),
        "{advice}"
    );
    assert!(advice.contains("none"), "what to do about it: {advice}");
}

#[test]
fn one_seed_tells_the_same_and_another_another() {
    let plan = sugars(&[("More", "0.4 g"), ("Less", "0.3 g")], 3, &["1"]);
    let first = foretold(&plan, &trial(12), 2);
    assert_eq!(first, foretold(&plan, &trial(12), 2));
    let other = foretold(&plan, &Trial { seed: 12, ..trial(12) }, 2);
    assert_ne!(first, other);
}

#[test]
fn a_plan_without_a_bag_list_is_foretold_with_the_list_it_would_get() {
    let plan = sugars(&[("More", "0.4 g"), ("Less", "0.2 g")], 3, &["1", "2"]);
    let bare = Plan { bags: Vec::new(), ..plan.clone() };
    assert_eq!(foretold(&plan, &trial(8), 0), foretold(&bare, &trial(8), 0));
}

#[test]
fn bags_that_cannot_be_followed_are_left_out_and_their_comparisons_say_so() {
    let amounts = [("More", "0.4 g"), ("Less", "0.2 g"), ("Least", "0.1 g")];
    let plan = sugars(&amounts, 3, &["1"]);
    let all = variants(&plan, 0, &[]).unwrap();
    let some = variants(&plan, 0, &["Least"]).unwrap();
    assert_eq!(all[0].bags() - some[0].bags(), 3);
    assert_eq!(variants(&plan, 0, &["More", "Less", "Least"]).unwrap_err(), NoPower::NoBags);
}

#[test]
fn where_nothing_is_compared_that_is_said() {
    let mut plan = sugars(&[("More", "0.4 g"), ("Less", "0.2 g")], 2, &["1"]);
    plan.questions[0].reference = None;
    let none = variants(&plan, 2, &[]).unwrap_err();
    assert_eq!(none, NoPower::NothingCompared);
    assert!(none.to_string().contains("nothing to find"));
    plan.questions.clear();
    assert_eq!(variants(&plan, 2, &[]).unwrap_err(), NoPower::NothingCompared);
    let mut empty = sugars(&[("More", "0.4 g"), ("Less", "0.2 g")], 2, &["1"]);
    empty.periods[0].groups = 0;
    empty.bags.clear();
    assert_eq!(variants(&empty, 2, &[]).unwrap_err(), NoPower::NoBags);
}

fn chances(bags: usize, with_slips: f64) -> Chances {
    Chances {
        each: None,
        bags,
        bags_reference: 4,
        by_spreads: Some(with_slips),
        tried: Some(with_slips),
        with_slips,
        usually_found_mm: Some(6.3),
        never: None,
    }
}

fn pair(name: &str, own: f64, by_bags: &[f64]) -> Pair {
    let dealt = |(bags, chance): (usize, &f64)| Chances {
        each: u32::try_from(bags).ok(),
        ..chances(bags, *chance)
    };
    Pair {
        treatment: name.into(),
        reference: "No food".into(),
        apart_mm: None,
        own: chances(4, own),
        by_bags: (1..).zip(by_bags).map(dealt).collect(),
    }
}

#[test]
fn the_advice_is_one_sentence() {
    let says = |pairs: Vec<Pair>| {
        let question = "food".into();
        Voice::english(8).power(&QuestionPower {
            question,
            minute: Some(24.0),
            bag_sd_mm: Some(2.0),
            any_clear: (1.0, 1.0),
            pairs,
        })
    };
    let rising = [0.0, 0.1, 0.3, 0.5, 0.7, 0.82, 0.9, 0.95];
    assert_eq!(
        says(vec![
            pair("Maple syrup", 0.97, &rising),
            pair("Honey", 0.85, &rising),
            pair("Oats", 0.5, &rising),
            pair("Flour", 0.1, &[0.1; 8]),
        ]),
        "With 4 bags of each you will probably see that maple syrup and honey differ from no food; \
         the smallest difference usually found is about 6 mm; make 6 bags of oats to see it; for flour, \
         8 bags would not do: change more, or take any answer as \u{201c}can\u{2019}t tell\u{201d}."
    );
    assert_eq!(
        says(vec![pair("Maple syrup", 0.97, &rising), pair("Honey", 0.85, &rising)]),
        "With 4 bags of each you will probably see how each of the 2 differs from no food; the smallest \
         difference usually found is about 6 mm."
    );
}

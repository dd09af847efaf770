//! One food for another, class-wide.

use barm_domain::check::check;
use barm_domain::finding::Severity;
use barm_domain::plan::Plan;
use barm_domain::prep::prep;
use barm_domain::ready::{Ready, SwapError, foods_of, plan, swap};
use barm_domain::testing::answers;

fn lesson() -> Plan {
    let answers = answers(2, 6, &["sugar_white", "honey", "wheat_flour_white"]);
    plan(Ready::WhichFood, &answers).unwrap()
}

#[test]
fn reaches_recipes_names_bags_and_shopping_in_one_go() {
    let before = lesson();
    let after = swap(&before, "white flour", "corn starch").unwrap();
    let all = format!("{after:?}").to_lowercase();
    assert!(!all.contains("wheat"), "nothing of it is left, and no reason is kept");
    assert!(foods_of(&after).iter().any(|(id, _)| id == "corn_starch"));
    let codes = |plan: &Plan| plan.bags.iter().map(|bag| bag.code.clone()).collect::<Vec<_>>();
    assert_eq!(codes(&before), codes(&after));
    assert_eq!(before.retired_codes, after.retired_codes);
    let held =
        |plan: &Plan, name: &str| plan.bags.iter().filter(|b| b.treatment == name).count();
    assert_eq!(held(&before, "White wheat flour"), held(&after, "Corn starch"));
    assert!(prep(&after).is_ok());
    let faults = check(&after, &[]);
    assert!(faults.iter().all(|f| f.severity != Severity::Fault), "{faults:?}");
}

#[test]
fn a_control_named_after_the_food_follows() {
    let after = swap(&lesson(), "sugar_white", "maple_syrup").unwrap();
    let control = after.treatment("Maple syrup, no yeast").unwrap();
    assert_eq!(after.recipe(control).food.as_deref(), Some("maple_syrup"));
    assert!(after.bags.iter().any(|bag| bag.treatment == "Maple syrup, no yeast"));
}

#[test]
fn there_and_back_is_where_it_was_but_for_the_packs() {
    let before = lesson();
    let there = swap(&before, "honey", "maple_syrup").unwrap();
    let mut back = swap(&there, "maple_syrup", "honey").unwrap();
    back.materials.sort_by(|a, b| a.item.cmp(&b.item));
    let mut was = before;
    was.materials.sort_by(|a, b| a.item.cmp(&b.item));
    assert_eq!(was, back);
}

#[test]
fn what_cannot_be_swapped_is_said() {
    let before = lesson();
    let wrong = |from, to| swap(&before, from, to).unwrap_err();
    assert!(matches!(wrong("honey", "sugar_white"), SwapError::There { .. }));
    assert!(matches!(wrong("corn starch", "honey"), SwapError::NotUsed { .. }));
    assert!(matches!(wrong("honey", "hunny bear"), SwapError::Cupboard(_)));
}

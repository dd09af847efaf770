//! Any edits, with bags sealed in between.

use crate::school::{School, lesson};
use barm_domain::bag_list;
use barm_domain::plan::{Lies, Plan};
use barm_domain::ready::{Ready, swap};
use barm_domain::testing::amount;
use proptest::prelude::*;

/// One thing that a teacher does.
#[derive(Debug, Clone)]
enum Does {
    Seal(usize),
    Read(usize),
    Groups(usize, u32),
    Water(u8),
    Food(&'static str, &'static str),
    Amount(usize, u8),
    TakeOut(usize),
    NoLastPeriod,
    Rename(usize),
    Tray(usize),
}

fn does() -> impl Strategy<Value = Does> {
    let food = prop_oneof![
        Just(("honey", "maple_syrup")),
        Just(("maple_syrup", "honey")),
        Just(("sugar_white", "molasses")),
        Just(("molasses", "sugar_white")),
    ];
    prop_oneof![
        6 => (0usize..40).prop_map(Does::Seal),
        1 => (0usize..40).prop_map(Does::Read),
        2 => (0usize..2, 1u32..5).prop_map(|(period, groups)| Does::Groups(period, groups)),
        2 => (34u8..44).prop_map(Does::Water),
        2 => food.prop_map(|(from, to)| Does::Food(from, to)),
        2 => (0usize..6, 1u8..4).prop_map(|(nth, grams)| Does::Amount(nth, grams)),
        1 => (0usize..6).prop_map(Does::TakeOut),
        1 => Just(Does::NoLastPeriod),
        1 => (0usize..6).prop_map(Does::Rename),
        1 => (0usize..6).prop_map(Does::Tray),
    ]
}

/// The plan after an edit; nothing where it cannot be made.
fn edited(plan: &Plan, does: &Does) -> Option<Plan> {
    let mut new = plan.clone();
    let at =
        |new: &Plan, nth: usize| Some(nth % new.questions.first()?.treatments.len().max(1));
    match does {
        Does::Seal(_) | Does::Read(_) => return None,
        Does::Groups(period, groups) => new.periods.get_mut(*period)?.groups = *groups,
        Does::Water(celsius) => new.base.water_celsius = f64::from(*celsius),
        Does::Food(from, to) => return swap(plan, from, to).ok(),
        Does::Amount(nth, grams) => {
            let nth = at(&new, *nth)?;
            let own = new.questions[0].treatments.get_mut(nth)?;
            own.difference.food_amount = Some(amount(&format!("{grams} g")));
        }
        Does::TakeOut(nth) => {
            let nth = at(&new, *nth)?;
            let asked = &mut new.questions[0];
            let name = asked.treatments.get(nth)?.name.clone();
            if asked.treatments.len() < 2 || asked.reference.as_ref() == Some(&name) {
                return None;
            }
            asked.treatments.remove(nth);
        }
        Does::NoLastPeriod if new.periods.len() > 1 => {
            new.periods.pop();
        }
        Does::NoLastPeriod => return None,
        Does::Rename(nth) => {
            let nth = at(&new, *nth)?;
            let asked = &mut new.questions[0];
            let old = asked.treatments.get(nth)?.name.clone();
            let name = format!("{old}!");
            asked.treatments[nth].name.clone_from(&name);
            if asked.reference.as_ref() == Some(&old) {
                asked.reference = Some(name);
            }
        }
        Does::Tray(nth) => {
            let nth = at(&new, *nth)?;
            new.questions[0].treatments.get_mut(nth)?.difference.lies = Some(Lies::Towel);
        }
    }
    Some(new)
}

fn cases() -> u32 {
    crate::size::counts(60, 400, 4000)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(cases()))]

    #[test]
    fn leave_every_sealed_bag_as_it_was(all in prop::collection::vec(does(), 1..16)) {
        let mut school = School::of(lesson(Ready::WhichFood));
        for one in &all {
            if let Does::Seal(nth) | Does::Read(nth) = one {
                let bags = &school.newest().bags;
                let code = bags[nth % bags.len()].code.clone();
                let bag = code.parse().expect("a code");
                let version = matches!(one, Does::Seal(_)).then(|| school.version());
                if !school.was.contains_key(&bag) {
                    school.read(&code, version);
                }
            } else if let Some(new) = edited(school.newest(), one)
                && bag_list::write(&new).is_ok()
            {
                school.save(new);
            }
            if let Err(why) = school.holds() {
                return Err(TestCaseError::fail(why));
            }
        }
    }
}

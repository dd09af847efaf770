//! Invented plans, made by program.

use barm_domain::plan::{
    CONTROLS, Control, Difference, Material, Period, Plan, PlannedBag, Recipe, Timing,
    Treatment,
};
use barm_domain::prep::{Item, Measure, Prep, Purchase, Total};
pub(crate) use barm_domain::testing::amount;
use barm_domain::testing::{self, bag, base_plan, period, question};
use jiff::civil::{Time, time};

pub(crate) fn material(item: &str, pack: &str, price: Option<f64>, stock: &str) -> Material {
    Material {
        item: item.into(),
        pack: amount(pack),
        price,
        in_stock: (!stock.is_empty()).then(|| amount(stock)),
    }
}

/// What a test changes in the base recipe.
pub(crate) fn treatment(name: &str, change: impl FnOnce(&mut Difference)) -> Treatment {
    let mut difference = Difference::default();
    change(&mut difference);
    testing::treatment(name, difference)
}

/// A treatment with that much of a food.
pub(crate) fn with_food(food: &str, how_much: &str) -> Treatment {
    testing::treatment(food, testing::food(food, how_much))
}

/// A treatment with that much of an enzyme, named after both.
pub(crate) fn with_enzyme(enzyme: &str, how_much: &str) -> Treatment {
    testing::treatment(&format!("{enzyme} {how_much}"), testing::enzyme(enzyme, how_much))
}

/// Period starts of a usual day: 8:00, 8:50 and so on, with lunch after the third.
pub(crate) fn bell(period: usize) -> Time {
    let minutes = 8 * 60 + 50 * period + if period >= 3 { 40 } else { 0 };
    time((minutes / 60) as i8, (minutes % 60) as i8, 0, 0)
}

/// A day of so many periods with so many groups. Every bag is 1 tsp of instant yeast in 60 mL of
/// water of 40 °C, before its treatment says otherwise; the room has 21 °C.
pub(crate) fn plan(periods: usize, groups: u32, treatments: Vec<Treatment>) -> Plan {
    let base = base_plan();
    Plan {
        periods: (0..periods)
            .map(|number| Period {
                start: bell(number),
                students: groups * 3,
                groups,
                ..period(&(number + 1).to_string())
            })
            .collect(),
        base: Recipe {
            bag: bag("sandwich"),
            water: amount("60 mL"),
            yeast_amount: amount("1 tsp"),
            ..base.base
        },
        timing: Timing { interval_min: 5.0, ..base.timing },
        questions: vec![question("food", treatments)],
        controls: vec![Control { treatment: treatment("Yeast alone", |_| {}), per_period: 1 }],
        ..base
    }
}

/// Puts one more bag on the list.
pub(crate) fn add_bag(plan: &mut Plan, period: usize, group: u32, treatment: &str) {
    let place = plan.bags.iter().filter(|bag| bag.group == group).count() as u32 + 1;
    let question = if plan.is_control(treatment) { CONTROLS } else { "food" };
    plan.bags.push(PlannedBag {
        code: format!("bag {}", plan.bags.len() + 1),
        period: format!("{}", period + 1),
        group,
        place,
        question: question.into(),
        treatment: treatment.into(),
        replicate: 1,
    });
}

/// So many bags in every group, the treatments in turn, and one control on the teacher's bench in
/// every period.
pub(crate) fn fill(plan: &mut Plan, bags_per_group: usize) {
    let names: Vec<String> =
        plan.questions[0].treatments.iter().map(|treatment| treatment.name.clone()).collect();
    for period in 0..plan.periods.len() {
        for group in 1..=plan.periods[period].groups {
            for bag in 0..bags_per_group {
                add_bag(plan, period, group, &names[(group as usize + bag) % names.len()]);
            }
        }
        add_bag(plan, period, 0, "Yeast alone");
    }
}

pub(crate) fn total<'a>(prep: &'a Prep, item: &Item) -> &'a Total {
    prep.total(item).unwrap_or_else(|| panic!("no total of {}", item.name()))
}

pub(crate) fn purchase<'a>(prep: &'a Prep, item: &Item) -> &'a Purchase {
    let found = prep.shopping.purchases.iter().find(|purchase| purchase.item == *item);
    found.unwrap_or_else(|| panic!("{} is not on the shopping list", item.name()))
}

/// An amount of an item in its own unit.
pub(crate) fn of(item: &Item, value: f64) -> Measure {
    Measure::new(item.unit(), value)
}

/// Cases of a property, by `BARM_TEST_SIZE`.
pub(crate) fn cases(ci: u32) -> proptest::test_runner::Config {
    let cases = crate::size::counts((ci / 8).max(1), ci, ci * 8);
    let config = proptest::test_runner::Config::with_cases(cases);
    proptest::test_runner::Config { failure_persistence: None, ..config }
}

//! Totals against the bags themselves.

use crate::school::{add_bag, cases, plan, treatment, with_enzyme, with_food};
use barm_domain::amount::Amount;
use barm_domain::bench;
use barm_domain::plan::{Extra, Plan, Treatment};
use barm_domain::prep::{Item, Measure, Prep, Unit, prep};
use proptest::prelude::*;
use std::collections::BTreeMap;

fn treatments() -> Vec<Treatment> {
    let salted = treatment("Salt", |difference| {
        difference.extras = Some(vec![
            Extra { item: "salt".into(), amount: Amount::parse("1/8 tsp").unwrap() },
            Extra { item: "sugar_white".into(), amount: Amount::parse("1/3 g").unwrap() },
        ]);
    });
    let cool = treatment("Cool", |difference| {
        difference.water_celsius = Some(27.5);
        difference.water = Some(Amount::parse("1/3 cup").unwrap());
    });
    vec![
        with_food("sugar_white", "1 1/3 tsp"),
        with_food("oat_flour", "1.7 g"),
        with_enzyme("glucoamylase solution", "0.33 mL"),
        with_enzyme("lactase drops", "7 drops"),
        with_enzyme("lactase tablet", "1 tablet"),
        salted,
        cool,
        treatment("No yeast", |difference| difference.yeast = Some(None)),
    ]
}

/// Bags as period, group and treatment (the last is the control).
type Bags = Vec<(usize, u32, usize)>;

fn some_bags() -> impl Strategy<Value = Bags> {
    prop::collection::vec((0_usize..4, 0_u32..=5, 0_usize..=8), 0..=60)
}

fn plan_of(bags: &Bags, per_mille: u32) -> Plan {
    let mut day = plan(4, 5, treatments());
    day.spare = f64::from(per_mille) / 1000.0;
    let mut names: Vec<String> =
        day.questions[0].treatments.iter().map(|t| t.name.clone()).collect();
    names.push("Yeast alone".into());
    for (period, group, name) in bags {
        add_bag(&mut day, *period, *group, &names[*name]);
    }
    day
}

/// What the trays hold, item by item.
fn on_trays(prep: &Prep) -> BTreeMap<Item, Measure> {
    let mut sums: BTreeMap<Item, Measure> = BTreeMap::new();
    for tray in prep.periods.iter().flat_map(|period| &period.trays) {
        for (item, measure) in &tray.sums {
            let sum = sums.entry(item.clone()).or_insert(Measure::none(item.unit()));
            *sum = sum.plus(*measure);
        }
    }
    sums
}

/// What lies on no tray but is bought for a solution that does.
fn dissolved(item: &Item, prep: &Prep) -> bool {
    matches!(item, Item::Enzyme(key) if prep.stocks.iter().any(|stock| stock.product == *key))
}

/// What the bench says that a bag takes, without any of the sums under test.
fn weighed(plan: &Plan) -> (f64, f64, f64) {
    let mut sums = (0.0, 0.0, 0.0);
    for bag in &plan.bags {
        let recipe = plan.recipe(plan.treatment(&bag.treatment).unwrap());
        let setup = bench::setup(plan, &recipe, &plan.days[0]).unwrap();
        sums.0 += setup.yeast.map_or(0.0, |yeast| yeast.grams);
        sums.1 += setup.water_ml;
        sums.2 += setup.foods.iter().map(|food| food.grams).sum::<f64>();
    }
    sums
}

proptest! {
    #![proptest_config(cases(400))]

    #[test]
    fn totals_are_the_trays_and_the_spare_without_error(
        bags in some_bags(),
        per_mille in 0_u32..=1000,
    ) {
        let plan = plan_of(&bags, per_mille);
        let prep = prep(&plan).unwrap();
        let trays = on_trays(&prep);
        for total in &prep.totals {
            prop_assert_eq!(total.need(), total.used.plus(total.spare).plus(total.rounding));
            prop_assert!(total.most_in_a_period <= total.used || dissolved(&total.item, &prep));
            if dissolved(&total.item, &prep) {
                let made = prep.stocks.iter().filter(|s| Item::Enzyme(s.product) == total.item);
                let taken = made.fold(Measure::none(total.item.unit()), |sum, s| sum.plus(s.takes));
                let tray = trays.get(&total.item).copied().unwrap_or(Measure::none(total.item.unit()));
                prop_assert!(total.need() >= taken.plus(tray));
                continue;
            }
            prop_assert_eq!(Some(&total.used), trays.get(&total.item), "{}", total.item.name());
            // The spare is the share, rounded up by less than a piece or a millionth.
            let exact = total.used.value() * plan.spare;
            let step = if total.item.unit() == Unit::Piece { 1.0 } else { 1e-6 };
            if !matches!(total.item, Item::Solution(_)) {
                prop_assert!(total.spare.value() >= exact - 1e-9);
                prop_assert!(total.spare.value() < exact + step + 1e-9);
                prop_assert!(total.rounding.is_none());
            }
        }
        for item in trays.keys() {
            prop_assert!(prep.total(item).is_some());
        }
        // Lines, trays and periods are sums of one another.
        for period in &prep.periods {
            for tray in &period.trays {
                let bags = tray.bags.len() as u32;
                prop_assert_eq!(tray.sum(&Item::Label), Measure::pieces(2 * bags));
                let water: u32 =
                    tray.lines.iter().filter(|l| l.item == Item::Water).map(|l| l.bags).sum();
                prop_assert_eq!(water, bags);
            }
            let jugs = period.jugs.iter().fold(Measure::none(Unit::Milliliter), |sum, jug| sum.plus(jug.used));
            prop_assert_eq!(Some(&jugs), period.sums.get(&Item::Water));
        }
        let listed: usize =
            prep.periods.iter().flat_map(|p| &p.trays).map(|tray| tray.bags.len()).sum();
        prop_assert_eq!(listed, plan.bags.len());
    }

    #[test]
    fn totals_are_what_the_bench_weighs(bags in some_bags()) {
        let plan = plan_of(&bags, 100);
        let prep = prep(&plan).unwrap();
        let used = |wanted: fn(&Item) -> bool| -> f64 {
            prep.totals.iter().filter(|t| wanted(&t.item)).map(|t| t.used.value()).sum()
        };
        let (yeast, water, food) = weighed(&plan);
        // Each bag is rounded to a microgram once.
        let within = 1e-6 * plan.bags.len() as f64 + 1e-9;
        prop_assert!((used(|i| matches!(i, Item::Yeast(_))) - yeast).abs() <= within);
        prop_assert!((used(|i| *i == Item::Water) - water).abs() <= within);
        prop_assert!((used(|i| matches!(i, Item::Food(_))) - food).abs() <= 2.0 * within);
    }

    #[test]
    fn the_order_of_the_bags_changes_nothing(
        (bags, order) in some_bags().prop_flat_map(|bags| {
            let order: Vec<usize> = (0..bags.len()).collect();
            (Just(bags), Just(order).prop_shuffle())
        })
    ) {
        let plan = plan_of(&bags, 100);
        let mut other = plan.clone();
        other.bags = order.into_iter().map(|place| plan.bags[place].clone()).collect();
        prop_assert_eq!(prep(&plan).unwrap(), prep(&other).unwrap());
    }

    #[test]
    fn what_is_shown_is_rounded_up_only(micro in 0_u64..=20_000_000_000, unit in 0_usize..3) {
        let unit = [Unit::Gram, Unit::Milliliter, Unit::Piece][unit];
        let exact = micro as f64 / 1e6;
        let shown = Measure::new(unit, exact).to_string();
        let number: f64 = shown.split(' ').next().unwrap().parse().unwrap();
        let large = shown.ends_with(" kg") || shown.ends_with(" L");
        let said = if large { 1000.0 * number } else { number };
        prop_assert!(said >= exact - 1e-9, "{exact} as {shown}");
        let finest = match (unit, large) {
            (Unit::Piece, _) => 1.0,
            (_, true) => if exact < 10_000.0 { 10.0 } else { 100.0 },
            (_, false) if exact < 1.0 => 0.01,
            (_, false) if exact < 10.0 => 0.1,
            (_, false) => 1.0,
        };
        prop_assert!(said < exact + finest + 1e-9, "{exact} as {shown}");
    }
}

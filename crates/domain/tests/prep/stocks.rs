//! Stock solutions: how much, how strong, when.

use crate::school::{add_bag, cases, fill, of, plan, total, with_enzyme};
use barm_domain::plan::Plan;
use barm_domain::prep::{Item, Measure, Stock, Unit, prep};
use jiff::civil::time;
use proptest::prelude::*;

const POWDER: &str = "glucoamylase-powder";

fn solution(how_much: &str) -> Vec<barm_domain::plan::Treatment> {
    vec![with_enzyme("glucoamylase solution", how_much)]
}

fn of_day(plan: &Plan) -> Vec<Stock> {
    prep(plan).unwrap().stocks
}

/// Common practice, no source: 1 g of powder in 100 mL, made on the day, used within four hours.
#[test]
fn a_morning_takes_one_batch() {
    let mut day = plan(3, 8, solution("2 mL"));
    fill(&mut day, 1);
    let [stock] = of_day(&day).try_into().unwrap();
    // 24 bags of 2 mL and a tenth are 52.8 mL, made as 60 mL with 0.6 g.
    assert_eq!(stock.bags, 24);
    assert_eq!(stock.used, Measure::new(Unit::Milliliter, 48.0));
    assert_eq!(stock.spare, Measure::new(Unit::Milliliter, 4.8));
    assert_eq!(stock.makes, Measure::new(Unit::Milliliter, 60.0));
    assert_eq!(stock.takes, Measure::new(Unit::Gram, 0.6));
    assert_eq!((stock.make_at, stock.use_by), (time(7, 30, 0, 0), time(11, 30, 0, 0)));
    assert_eq!(stock.periods, ["1", "2", "3"]);
    // All of the powder is on the list: what is used, what is spare, what the rounding takes.
    let prep = prep(&day).unwrap();
    let powder = total(&prep, &Item::Enzyme(POWDER));
    assert_eq!(powder.need(), stock.takes);
    assert_eq!(powder.used, of(&powder.item, 0.48));
    assert_eq!(powder.spare, of(&powder.item, 0.048));
}

/// Periods at 8:00, 8:50, 9:40, then lunch, 11:10, 12:00, 12:50: what is made at 7:30 is too old
/// from 11:30 on, and the longest break before that is lunch.
#[test]
fn a_long_day_takes_a_second_batch_at_lunch() {
    let mut day = plan(6, 4, solution("2 mL"));
    fill(&mut day, 1);
    let stocks = of_day(&day);
    let made: Vec<_> =
        stocks.iter().map(|stock| (stock.make_at, stock.periods.len())).collect();
    assert_eq!(made, [(time(7, 30, 0, 0), 3), (time(10, 40, 0, 0), 3)]);
}

#[test]
fn tablets_are_not_broken_and_days_do_not_share() {
    let mut days = plan(2, 6, vec![with_enzyme("lactase tablet", "15 mL")]);
    let mut second = days.days[0].clone();
    second.name = "Wednesday".into();
    days.days.push(second);
    days.periods[1].day = "Wednesday".into();
    fill(&mut days, 1);
    let stocks = of_day(&days);
    let made: Vec<_> = stocks
        .iter()
        .map(|stock| (stock.day.as_str(), stock.makes.to_string(), stock.takes.to_string()))
        .collect();
    // 99 mL with the spare.
    assert_eq!(
        made,
        [("Tuesday", "100 mL".into(), "1".into()), ("Wednesday", "100 mL".into(), "1".into())]
    );
}

#[test]
fn marks_are_those_of_a_school_cylinder() {
    for (need, mark) in [
        (0.1, 10.0),
        (10.0, 10.0),
        (52.8, 60.0),
        (100.0, 100.0),
        (100.1, 125.0),
        (250.0, 250.0),
        (251.0, 300.0),
        (1650.0, 1650.0),
        (1_650.000_001, 1700.0),
    ] {
        let ml = |value| Measure::new(Unit::Milliliter, value);
        assert_eq!(ml(need).up_to_a_mark(), ml(mark), "{need} mL");
    }
}

proptest! {
    #![proptest_config(cases(200))]

    #[test]
    fn every_bag_gets_fresh_solution_of_the_right_strength(
        tenths in 1_u32..=100,
        periods in 1_usize..=9,
        bags in prop::collection::vec((0_usize..9, 1_u32..=6), 1..=40),
        spare in 0_u32..=60,
    ) {
        let mut day = plan(periods, 6, solution(&format!("{} mL", f64::from(tenths) / 10.0)));
        day.spare = f64::from(spare) / 100.0;
        let name = day.questions[0].treatments[0].name.clone();
        for (period, group) in &bags {
            add_bag(&mut day, period % periods, *group, &name);
        }
        let stocks = of_day(&day);
        prop_assert_eq!(stocks.iter().map(|s| s.bags as usize).sum::<usize>(), bags.len());
        let mut served = Vec::new();
        for stock in &stocks {
            let need = stock.used.plus(stock.spare);
            prop_assert!(stock.makes >= need);
            prop_assert!(stock.makes.value() - need.value() < 50.0);
            // Within 1 % of exact before any rounding of the batch.
            let exact = f64::from(stock.bags) * f64::from(tenths) / 10.0
                * (1.0 + f64::from(spare) / 100.0);
            prop_assert!((need.value() / exact - 1.0).abs() < 0.01);
            prop_assert!((stock.takes.value() / stock.makes.value() - 0.01).abs() < 1e-6);
            for name in &stock.periods {
                let period = day.period(name).unwrap();
                let pour = period.start.duration_since(stock.make_at).as_secs() as f64 / 60.0
                    + day.timing.mixing_min;
                prop_assert!((0.0..=240.0).contains(&pour), "{name} at {pour} min");
            }
            served.extend(stock.periods.clone());
        }
        let mut with_bags: Vec<String> =
            day.periods.iter().map(|period| period.name.clone()).collect();
        with_bags.retain(|name| day.bags.iter().any(|bag| bag.period == *name));
        prop_assert_eq!(served, with_bags);
        // No batch more than the least: each next batch begins because the one before would have
        // been too old for what it serves.
        for pair in stocks.windows(3) {
            let last = day.period(pair[2].periods.first().unwrap()).unwrap();
            let age = last.start.duration_since(pair[0].make_at).as_secs() as f64 / 60.0
                + day.timing.mixing_min;
            prop_assert!(age > 240.0);
        }
    }
}

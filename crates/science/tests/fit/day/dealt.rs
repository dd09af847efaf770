//! Invented days: what is not known is dealt from the prior, bags are followed by the full model, and
//! heights are read with an ordinary ruler.

use barm_science::bag::StandardBag;
use barm_science::constants::ATMOSPHERE;
use barm_science::enzyme::products::product;
use barm_science::fit::day::{BagSeen, Level, effects};
use barm_science::food;
use barm_science::model::{Parameters, run};
use barm_science::prior::{Key, Prior, Transform};
use barm_science::ruler::PARALLAX;
use barm_science::setup::{Card, Lying, Setup, YeastDose, YeastKind};
use barm_science::statistics::chance::Chance;
use std::collections::BTreeMap;

/// One group's plan: what goes in, which period, which group.
pub(crate) struct Planned {
    pub(crate) setup: Setup,
    pub(crate) period: u32,
    pub(crate) group: u32,
}

/// A snack bag with a small dose, as classes of an hour use it.
fn snack(foods: &[(&str, f64)], enzyme: bool) -> Setup {
    let food = |&(id, grams): &(&str, f64)| {
        food::by_id(id).unwrap_or_else(|| panic!("no food {id}")).portion(grams, 0.1)
    };
    let enzymes = if enzyme {
        vec![product("glucoamylase-powder").unwrap().stock(0.4, 40.0, 2.0, 0.1)]
    } else {
        Vec::new()
    };
    Setup {
        water_ml: 40.0,
        water_celsius: 42.0,
        water_celsius_sd: 1.0,
        water_dosing_sd: 0.05,
        yeast: Some(YeastDose::fresh(YeastKind::Instant, 2.0, 0.1)),
        foods: foods.iter().map(food).collect(),
        enzymes,
        bag: StandardBag::Snack.bag(),
        card: Card { length_mm: 127.0, width_mm: 76.0, grams: 1.8 },
        lying: Lying::Bench,
        room_celsius: 21.0,
        pressure_pa: ATMOSPHERE.value,
        trapped_air_ml: 10.0,
        wet_before_zero_min: 3.0,
    }
}

/// Four periods of six groups with a bag each, six kinds a period.
pub(crate) fn day() -> Vec<Planned> {
    let kinds = [
        snack(&[("sugar_white", 0.5)], false),
        snack(&[("dextrose_monohydrate", 0.4)], false),
        snack(&[("potato_flakes", 2.0)], true),
        snack(&[("potato_flakes", 1.0)], true),
        snack(&[("sugar_white", 0.2)], false),
        Setup { water_celsius: 30.0, ..snack(&[("sugar_white", 0.5)], false) },
    ];
    let bags = (1..=4).flat_map(|period| (1..=6).map(move |group| (period, group)));
    bags.map(|(period, group)| Planned {
        setup: kinds[group as usize - 1].clone(),
        period,
        group,
    })
    .collect()
}

/// Minutes at which bags are read.
pub(crate) const MINUTES: [u32; 7] = [4, 8, 12, 16, 20, 25, 30];

/// What was dealt: the day's deviates by name, and what was read.
pub(crate) struct Dealt {
    pub(crate) day: BTreeMap<String, f64>,
    pub(crate) bags: Vec<BagSeen>,
}

/// Rise of a bag at every whole minute, as the model has it.
pub(crate) fn right(_: usize, setup: &Setup, parameters: &Parameters) -> Vec<f64> {
    let course = run(setup, parameters, MINUTES[MINUTES.len() - 1]).expect("a bag that can be");
    course.moments.iter().map(|moment| moment.rise_mm).collect()
}

/// Deals a day; `follow` gives the rise of a bag at every whole minute.
pub(crate) fn deal(
    planned: &[Planned],
    prior: &Prior,
    chance: &mut Chance,
    mut follow: impl FnMut(usize, &Setup, &Parameters) -> Vec<f64>,
) -> Dealt {
    let mut dealt: BTreeMap<(Level, u32, u32, usize, Key), f64> = BTreeMap::new();
    let mut bags = Vec::new();
    for (place, one) in planned.iter().enumerate() {
        let (mut setup, mut parameters) = (one.setup.clone(), prior.center);
        for effect in effects(&one.setup, prior) {
            let whose = match effect.level {
                Level::Day => (0, 0, 0),
                Level::Period => (one.period, 0, 0),
                Level::Group => (one.period, one.group, 0),
                Level::Bag => (one.period, one.group, place + 1),
            };
            let key = (effect.level, whose.0, whose.1, whose.2, effect.key);
            let z = *dealt.entry(key).or_insert_with(|| chance.normal());
            effect.apply(prior, z, &mut setup, &mut parameters);
        }
        lay_off_center(prior, &mut parameters, chance);
        let rises = follow(place, &setup, &parameters);
        let zero = 5.0 + chance.uniform();
        let read = |rise: f64, slant: f64| (zero + rise + slant).round();
        let first = read(0.0, 0.0);
        let readings = MINUTES.iter().map(|minute| {
            let rise = rises[*minute as usize];
            let slant = PARALLAX.value * (2.0 * chance.uniform() - 1.0);
            (f64::from(*minute), read(rise, slant) - first)
        });
        let readings = readings.collect();
        let (setup, period, group) = (one.setup.clone(), one.period, one.group);
        bags.push(BagSeen { setup, period, group, readings });
    }
    let of_the_day = dealt.into_iter().filter(|(key, _)| key.0 == Level::Day);
    Dealt { day: of_the_day.map(|(key, z)| (key.4.to_string(), z)).collect(), bags }
}

/// A card lies where it lies.
fn lay_off_center(prior: &Prior, parameters: &mut Parameters, chance: &mut Chance) {
    for row in prior.rows.iter().filter(|row| row.transform == Transform::Distance) {
        for _ in 0..2 {
            let value = (row.place)(parameters);
            *value = row.transform.moved(*value, row.spread.total(), chance.normal());
        }
    }
}

/// The rises of a bag more on a day that was dealt, in a period and a group of its own.
pub(crate) fn new_bag(
    setup: &Setup,
    prior: &Prior,
    day: &BTreeMap<String, f64>,
    chance: &mut Chance,
) -> Vec<f64> {
    let (mut made, mut parameters) = (setup.clone(), prior.center);
    for effect in effects(setup, prior) {
        let z = match effect.level {
            Level::Day => day[&effect.key.to_string()],
            _ => chance.normal(),
        };
        effect.apply(prior, z, &mut made, &mut parameters);
    }
    lay_off_center(prior, &mut parameters, chance);
    right(0, &made, &parameters)
}

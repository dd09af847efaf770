//! Whether the usual number of draws gives the bands of very many, for plans of any kind.

use crate::Dice;
use crate::nearness::Nearness;
use crate::school::{Asks, amount, food, treatment, unlisted};
use crate::size::counts;
use barm_domain::outlook::setup;
use barm_domain::pilot::{BagKind, Known, Lot, Lots, Part, YeastLot};
use barm_domain::plan::{Difference, Extra, Plan, YeastKind};
use barm_domain::testing::enzyme;
use barm_science::bag::StandardBag;
use barm_science::forecast::{Span, Streams, forecast_from};
use barm_science::prior::Learned;
use jiff::civil::date;

/// Ten plans: one of each kind, then one with enzymes of malt and beans, one with soda and vinegar, one
/// whose lots were tried in a pilot. Others than those of the tests beside this one.
fn plans() -> impl Iterator<Item = Plan> {
    let kinds = [Asks::FoodAndEnzyme, Asks::FoodAmount, Asks::Food];
    let asks = Asks::ALL.into_iter().chain(kinds);
    asks.enumerate().map(|(number, asks)| {
        let mut plan = unlisted(asks, &mut Dice::of(500 + number as u64));
        match number {
            7 => malt_and_beans(&mut plan),
            8 => soda(&mut plan),
            9 => plan.known = tried(&plan),
            _ => (),
        }
        plan
    })
}

fn first(plan: &mut Plan, name: &str, difference: Difference) {
    plan.questions[0].treatments.insert(0, treatment(name, difference));
}

fn malt_and_beans(plan: &mut Plan) {
    let both = |id: &str, of: &str, much: &str| {
        let with = enzyme(of, much);
        Difference { enzyme: with.enzyme, enzyme_amount: with.enzyme_amount, ..food(id, "2 g") }
    };
    first(plan, "Oat flour and malt", both("oat_flour", "diastatic-malt", "3 mL"));
    let beans = both("soy_flour_defatted", "alpha-galactosidase-tablet", "1 tablet");
    first(plan, "Soy flour and tablet", beans);
}

fn soda(plan: &mut Plan) {
    let extra = |item: &str, much: &str| Extra { item: item.into(), amount: amount(much) };
    let difference = |extras| Difference { extras: Some(extras), ..food("sugar_white", "1 g") };
    first(plan, "Soda", difference(vec![extra("baking_soda", "0.5 g")]));
    first(plan, "Vinegar", difference(vec![extra("vinegar", "2 mL")]));
}

/// A slow jar and a box of bags that keep warm, known better than any of the table.
fn tried(plan: &Plan) -> Known {
    let kind = plan.base.yeast.expect("yeast");
    let size = StandardBag::nearest(&plan.base.bag.bag);
    let numbers = |names: [String; 2], means: [f64; 2], together: f64| Learned {
        names: names.into(),
        means: means.into(),
        covariance: vec![vec![0.3, together], vec![together, 0.4]],
    };
    let vigor = match kind {
        YeastKind::ActiveDry => "vigor of active dry yeast",
        _ => "vigor of instant yeast",
    };
    let jar = numbers([vigor.into(), "wake".into()], [-1.2, 0.8], -0.15);
    let bags = [format!("exponent of {} bags", size.name()), "heat".into()];
    let bags = numbers(bags, [0.5, -0.7], 0.05);
    let (bag, card) = (plan.base.bag.clone(), plan.base.card.clone());
    let jar = YeastLot { kind, teaspoon: None, numbers: jar };
    Known::of(&Lots {
        yeast: vec![lot(jar)],
        bags: vec![lot(BagKind { bag, card, numbers: bags })],
        ..Lots::default()
    })
}

fn lot<T>(found: T) -> Lot<T> {
    let (name, date) = ("first".to_owned(), date(2027, 3, 2));
    Lot { name, date, in_use: true, parts: vec![Part::Bags], found }
}

#[test]
fn the_usual_draws_give_the_bands_of_very_many() {
    // Treatments of each plan, days, and draws that stand for very many.
    let (treatments, days, very_many) =
        counts((2, 1, 4_096), (3, 2, 8_192), (usize::MAX, 4, 20_000));
    let mut seen = Nearness::default();
    for (number, plan) in plans().enumerate() {
        let last_minute = plan.common_last_reading_min();
        let prior = plan.known.prior();
        let mut setups = plan.treatments().map(|(_, one)| setup(&plan, one).expect("a bag"));
        for (place, setup) in setups.by_ref().take(treatments).enumerate() {
            let drawn = |draws: usize, day: u64| {
                let span = Span { draws, last_minute, until_hours: 0.0 };
                let bag = 1_000 * number as u64 + 100 * day + place as u64;
                let streams = Streams::alone(day, bag);
                forecast_from(&setup, &span, &streams, &prior).expect("a forecast")
            };
            let many = drawn(very_many, 9_000);
            for day in 0..days {
                seen.add(&drawn(Span::to(last_minute).draws, day), &many);
            }
        }
    }
    seen.check();
}

//! Whether as many draws as a forecast takes are enough: its bands against those of many more, drawn
//! by other seeds.

use crate::bench::{grams, plain, served};
use crate::nearness::Nearness;
use crate::size::counts;
use barm_science::bag::StandardBag;
use barm_science::enzyme::products::product;
use barm_science::forecast::{Forecast, Span, Streams, forecast};
use barm_science::setup::{EnzymeDose, Portion, Setup, YeastDose, YeastKind};

/// The twelve kinds of bag of the demonstration's plan.
fn demo() -> Vec<Setup> {
    let bag = |foods: Vec<Portion>, enzymes: Vec<EnzymeDose>| Setup {
        water_ml: 40.0,
        water_dosing_sd: 0.02,
        yeast: Some(YeastDose::fresh(YeastKind::Instant, 2.0, 0.02)),
        foods,
        enzymes,
        bag: StandardBag::Snack.bag(),
        room_celsius: 21.0,
        pressure_pa: 85_600.0,
        trapped_air_ml: 8.0,
        wet_before_zero_min: 3.0,
        ..plain(40.0)
    };
    let food = |id: &str| vec![grams(id, 0.8)];
    let powder =
        || vec![product("glucoamylase-powder").expect("powder").stock(1.0, 100.0, 2.0, 0.03)];
    let drops = || vec![served("lactase-drops")];
    let mut without_yeast = bag(food("maple_syrup"), vec![]);
    without_yeast.yeast = None;
    vec![
        bag(food("maple_syrup"), vec![]),
        bag(food("potato_flakes"), powder()),
        bag(vec![], vec![]),
        bag(food("oat_flour"), vec![]),
        bag(food("banana"), vec![]),
        bag(food("oat_flour"), powder()),
        bag(food("potato_flakes"), vec![]),
        bag(food("milk_powder_nonfat"), vec![]),
        bag(food("milk_powder_nonfat"), drops()),
        bag(vec![], powder()),
        bag(vec![], drops()),
        without_yeast,
    ]
}

const LAST_MINUTE: u32 = 24;

fn drawn(setup: &Setup, draws: usize, day: u64, bag: u64) -> Forecast {
    let span = Span { draws, last_minute: LAST_MINUTE, until_hours: 0.0 };
    forecast(setup, &span, &Streams::alone(day, bag)).expect("a forecast")
}

#[test]
fn the_usual_draws_give_the_bands_of_very_many() {
    // Bags, days, and draws that stand for very many.
    let (bags, days, very_many) = counts((6, 4, 4_096), (12, 8, 8_192), (12, 20, 20_000));
    let mut seen = Nearness::default();
    for (place, setup) in demo().iter().take(bags).enumerate() {
        let place = place as u64;
        let many = drawn(setup, very_many, 9_000, 9_000 + place);
        for day in 0..days {
            let few = drawn(setup, Span::to(LAST_MINUTE).draws, day, 100 * day + place);
            seen.add(&few, &many);
        }
    }
    seen.check();
}

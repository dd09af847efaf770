//! Whether the usual number of draws gives the bands of very many, for plans of any kind.

use crate::Dice;
use crate::nearness::Nearness;
use crate::school::{Asks, unlisted};
use barm_domain::outlook::setup;
use barm_science::forecast::{Span, Streams, forecast};

/// Plans, treatments of each, days, and draws that stand for very many.
fn counts() -> (usize, usize, u64, usize) {
    match std::env::var("BARM_TEST_SIZE").as_deref() {
        Ok("quick") => (7, 2, 1, 4_096),
        Ok("long") => (10, usize::MAX, 4, 20_000),
        _ => (7, 3, 2, 8_192),
    }
}

#[test]
fn the_usual_draws_give_the_bands_of_very_many() {
    let (plans, treatments, days, very_many) = counts();
    let mut seen = Nearness::default();
    for number in 0..plans {
        // Others than those of the tests beside this one.
        let plan = unlisted(Asks::ALL[number % 7], &mut Dice::of(500 + number as u64));
        let last_minute = plan.common_last_reading_min();
        let setups = plan.treatments().filter_map(|(_, one)| setup(&plan, one).ok());
        for (place, setup) in setups.take(treatments).enumerate() {
            let drawn = |draws: usize, day: u64| {
                let span = Span { draws, last_minute, until_hours: 0.0 };
                let bag = 1_000 * number as u64 + 100 * day + place as u64;
                forecast(&setup, &span, &Streams::alone(day, bag)).expect("a forecast")
            };
            let many = drawn(very_many, 9_000);
            for day in 0..days {
                seen.add(&drawn(Span::to(last_minute).draws, day), &many);
            }
        }
    }
    seen.check();
}

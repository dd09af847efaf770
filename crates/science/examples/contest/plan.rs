//! A plan of many kinds of bag, forecast at once.

use super::bags::{demo, grams, stock};
use barm_science::enzyme::products::product;
use barm_science::forecast::{Span, Streams, forecast};
use barm_science::setup::Setup;
use std::hint::black_box;

/// Last reading of the demonstration's plan (min).
const LAST_MINUTE: u32 = 24;

/// Foods and enzymes of the demonstration's treatments and controls.
fn treatments() -> Vec<Setup> {
    let drops = || product("lactase-drops").expect("drops").dose(5.0, 0.1);
    let powder = || stock("glucoamylase-powder", 2.0);
    let food = |id: &str| vec![grams(id, 0.8)];
    let mut all = vec![
        demo(food("maple_syrup"), vec![]),
        demo(food("oat_flour"), vec![]),
        demo(food("potato_flakes"), vec![]),
        demo(food("milk_powder_nonfat"), vec![]),
        demo(food("banana"), vec![]),
        demo(food("oat_flour"), vec![powder()]),
        demo(food("potato_flakes"), vec![powder()]),
        demo(food("milk_powder_nonfat"), vec![drops()]),
        demo(vec![], vec![]),
        demo(vec![], vec![powder()]),
        demo(vec![], vec![drops()]),
        demo(food("maple_syrup"), vec![]),
    ];
    all[11].yeast = None;
    all
}

/// So many kinds of bag: the demonstration's twelve, with a little more water every time round.
pub(crate) fn kinds(count: usize) -> Vec<Setup> {
    let twelve = treatments();
    (0..count)
        .map(|k| {
            let mut setup = twelve[k % twelve.len()].clone();
            setup.water_ml += (k / twelve.len()) as f64;
            setup
        })
        .collect()
}

/// Forecasts of so many kinds of bag on so many threads, each kind by one thread.
pub(crate) fn forecast_all(count: usize, draws: usize, threads: usize) {
    let setups = kinds(count);
    let span = Span { draws, ..Span::to(LAST_MINUTE) };
    std::thread::scope(|scope| {
        let (setups, span) = (&setups, &span);
        for first in 0..threads {
            scope.spawn(move || {
                for (k, setup) in setups.iter().enumerate().skip(first).step_by(threads) {
                    let streams = Streams::alone(1, 100 + k as u64);
                    let forecast = forecast(setup, span, &streams).expect("a forecast");
                    black_box(forecast.rise_mm().band());
                }
            });
        }
    });
}

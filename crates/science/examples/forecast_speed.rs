//! How long a forecast takes, one line for each of a dozen kinds of bag.
//!
//! `cargo run --release -p barm-science --example forecast_speed`
#![allow(clippy::print_stdout)]

use barm_science::bag::StandardBag;
use barm_science::enzyme::products::product;
use barm_science::forecast::{Span, Streams, forecast};
use barm_science::setup::*;
use std::time::Instant;

fn food(composition: Composition, grams: f64) -> Vec<Portion> {
    vec![Portion { composition, grams, dosing_sd: 0.1, content_sd: 0.1, grain: None }]
}

fn main() {
    let c = Composition::default();
    let base = |foods: Vec<Portion>, enzymes: Vec<EnzymeDose>| Setup {
        water_ml: 40.0,
        water_celsius: 40.0,
        water_celsius_sd: 1.0,
        water_dosing_sd: 0.05,
        yeast: Some(YeastDose::fresh(YeastKind::Instant, 2.0, 0.05)),
        foods,
        enzymes,
        bag: StandardBag::Snack.bag(),
        card: Card { length_mm: 127.0, width_mm: 76.0, grams: 1.8 },
        lying: Lying::Bench,
        room_celsius: 22.0,
        pressure_pa: 85_600.0,
        trapped_air_ml: 10.0,
        wet_before_zero_min: 2.0,
    };
    let maple = Composition { water: 32.4, sucrose: 58.3, glucose: 1.6, fructose: 0.5, ..c };
    let oat = Composition {
        water: 8.5,
        raw_starch: 55.0,
        cooked_starch: 3.4,
        sucrose: 0.5,
        glucose: 0.1,
        ..c
    };
    let banana = Composition {
        water: 75.0,
        raw_starch: 5.4,
        sucrose: 2.4,
        glucose: 5.0,
        fructose: 4.9,
        ..c
    };
    let flakes = Composition {
        water: 6.6,
        cooked_starch: 70.6,
        sucrose: 1.0,
        glucose: 0.9,
        fructose: 1.0,
        maltose: 0.5,
        ..c
    };
    let milk = Composition { water: 3.0, lactose: 52.0, ..c };
    let soda = Composition { bicarbonate: 1.19, ..c };
    let gluco = || vec![product("glucoamylase-powder").unwrap().stock(1.0, 100.0, 2.0, 0.05)];
    let drops = || vec![product("lactase-drops").unwrap().dose(5.0, 0.1)];
    let tray = |mut s: Setup| {
        s.lying = Lying::WarmTray { celsius: 40.0 };
        s
    };
    let cases = [
        ("maple", base(food(maple, 3.0), vec![])),
        ("oat", base(food(oat, 3.0), vec![])),
        ("oat+gluco", base(food(oat, 3.0), gluco())),
        ("banana", base(food(banana, 10.0), vec![])),
        ("flakes", base(food(flakes, 3.0), vec![])),
        ("flakes+gluco", base(food(flakes, 3.0), gluco())),
        ("milk", base(food(milk, 3.0), vec![])),
        ("milk+drops", base(food(milk, 3.0), drops())),
        ("none", base(vec![], vec![])),
        ("none+gluco", base(vec![], gluco())),
        ("maple tray", tray(base(food(maple, 3.0), vec![]))),
        ("maple no yeast", {
            let mut s = base(food(maple, 3.0), vec![]);
            s.yeast = None;
            s
        }),
        ("soda+maple", base([food(maple, 3.0), food(soda, 1.0)].concat(), vec![])),
    ];
    let span = Span::to(32);
    for (name, setup) in cases {
        let t = Instant::now();
        let f = forecast(&setup, &span, &Streams::alone(1, 2)).unwrap();
        let ms = t.elapsed().as_secs_f64() * 1e3;
        let b = f.rise_mm().band();
        let g = f.gas_ml().band();
        let e = f.ethanol_g().band();
        println!(
            "{name:15} {ms:7.1} ms  {:6.1} us/draw  rise {:5.1} {:5.1} {:5.1}  gas {:5.0} eth {:.3} fill {:.2} vent {:?} never {}",
            ms * 1e3 / 512.0,
            b.low[32],
            b.median[32],
            b.high[32],
            g.median[32],
            e.median[32],
            f.peak_fill(),
            f.vent_by_min(),
            f.full_at_min().iter().filter(|m| m.is_none()).count()
        );
    }
}

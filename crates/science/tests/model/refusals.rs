//! Setups that cannot be are refused by name, and nothing else ever fails.

use crate::bench;
use barm_science::forecast::{SetupError, Span, Streams, forecast};
use barm_science::model::nominal;
use barm_science::setup::{Acids, Lying, Setup};

type Spoil = fn(&mut Setup);

#[test]
fn absurd_values_are_refused_by_name() {
    let cases: &[(&str, Spoil)] = &[
        ("water_ml", |s| s.water_ml = 0.0),
        ("water_ml", |s| s.water_ml = 2500.0),
        ("water_ml", |s| s.water_ml = f64::NAN),
        ("water_celsius", |s| s.water_celsius = 101.0),
        ("water_celsius", |s| s.water_celsius = -1.0),
        ("water_celsius_sd", |s| s.water_celsius_sd = f64::INFINITY),
        ("water_dosing_sd", |s| s.water_dosing_sd = -0.1),
        ("room_celsius", |s| s.room_celsius = f64::NAN),
        ("pressure_pa", |s| s.pressure_pa = 1013.0),
        ("trapped_air_ml", |s| s.trapped_air_ml = -1.0),
        ("wet_before_zero_min", |s| s.wet_before_zero_min = f64::NAN),
        ("bag.width_mm", |s| s.bag.width_mm = 6.5),
        ("bag.film_um", |s| s.bag.film_um = 0.0),
        ("card.grams", |s| s.card.grams = -1.8),
        ("lying.celsius", |s| s.lying = Lying::WarmTray { celsius: 212.0 }),
        ("yeast.grams", |s| s.yeast.as_mut().unwrap().grams = -3.1),
        ("yeast.age_months", |s| s.yeast.as_mut().unwrap().age_months = -1.0),
        ("yeast.stored_celsius", |s| s.yeast.as_mut().unwrap().stored_celsius = 68.0),
        ("foods[0].grams", |s| s.foods[0].grams = f64::NAN),
        ("foods[0].composition.maltotriose", |s| s.foods[0].composition.maltotriose = -1.0),
        ("foods[0].composition.galactosides", |s| s.foods[0].composition.galactosides = 101.0),
        ("foods[0].composition.acids.malic", |s| s.foods[0].composition.acids.malic = 3.5),
        ("foods[0].composition.acids.ph", |s| s.foods[0].composition.acids.ph = 7.0),
        ("foods[0].composition.acids (sum)", |s| {
            s.foods[0].composition.acids = Acids { acetic: 2.0, citric: 2.0, ..Acids::NONE };
        }),
        ("foods[0].composition.sucrose", |s| s.foods[0].composition.sucrose = 101.0),
        ("foods[0].composition (sum of parts)", |s| s.foods[0].composition.glucose = 60.0),
        ("contents", |s| s.water_ml = 900.0),
        ("contents", |s| s.trapped_air_ml = 900.0),
        ("enzymes[0].units", |s| {
            s.enzymes = vec![bench::served("lactase-drops")];
            s.enzymes[0].units = -1.0;
        }),
        ("enzymes[0].stock_age_min", |s| {
            s.enzymes = vec![bench::served("lactase-drops")];
            s.enzymes[0].stock_age_min = f64::NAN;
        }),
        ("enzymes[0].carrier.grams", |s| {
            s.enzymes = vec![bench::served("lactase-drops")];
            s.enzymes[0].carrier.as_mut().unwrap().grams = f64::INFINITY;
        }),
    ];
    for (name, spoil) in cases {
        let mut setup = bench::plain(40.0);
        spoil(&mut setup);
        let streams = Streams::alone(1, 1);
        match forecast(&setup, &Span::to(30), &streams) {
            Err(SetupError::OutsideRange { field, low, high, .. }) => {
                assert_eq!(&field, name);
                assert!(low < high);
            }
            Err(other) => panic!("{name} was refused as {other}"),
            Ok(_) => panic!("{name} was not refused"),
        }
        assert!(nominal(&setup, 30).is_err(), "{name}");
    }
}

#[test]
fn spans_have_their_limits() {
    let (setup, streams) = (bench::plain(40.0), Streams::alone(1, 1));
    for span in [
        Span { draws: 0, ..Span::to(30) },
        Span { last_minute: 0, ..Span::to(30) },
        Span { until_hours: f64::NAN, ..Span::to(30) },
    ] {
        assert!(forecast(&setup, &span, &streams).is_err(), "{span:?}");
    }
}

/// The corners of what is allowed are worked out, finite and with nothing negative.
#[test]
fn the_edges_of_sense_are_worked_out() {
    let corners: &[Spoil] = &[
        |s| s.water_ml = 1.0,
        |s| s.water_celsius = 100.0,
        |s| s.water_celsius = 0.0,
        |s| s.pressure_pa = 45_000.0,
        |s| s.room_celsius = 50.0,
        |s| s.yeast.as_mut().unwrap().grams = 100.0,
        |s| s.foods[0].grams = 0.0,
        |s| s.foods[0].dosing_sd = 3.0,
        |s| s.water_celsius_sd = 20.0,
        |s| s.trapped_air_ml = 0.0,
        |s| s.wet_before_zero_min = 240.0,
        |s| s.lying = Lying::WarmTray { celsius: 70.0 },
        |s| s.bag.film_um = 10.0,
        |s| {
            s.enzymes = vec![bench::served("invertase-liquid")];
            s.enzymes[0].units = 1e7;
        },
        |s| {
            s.foods.push(bench::grams("baking_soda", 60.0));
            s.foods.push(bench::grams("vinegar", 300.0));
        },
    ];
    let span = Span { draws: 32, ..Span::to(60) };
    for (i, corner) in corners.iter().enumerate() {
        let mut setup = bench::plain(40.0);
        corner(&mut setup);
        let forecast = forecast(&setup, &span, &Streams::alone(3, 4))
            .unwrap_or_else(|error| panic!("corner {i}: {error}"));
        for minute in 0..=60 {
            for gas in forecast.gas_ml().minute(minute) {
                assert!(gas.is_finite() && gas > -0.1, "corner {i}, minute {minute}: {gas} mL");
            }
            for rise in forecast.rise_mm().minute(minute) {
                assert!(rise.is_finite(), "corner {i}, minute {minute}: {rise} mm");
            }
        }
    }
}

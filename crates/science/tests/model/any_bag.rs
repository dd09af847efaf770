//! Any bag at all that passes the checks.

use crate::bench;
use crate::size::counts;
use barm_science::bag::StandardBag;
use barm_science::enzyme::PRODUCTS;
use barm_science::food;
use barm_science::forecast::{Span, Streams, forecast};
use barm_science::model::balance::carbon;
use barm_science::model::state::{CARBOHYDRATES, CELSIUS, GAS, PERMEATED, RESERVE, WATER_USED};
use barm_science::model::{Mixture, Parameters, nominal};
use barm_science::setup::{EnzymeDose, Lying, Setup, YeastKind};
use barm_science::stoichiometry::HEAT_OF_RELEASE;
use proptest::prelude::{Just, ProptestConfig, Strategy, any, prop, prop_oneof, proptest};

pub(crate) fn cases() -> u32 {
    counts(40, 300, 4000)
}

fn lying() -> impl Strategy<Value = Lying> {
    prop_oneof![
        Just(Lying::Bench),
        Just(Lying::Towel),
        (0.0..70.0).prop_map(|celsius| Lying::WarmTray { celsius }),
    ]
}

pub(crate) fn setup() -> impl Strategy<Value = Setup> {
    let room = (
        (5.0..400.0, 0.0..100.0, 0.0..45.0, 55_000.0..108_000.0),
        (0.0..60.0, 0.0..30.0, lying(), prop::sample::select(StandardBag::ALL.to_vec())),
    );
    let kinds = vec![YeastKind::ActiveDry, YeastKind::Instant, YeastKind::Compressed];
    let yeast = prop::option::of((prop::sample::select(kinds), 0.0..20.0));
    let foods = prop::collection::vec((0..food::all().len(), 0.0..25.0), 0..4);
    let enzymes =
        prop::collection::vec((0..PRODUCTS.len(), 0.0..20.0, 0.0..600.0, any::<bool>()), 0..4);
    (room, yeast, foods, enzymes).prop_map(|(room, yeast, foods, enzymes)| {
        let ((water_ml, water, room, pressure), (air, wet, lying, bag)) = room;
        let mut setup = bench::plain(water);
        (setup.water_ml, setup.room_celsius, setup.pressure_pa) = (water_ml, room, pressure);
        (setup.trapped_air_ml, setup.wet_before_zero_min) = (air, wet);
        (setup.lying, setup.bag) = (lying, bag.bag());
        setup.yeast = yeast.map(|(kind, grams)| bench::yeast(kind, grams));
        setup.foods =
            foods.iter().map(|&(i, grams)| food::all()[i].portion(grams, 0.1)).collect();
        for &(i, amount, age, shaken) in &enzymes {
            let aged = |dose| EnzymeDose { stock_age_min: age, shaken, ..dose };
            setup.enzymes.push(aged(PRODUCTS[i].dose(amount, 0.1)));
            setup.enzymes.extend(PRODUCTS[i].beside(amount, 0.1).map(aged));
        }
        setup
    })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(cases()))]

    #[test]
    fn any_bag_is_worked_out_and_balances(setup in setup(), seed in any::<u64>()) {
        let Ok(course) = nominal(&setup, 90) else {
            // Only what does not fit into its bag is refused.
            let refused = nominal(&setup, 90).unwrap_err().to_string();
            assert!(refused.starts_with("contents"), "{refused}");
            return Ok(());
        };
        let mixture = Mixture::new(&setup, &Parameters::median());
        let start = carbon(mixture.start());
        // Nothing is colder than what was mixed and what is around it but by the heat that gas takes along; the
        // water alone holds 4.1 J/(g K) or more.
        let tray = if let Lying::WarmTray { celsius } = setup.lying { celsius } else { 100.0 };
        let coldest = mixture.start()[CELSIUS].min(setup.room_celsius).min(tray);
        let cooled = |gas_mmol: f64| HEAT_OF_RELEASE.value * gas_mmol / (4.1 * setup.water_ml);
        // What runs through a state within one step leaves its error there.
        let hexose: f64 = CARBOHYDRATES.iter().map(|&i| mixture.start()[i]).sum();
        let least = |i: usize| match i {
            RESERVE..=WATER_USED => 1e-6 * (1.0 + hexose),
            _ => 1e-6,
        };
        for moment in &course.moments {
            let off = (carbon(&moment.state) - start).abs();
            assert!(off < 1e-6 * start.max(1e-3), "minute {}: carbon off by {off:e}", moment.minute);
            for (i, value) in moment.state.iter().enumerate() {
                let minute = moment.minute;
                let least = if i == CELSIUS {
                    coldest - cooled(moment.state[GAS] + moment.state[PERMEATED]) - 1e-3
                } else {
                    -least(i)
                };
                assert!(*value > least, "minute {minute}: state {i} {value:e}, {least:e}");
            }
            assert!(moment.rise_mm.is_finite() && moment.gas_ml.is_finite());
        }
        let span = Span { draws: 4, ..Span::to(45) };
        let draws = forecast(&setup, &span, &Streams::alone(seed, seed ^ 1)).unwrap();
        assert!(draws.peak_fill().is_finite());
    }
}

/// The tray is as cold as ice at the zero reading and warms; an hour before it was no colder.
#[test]
fn no_water_is_colder_than_ice() {
    let mut setup = bench::plain(0.0);
    setup.lying = Lying::WarmTray { celsius: 0.0 };
    setup.wet_before_zero_min = 30.0;
    let course = nominal(&setup, 90).unwrap();
    for moment in &course.moments {
        let celsius = moment.state[CELSIUS];
        assert!(celsius > -1e-6, "minute {}: {celsius} °C", moment.minute);
    }
}

//! What the bags of the contest are made of.

use barm_science::air;
use barm_science::bag::StandardBag;
use barm_science::enzyme::products::product;
use barm_science::food;
use barm_science::setup::{Card, EnzymeDose, Lying, Portion, Setup, YeastDose, YeastKind};

/// Height of the demonstration's school (m).
const ALTITUDE: f64 = 1400.0;

/// A portion by its food's id.
pub(crate) fn grams(id: &str, grams: f64) -> Portion {
    food::by_id(id).unwrap_or_else(|| panic!("no food {id}")).portion(grams, 0.02)
}

/// 1 g of powder in 100 mL, of which `ml` go into the bag.
pub(crate) fn stock(key: &str, ml: f64) -> EnzymeDose {
    product(key).unwrap_or_else(|| panic!("no product {key}")).stock(1.0, 100.0, ml, 0.03)
}

/// Yeast weighed on a balance.
pub(crate) fn yeast(kind: YeastKind, grams: f64) -> YeastDose {
    YeastDose::fresh(kind, grams, 0.02)
}

/// What every bag of the demonstration's plan is.
pub(crate) fn demo(foods: Vec<Portion>, enzymes: Vec<EnzymeDose>) -> Setup {
    Setup {
        water_ml: 40.0,
        water_celsius: 40.0,
        water_celsius_sd: 1.0,
        water_dosing_sd: 0.02,
        yeast: Some(yeast(YeastKind::Instant, 2.0)),
        foods,
        enzymes,
        bag: StandardBag::Snack.bag(),
        card: Card { length_mm: 127.0, width_mm: 76.2, grams: 1.8 },
        lying: Lying::Bench,
        room_celsius: 21.0,
        pressure_pa: air::pressure_at(ALTITUDE).expect("a height on land").0,
        trapped_air_ml: 8.0,
        wet_before_zero_min: 3.0,
    }
}

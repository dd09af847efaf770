//! Bags to try things on.

use barm_science::bag::StandardBag;
use barm_science::constants::ATMOSPHERE;
use barm_science::enzyme::products::product;
use barm_science::food;
use barm_science::setup::{Card, EnzymeDose, Lying, Portion, Setup, YeastDose, YeastKind};

/// Common practice, no source: 1 tsp sugar, 1 tsp yeast and 50 mL warm water in a sandwich bag.
pub(crate) fn plain(celsius: f64) -> Setup {
    Setup {
        water_ml: 50.0,
        water_celsius: celsius,
        water_celsius_sd: 1.0,
        water_dosing_sd: 0.05,
        yeast: Some(yeast(YeastKind::ActiveDry, 3.1)),
        foods: vec![grams("sugar_white", 4.2)],
        enzymes: Vec::new(),
        bag: StandardBag::Sandwich.bag(),
        card: Card { length_mm: 127.0, width_mm: 76.0, grams: 1.8 },
        lying: Lying::Bench,
        room_celsius: 22.0,
        pressure_pa: ATMOSPHERE.value,
        trapped_air_ml: 10.0,
        wet_before_zero_min: 0.0,
    }
}

pub(crate) fn yeast(kind: YeastKind, grams: f64) -> YeastDose {
    YeastDose::fresh(kind, grams, 0.1)
}

pub(crate) fn grams(id: &str, grams: f64) -> Portion {
    food::by_id(id).unwrap_or_else(|| panic!("no food {id}")).portion(grams, 0.1)
}

/// Each product as a class gets it: powders as 1 g in 100 mL, the rest as it is.
pub(crate) fn served(key: &str) -> EnzymeDose {
    let product = product(key).unwrap();
    match key {
        "lactase-drops" => product.dose(5.0, 0.1),
        "lactase-tablet" | "alpha-galactosidase-tablet" => product.dose(0.25, 0.1),
        "glucoamylase-liquid" | "invertase-liquid" => product.dose(0.5, 0.1),
        _ => product.stock(1.0, 100.0, 5.0, 0.1),
    }
}

/// Every food of the table with every enzyme product and with none.
pub(crate) fn every_food_and_enzyme() -> impl Iterator<Item = (String, Setup)> {
    let keys = barm_science::enzyme::PRODUCTS.iter().map(|product| Some(product.key));
    let keys: Vec<Option<&str>> = std::iter::once(None).chain(keys).collect();
    food::all().iter().flat_map(move |food| {
        keys.clone().into_iter().map(move |key| {
            let mut setup = plain(40.0);
            let mass = food.grams_per_tsp.or(food.grams_per_piece).unwrap_or(5.0);
            setup.foods = vec![food.portion(mass, 0.1)];
            setup.enzymes = key.map(served).into_iter().collect();
            let beside = key.and_then(|key| product(key)?.beside(0.05, 0.1));
            setup.enzymes.extend(beside);
            (format!("{} with {}", food.id, key.unwrap_or("no enzyme")), setup)
        })
    })
}

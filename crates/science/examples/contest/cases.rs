//! The bags of the contest.

use super::bags::{demo, grams, stock, yeast};
use barm_science::enzyme::products::product;
use barm_science::model::{Mixture, Parameters};
use barm_science::setup::{Lying, Setup, YeastKind};

/// One bag, put together.
pub(crate) struct Case {
    pub(crate) name: &'static str,
    /// Whether it takes part in the race; the others only show that the rates agree.
    pub(crate) timed: bool,
    pub(crate) setup: Setup,
    pub(crate) mixture: Mixture,
    pub(crate) parameters: Parameters,
    pub(crate) wet_min: f64,
    pub(crate) last_minute: u32,
}

/// A day that differs from the best guess in everything that the rates read.
fn unusual() -> Parameters {
    Parameters {
        vigor: 1.3,
        steepness: 0.015,
        optimum_shift: -0.8,
        wake: 1.4,
        cold_loss: 1.2,
        storage_loss: 1.5,
        slow_loss: 0.009,
        d60: 0.2,
        death_z: 5.1,
        half_glucose: 0.4,
        fructose_half_ratio: 4.0,
        fructose_rate: 0.82,
        maltose_rate: 0.5,
        half_maltose: 2.6,
        maltotriose_rate: 0.4,
        galactose_rate: 0.35,
        induction: 60.0,
        galactose_induction: 140.0,
        repression: 45.0,
        reserve: 0.05,
        reserve_rate: 0.06,
        half_reserve: 0.4,
        own_invertase: 700.0,
        half_osmotic: 1.4,
        ethanol_most: 95.0,
        enzyme_half: 1.7,
        raw_starch: 0.03,
        gelatinization_shift: 1.7,
        gelatinization: 1.4,
        enzyme_loss: 0.6,
        stock_half_life: 500.0,
        unshaken: 0.6,
        buffer: 0.35,
        co2_yield: 0.93,
        ethanol_yield: 0.9,
        own_heat: 120.0,
        pocket_mm: 1.6,
        release: 1.6,
        permeability: 1.3,
        heat_loss: 0.8,
        tray_loss: 1.2,
        ..Parameters::median()
    }
}

fn case(name: &'static str, timed: bool, setup: Setup, parameters: Parameters) -> Case {
    let mixture = Mixture::new(&setup, &parameters);
    let wet_min = setup.wet_before_zero_min;
    Case { name, timed, setup, mixture, parameters, wet_min, last_minute: 30 }
}

/// All bags: four that race, and two with everything in them.
pub(crate) fn cases() -> Vec<Case> {
    let median = Parameters::median();
    let flakes =
        demo(vec![grams("potato_flakes", 2.5)], vec![stock("glucoamylase-powder", 2.0)]);
    let soda = demo(
        vec![grams("sugar_white", 1.0), grams("baking_soda", 0.5), grams("vinegar", 5.0)],
        vec![],
    );
    let mut short = demo(vec![grams("sugar_white", 0.3)], vec![]);
    short.lying = Lying::WarmTray { celsius: 38.0 };
    let mut full = demo(
        vec![
            grams("potato_flakes", 1.0),
            grams("oat_flour", 1.0),
            grams("wheat_flour_white", 0.5),
            grams("milk_powder_nonfat", 1.0),
            grams("honey", 1.0),
            grams("salt", 0.2),
        ],
        vec![
            stock("glucoamylase-powder", 2.0),
            stock("amylase-powder", 2.0),
            stock("bacterial-amylase", 2.0),
            product("lactase-drops").expect("drops").dose(3.0, 0.1),
            product("lactase-tablet").expect("a tablet").dose(0.1, 0.1),
            product("invertase-liquid").expect("a liquid").dose(0.2, 0.1),
            stock("diastatic-malt", 2.0),
            product("alpha-galactosidase-tablet").expect("a tablet").dose(0.1, 0.1),
        ],
    );
    full.yeast = Some(yeast(YeastKind::ActiveDry, 2.0));
    full.lying = Lying::WarmTray { celsius: 42.0 };
    let mut sour = full.clone();
    sour.yeast = Some(yeast(YeastKind::Compressed, 5.0));
    sour.lying = Lying::Towel;
    sour.foods.extend([grams("baking_soda", 0.3), grams("vinegar", 3.0)]);
    vec![
        case("maple", true, demo(vec![grams("maple_syrup", 0.8)], vec![]), median),
        case("flakes", true, flakes, median),
        case("soda", true, soda, median),
        case("short", true, short, median),
        case("full", false, full, unusual()),
        case("sour", false, sour, unusual()),
    ]
}

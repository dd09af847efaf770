//! Acidity of whole bags.

use crate::bench;
use barm_science::model::state::GAS;
use barm_science::model::{Mixture, Moment, Parameters, nominal};
use barm_science::setup::Setup;

fn ph_after(setup: &Setup, minute: u32) -> f64 {
    let moment = last(setup, minute);
    Mixture::new(setup, &Parameters::median()).ph(&moment.state)
}

fn last(setup: &Setup, minute: u32) -> Moment {
    nominal(setup, minute).unwrap().moments[minute as usize]
}

/// 50 g of a juice or the like in place of the water, but for a millilitre.
fn all_of(id: &str) -> Setup {
    let mut setup = bench::plain(30.0);
    setup.water_ml = 1.0;
    setup.foods = vec![bench::grams(id, 50.0)];
    setup
}

/// A college class measured about pH 5 in tap water with sugar and 3 % of dry yeast; fermenting dough and
/// mash lie at 4 to 5.5. Fruit: US FDA, Approximate pH of Foods (from memory), moved some tenths by the
/// yeast. Vinegar of 5 % shows 2.4, a fifth of it in water 2.8 (Ostwald's law, pKa 4.76), less acid with
/// yeast. Soda alone 8.3, less once yeast has made gas.
#[test]
fn bags_are_as_acid_as_what_is_in_them() {
    let plain = bench::plain(30.0);
    let with = |id: &str, grams: f64| {
        let mut setup = plain.clone();
        setup.foods.push(bench::grams(id, grams));
        setup
    };
    for (what, setup, low, high) in [
        ("sugar", plain.clone(), 4.0, 5.5),
        ("flour", with("wheat_flour_white", 4.0), 4.5, 6.2),
        ("apple juice", all_of("apple_juice"), 3.4, 4.2),
        ("grape juice", all_of("grape_juice"), 3.1, 4.0),
        ("a little vinegar", with("vinegar", 12.0), 2.8, 4.2),
        ("skim milk", all_of("milk_skim"), 5.2, 6.7),
        ("soda", with("baking_soda", 1.0), 7.0, 8.4),
    ] {
        let ph = ph_after(&setup, 20);
        assert!((low..high).contains(&ph), "{what}: pH {ph}");
    }
}

/// Acid of the same amount frees the same gas from soda, whether vinegar's or a juice's: 50 g of apple
/// juice hold 3.5 mmol, as do 4.2 g of vinegar; water made equal.
#[test]
fn juice_frees_as_much_gas_as_vinegar_of_the_same_acid() {
    let gas = |id: &str, grams: f64, water_ml: f64| {
        let mut setup = bench::plain(22.0);
        setup.yeast = None;
        setup.water_ml = water_ml;
        setup.bag.film_um = 300.0;
        setup.foods = vec![bench::grams(id, grams), bench::grams("baking_soda", 0.7)];
        last(&setup, 60).state[GAS]
    };
    let (juice, vinegar) = (gas("apple_juice", 50.0, 6.0), gas("vinegar", 4.2, 46.1));
    assert!((juice / vinegar - 1.0).abs() < 0.08, "{juice} against {vinegar} mmol");
    assert!(juice > 0.8, "{juice} mmol");
}

#[test]
fn acid_and_soda_slow_the_yeast() {
    let plain = last(&bench::plain(35.0), 40).gas_ml;
    for (id, grams) in [("vinegar", 25.0), ("baking_soda", 2.0)] {
        let mut setup = bench::plain(35.0);
        setup.foods.push(bench::grams(id, grams));
        let slowed = last(&setup, 40).ethanol_g;
        let own = last(&bench::plain(35.0), 40).ethanol_g;
        assert!(slowed < 0.9 * own, "{id}: {slowed} against {own} g");
    }
    assert!(plain > 100.0, "{plain} mL");
}

/// The yeast's buffer decides how far acid gets; twice the yeast is less acid.
#[test]
fn yeast_takes_up_acid() {
    let mut before = 0.0;
    for grams in [1.0, 2.0, 4.0, 8.0] {
        let mut setup = all_of("grape_juice");
        setup.yeast = Some(bench::yeast(barm_science::setup::YeastKind::Instant, grams));
        let ph = Mixture::new(&setup, &Parameters::median());
        let ph = ph.ph(ph.start());
        assert!(ph > before, "{grams} g: pH {ph}");
        before = ph;
    }
}

/// Where acidity begins to be followed, nothing jumps: a bag just beside the border makes nearly the
/// same gas.
#[test]
fn nothing_jumps_where_acidity_begins_to_be_followed() {
    let gas = |grams: f64| {
        let mut setup = bench::plain(30.0);
        setup.foods.push(bench::grams("vinegar", grams));
        last(&setup, 30).gas_ml
    };
    let mut before = gas(0.0);
    for step in 1..=40 {
        let now = gas(0.1 * f64::from(step));
        assert!((now / before - 1.0).abs() < 0.01, "step {step}: {before} to {now} mL");
        before = now;
    }
}

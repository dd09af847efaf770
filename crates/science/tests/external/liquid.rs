//! Ethanol and carbonate against published numbers.

use crate::rows::agrees;
use barm_science::carbonate::{self, Solutes};
use barm_science::units::Celsius;
use barm_science::{carbon_dioxide, ethanol};

/// Mean of Sander (2015), Dubowski (OIML R 126) and Wells (1981), worked outside; no single
/// source lies more than 3 % off between 20 and 40 °C.
#[test]
fn ethanol_stays_in_the_water_as_four_sources_say() {
    for (celsius, mean, lowest, highest) in [
        (20.0, 6570.0, 6467.0, 6679.0),
        (25.0, 4664.0, 4582.0, 4710.0),
        (30.0, 3344.0, 3286.0, 3380.0),
        (34.0, 2580.0, 2547.0, 2612.0),
        (40.0, 1768.0, 1733.0, 1798.0),
    ] {
        let ours = ethanol::water_gas_ratio(Celsius(celsius));
        agrees(&format!("mean ratio at {celsius} °C"), ours, mean, 0.001);
        agrees(&format!("lowest ratio at {celsius} °C"), ours, lowest, 0.03);
        agrees(&format!("highest ratio at {celsius} °C"), ours, highest, 0.03);
    }
}

/// Plummer and Busenberg (1982) worked outside this repository.
#[test]
fn carbonic_acid_is_as_strong_as_plummer_and_busenberg_say() {
    for (celsius, pk1, pk2) in [
        (10.0, 6.463, 10.488),
        (15.0, 6.419, 10.428),
        (25.0, 6.352, 10.329),
        (35.0, 6.310, 10.252),
        (45.0, 6.289, 10.196),
    ] {
        let t = Celsius(celsius);
        assert!((carbonate::pk1(t) - pk1).abs() < 0.001, "pK1 at {celsius} °C");
        assert!((carbonate::pk2(t) - pk2).abs() < 0.001, "pK2 at {celsius} °C");
    }
    assert!((carbonate::pkw(Celsius(25.0)) - 13.995).abs() < 0.005);
    for (celsius, ph, factor) in [
        (25.0, 5.0, 1.044),
        (25.0, 6.5, 2.407),
        (25.0, 8.0, 45.686),
        (15.0, 7.0, 4.814),
        (35.0, 6.0, 1.490),
        (45.0, 8.0, 52.683),
    ] {
        let ours = carbonate::carbon_over_carbon_dioxide(ph, Celsius(celsius));
        agrees(&format!("carbon at pH {ph}, {celsius} °C"), ours, factor, 0.01);
    }
}

/// Handbook points, from memory: pure water pH 7.00; water under carbon dioxide at 1 atm pH 3.92;
/// water under air (420 ppm) pH 5.61; 0.1 mol/L bicarbonate pH 8.3; 0.1 mol/L acetic acid pH 2.88.
#[test]
fn acidity_of_plain_liquids_is_that_of_the_handbooks() {
    let t = Celsius(25.0);
    let solubility = carbon_dioxide::mol_per_l_pa(t) * 101_325.0;
    // What is dissolved as gas fixes the carbon; the little bicarbonate comes on top.
    let under = |pressure_atm: f64, bicarbonate: f64| Solutes {
        carbon: solubility * pressure_atm + bicarbonate,
        ..Solutes::default()
    };
    let soda = Solutes { carbon: 0.1, base: 0.1, acid: 0.0 };
    let vinegar = Solutes { carbon: 0.0, base: 0.0, acid: 0.1 };
    for (what, liquid, ph) in [
        ("pure water", Solutes::default(), 7.0),
        ("sparkling water", under(1.0, 1.2e-4), 3.92),
        ("rain", under(420e-6, 2.5e-6), 5.61),
        ("baking soda", soda, 8.3),
        ("acetic acid", vinegar, 2.88),
    ] {
        let ours = liquid.ph(t);
        assert!((ours - ph).abs() < 0.06, "{what}: pH {ours:.3} against {ph}");
    }
}

#[test]
fn acid_wrings_carbon_dioxide_out_of_soda() {
    let t = Celsius(30.0);
    let mut before = 0.0;
    for acid in [0.0, 0.02, 0.05, 0.08, 0.1, 0.2] {
        let liquid = Solutes { carbon: 0.1, base: 0.1, acid };
        let share = liquid.carbon_dioxide_share(t);
        let factor = carbonate::carbon_over_carbon_dioxide(liquid.ph(t), t);
        agrees("share and factor", share * factor, 1.0, 1e-9);
        assert!(share > before, "{acid} mol/L of acid leaves a share of {share}");
        before = share;
    }
    assert!(before > 0.95, "twice the acid frees nearly all: {before}");
    let none = Solutes { carbon: 0.03, base: 0.0, acid: 0.0 };
    assert!(none.carbon_dioxide_share(t) > 0.99, "plain sugar water keeps its gas");
}

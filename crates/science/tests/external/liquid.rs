//! Ethanol and carbonate against published numbers.

use crate::rows::{agrees, each};
use barm_science::carbonate::{self, Liquid, Solutes, activity_log10, cations_and_total};
use barm_science::setup::Acids;
use barm_science::units::Celsius;
use barm_science::{carbon_dioxide, ethanol, food};

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
}

/// Plummer and Busenberg (1982) worked outside this repository, 72 cells of 10 to 50 °C and pH 4 to 8.
#[test]
fn carbon_hides_as_plummer_and_busenberg_say() {
    each(include_str!("../rows/carbonate_factor.csv"), |row| {
        let t = Celsius(row.number("temp_C"));
        for ph in ["4", "4.5", "5", "5.5", "6", "6.5", "7", "8"] {
            let factor = row.number(&format!("DIC_over_CO2aq_pH{ph}"));
            let at: f64 = ph.parse().expect("a pH");
            let ours = carbonate::carbon_over_carbon_dioxide(at, t);
            agrees(&format!("carbon at pH {ph}, {} °C", t.0), ours, factor, 0.003);
            // So much base, by hand, brings a thin solution to this pH; the balance finds the same.
            let (one, two) = (row.number("pK1"), row.number("pK2"));
            let (b, c) = (10_f64.powf(at - one), 10_f64.powf(at - two));
            let charge = 0.01 * b * (1.0 + 2.0 * c) / (1.0 + b * (1.0 + c));
            let proton = 10_f64.powf(-at);
            let base = charge - proton + 10_f64.powf(at - carbonate::pkw(t));
            let thin = Liquid::new(&Solutes { base, ..Solutes::default() });
            let found = thin.speciation(0.01, t);
            assert!((found.ph - at).abs() < 0.002, "pH {} for {at}", found.ph);
            agrees(
                &format!("share at pH {ph}"),
                found.carbon_dioxide_share * factor,
                1.0,
                0.005,
            );
        }
    });
}

/// Handbook points, from memory: pure water pH 7.00; water under carbon dioxide at 1 atm pH 3.92;
/// water under air (420 ppm) pH 5.61; 0.1 mol/L acetic acid pH 2.88, citric 2.08, lactic 2.45.
#[test]
fn acidity_of_plain_liquids_is_that_of_the_handbooks() {
    let t = Celsius(25.0);
    let solubility = carbon_dioxide::mol_per_l_pa(t) * 101_325.0;
    let none = Solutes::default();
    let acid = |kind: usize| {
        let mut acids = [0.0; 4];
        acids[kind] = 0.1;
        Solutes { acids, ..none }
    };
    // What is dissolved as gas fixes the carbon; the little bicarbonate comes on top.
    for (what, solutes, carbon, ph) in [
        ("pure water", none, 0.0, 7.0),
        ("sparkling water", none, solubility + 1.2e-4, 3.92),
        ("rain", none, 420e-6 * solubility + 2.5e-6, 5.61),
        ("acetic acid", acid(0), 0.0, 2.88),
        ("citric acid", acid(2), 0.0, 2.08),
        ("lactic acid", acid(3), 0.0, 2.45),
    ] {
        let ours = Liquid::new(&solutes).ph(carbon, t);
        assert!((ours - ph).abs() < 0.06, "{what}: pH {ours:.3} against {ph}");
    }
}

/// Standards by which electrodes are set, R. G. Bates, Determination of pH (1973), at 25 °C, and NIST's
/// carbonate standard at other temperatures; all from memory. Ions count here: without activities the
/// first would be off by 0.3. Last, 0.1 mol/L baking soda in open air, pH 8.3 in handbooks, which has
/// lost some of its gas by then: 0.2 less when fresh.
#[test]
fn acidity_of_standard_buffers_is_that_of_the_standards() {
    let carbonates =
        Solutes { base: 0.025 + 2.0 * 0.025, ionic: 0.025 + 3.0 * 0.025, ..Solutes::default() };
    let acetate =
        Solutes { base: 0.1, acids: [0.2, 0.0, 0.0, 0.0], ionic: 0.1, ..Solutes::default() };
    let citrate =
        Solutes { base: 0.05, acids: [0.0, 0.0, 0.05, 0.0], ionic: 0.06, ..Solutes::default() };
    let soda = Solutes { base: 0.1, ionic: 0.1, ..Solutes::default() };
    for (what, solutes, carbon, celsius, ph, within) in [
        ("carbonates", carbonates, 0.05, 25.0, 10.012, 0.02),
        ("carbonates", carbonates, 0.05, 15.0, 10.118, 0.02),
        ("carbonates", carbonates, 0.05, 35.0, 9.925, 0.02),
        ("acetate", acetate, 0.0, 25.0, 4.652, 0.02),
        ("citrate", citrate, 0.0, 25.0, 3.776, 0.03),
        ("baking soda", soda, 0.1, 25.0, 8.3, 0.2),
    ] {
        let ours = Liquid::new(&solutes).ph(carbon, Celsius(celsius));
        assert!((ours - ph).abs() < within, "{what}, {celsius} °C: pH {ours:.3} against {ph}");
    }
}

/// H. S. Harned and S. R. Scholes (1941) and H. S. Harned and R. Davis (1943) found the true pK1 0.3
/// lower in sea water's salt, from memory; Davies gives 0.13 for one charge at 0.5 mol/kg, and for
/// the product of both ions, as they counted, 0.27.
#[test]
fn ions_make_acids_stronger() {
    assert!((activity_log10(0.1) - 0.107).abs() < 0.001);
    assert!((2.0 * activity_log10(0.5) - 0.27).abs() < 0.01);
    assert!((activity_log10(3.0) - activity_log10(0.5)).abs() < 1e-12, "held beyond");
    assert!(activity_log10(0.0).abs() < 1e-12);
}

#[test]
fn acid_wrings_carbon_dioxide_out_of_soda() {
    let t = Celsius(30.0);
    for kind in 0..4 {
        let mut before = 0.0;
        for acid in [0.0, 0.02, 0.05, 0.08, 0.1, 0.2] {
            let mut acids = [0.0; 4];
            acids[kind] = acid;
            let liquid = Liquid::new(&Solutes { base: 0.1, acids, ..Solutes::default() });
            let share = liquid.speciation(0.1, t).carbon_dioxide_share;
            let factor = carbonate::carbon_over_carbon_dioxide(liquid.ph(0.1, t), t);
            agrees("share and factor", share * factor, 1.0, 1e-9);
            assert!(share > before, "{acid} mol/L of acid {kind} leaves a share of {share}");
            before = share;
        }
        assert!(before > 0.95, "twice the acid frees nearly all: {before}");
    }
    let none = Liquid::new(&Solutes::default());
    assert!(none.speciation(0.03, t).carbon_dioxide_share > 0.98, "plain water keeps its gas");
}

/// A mole of acid that can be titrated frees a mole of carbon dioxide from plenty of soda, whatever
/// acid it is and however much of it the food's own salts hold.
#[test]
fn acid_frees_as_much_gas_as_can_be_titrated() {
    let t = Celsius(25.0);
    for acids in [
        Acids::acetic(0.01),
        Acids::malic(0.01).at(3.5),
        Acids::malic(0.01).at(4.9),
        Acids::citric(0.01).at(3.6),
        Acids::citric(0.01).at(5.2),
        Acids::lactic(0.01).at(3.9),
    ] {
        let (cations, total) = cations_and_total(&acids);
        // Soda alone has as much carbon dioxide as it has carbonate, which takes up the first acid.
        let acids_there = Solutes { base: 0.1 + cations, acids: total, ..Solutes::default() };
        let freed = 0.1 * Liquid::new(&acids_there).speciation(0.1, t).carbon_dioxide_share;
        // Near pH 7.3, not yet 8.2: some of citric acid's last step is not done.
        assert!((freed / 0.01 - 1.0).abs() < 0.08, "{acids:?}: {freed} mol freed");
        // By itself the food is as acid as it was said to be.
        if acids.ph > 0.0 {
            let own =
                Liquid::new(&Solutes { base: cations, acids: total, ..Solutes::default() });
            assert!((own.ph(0.0, t) - acids.ph).abs() < 0.25, "{acids:?}: {}", own.ph(0.0, t));
        }
    }
}

/// Potassium in 100 g (USDA SR28, from memory: 101, 104, 74, 358 and 749 mg), most of which holds fruit
/// acids: our metal ions come from acid and pH alone.
#[test]
fn fruit_holds_as_much_metal_as_its_acidity_says() {
    for (id, potassium_mg) in [
        ("apple_juice", 101.0),
        ("grape_juice", 104.0),
        ("applesauce", 74.0),
        ("banana", 358.0),
        ("raisins", 749.0),
    ] {
        let acids = food::by_id(id).expect(id).composition.acids;
        let (cations, _) = cations_and_total(&acids);
        let ratio = cations / (1e-3 * potassium_mg / 39.1);
        assert!((0.7..1.4).contains(&ratio), "{id}: {ratio} of its potassium");
    }
}

/// Sechenov constants of single ions (S. Weisenberger, A. Schumpe, AIChE J. 42, 298 (1996), from memory):
/// sodium 0.1143, chloride 0.0318, hydrogen carbonate 0.0967, carbon dioxide -0.0172 L/mol at 25 °C.
#[test]
fn soda_keeps_more_gas_out_than_salt() {
    let (salt, soda) = (0.1143 + 0.0318 - 2.0 * 0.0172, 0.1143 + 0.0967 - 2.0 * 0.0172);
    agrees("ratio", carbon_dioxide::BICARBONATE_OVER_SALT.value, soda / salt, 0.01);
    let ours = -carbon_dioxide::salt_factor(1.0, Celsius(25.0)).log10();
    agrees("salt at 25 °C", ours, salt, 0.12);
}

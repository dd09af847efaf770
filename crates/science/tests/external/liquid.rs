//! Ethanol, the meter and carbonate against published numbers.

use crate::rows::agrees;
use barm_science::carbonate::{self, Solutes};
use barm_science::meter::{self, MeterError};
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

/// Worked outside from 0.40 g per 210 L and the ratios above: 8.88 g/L at 25 °C (1.13 % by
/// volume), 4.61 g/L at 35 °C.
#[test]
fn a_warm_bag_needs_half_the_ethanol_for_the_same_reading() {
    agrees("gas", meter::gas_mg_per_l(0.40), 1.905, 0.001);
    let cool = meter::liquid_g_per_l(0.40, Celsius(25.0));
    agrees("25 °C", cool, 8.88, 0.03);
    agrees("by volume", ethanol::percent_by_volume(cool), 1.13, 0.03);
    agrees("35 °C", meter::liquid_g_per_l(0.40, Celsius(35.0)), 4.61, 0.03);
    for celsius in [18.0, 25.0, 32.0] {
        let step = meter::liquid_g_per_l(0.1, Celsius(celsius + 1.0))
            / meter::liquid_g_per_l(0.1, Celsius(celsius));
        assert!((0.930..0.945).contains(&step), "one degree changes the liquid by {step}");
    }
}

#[test]
fn a_meter_says_no_more_than_it_knows() {
    let inside = meter::estimate(0.12, 0.40, Celsius(30.0)).unwrap();
    assert!(!inside.at_least);
    assert!(inside.low_g_per_l < 0.55 * inside.g_per_l, "the gain is known to a factor of two");
    assert!(inside.high_g_per_l > 2.0 * inside.g_per_l && inside.high_g_per_l.is_finite());
    let pinned = meter::estimate(0.40, 0.40, Celsius(30.0)).unwrap();
    assert!(pinned.at_least && pinned.high_g_per_l.is_infinite());
    assert!(matches!(
        meter::estimate(-0.1, 0.4, Celsius(30.0)),
        Err(MeterError::NotAReading { .. })
    ));
    assert!(matches!(
        meter::estimate(f64::NAN, 0.4, Celsius(30.0)),
        Err(MeterError::NotAReading { .. })
    ));
    assert!(matches!(
        meter::estimate(12.0, 0.4, Celsius(30.0)),
        Err(MeterError::AboveRange { .. })
    ));
}

/// The trap that the correction is for: the warm bag reads higher and holds less.
#[test]
fn bags_are_compared_at_their_own_temperatures() {
    let warm = (0.30, Celsius(38.0));
    let cool = (0.20, Celsius(25.0));
    let ratio = meter::compare(warm, cool, 0.40).unwrap();
    assert!(ratio.ratio < 1.0, "warm over cool: {}", ratio.ratio);
    let back = meter::compare(cool, warm, 0.40).unwrap();
    agrees("there and back", ratio.ratio * back.ratio, 1.0, 1e-12);
    assert!(ratio.low < ratio.ratio && ratio.ratio < ratio.high);
    assert_eq!(meter::compare((0.4, Celsius(30.0)), cool, 0.4), Err(MeterError::EndOfRange));
    assert_eq!(
        meter::compare(warm, (0.0, Celsius(25.0)), 0.4),
        Err(MeterError::NothingToCompare)
    );
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

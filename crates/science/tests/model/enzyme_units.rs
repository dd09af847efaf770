//! Units on labels against their definitions, and what they leave open.

use crate::bench::served;
use barm_science::enzyme::PRODUCTS;
use barm_science::enzyme::acidity::{bell, loss_per_min};
use barm_science::enzyme::label::{LabelUnit, windisch_kolbach};
use barm_science::enzyme::malt;
use barm_science::enzyme::products::product;
use barm_science::model::state::ENZYME_ORDER;
use barm_science::setup::EnzymeKind;

fn near(value: f64, expected: f64, within: f64) {
    assert!((value / expected - 1.0).abs() < within, "{value} against {expected}");
}

/// By hand, glucose units at 162.14 g/mol and exp(45000/8.3145 · (1/T − 1/310.15)):
/// 1 g/h is 102.8 µmol/min; from 30 °C times 1.496, from 20 °C times 2.751. 1 mg/min is 6.17 µmol/min.
/// 1 g maltose by 100 g of malt in 30 min is 1.947 µmol of its halves a minute and gram.
#[test]
fn a_unit_is_what_its_definition_makes_of_it() {
    let of = |unit: LabelUnit| unit.micromoles_per_min().value;
    near(of(LabelUnit::Dextrinizing), 102.8 * 1.496, 0.005);
    near(of(LabelUnit::MaltDextrinizing), 102.8 * 2.751, 0.005);
    near(of(LabelUnit::BacterialAmylase), 6.17, 0.001);
    near(of(LabelUnit::WindischKolbach), 1.947 * 2.751, 0.005);
    // The same assay, ten kelvin cooler: a unit of malt is the larger one.
    near(of(LabelUnit::MaltDextrinizing) / of(LabelUnit::Dextrinizing), 2.751 / 1.496, 0.005);
}

/// °WK = 3.5 °L − 16 (trade tables, from memory): pale malts of 100 and 125 °L have 334 and 421.5
/// °WK; a malt without power has none, not less.
#[test]
fn degrees_of_lintner_do_not_begin_at_zero() {
    for (lintner, expected) in [(100.0, 334.0), (125.0, 421.5), (20.0, 54.0)] {
        near(windisch_kolbach(lintner), expected, 1e-12);
        let wk = LabelUnit::WindischKolbach.activity(expected);
        near(LabelUnit::Lintner.activity(lintner), wk, 1e-12);
    }
    assert!(LabelUnit::Lintner.activity(3.0).abs() < 1e-12);
    near(LabelUnit::FccLactase.activity(3000.0), 1500.0, 1e-12);
}

#[test]
fn labels_are_read_as_people_write_them() {
    let names = [
        "FCC", "ALU", "NLU", "AGU", "GAU", "SKB", "DU", "BAU", "°WK", "WK", "°L", "Lintner",
        "GalU", "SU", "IU", "U",
    ];
    for name in names {
        let unit = LabelUnit::named(name).unwrap_or_else(|| panic!("no unit {name}"));
        assert!(unit.log_sd() > 0.2, "{name}: no assay converts to another this well");
    }
    assert_eq!(LabelUnit::named("DU"), Some(LabelUnit::MaltDextrinizing));
    assert_eq!(LabelUnit::named("SKB"), Some(LabelUnit::Dextrinizing));
    assert_eq!(LabelUnit::named("bushel"), None);
}

/// A dose is no surer than its unit: what a label unit comes to and how strong the product is when
/// the label does not say add up as variances.
#[test]
fn a_dose_is_no_surer_than_its_label_unit() {
    for one in PRODUCTS {
        let unsure = one.dose(1.0, 0.1).activity_sd;
        assert!(unsure > one.label.log_sd(), "{}: {unsure}", one.key);
        let (low, high) = one.strength.range.expect("a range");
        let strength = (high / low).ln() / 3.29;
        let both = strength.hypot(one.label.log_sd());
        assert!((unsure - both).abs() < 1e-12, "{}: {unsure} and {both}", one.key);
    }
}

/// Malt brings both its enzymes: 2 g of 40 °L are 124 °WK a gram, 1 mmol glucose units a minute and
/// more; the powder out of a jar and the flour as a food are the same malt.
#[test]
fn malt_brings_both_its_enzymes() {
    let [beta, alpha] = malt::enzymes(2.0, 0.1);
    assert_eq!(beta.kind, EnzymeKind::BetaAmylase);
    near(beta.units, 2.0 * 124.0 * 5.36, 1e-9);
    near(alpha.units, 2.0 * 15.0 * 283.0, 1e-9);
    let powder = product("diastatic-malt").unwrap();
    near(powder.dose(2.0, 0.1).units, beta.units, 1e-12);
    let beside = powder.beside(2.0, 0.1).unwrap();
    assert_eq!(beside.kind, alpha.kind);
    near(beside.units, alpha.units, 1e-12);
    assert!(beside.carrier.is_none(), "the carrier came with the first");
    assert!(product("glucoamylase-powder").unwrap().beside(1.0, 0.1).is_none());
}

/// Suppliers' sheets and textbooks (from memory): glucoamylase, invertase and acid lactase do best
/// near pH 4.5, malt's beta-amylase near 5.2, bacterial amylase near 6 to 6.5, neutral lactase near 7;
/// none of the first three is of much use in lye.
#[test]
fn enzymes_like_the_acidity_of_their_sheets() {
    let best = |kind| {
        let tried = (20..=100).map(|tenths| f64::from(tenths) / 10.0);
        tried.max_by(|a, b| bell(kind).at_work(*a).total_cmp(&bell(kind).at_work(*b))).unwrap()
    };
    for (kind, low, high) in [
        (EnzymeKind::Glucoamylase, 4.0, 5.0),
        (EnzymeKind::Invertase, 4.2, 5.0),
        (EnzymeKind::AcidLactase, 4.5, 5.0),
        (EnzymeKind::AlphaGalactosidase, 4.5, 5.5),
        (EnzymeKind::BetaAmylase, 5.0, 5.6),
        (EnzymeKind::FungalAlphaAmylase, 5.0, 6.0),
        (EnzymeKind::BacterialAlphaAmylase, 6.0, 7.0),
        (EnzymeKind::NeutralLactase, 6.5, 7.2),
    ] {
        let found = best(kind);
        assert!((low..=high).contains(&found), "{kind:?}: {found}");
    }
    let soda = |kind| bell(kind).at_work(8.0);
    for kind in [EnzymeKind::Glucoamylase, EnzymeKind::Invertase, EnzymeKind::AcidLactase] {
        assert!(soda(kind) < 0.1, "{kind:?}: {}", soda(kind));
    }
    for kind in ENZYME_ORDER {
        let usual = match kind {
            EnzymeKind::NeutralLactase | EnzymeKind::AcidLactase => 6.3,
            _ => 5.0,
        };
        near(bell(kind).at_work(usual), 1.0, 1e-12);
    }
}

/// A. oryzae alpha-amylase under pH 4 (Chem. Eng. Sci. 51, 37 (1996), abstract):
/// 1.19e7 [H+]^1.99 per hour. At pH 3 that is 12.75 an hour, by hand.
#[test]
fn acid_takes_a_molds_amylase_for_good() {
    near(60.0 * loss_per_min(EnzymeKind::FungalAlphaAmylase, 3.0), 12.75, 0.005);
    assert!(loss_per_min(EnzymeKind::FungalAlphaAmylase, 5.0) < 1e-4);
    assert!(loss_per_min(EnzymeKind::Glucoamylase, 3.0).abs() < 1e-300);
    assert!(served("amylase-powder").units > 0.0);
}

//! Enzymes at work: on what there is to cut, and in acid and lye.

use super::enzyme::of_kinds;
use super::{Picture, axis, drawn, line};
use barm_science::enzyme::acidity::bell;
use barm_science::enzyme::gelatinization::granules;
use barm_science::enzyme::starch::{
    BACTERIAL, BETA, Chains, FUNGAL, RAW_STARCH, amylase, glucoamylase,
};
use barm_science::enzyme::sugars::{ACID, NEUTRAL, galactosidase_at_work, invertase_at_work};
use barm_science::setup::Grain;

pub(super) fn pictures() -> Vec<Picture> {
    vec![on_starch(), on_sugars(), in_acid(), on_granules()]
}

fn on_starch() -> Picture {
    let range = (0.0, 20.0);
    let cooked = |cooked: f64| Chains { cooked, ..Chains::default() };
    let of = |look, name, kind| {
        line(look, name, range, move |grams| amylase(&kind, &cooked(grams), 1.0, 0.0).cooked)
    };
    drawn(
        "enzyme-on-starch",
        "Share of an enzyme at work on cooked starch",
        axis("cooked starch", "g/L", 0.0, 20.0),
        axis("at work", "1", 0.0, 1.0),
        &[
            line(1, "glucoamylase", range, |g| glucoamylase(&cooked(g), 1.0, 0.0).cooked),
            of(2, "fungal amylase", FUNGAL),
            of(3, "bacterial amylase", BACTERIAL),
            of(4, "beta-amylase", BETA),
        ],
    )
}

fn on_sugars() -> Picture {
    let range = (0.0, 150.0);
    drawn(
        "enzyme-on-sugars",
        "Share of an enzyme at work on its sugar",
        axis("its sugar", "mmol/L", 0.0, 150.0),
        axis("at work", "1", 0.0, 1.0),
        &[
            line(1, "invertase", range, |sucrose| invertase_at_work(sucrose, 0.0, 1.0).0),
            line(2, "neutral lactase", range, |lactose| NEUTRAL.at_work(lactose, 0.0, 1.0)),
            line(3, "the same with 50 mmol/L galactose", range, |lactose| {
                NEUTRAL.at_work(lactose, 50.0, 1.0)
            }),
            line(4, "acid lactase", range, |lactose| ACID.at_work(lactose, 0.0, 1.0)),
            line(5, "alpha-galactosidase", range, |raffinose| {
                galactosidase_at_work(raffinose, 0.0, 1.0)
            }),
        ],
    )
}

fn in_acid() -> Picture {
    drawn(
        "enzyme-acidity",
        "Pace of enzymes against their pace at the usual acidity",
        axis("pH", "1", 2.0, 10.0),
        axis("pace", "1", 0.0, 1.4),
        &of_kinds((2.0, 10.0), |kind, ph| bell(kind).at_work(ph)),
    )
}

fn on_granules() -> Picture {
    let of = |look, name, grain| {
        let attack = RAW_STARCH.value * granules(Some(grain)).attack.value;
        line(look, name, (0.0, 60.0), move |raw| {
            100.0 * glucoamylase(&Chains { raw, ..Chains::default() }, 1.0, attack).raw
        })
    };
    drawn(
        "starch-raw",
        "Pace of an enzyme on raw granules over that on much cooked starch",
        axis("raw starch", "g/L", 0.0, 60.0),
        axis("pace", "%", 0.0, 8.0),
        &[
            of(1, "tapioca", Grain::Tapioca),
            of(2, "corn", Grain::Corn),
            of(3, "pulses", Grain::Pulse),
            of(4, "potato", Grain::Potato),
        ],
    )
}

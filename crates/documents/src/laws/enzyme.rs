//! Enzymes against warmth and time; starch that cooks.

use super::{Picture, axis, drawn, line};
use crate::chart::LawLine;
use barm_science::enzyme::gelatinization::{cooked_share, granules};
use barm_science::enzyme::heat::heat;
use barm_science::enzyme::stock::{HALF_LIFE, UNSHAKEN, left};
use barm_science::setup::{EnzymeKind, Grain};
use barm_science::units::Celsius;

pub(super) fn pictures() -> Vec<Picture> {
    vec![warmth(), loss(), starch(), solution()]
}

const KINDS: [(EnzymeKind, &str); 8] = [
    (EnzymeKind::Glucoamylase, "glucoamylase"),
    (EnzymeKind::FungalAlphaAmylase, "fungal amylase"),
    (EnzymeKind::BacterialAlphaAmylase, "bacterial amylase"),
    (EnzymeKind::NeutralLactase, "neutral lactase"),
    (EnzymeKind::AcidLactase, "acid lactase"),
    (EnzymeKind::Invertase, "invertase"),
    (EnzymeKind::BetaAmylase, "beta-amylase"),
    (EnzymeKind::AlphaGalactosidase, "alpha-galactosidase"),
];

pub(super) fn of_kinds(
    range: (f64, f64),
    law: impl Fn(EnzymeKind, f64) -> f64,
) -> Vec<LawLine> {
    let kinds = (1..).zip(KINDS);
    kinds.map(|(look, (kind, name))| line(look, name, range, |t| law(kind, t))).collect()
}

fn warmth() -> Picture {
    drawn(
        "enzyme-warmth",
        "Pace of enzymes against their pace at the reference temperature, before any loss",
        axis("temperature", "°C", 0.0, 50.0),
        axis("pace", "1", 0.0, 3.0),
        &of_kinds((0.0, 50.0), |kind, t| heat(kind).rate(Celsius(t))),
    )
}

fn loss() -> Picture {
    drawn(
        "enzyme-loss",
        "Activity that enzymes keep through half an hour of warmth",
        axis("temperature", "°C", 20.0, 80.0),
        axis("activity kept after 30 min", "%", 0.0, 100.0),
        &of_kinds((20.0, 80.0), |kind, t| 100.0 * (-30.0 * heat(kind).loss(Celsius(t))).exp()),
    )
}

fn starch() -> Picture {
    let plants = [
        (Grain::Wheat, "wheat"),
        (Grain::Potato, "potato"),
        (Grain::Rice, "rice"),
        (Grain::Corn, "corn"),
        (Grain::Sorghum, "sorghum"),
    ];
    let of = |(look, (grain, name)): (u8, (Grain, &str))| {
        let own = granules(Some(grain));
        line(look, name, (40.0, 90.0), move |t| {
            100.0 * cooked_share(t, own.onset.value, own.end.value)
        })
    };
    drawn(
        "starch-cooks",
        "Starch that cooks sooner or later at a temperature",
        axis("temperature", "°C", 40.0, 90.0),
        axis("cooked", "%", 0.0, 100.0),
        &(1..).zip(plants).map(of).collect::<Vec<_>>(),
    )
}

fn solution() -> Picture {
    let shaken = |minutes: f64| 100.0 * left(minutes, HALF_LIFE.value);
    drawn(
        "enzyme-solution",
        "What a dose out of a bottle of enzyme solution still brings",
        axis("since it was mixed", "min", 0.0, 500.0),
        axis("of a fresh dose", "%", 0.0, 100.0),
        &[
            line(1, "shaken", (0.0, 500.0), shaken),
            line(2, "not shaken", (0.0, 500.0), |minutes| UNSHAKEN.value * shaken(minutes)),
        ],
    )
}

//! A whole bag: its card, its warmth, its hour, and what holds it back.

use super::{Picture, axis, drawn, line};
use crate::chart::{LawLine, Look};
use barm_science::bag::{StandardBag, robin_capacity_ml, simulated_capacity_ml};
use barm_science::card_height::prior;
use barm_science::model::shares::{Thing, shares};
use barm_science::model::{Moment, Parameters, nominal};
use barm_science::setup::{
    Bag, Card, Composition, EnzymeDose, EnzymeKind, Lying, Portion, Setup, YeastDose, YeastKind,
};

pub(super) fn pictures() -> Vec<Picture> {
    vec![capacity(), card(), warmth(), hour(), held_back()]
}

fn capacity() -> Picture {
    let of = |look, name, aspect: f64, law: fn(&Bag) -> f64| {
        line(look, name, (80.0, 180.0), move |short| {
            let film_um = StandardBag::Sandwich.bag().film_um;
            law(&Bag { width_mm: aspect * short, height_mm: short, film_um })
        })
    };
    drawn(
        "bag-capacity",
        "What a flat bag holds when it is drum-tight",
        axis("short side", "mm", 80.0, 180.0),
        axis("capacity", "mL", 0.0, 3200.0),
        &[
            of(1, "twice as long, simulated", 2.0, simulated_capacity_ml),
            of(2, "square, simulated", 1.0, simulated_capacity_ml),
            of(3, "square, Robin", 1.0, robin_capacity_ml),
        ],
    )
}

const INDEX_CARD: Card = Card { length_mm: 127.0, width_mm: 76.0, grams: 1.8 };

fn card() -> Picture {
    let pairs = [
        (StandardBag::Snack, INDEX_CARD, "snack, 3 x 5 in"),
        (
            StandardBag::Sandwich,
            Card { length_mm: 152.0, width_mm: 102.0, grams: 3.0 },
            "sandwich, 4 x 6 in",
        ),
        (
            StandardBag::Quart,
            Card { length_mm: 203.0, width_mm: 127.0, grams: 4.5 },
            "quart, 5 x 8 in",
        ),
    ];
    let of = |(look, (bag, card, name)): (u8, (StandardBag, Card, &str))| {
        let curve = prior(&bag.bag(), &card, 50.0).mean;
        line(look, name, (0.0, 800.0_f64.min(0.9 * curve.room_ml())), move |ml| {
            curve.rise_mm(ml)
        })
    };
    drawn(
        "card",
        "Rise of a card over the gas under it, by bag and card",
        axis("gas in the bag", "mL", 0.0, 800.0),
        axis("rise", "mm", 0.0, 80.0),
        &(1..).zip(pairs).map(of).collect::<Vec<_>>(),
    )
}

/// An invented bag: 50 mL of warm water, yeast and sugar in a sandwich bag.
fn bag(lying: Lying, foods: Vec<Portion>, enzymes: Vec<EnzymeDose>) -> Setup {
    Setup {
        water_ml: 50.0,
        water_celsius: 40.0,
        water_celsius_sd: 1.0,
        water_dosing_sd: 0.05,
        yeast: Some(YeastDose::fresh(YeastKind::Instant, 2.0, 0.05)),
        foods,
        enzymes,
        bag: StandardBag::Sandwich.bag(),
        card: Card { length_mm: 152.0, width_mm: 102.0, grams: 3.0 },
        lying,
        room_celsius: 22.0,
        pressure_pa: 101_325.0,
        trapped_air_ml: 10.0,
        wet_before_zero_min: 2.0,
    }
}

fn food(composition: Composition, grams: f64) -> Vec<Portion> {
    vec![Portion { composition, grams, dosing_sd: 0.1, content_sd: 0.1, grain: None }]
}

fn sugar(grams: f64) -> Vec<Portion> {
    food(Composition { sucrose: 100.0, ..Composition::default() }, grams)
}

/// A bag over time; nothing where it cannot be.
fn followed(look: u8, name: &str, setup: &Setup, shown: fn(&Moment) -> f64) -> LawLine {
    let moments = nominal(setup, 40).map(|run| run.moments).unwrap_or_default();
    LawLine {
        look: Look(look),
        name: name.to_owned(),
        computed: moments.iter().map(|moment| (moment.minute, shown(moment))).collect(),
        measured: Vec::new(),
    }
}

fn warmth() -> Picture {
    let of = |look, name, lying| {
        followed(look, name, &bag(lying, sugar(2.0), Vec::new()), |moment| moment.celsius)
    };
    drawn(
        "warmth",
        "Temperature of a sandwich bag with 50 mL of water",
        axis("time", "min", 0.0, 40.0),
        axis("temperature", "°C", 20.0, 40.0),
        &[
            of(1, "on the bench", Lying::Bench),
            of(2, "under a towel", Lying::Towel),
            of(3, "in a tray of 40 °C", Lying::WarmTray { celsius: 40.0 }),
        ],
    )
}

fn hour() -> Picture {
    let of = |look, name, setup: Setup| followed(look, name, &setup, |moment| moment.gas_ml);
    let sandwich = |foods| bag(Lying::Bench, foods, Vec::new());
    drawn(
        "hour",
        "Gas of bags with more and less sugar",
        axis("time", "min", 0.0, 40.0),
        axis("gas", "mL", 0.0, 200.0),
        &[
            of(0, "no food", sandwich(Vec::new())),
            of(1, "0.3 g sugar", sandwich(sugar(0.3))),
            of(2, "2 g sugar", sandwich(sugar(2.0))),
        ],
    )
}

fn held_back() -> Picture {
    let flakes = Composition { water: 6.6, cooked_starch: 70.6, ..Composition::default() };
    let enzyme = EnzymeDose {
        kind: EnzymeKind::Glucoamylase,
        units: 30.0,
        activity_sd: 0.2,
        dosing_sd: 0.05,
        carrier: None,
        stock_age_min: 0.0,
        shaken: true,
    };
    let setup = bag(Lying::WarmTray { celsius: 40.0 }, food(flakes, 4.0), vec![enzyme]);
    let controls = shares(&setup, &Parameters::median(), 40).unwrap_or_default();
    let of = |look, name: &str, thing| LawLine {
        look: Look(look),
        name: name.to_owned(),
        computed: controls
            .iter()
            .map(|control| (f64::from(control.minute), control.pace.of(thing)))
            .collect(),
        measured: Vec::new(),
    };
    drawn(
        "held-back",
        "What holds back a bag of cooked flakes with an enzyme",
        axis("time", "min", 0.0, 40.0),
        axis("share of control over the pace", "1", -0.2, 1.0),
        &[
            of(1, "waking up", Thing::Waking),
            of(2, "yeast", Thing::Yeast),
            of(3, "food", Thing::Food),
            of(4, "enzyme", Thing::Enzyme),
            of(5, "coming out", Thing::Release),
        ],
    )
}

//! What yeast takes in, and what it has to get ready for.

use super::{Picture, axis, drawn, line};
use crate::chart::{LawLine, Look};
use barm_science::enzyme::starch::saturation;
use barm_science::yeast::repression::{
    GALACTOSE_INDUCTION, REPRESSION, galactose_at_work, made_per_min,
};
use barm_science::yeast::sugars::{
    FRUCTOSE_HALF_RATIO, FRUCTOSE_RATE, GALACTOSE_RATE, HALF_GALACTOSE, HALF_GLUCOSE,
    HALF_MALTOSE, MALTOSE_INDUCTION, MALTOSE_RATE, MALTOTRIOSE_RATE, maltotriose_full, uptake,
};

pub(super) fn pictures() -> Vec<Picture> {
    vec![sugars(), ready()]
}

fn sugars() -> Picture {
    let range = (0.0, 10.0);
    let half = HALF_GLUCOSE.value;
    let of_fructose = half * FRUCTOSE_HALF_RATIO.value;
    let maltotriose = MALTOSE_RATE.value * MALTOTRIOSE_RATE.value;
    drawn(
        "yeast-sugars",
        "Pace of yeast on one sugar alone, once it is used to it",
        axis("sugar", "g/L", 0.0, 10.0),
        axis("pace over that on much glucose", "1", 0.0, 1.0),
        &[
            line(1, "glucose", range, |g| uptake(g, 0.0, half, of_fructose).glucose),
            line(2, "fructose", range, |f| {
                FRUCTOSE_RATE.value * uptake(0.0, f, half, of_fructose).fructose
            }),
            line(3, "maltose", range, |m| {
                MALTOSE_RATE.value * saturation(m, HALF_MALTOSE.value)
            }),
            line(4, "galactose", range, |ga| {
                GALACTOSE_RATE.value * saturation(ga, HALF_GALACTOSE.value)
            }),
            line(5, "maltotriose", range, move |m3| {
                maltotriose * maltotriose_full(m3, 0.0, HALF_MALTOSE.value)
            }),
        ],
    )
}

/// Glucose comes back then (min).
const GLUCOSE_BACK: f64 = 180.0;

/// Share of an uptake that is made, minute by minute: called for at first, given up from
/// [`GLUCOSE_BACK`] on. Both stretches are solved by many small steps.
fn made(make_min: f64) -> Vec<(f64, f64)> {
    const STEPS: u32 = 20;
    let mut now = 0.0;
    let mut all = vec![(0.0, 0.0)];
    for minute in 0..300 {
        let from = f64::from(minute);
        let (call, busy) = if from < GLUCOSE_BACK { (1.0, 0.0) } else { (0.0, 1.0) };
        for _ in 0..STEPS {
            let step = made_per_min(now, call, busy, make_min, REPRESSION.value);
            now += step / f64::from(STEPS);
        }
        all.push((from + 1.0, now));
    }
    all
}

fn ready() -> Picture {
    let of = |look, name: &str, make_min: f64, at_work: fn(f64) -> f64| LawLine {
        look: Look(look),
        name: name.to_owned(),
        computed: made(make_min).into_iter().map(|(t, made)| (t, at_work(made))).collect(),
        measured: Vec::new(),
    };
    drawn(
        "yeast-gets-ready",
        "Yeast that gets ready for maltose and galactose, and gives it up when glucose comes back",
        axis("time; glucose is back from 180 on", "min", 0.0, 300.0),
        axis("pace over that when it is used to it", "1", 0.0, 1.0),
        &[
            of(1, "maltose", MALTOSE_INDUCTION.value, |made| made),
            of(2, "galactose", GALACTOSE_INDUCTION.value, galactose_at_work),
        ],
    )
}

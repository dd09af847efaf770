//! What a day's readings teach.

use super::pilot::{Changed, changed};
use super::real;
use barm_domain::result::taught::{DayTaught, Looks, UnlikeBag};
use barm_domain::words::Voice;
use serde::Serialize;

/// All that they teach.
#[derive(Serialize)]
pub(super) struct Day<'a> {
    bags: usize,
    readings: usize,
    changes: Vec<Changed<'a>>,
    unmoved: &'a [String],
    noise: Option<f64>,
    look_at: Vec<LookAt<'a>>,
}

#[derive(Serialize)]
struct LookAt<'a> {
    bag: &'a str,
    treatment: &'a str,
    chance: Option<f64>,
    looks: &'static str,
    says: String,
}

pub(super) fn day(taught: &DayTaught, voice: Voice) -> Day<'_> {
    Day {
        bags: taught.bags,
        readings: taught.readings,
        changes: taught.changes.iter().map(changed).collect(),
        unmoved: &taught.unmoved,
        noise: real(taught.noise),
        look_at: taught.unlike.iter().map(|one| look_at(one, voice)).collect(),
    }
}

fn look_at(one: &UnlikeBag, voice: Voice) -> LookAt<'_> {
    LookAt {
        bag: &one.bag.code,
        treatment: &one.bag.treatment,
        chance: real(one.chance),
        looks: match one.looks {
            Looks::FallsBehind => "falls-behind",
            Looks::Low => "low",
            Looks::High => "high",
        },
        says: voice.day_asks(one),
    }
}

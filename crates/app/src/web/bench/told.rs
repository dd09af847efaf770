//! What a device is told, as JSON: the shapes that `bench-kinds.js` describes.

use super::opened::drawn;
use crate::desk::Catalog;
use crate::desk::contents::Dry;
use crate::desk::room::Kind;
use crate::desk::room::bench::{Bench, OwnBag, OwnHeight, Reader};
use crate::desk::room::opened::Opened;
use barm_domain::plan::Lies;
use barm_domain::record::{Key, Lent, Odd, older_version};
use jiff::Timestamp;
use serde_json::{Value, json};

/// A group's page.
pub(super) fn told(bench: &Bench, now: Timestamp, speed: f64) -> Value {
    let hours = &bench.hours;
    let stopped = hours.stopped.iter().map(|(from, to)| json!([ms(*from), to.map(ms)]));
    let guess = bench.guess.as_ref().map(|(at, expects)| {
        let expects = expects.iter().map(|(code, mm)| json!([code.to_string(), mm]));
        json!({ "at_ms": ms(*at), "expects": expects.collect::<Value>() })
    });
    json!({
        "now_ms": ms(now),
        "speed": speed,
        "seat": bench.seat,
        "kind": match bench.kind {
            Kind::Real => "real",
            Kind::Rehearsal => "rehearsal",
            Kind::Invented => "invented",
        },
        "period": bench.period,
        "group": bench.group,
        "label": bench.label,
        "inquiry": bench.inquiry.word(),
        "plan": bench.version,
        "older": older(bench),
        "stand_in": bench.stand_in.map(|lent| match lent {
            Lent::ClassData => "class",
            Lent::Simulated { .. } => "simulated",
        }),
        "opened": bench.opened.as_ref().map(|opened| {
            let drawn = |words: &'static Catalog| {
                (words.code().to_owned(), Value::from(drawn(opened, words).into_string()))
            };
            Catalog::all().map(drawn).collect::<Value>()
        }),
        "clock": {
            "began_ms": hours.began.map(ms),
            "ended_ms": hours.ended.map(ms),
            "stopped": stopped.collect::<Value>(),
            "start_s": hours.start_s,
            "clearing_s": hours.clearing_s,
            "minutes": hours.minutes,
        },
        "guess": guess,
        "bags": bench.bags.iter().map(bag).collect::<Value>(),
        "keys": bench.keys.iter().map(ToString::to_string).collect::<Value>(),
        "refused": bench.refused.iter().map(ToString::to_string).collect::<Value>(),
    })
}

/// The version of the plan that stands behind a name on the page, as in `Honey (plan 2)`.
fn older(bench: &Bench) -> Option<u32> {
    let own = bench.bags.iter().map(|bag| bag.treatment.as_str());
    let shown = bench.opened.iter().flat_map(Opened::treatments);
    own.chain(shown).find_map(older_version)
}

fn bag(bag: &OwnBag) -> Value {
    let dry = bag
        .dry
        .iter()
        .map(|(amount, thing)| json!({ "amount": amount, "thing": named(thing) }));
    json!({
        "code": bag.code.to_string(),
        "letter": bag.code.letter().to_string(),
        "treatment": by_language(|words| words.treatment(&bag.treatment)),
        "look": bag.look,
        "hollow": bag.hollow,
        "full_mm": bag.full_mm,
        "dry": dry.collect::<Value>(),
        "water": { "amount": bag.water, "degrees": bag.degrees },
        "lies": match bag.lies {
            Lies::Bench => "bench",
            Lies::Towel => "towel",
            Lies::WarmTray(_) => "tray",
        },
        "asks": bag.asks,
        "sealed": bag.sealed,
        "zero": bag.zero.as_ref().map(height),
        "other_zeros": bag.other_zeros.iter().map(height).collect::<Value>(),
        "readings": bag.readings.iter().map(height).collect::<Value>(),
        "odd": bag.odd.iter().map(odd).collect::<Value>(),
        "poured": bag.poured_celsius,
        "vented": bag.vented,
        "lost": bag.lost,
    })
}

/// What a thing is called, by language: a page changes its language while the server is away.
fn named(thing: &Dry) -> Value {
    by_language(|words| thing.name(words))
}

fn by_language(name: impl Fn(&Catalog) -> String) -> Value {
    Catalog::all().map(|words| (words.code().to_owned(), Value::from(name(words)))).collect()
}

fn odd((at, odd, key): &(Timestamp, Odd, Option<Key>)) -> Value {
    json!([ms(*at), odd.word(), key.map(|key| key.to_string())])
}

fn height(height: &OwnHeight) -> Value {
    json!({
        "key": height.key.to_string(),
        "at_ms": ms(height.at),
        "planned": height.planned,
        "mm": height.mm,
        "who": match height.who {
            Reader::Group => "group",
            Reader::Teacher => "teacher",
            Reader::Paper => "paper",
        },
        "was": height.was,
        "confirmed": height.confirmed,
        "rival": height.rival,
    })
}

fn ms(at: Timestamp) -> i64 {
    at.as_millisecond()
}

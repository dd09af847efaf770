//! Between two classes: what to have ready, and what is left to do.

use crate::desk::room::Scene;
use crate::desk::room::benches::local;
use crate::desk::{Wording, say};
use barm_domain::plan::Period;
use barm_domain::prep::{Item, Prep, prep};

/// The list between two classes.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Changeover {
    /// Six things to do, in order.
    pub(crate) ticks: Vec<String>,
    /// The next class of the day: its name and its bell.
    pub(crate) next: Option<(String, String)>,
    /// What it needs.
    pub(crate) ready: Vec<String>,
}

/// The list after the bell of a period.
pub(super) fn changeover(scene: &Scene<'_>, w: Wording, period: &Period) -> Changeover {
    let after = scene
        .plan
        .periods
        .iter()
        .filter(|other| other.day == period.day && other.start > period.start);
    let next = after.min_by_key(|other| other.start);
    let jug = next.and_then(|next| jug_words(scene, w, next));
    let ticks = vec![
        say!(w, "change-bags"),
        say!(w, "change-trays"),
        say!(w, "change-wipe"),
        jug.unwrap_or_else(|| say!(w, "change-jug")),
        say!(w, "change-paper"),
        match next {
            Some(next) => say!(w, "change-next", period = &next.name),
            None => say!(w, "change-last"),
        },
    ];
    Changeover {
        ticks,
        next: next.map(|next| (next.name.clone(), next.start.strftime("%-I:%M").to_string())),
        ready: next.map(|next| ready(scene, w, next)).unwrap_or_default(),
    }
}

/// What a period needs before its bell.
pub(super) fn ready(scene: &Scene<'_>, w: Wording, period: &Period) -> Vec<String> {
    let bags = scene.plan.bags.iter().filter(|bag| bag.period == period.name).count();
    let mut ready = vec![say!(w, "ready-trays", trays = period.groups, bags = bags)];
    ready.extend(jug_words(scene, w, period));
    if let Ok(prep) = prep(scene.newest) {
        ready.extend(stocks(&prep, w, period));
    }
    ready.push(say!(w, "ready-codes"));
    if scene.plan.equipment.meters.is_some_and(|count| count > 0) {
        ready.push(say!(w, "ready-meter"));
    }
    ready
}

fn jug_words(scene: &Scene<'_>, w: Wording, period: &Period) -> Option<String> {
    let prep = prep(scene.newest).ok()?;
    let own = prep.periods.iter().find(|own| own.period == period.name)?;
    let jugs: Vec<String> = own
        .jugs
        .iter()
        .map(|jug| {
            let at = jug.mix_at.strftime("%-I:%M").to_string();
            let (makes, celsius) = (jug.makes.to_string(), format!("{:.0}", jug.mixed_celsius));
            say!(w, "ready-jug", makes = makes, celsius = celsius, at = at)
        })
        .collect();
    let says = || say!(w, "ready-jugs", count = jugs.len(), jugs = jugs.join("; "));
    (!jugs.is_empty()).then(says)
}

fn stocks(prep: &Prep, w: Wording, period: &Period) -> Vec<String> {
    let own = prep
        .stocks
        .iter()
        .filter(|stock| stock.day == period.day && stock.periods.contains(&period.name));
    own.map(|stock| {
        let name = Item::Solution(stock.product).name();
        say!(w, "ready-stock", name = name, until = stock.use_by.strftime("%-I:%M").to_string())
    })
    .collect()
}

/// What each jug showed last.
pub(super) fn jugs(scene: &Scene<'_>, w: Wording, period: &Period) -> Vec<(u32, String)> {
    let day = scene.ledger.standing().periods.get(&period.name);
    let mut jugs: Vec<(u32, String)> = Vec::new();
    for (at, jug, celsius) in day.map(|day| day.jugs.as_slice()).unwrap_or_default() {
        let (celsius, at) = (format!("{celsius:.1}"), local(scene, period, *at));
        let says = say!(w, "run-jug-says", jug = jug.to_string(), celsius = celsius, at = at);
        match jugs.iter_mut().find(|(known, _)| known == jug) {
            Some((_, known)) => *known = says,
            None => jugs.push((*jug, says)),
        }
    }
    jugs.sort_unstable();
    jugs
}

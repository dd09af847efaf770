//! Between two classes: what to have ready, and what is left to do.

use super::words::counted;
use crate::desk::room::Scene;
use crate::desk::room::benches::local;
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
pub(super) fn changeover(scene: &Scene<'_>, period: &Period) -> Changeover {
    let after = scene
        .plan
        .periods
        .iter()
        .filter(|other| other.day == period.day && other.start > period.start);
    let next = after.min_by_key(|other| other.start);
    let jug = next.and_then(|next| jug_words(scene, next));
    let ticks = vec![
        "Bags of this class are open in the tub by the sink.".to_owned(),
        "Trays are swapped, whole trays and not single things.".to_owned(),
        "One wet cloth a bench: benches are wiped and dry, the floor too.".to_owned(),
        jug.unwrap_or_else(|| "The jug is emptied and rinsed.".to_owned()),
        "Late paper sheets lie in this period's folder.".to_owned(),
        match next {
            Some(next) => format!("The wall and the codes show period {}.", next.name),
            None => "Devices are collected, and a backup lies on a stick.".to_owned(),
        },
    ];
    Changeover {
        ticks,
        next: next.map(|next| (next.name.clone(), next.start.strftime("%-I:%M").to_string())),
        ready: next.map(|next| ready(scene, next)).unwrap_or_default(),
    }
}

/// What a period needs before its bell.
pub(super) fn ready(scene: &Scene<'_>, period: &Period) -> Vec<String> {
    let bags = scene.plan.bags.iter().filter(|bag| bag.period == period.name).count();
    let mut ready = vec![format!(
        "{} with {} in all, labels on, goggles and rulers beside them",
        counted(period.groups as usize, "tray", "trays"),
        counted(bags, "empty bag", "empty bags")
    )];
    ready.extend(jug_words(scene, period));
    if let Ok(prep) = prep(scene.plan) {
        ready.extend(stocks(&prep, period));
    }
    ready.push("Group codes on the trays, the wall page on the projector".to_owned());
    if scene.plan.equipment.meters.is_some_and(|count| count > 0) {
        ready.push("The meter switched on, with a fresh tube; nobody blows into it".to_owned());
    }
    ready
}

fn jug_words(scene: &Scene<'_>, period: &Period) -> Option<String> {
    let prep = prep(scene.plan).ok()?;
    let own = prep.periods.iter().find(|own| own.period == period.name)?;
    let jugs: Vec<String> = own
        .jugs
        .iter()
        .map(|jug| {
            let at = jug.mix_at.strftime("%-I:%M");
            format!("{} at {:.0} °C, mixed at {at}", jug.makes, jug.mixed_celsius)
        })
        .collect();
    let jug = if jugs.len() == 1 { "Jug" } else { "Jugs" };
    (!jugs.is_empty()).then(|| format!("{jug}: {}", jugs.join("; ")))
}

fn stocks(prep: &Prep, period: &Period) -> Vec<String> {
    let own = prep
        .stocks
        .iter()
        .filter(|stock| stock.day == period.day && stock.periods.contains(&period.name));
    own.map(|stock| {
        format!(
            "{}, good until {}; shake it",
            Item::Solution(stock.product).name(),
            stock.use_by.strftime("%-I:%M")
        )
    })
    .collect()
}

/// What each jug showed last.
pub(super) fn jugs(scene: &Scene<'_>, period: &Period) -> Vec<(u32, String)> {
    let day = scene.ledger.standing().periods.get(&period.name);
    let mut jugs: Vec<(u32, String)> = Vec::new();
    for (at, jug, celsius) in day.map(|day| day.jugs.as_slice()).unwrap_or_default() {
        let says = format!("Jug {jug}: {celsius:.1} °C at {}", local(scene, period, *at));
        match jugs.iter_mut().find(|(known, _)| known == jug) {
            Some((_, known)) => *known = says,
            None => jugs.push((*jug, says)),
        }
    }
    jugs.sort_unstable();
    jugs
}

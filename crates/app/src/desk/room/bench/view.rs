//! Makes a group's page from the record.

use super::{Bench, Hours, OwnBag, OwnHeight, Reader};
use crate::desk::contents::contents;
use crate::desk::paper::look;
use crate::desk::room::claims::HomeBag;
use crate::desk::room::opened::opened;
use crate::desk::room::{Kind, Scene};
use barm_domain::amount::show::both_degrees;
use barm_domain::code::BagCode;
use barm_domain::plan::{Inquiry, Plan, PlannedBag};
use barm_domain::record::{Bag, Height, Home, Key, Odd, Subject, Tapped, Who};
use barm_domain::result::full_height_mm;
use barm_domain::schedule::schedule;
use jiff::Timestamp;
use std::collections::BTreeSet;

/// A group's page; nothing if the plan has no such period.
pub(crate) fn bench_view(
    scene: &Scene<'_>,
    period: &str,
    group: u32,
    now: Timestamp,
) -> Option<Bench> {
    let plan = scene.plan;
    let of_plan = plan.period(period)?;
    let standing = scene.standing();
    let day = standing.periods.get(period);
    let schedule = schedule(plan, of_plan, day);
    let setting = plan
        .group_settings
        .iter()
        .find(|setting| setting.period == period && setting.group == group);
    let own = standing.groups.get(&(period.to_owned(), group));
    let inquiry = plan.inquiry_of(of_plan, group);
    let mut bags = own_bags(scene, period, group);
    // Where the method is given, the card has its steps; the question is the group's own only
    // where the method is its own too.
    if !matches!(inquiry, Inquiry::Guided | Inquiry::Open) {
        bags.iter_mut().for_each(|bag| bag.asks.clear());
    }
    let keys = keys(scene, period, group, &bags);
    let known: BTreeSet<Key> = keys.iter().copied().collect();
    let refused = standing.refused.iter().map(|(key, _)| *key);
    let began = day.and_then(|day| day.began);
    let invented = plan.invented && scene.kind == Kind::Real;
    Some(Bench {
        seat: format!("{}/{period}/{group}", scene.investigation),
        kind: if invented { Kind::Invented } else { scene.kind },
        period: period.to_owned(),
        group,
        label: setting.and_then(|setting| setting.label.clone()),
        inquiry,
        version: scene.version,
        stand_in: own.and_then(|own| own.stand_in).map(|stand_in| stand_in.lent),
        opened: opened(scene, period, group, now),
        hours: Hours {
            began,
            ended: day.and_then(|day| day.ended),
            stopped: day.map(|day| day.stopped.clone()).unwrap_or_default(),
            start_s: schedule.start_of(group).map(|minute| 60.0 * minute),
            clearing_s: 60.0 * schedule.clearing_min().min(of_plan.length_min),
            minutes: schedule.minutes,
        },
        guess: own.and_then(|own| own.guess.as_ref()).map(|g| (g.at, g.expects.clone())),
        bags,
        keys,
        refused: refused.filter(|key| known.contains(key)).collect(),
    })
}

/// Whether a bag is a group's own, by its label.
pub(super) fn is_own(scene: &Scene<'_>, code: BagCode, period: &str, group: u32) -> bool {
    let home = scene.ledger.known().bags.get(&code);
    home.is_some_and(|Home { period: its, group: number }| its == period && *number == group)
}

/// The treatments of a group's bags, as their labels say.
pub(in crate::desk::room) fn own_labels(
    scene: &Scene<'_>,
    period: &str,
    group: u32,
) -> BTreeSet<String> {
    let places = own_places(scene, period, group);
    places.into_iter().map(|(_, planned)| planned.treatment.clone()).collect()
}

/// A group's own bags as their labels say, by bench place.
pub(in crate::desk::room) fn own_rises(
    scene: &Scene<'_>,
    period: &str,
    group: u32,
) -> Vec<HomeBag> {
    let own = own_places(scene, period, group).into_iter();
    let bag = |(code, planned): (BagCode, &PlannedBag)| HomeBag {
        treatment: planned.treatment.clone(),
        look: look(scene.plan, &planned.treatment),
        rises: scene.standing().bags.get(&code).map(Bag::rises).unwrap_or_default(),
    };
    own.map(bag).collect()
}

/// The bags of a group by bench place.
fn own_places<'a>(
    scene: &Scene<'a>,
    period: &str,
    group: u32,
) -> Vec<(BagCode, &'a PlannedBag)> {
    let planned = scene.plan.bags.iter();
    let planned = planned.filter(|bag| bag.period == period && bag.group == group);
    let mut own: Vec<(BagCode, &PlannedBag)> =
        planned.filter_map(|bag| Some((bag.code.parse().ok()?, bag))).collect();
    own.sort_by_key(|(code, bag)| (bag.place, *code));
    own
}

fn own_bags(scene: &Scene<'_>, period: &str, group: u32) -> Vec<OwnBag> {
    let own = own_places(scene, period, group);
    let mut seen: Vec<&str> = Vec::new();
    let mut bags = Vec::new();
    for (code, planned) in own {
        let hollow = seen.contains(&planned.treatment.as_str());
        seen.push(&planned.treatment);
        bags.extend(own_bag(scene, code, scene.plan, planned, hollow, (period, group)));
    }
    bags
}

fn own_bag(
    scene: &Scene<'_>,
    code: BagCode,
    plan: &Plan,
    planned: &PlannedBag,
    hollow: bool,
    home: (&str, u32),
) -> Option<OwnBag> {
    let recipe = plan.recipe(plan.treatment(&planned.treatment)?);
    let nothing = Bag::default();
    let bag = scene.standing().bags.get(&code).unwrap_or(&nothing);
    let asks = plan.questions.iter().find(|question| question.id == planned.question);
    Some(OwnBag {
        code,
        treatment: planned.treatment.clone(),
        look: look(plan, &planned.treatment).0,
        hollow,
        full_mm: full_height_mm(plan, planned),
        dry: contents(plan, &recipe)
            .into_iter()
            .map(|content| (content.amount.written, content.thing))
            .collect(),
        water: recipe.water.written.clone(),
        degrees: both_degrees(recipe.water_celsius),
        lies: recipe.lies,
        asks: asks.map(|question| question.asks.clone()).unwrap_or_default(),
        sealed: bag.sealed.is_some(),
        zero: bag.zero.as_ref().map(own_height),
        other_zeros: bag.other_zeros.iter().map(own_height).collect(),
        readings: bag.readings.iter().map(own_height).collect(),
        odd: bag.odd.iter().map(|tap| odd(tap, home)).collect(),
        poured_celsius: bag.made.as_ref().and_then(|made| made.water_celsius),
        vented: bag.vented.is_some(),
        lost: bag.lost.is_some(),
    })
}

/// A tap, which a group may take back if it is its own.
fn odd(tap: &Tapped, (period, group): (&str, u32)) -> (Timestamp, Odd, Option<Key>) {
    let own = matches!(&tap.who, Who::Group { period: of, group: number } if **of == *period && *number == group);
    (tap.at, tap.odd, own.then_some(tap.key))
}

fn own_height(height: &Height) -> OwnHeight {
    OwnHeight {
        key: height.key,
        at: height.measured,
        planned: height.planned,
        mm: height.height_mm,
        who: match height.who {
            Who::Group { .. } => Reader::Group,
            Who::Teacher | Who::Aide | Who::Program => Reader::Teacher,
            Who::Import => Reader::Paper,
        },
        was: height.mended.iter().map(|mended| mended.height_mm).collect(),
        confirmed: height.is_confirmed(),
        rival: height.rival,
    }
}

/// Keys of what the group itself has entered.
fn keys(scene: &Scene<'_>, period: &str, group: u32, bags: &[OwnBag]) -> Vec<Key> {
    let who = Who::Group { period: period.into(), group };
    let own = Subject::Group { period: period.to_owned(), group };
    let subjects = bags.iter().map(|bag| Subject::Bag(bag.code)).chain([own]);
    let mut keys = Vec::new();
    for subject in subjects {
        let entries = scene.ledger.entries_of(&subject).iter();
        keys.extend(entries.filter(|entry| entry.who == who).map(|entry| entry.key));
    }
    keys
}

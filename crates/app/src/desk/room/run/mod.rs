//! The teacher's page for one period: what needs her, what is read now, what comes next.
//!
//! The only live page that shows the forecast; it is for the teacher alone.

mod act;
mod benches;
mod call;
mod changeover;
mod done;
mod faces;
mod made;
mod meter;
mod needs;
mod one_bag;
mod replan;
mod roles;
mod water;

#[cfg(test)]
mod tests;

pub(crate) use act::{Act, ActError, Fields};
pub(crate) use benches::{Bench, Expects, RunBag, When};
pub(crate) use call::Call;
pub(crate) use changeover::Changeover;
pub(crate) use done::Done;
pub(crate) use faces::FaceRow;
pub(crate) use meter::MeterLine;
pub(crate) use needs::{Need, NeedTag, Offer, doubts};
pub(crate) use one_bag::{BagPage, bag_page, part_word};
pub(crate) use replan::Replan;
pub(crate) use roles::RoleRow;

use super::benches::{BenchBag, Benches};
use super::doubts::Doubt;
use super::hour::{Hour, Stage};
use super::{Kind, Scene};
use crate::desk::{Wording, say};
use barm_domain::board::State;
use barm_domain::record::{Key, Odd};
use barm_domain::slip::Slip;
use jiff::Timestamp;

/// What the page shows.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct RunView {
    /// Number of the investigation.
    pub(crate) investigation: i64,
    /// Whether it happens in a class, in a rehearsal, or is made up.
    pub(crate) kind: Kind,
    /// The clock.
    pub(crate) hour: Hour,
    /// Where the period stands, in a line.
    pub(crate) summary: String,
    /// What was done last, for ten seconds.
    pub(crate) done: Option<Done>,
    /// The one sentence to the whole class, if there is one.
    pub(crate) call: Option<Call>,
    /// What needs the teacher, the most pressing first.
    pub(crate) needs: Vec<Need>,
    /// Benches with bags to be read now.
    pub(crate) now: Vec<Bench>,
    /// The others, by time.
    pub(crate) next: Vec<Bench>,
    /// What going on would change, while the clocks stand.
    pub(crate) replan: Option<Replan>,
    /// Before the bell: what to have ready.
    pub(crate) ready: Vec<String>,
    /// Students by group.
    pub(crate) roles: Vec<RoleRow>,
    /// The breath meter's line, if the class has one.
    pub(crate) meter: Option<MeterLine>,
    /// What each jug showed last: jug and sentence.
    pub(crate) jugs: Vec<(u32, String)>,
    /// What is open, and to whom.
    pub(crate) faces: Vec<FaceRow>,
    /// What is left to do before the next class.
    pub(crate) changeover: Option<Changeover>,
    /// One line about the lots that forecasts go by, if a pilot tried any.
    pub(crate) by_pilot: Option<String>,
}

/// The period that it is time for: the one that runs, else the next by the plan, else the last.
pub(crate) fn the_period(scene: &Scene<'_>, now: Timestamp) -> Option<String> {
    let standing = scene.standing();
    let runs = standing
        .periods
        .iter()
        .filter(|(_, period)| period.began.is_some() && period.ended.is_none())
        .max_by_key(|(_, period)| period.began);
    if let Some((name, _)) = runs.filter(|(name, _)| scene.plan.period(name).is_some()) {
        return Some(name.clone());
    }
    let over = |name: &str| standing.periods.get(name).is_some_and(|one| one.ended.is_some());
    let mut open = scene.plan.periods.iter().filter(|period| !over(&period.name));
    let next = open.find(|period| {
        let zone = super::hour::zone(scene, period);
        let day = scene.plan.day(&period.day);
        let start =
            day.and_then(|day| day.date.to_datetime(period.start).to_zoned_datetime(zone).ok());
        let end =
            start.map(|start| start.timestamp().as_second() as f64 + 60.0 * period.length_min);
        end.is_some_and(|end| end > now.as_second() as f64)
    });
    let all = &scene.plan.periods;
    let first_open = all.iter().find(|period| !over(&period.name));
    next.or(first_open).or(all.last()).map(|period| period.name.clone())
}

/// A moment as the clock in the room of a period shows it.
pub(crate) fn local_time(scene: &Scene<'_>, period: &str, at: Timestamp) -> String {
    let planned = scene.plan.period(period);
    planned.map_or_else(String::new, |planned| super::benches::local(scene, planned, at))
}

/// Every slip of a period that its page may show.
pub(crate) fn slips_shown(scene: &Scene<'_>, period: &str, now: Timestamp) -> Vec<Slip> {
    let Some(planned) = scene.plan.period(period) else { return Vec::new() };
    let benches = Benches::of(scene, planned, now);
    let expects = Expects::of(scene, &benches);
    let seen = needs::seen(scene, planned, &benches, &expects);
    seen.into_iter().flat_map(|(_, _, slips)| slips).collect()
}

/// The page of a period; nothing if the plan has no such period. `did` is the entry made last.
pub(crate) fn run_view(
    scene: &Scene<'_>,
    w: Wording,
    period: &str,
    did: Option<Key>,
    now: Timestamp,
) -> Option<RunView> {
    let planned = scene.plan.period(period)?;
    let hour = Hour::of(scene, period, now)?;
    let benches = Benches::of(scene, planned, now);
    let expects = Expects::of(scene, &benches);
    let call = call::call(scene, w, planned, &benches);
    let mut needs = needs::needs(scene, w, planned, &hour, &benches, &expects);
    if call.is_some() {
        // The call says so for all of them at once.
        needs.retain(|need| need.tag != NeedTag::Doubt(Doubt::FarOff));
    }
    let (due, next) = benches::sorted(&hour, &benches, &expects, &needs);
    let closing = matches!(hour.stage, Stage::PastBell | Stage::Over);
    Some(RunView {
        by_pilot: scene.by_pilot(),
        investigation: scene.investigation,
        kind: scene.kind,
        summary: summary(w, planned.groups, &benches, |group| {
            expects.stands_in(group).is_some()
        }),
        done: did.and_then(|did| done::done(scene, w, planned, did, now)),
        call,
        replan: replan::replan(scene, w, planned, &hour, &benches),
        ready: if hour.stage == Stage::Before {
            changeover::ready(scene, w, planned)
        } else {
            Vec::new()
        },
        roles: roles::roles(scene, w, planned),
        meter: meter::line(scene, planned, &benches),
        jugs: changeover::jugs(scene, w, planned),
        faces: faces::faces(scene, w, planned),
        changeover: closing.then(|| changeover::changeover(scene, w, planned)),
        needs,
        now: due,
        next,
        hour,
    })
}

/// "8 groups, 24 bags. 11 read, 6 due now, 1 late, 6 to come."
fn summary(
    w: Wording,
    groups: u32,
    benches: &Benches,
    is_lent: impl Fn(u32) -> bool,
) -> String {
    let bags = &benches.bags;
    let lent = bags.iter().filter(|bag| is_lent(bag.group)).count();
    let bags: Vec<&BenchBag> = bags.iter().filter(|bag| !is_lent(bag.group)).collect();
    let all = bags.len() + lent;
    let count = |of: fn(&State) -> bool| bags.iter().filter(|bag| of(&bag.state)).count();
    let due = count(|state| matches!(state, State::Due { .. }));
    let late = count(|state| matches!(state, State::Late { .. }));
    let unstarted = count(|state| matches!(state, State::NotStarted));
    let over = count(|state| {
        matches!(state, State::Done | State::Vented | State::Lost | State::SetAside)
    });
    let mut parts = Vec::new();
    let mut part = |count: usize, says: String| {
        if count > 0 {
            parts.push(says);
        }
    };
    part(due, say!(w, "sum-due", count = due));
    part(late, say!(w, "sum-late", count = late));
    part(unstarted, say!(w, "sum-unstarted", count = unstarted));
    let waiting = bags.len() - due - late - unstarted - over;
    part(waiting, say!(w, "sum-waiting", count = waiting));
    part(over, say!(w, "sum-done", count = over));
    part(lent, say!(w, "sum-lent", count = lent));
    if parts.is_empty() {
        return say!(w, "sum-bags", groups = groups, bags = all);
    }
    let parts = parts.join(", ");
    say!(w, "sum-bags-how", groups = groups, bags = all, parts = parts)
}

/// An odd thing in a word.
pub(crate) fn odd_word(w: Wording, odd: Odd) -> String {
    match odd {
        Odd::Leak => say!(w, "odd-leak"),
        Odd::Spill => say!(w, "odd-spill"),
        Odd::Foam => say!(w, "odd-foam"),
        Odd::Late => say!(w, "odd-late"),
        Odd::Bumped => say!(w, "odd-bumped"),
        Odd::NotRead => say!(w, "odd-not-read"),
    }
}

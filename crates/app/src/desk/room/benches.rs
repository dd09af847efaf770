//! The bags of a period by bench, as lists show them.

use super::Scene;
use super::hour::zone;
use crate::desk::paper::look;
use barm_documents::chart::Look;
use barm_domain::board::{Board, Line, State, board};
use barm_domain::code::BagCode;
use barm_domain::plan::Period;
use barm_domain::schedule::{Schedule, schedule};
use jiff::{SignedDuration, Timestamp};

/// What stands beside a bag in words, shape and color.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Tag {
    /// To be read more than a minute ago.
    Late,
    /// Something is wrong with it that somebody must look at.
    Doubtful,
    /// Set aside by a rule.
    SetAside,
    /// Vented.
    Vented,
    /// Lost.
    Lost,
}

/// One bag in a list; nothing here comes from the forecast.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct BenchBag {
    /// Its code.
    pub(crate) code: BagCode,
    /// What people say: group and letter, such as `5A`.
    pub(crate) name: String,
    /// Its group; 0 for the teacher's bench.
    pub(crate) group: u32,
    /// Its place on the bench, from 1.
    pub(crate) place: u32,
    /// What it is in truth.
    pub(crate) treatment: String,
    /// How that treatment looks on every page.
    pub(crate) look: Look,
    /// Where it stands on the board.
    pub(crate) state: State,
    /// The last height that counts (mm).
    pub(crate) height_mm: Option<f64>,
    /// Minutes after zero and rise above zero (mm).
    pub(crate) rises: Vec<(f64, f64)>,
    /// What stands beside it.
    pub(crate) tag: Option<Tag>,
}

/// The bags of a period, in the order of what is due next.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Benches {
    /// Bags in that order.
    pub(crate) bags: Vec<BenchBag>,
    /// The period's schedule.
    pub(crate) schedule: Schedule,
}

impl Benches {
    /// All bags of a period.
    pub(crate) fn of(scene: &Scene<'_>, period: &Period, now: Timestamp) -> Self {
        let standing = scene.ledger.standing();
        let schedule = schedule(scene.plan, period, standing.periods.get(&period.name));
        let Board { lines } = board(scene.plan, &schedule, standing, period, now);
        let bags = lines.into_iter().map(|line| bag(scene, line)).collect();
        Self { bags, schedule }
    }

    /// The bags of a group by bench place, as on its screen and its paper.
    pub(crate) fn of_group(&self, group: u32) -> Vec<&BenchBag> {
        let mut bags: Vec<&BenchBag> =
            self.bags.iter().filter(|bag| bag.group == group).collect();
        bags.sort_by_key(|bag| (bag.place, bag.code));
        bags
    }

    /// Groups in the order in which one of their bags is next, each once.
    pub(crate) fn groups(&self) -> Vec<u32> {
        let mut groups = Vec::new();
        for bag in &self.bags {
            if !groups.contains(&bag.group) {
                groups.push(bag.group);
            }
        }
        groups
    }
}

fn bag(scene: &Scene<'_>, line: Line) -> BenchBag {
    let treatment = scene.treatment_of(line.code).unwrap_or(&line.bag.treatment).to_owned();
    BenchBag {
        name: name(line.code),
        group: line.bag.group,
        place: line.bag.place,
        look: look(scene.plan, &treatment),
        treatment,
        tag: match line.state {
            State::Late { .. } => Some(Tag::Late),
            State::SetAside => Some(Tag::SetAside),
            State::Vented => Some(Tag::Vented),
            State::Lost => Some(Tag::Lost),
            _ => None,
        },
        code: line.code,
        state: line.state,
        height_mm: line.height_mm,
        rises: line.rises,
    }
}

/// What people say for a bag: group and letter; the teacher's bench is `T`.
pub(crate) fn name(code: BagCode) -> String {
    match code.group() {
        0 => format!("T{}", code.letter()),
        group => format!("{group}{}", code.letter()),
    }
}

/// What people say for a group.
pub(crate) fn group_name(group: u32) -> String {
    if group == 0 { "T".to_owned() } else { group.to_string() }
}

/// Seconds on the program's clock, `now` and so many seconds on.
pub(crate) fn after(now: Timestamp, seconds: f64) -> Timestamp {
    let milliseconds = (seconds.clamp(-1e7, 1e7) * 1000.0).round() as i64;
    now.checked_add(SignedDuration::from_millis(milliseconds)).unwrap_or(now)
}

/// A moment as the clock in the room shows it, such as `10:42`.
pub(crate) fn local(scene: &Scene<'_>, period: &Period, at: Timestamp) -> String {
    at.to_zoned_datetime(zone(scene, period)).strftime("%-I:%M").to_string()
}

/// A height without a needless fraction.
pub(crate) fn millimeters(mm: f64) -> String {
    // A nothing has no sign.
    let rounded = (mm * 10.0).round() / 10.0 + 0.0;
    if rounded.fract() == 0.0 { format!("{rounded:.0}") } else { format!("{rounded:.1}") }
}

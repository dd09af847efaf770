//! The clock of a period as pages show it: bell to bell, what is done when, and how far it is.

use super::Scene;
use barm_domain::plan::Period;
use barm_domain::record::PeriodStanding;
use barm_domain::schedule::{Phase, schedule};
use jiff::tz::TimeZone;
use jiff::{SignedDuration, Timestamp};

/// How far a period has come.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Stage {
    /// Its clock was not started.
    Before,
    /// The clocks run.
    Running,
    /// All clocks stand still since then.
    Standing(Timestamp),
    /// The bell has rung, and nobody has closed the period yet.
    PastBell,
    /// It was closed.
    Over,
}

/// The clock of one period at one time.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Hour {
    /// Name of the period.
    pub(crate) period: String,
    /// How far it has come.
    pub(crate) stage: Stage,
    /// When it is.
    pub(crate) now: Timestamp,
    /// When the bell ends it; nothing before the clock was started.
    pub(crate) bell_at: Option<Timestamp>,
    /// The first bell, local time.
    pub(crate) starts: String,
    /// The last bell, local time.
    pub(crate) bell: String,
    /// Now, local time.
    pub(crate) now_says: String,
    /// Minutes since the first bell; nothing before the clock was started.
    pub(crate) now_min: Option<f64>,
    /// Bell to bell (min).
    pub(crate) length_min: f64,
    /// What is done when.
    pub(crate) phases: Vec<Phase>,
    /// Minutes between readings.
    pub(crate) interval_min: f64,
}

impl Hour {
    /// The clock of a period; nothing if the plan has no such period.
    pub(crate) fn of(scene: &Scene<'_>, period: &str, now: Timestamp) -> Option<Self> {
        let planned = scene.plan.period(period)?;
        let standing = scene.ledger.standing().periods.get(period);
        let began = standing.and_then(|standing| standing.began);
        let zone = zone(scene, planned);
        let clock =
            |at: Timestamp| at.to_zoned_datetime(zone.clone()).strftime("%-I:%M").to_string();
        let seconds = (planned.length_min * 60.0).clamp(0.0, 86_400.0);
        let length = SignedDuration::from_secs(seconds as i64);
        let bell_at = began.and_then(|began| began.checked_add(length).ok());
        let bell_of_plan = planned.start.wrapping_add(length).strftime("%-I:%M").to_string();
        Some(Self {
            period: period.to_owned(),
            stage: stage(standing, bell_at, now),
            now,
            bell_at,
            starts: began.map_or_else(|| planned.start.strftime("%-I:%M").to_string(), clock),
            bell: bell_at.map_or(bell_of_plan, clock),
            now_says: clock(now),
            now_min: began.map(|began| now.duration_since(began).as_secs_f64() / 60.0),
            length_min: planned.length_min,
            phases: schedule(scene.plan, planned, standing).phases,
            interval_min: scene.plan.timing.interval_min,
        })
    }

    /// Whole seconds to the bell, never below 0; the whole period before its clock was started.
    pub(crate) fn left_s(&self) -> u64 {
        let left = self
            .bell_at
            .map_or(self.length_min * 60.0, |bell| bell.duration_since(self.now).as_secs_f64());
        left.max(0.0).round() as u64
    }

    /// Whether the wall still tells latecomers how to join: until the first tenth minute.
    pub(crate) fn is_early(&self) -> bool {
        self.stage == Stage::Before
            || self.now_min.is_some_and(|minute| minute < JOINING_MIN)
                && self.stage == Stage::Running
    }
}

/// Minutes in which the wall tells how to join (own rule: roles, goggles and the guess are done).
const JOINING_MIN: f64 = 10.0;

/// The time zone of a period's day; UTC where the plan names none that is known.
pub(crate) fn zone(scene: &Scene<'_>, period: &Period) -> TimeZone {
    let day = scene.plan.day(&period.day);
    day.and_then(|day| TimeZone::get(&day.zone).ok()).unwrap_or(TimeZone::UTC)
}

fn stage(
    standing: Option<&PeriodStanding>,
    bell_at: Option<Timestamp>,
    now: Timestamp,
) -> Stage {
    let Some(standing) = standing.filter(|standing| standing.began.is_some()) else {
        return Stage::Before;
    };
    if standing.ended.is_some() {
        return Stage::Over;
    }
    if let Some((since, None)) = standing.stopped.last() {
        return Stage::Standing(*since);
    }
    if bell_at.is_some_and(|bell| bell <= now) { Stage::PastBell } else { Stage::Running }
}

/// Minutes and seconds, such as `14:20`; hours do not stand apart.
pub(crate) fn clock(seconds: u64) -> String {
    format!("{}:{:02}", seconds / 60, seconds % 60)
}

//! Clocks that can stand still.

use crate::record::PeriodStanding;
use crate::schedule::Schedule;
use jiff::{SignedDuration, Timestamp};

/// A period's clock at one time.
#[derive(Debug, Clone, Copy)]
pub(super) struct Clock<'a> {
    pub(super) schedule: &'a Schedule,
    pub(super) day: &'a PeriodStanding,
    pub(super) now: Timestamp,
}

/// Minutes between two times without those in which all clocks stood still.
pub fn running_minutes(day: &PeriodStanding, from: Timestamp, to: Timestamp) -> f64 {
    running_s(&day.stopped, from, to) / 60.0
}

/// The same in seconds, in which whole seconds stay whole.
pub(crate) fn running_s(
    stopped: &[(Timestamp, Option<Timestamp>)],
    from: Timestamp,
    to: Timestamp,
) -> f64 {
    let stood = stopped.iter().map(|(start, end)| {
        let start = (*start).max(from);
        let end = end.unwrap_or(to).min(to);
        if end > start { seconds(start, end) } else { 0.0 }
    });
    seconds(from, to) - stood.sum::<f64>()
}

impl Clock<'_> {
    /// Whether all clocks stand still now.
    pub(super) fn stands(&self) -> bool {
        self.day
            .stopped
            .iter()
            .any(|(start, end)| *start <= self.now && end.is_none_or(|end| self.now < end))
    }

    /// Whether the period is over.
    pub(super) fn over(&self) -> bool {
        self.day.ended.is_some_and(|ended| ended <= self.now)
    }

    /// Seconds until a bag's own clock shows a planned minute; less than 0 after it.
    pub(super) fn falls_in_s(&self, zero: Timestamp, planned: u32) -> f64 {
        60.0 * f64::from(planned) - running_s(&self.day.stopped, zero, self.now)
    }

    /// Seconds until the planned start of a group; less than 0 after it.
    pub(super) fn starts_in_s(&self, group: u32) -> Option<f64> {
        let since = running_s(&self.day.stopped, self.day.began?, self.now);
        Some(60.0 * self.schedule.start_of(group)? - since)
    }

    /// Whether a planned minute of a bag falls before clearing starts, by the bell and not by the
    /// bag's clock: a drill takes readings away from the end.
    pub(super) fn is_before_clearing(&self, zero: Timestamp, planned: u32) -> bool {
        let Some(began) = self.day.began else { return true };
        // To the second, so that no rounding takes a reading away.
        let left = 60.0 * self.schedule.clearing_min() + 1.0;
        seconds(began, self.falls_at(zero, planned)) <= left
    }

    /// When a bag's own clock shows that many minutes, if it does not stand still again.
    fn falls_at(&self, zero: Timestamp, planned: u32) -> Timestamp {
        falls_at(&self.day.stopped, zero, planned, self.now)
    }
}

/// When the clock of a bag with that zero reading shows `planned` minutes. A stretch that has no
/// end yet is taken to end at `until`.
pub(crate) fn falls_at(
    stopped: &[(Timestamp, Option<Timestamp>)],
    zero: Timestamp,
    planned: u32,
    until: Timestamp,
) -> Timestamp {
    let span = SignedDuration::from_mins(i64::from(planned));
    let mut falls = zero.saturating_add(span).unwrap_or(Timestamp::MAX);
    for (start, end) in stopped {
        let end = end.unwrap_or(until);
        let start = (*start).max(zero);
        if start <= falls && end > start {
            falls = falls.saturating_add(end.duration_since(start)).unwrap_or(falls);
        }
    }
    falls
}

fn seconds(from: Timestamp, to: Timestamp) -> f64 {
    to.duration_since(from).as_secs_f64()
}

//! One period.

use super::Refusals;
use crate::record::{Entry, PeriodStanding, Refused, What};

/// The period, and what does not count.
pub(in crate::record) fn period(entries: &[Entry]) -> (PeriodStanding, Refusals) {
    let mut period = PeriodStanding::default();
    let mut refusals = Refusals::default();
    for entry in entries {
        let at = entry.measured;
        let stands = matches!(period.stopped.last(), Some((_, None)));
        match &entry.what {
            What::Began if period.began.is_some() && period.ended.is_none() => {
                refusals.add(entry, Refused::BegunAlready);
            }
            What::Began => {
                period.began = Some(at);
                period.ended = None;
            }
            What::Stopped if stands => refusals.add(entry, Refused::StandsAlready),
            What::Stopped => period.stopped.push((at, None)),
            What::WentOn if stands || period.ended.is_some() => {
                if let Some((_, end @ None)) = period.stopped.last_mut() {
                    *end = Some(at);
                }
                period.ended = None;
            }
            What::WentOn => refusals.add(entry, Refused::RunsAlready),
            What::LastReading { minute } => period.last_reading = Some(*minute),
            What::Jug { celsius, jug } if celsius.is_finite() => {
                period.jugs.push((at, *jug, *celsius));
            }
            What::Jug { .. } => refusals.add(entry, Refused::NotANumber),
            What::Blank { percent: Some(percent), .. } if !percent.is_finite() => {
                refusals.add(entry, Refused::NotANumber);
            }
            What::Blank { turn, percent } => {
                period.blanks.insert(*turn, *percent);
            }
            What::Ended => period.ended = Some(at),
            // A start that was a slip: as if nobody had rung the bell.
            What::TakenBack if period.began.is_some() => {
                period.began = None;
                period.ended = None;
                period.stopped.clear();
            }
            What::TakenBack => refusals.add(entry, Refused::NotBegun),
            _ => refusals.add(entry, Refused::WrongSubject),
        }
    }
    (period, refusals)
}

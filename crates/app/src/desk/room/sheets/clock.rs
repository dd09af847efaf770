//! Times of day on paper, on the day of a period.

use crate::desk::room::Scene;
use crate::desk::room::hour::zone;
use barm_documents::readings::clock_written;
use barm_domain::plan::Period;
use barm_domain::schedule::schedule;
use jiff::civil::Time;
use jiff::{SignedDuration, Timestamp};

const HALF_DAY: SignedDuration = SignedDuration::from_hours(12);

/// When a group takes its zero reading by the schedule: after the bell as it rang, or as it is
/// planned. Nothing if the day of the period is not in the plan.
pub(super) fn planned_zero(
    scene: &Scene<'_>,
    period: &Period,
    group: u32,
) -> Option<Timestamp> {
    let day = scene.standing().periods.get(&period.name);
    let bell = match day.and_then(|day| day.began) {
        Some(began) => began,
        None => local(scene, period, period.start)?,
    };
    let minutes = schedule(scene.plan, period, day).start_of(group).unwrap_or_default();
    let span = SignedDuration::from_secs((60.0 * minutes).clamp(0.0, 86_400.0).round() as i64);
    bell.checked_add(span).ok()
}

/// A time of day as it is typed; of morning and afternoon that which is nearer to `near`, where it
/// does not say. Nothing if it is no time of day.
pub(super) fn read(
    scene: &Scene<'_>,
    period: &Period,
    typed: &str,
    near: Timestamp,
) -> Option<Timestamp> {
    let (seconds, half_known) = clock_written(typed)?;
    at(scene, period, seconds, half_known, near)
}

/// So many seconds after midnight on the day of the period.
pub(super) fn at(
    scene: &Scene<'_>,
    period: &Period,
    seconds: f64,
    half_known: bool,
    near: Timestamp,
) -> Option<Timestamp> {
    let span = SignedDuration::from_secs(seconds.clamp(0.0, 86_399.0).round() as i64);
    let time = Time::midnight().checked_add(span).ok()?;
    let at = local(scene, period, time)?;
    if half_known {
        return Some(at);
    }
    let others = [Some(at), at.checked_add(HALF_DAY).ok(), at.checked_sub(HALF_DAY).ok()];
    others.into_iter().flatten().min_by_key(|one| one.duration_since(near).abs())
}

/// A moment as paper has it, such as `10:34`, with seconds where it does not fall on a minute.
pub(super) fn shown(scene: &Scene<'_>, period: &Period, at: Timestamp) -> String {
    let local = at.to_zoned_datetime(zone(scene, period));
    let form = if local.second() == 0 { "%-H:%M" } else { "%-H:%M:%S" };
    local.strftime(form).to_string()
}

fn local(scene: &Scene<'_>, period: &Period, time: Time) -> Option<Timestamp> {
    let day = scene.plan.day(&period.day)?;
    day.date
        .to_datetime(time)
        .to_zoned_datetime(zone(scene, period))
        .ok()
        .map(|at| at.timestamp())
}

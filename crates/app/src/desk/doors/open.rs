//! When the codes of a period work.

use crate::desk::room::{Kind, Scene};
use barm_domain::plan::{Period, Plan};
use jiff::tz::TimeZone;
use jiff::{SignedDuration, Timestamp};

/// Codes work from so long before the bell.
const BEFORE: SignedDuration = SignedDuration::from_mins(10);
/// Codes work until so long after it, for a bag that is read late.
const AFTER: SignedDuration = SignedDuration::from_mins(15);

/// When a period begins and ends by the plan.
pub(crate) fn bells(plan: &Plan, period: &Period) -> Option<(Timestamp, Timestamp)> {
    let day = plan.days.iter().find(|day| day.name == period.day)?;
    let zone = TimeZone::get(&day.zone).ok()?;
    let start = day.date.to_datetime(period.start).to_zoned_datetime(zone).ok()?.timestamp();
    let length = SignedDuration::try_from_secs_f64(period.length_min * 60.0).ok()?;
    Some((start, start.checked_add(length).ok()?))
}

/// Whether codes of pages work today: on the day of their period, and those of aides on every day
/// of the plan and the day before, when things are made ready. In a rehearsal and in what is made
/// up they work any day.
pub(super) fn pages_open(scene: &Scene<'_>, period: Option<&str>, now: Timestamp) -> bool {
    let plan = scene.plan;
    let period = period.and_then(|name| plan.periods.iter().find(|one| one.name == name));
    scene.made_up()
        || plan.days.iter().any(|day| {
            let Ok(zone) = TimeZone::get(&day.zone) else { return false };
            let today = now.to_zoned_datetime(zone).date();
            match period {
                Some(period) => period.day == day.name && today == day.date,
                None => {
                    today == day.date || today.tomorrow().is_ok_and(|next| next == day.date)
                }
            }
        })
}

/// Until when the codes of a period work; `None` if they do not work now.
///
/// They work from ten minutes before the bell (or from the end of the period before, if that is
/// later) to fifteen minutes after it (or to the start of the next, if that is earlier); while
/// the clock that the teacher started runs, for the period's length and fifteen minutes, unless
/// another period was started since; and when the teacher opens them. In a rehearsal and in what
/// is made up they work until the period is ended.
pub(crate) fn open_until(
    scene: &Scene<'_>,
    name: &str,
    opened: Option<Timestamp>,
    now: Timestamp,
) -> Option<Timestamp> {
    let plan = scene.plan;
    let period = plan.periods.iter().find(|period| period.name == name)?;
    let stands = scene.standing().periods.get(name);
    let (began, ended) = stands.map_or((None, None), |stands| (stands.began, stands.ended));
    let mut until: Option<Timestamp> = None;
    let mut open = |to: Option<Timestamp>| {
        if let Some(to) = to.filter(|to| *to > now) {
            until = Some(until.map_or(to, |until| until.max(to)));
        }
    };
    open(opened);
    if scene.made_up() && ended.is_none() {
        open(now.checked_add(SignedDuration::from_hours(4)).ok());
    }
    if scene.kind == Kind::Real
        && ended.is_none()
        && let Some((from, to)) = bells(plan, period)
    {
        let others: Vec<_> = plan
            .periods
            .iter()
            .filter(|other| other.name != name)
            .filter_map(|other| bells(plan, other))
            .collect();
        let before = others.iter().map(|(_, to)| *to).filter(|to| *to <= from).max();
        let after = others.iter().map(|(from, _)| *from).filter(|other| *other >= to).min();
        let first = from.checked_sub(BEFORE).ok().max(before);
        let last = to.checked_add(AFTER).ok().map(|last| after.map_or(last, |a| a.min(last)));
        if first.is_some_and(|first| first <= now) {
            open(last);
        }
    }
    if let Some(began) = began {
        let length = SignedDuration::try_from_secs_f64(period.length_min * 60.0).ok();
        let last = match ended {
            Some(ended) => ended.checked_add(AFTER).ok(),
            None => length
                .and_then(|length| length.checked_add(AFTER))
                .and_then(|length| began.checked_add(length).ok()),
        };
        let overtaken = scene.standing().periods.iter().any(|(other, stands)| {
            other != name && stands.began.is_some_and(|other| other > began)
        });
        if !overtaken {
            open(last);
        }
    }
    until
}

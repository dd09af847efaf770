//! The schedule of each period: waves, readings, the meter, and what is left of it on a bad day.

mod ics;
mod says;

pub(crate) use ics::schedule_ics;
pub(crate) use says::{advice_says, out_says, pours_says, steps, unfit_says};

use super::DeskError;
use barm_domain::plan::{Period, Plan};
use barm_domain::schedule::{Changeover, Course, Stop, Upset, changeover, course};
use jiff::civil::Time;

/// What is asked of a schedule.
#[derive(Debug, Clone, Default)]
pub(crate) struct Asked {
    /// One period only.
    pub(crate) period: Option<String>,
    /// Periods are as long as that (min).
    pub(crate) short_min: Option<f64>,
    /// Everybody is out of the room from that time on, for so many minutes.
    pub(crate) stop: Option<(Time, f64)>,
}

/// The schedule of one period.
#[derive(Debug)]
pub(crate) struct Planned<'a> {
    /// The period as the plan has it.
    pub(crate) period: &'a Period,
    /// The whole plan.
    pub(crate) plan: &'a Plan,
    /// What is done in it.
    pub(crate) course: Course,
    /// The stop, in minutes of this period: from, for.
    pub(crate) stop: Option<(f64, f64)>,
    /// The time until the next class; nothing after the last of a day.
    pub(crate) changeover: Option<Changeover>,
}

/// The schedules that are asked for, in the order of the plan.
///
/// # Errors
/// If the plan has no such period, or if the stop begins outside of it.
pub(crate) fn schedules<'a>(
    plan: &'a Plan,
    asked: &Asked,
) -> Result<Vec<Planned<'a>>, DeskError> {
    let named =
        |period: &&Period| asked.period.as_ref().is_none_or(|name| *name == period.name);
    let periods: Vec<&Period> = plan.periods.iter().filter(named).collect();
    if let (Some(name), true) = (&asked.period, periods.is_empty()) {
        return Err(DeskError::NoPeriod { name: name.clone() });
    }
    let planned: Vec<Planned<'a>> =
        periods.into_iter().filter_map(|period| one(plan, period, asked)).collect();
    match asked.stop {
        Some((at, _)) if planned.is_empty() => Err(DeskError::OutsidePeriods {
            at: at.strftime("%H:%M").to_string(),
            name: asked.period.clone(),
        }),
        _ => Ok(planned),
    }
}

/// Nothing for a period in which the stop does not begin.
fn one<'a>(plan: &'a Plan, period: &'a Period, asked: &Asked) -> Option<Planned<'a>> {
    let stop = match asked.stop {
        None => None,
        Some((at, for_min)) => {
            let from_min = at.duration_since(period.start).as_secs_f64() / 60.0;
            let length = asked.short_min.unwrap_or(period.length_min).min(period.length_min);
            Some((from_min, for_min)).filter(|_| (0.0..length).contains(&from_min)).map(Some)?
        }
    };
    let upset = Upset {
        length_min: asked.short_min,
        stop: stop.map(|(from_min, for_min)| Stop { from_min, for_min, done: None }),
    };
    let course = course(plan, period, &upset);
    // The next class comes when it always comes, however early this one ends.
    let held = Period { length_min: course.bell_min, ..period.clone() };
    Some(Planned { period, plan, course, stop, changeover: changeover(plan, &held) })
}

impl Planned<'_> {
    /// The time so many minutes after the bell.
    pub(crate) fn at(&self, minute: f64) -> Time {
        let seconds = (60.0 * minute).clamp(0.0, 86_400.0).round() as i64;
        self.period.start.wrapping_add(jiff::SignedDuration::from_secs(seconds))
    }
}

//! Everything to do, for a calendar program.

use super::todo;
use crate::desk::DeskError;
use crate::desk::print::Job;
use barm_documents::calendar::{self, Calendar, Event, Moment};
use barm_domain::agenda::{self, Task, What, When};
use barm_domain::plan::Plan;

/// The calendar as an `.ics` file.
pub(crate) fn calendar_ics(job: &Job<'_>) -> Result<Vec<u8>, DeskError> {
    let (plan, prep) = (job.plan, job.prep()?);
    let mark = plan_mark(plan);
    let year = plan.days.iter().map(|day| day.date.year()).min().unwrap_or_default();
    let event = |task: &Task| Event {
        key: format!("{}-{year}-{mark:016x}@barm.invalid", name(&task.what)),
        title: todo::title(plan, prep, &task.what),
        details: todo::details(plan, prep, &task.what, job.wish.size.into()),
        when: match &task.when {
            When::On(date) => Moment::Day(*date),
            When::At { from, to, zone } => {
                Moment::Span { from: *from, to: *to, zone: zone.clone() }
            }
        },
    };
    Ok(calendar::ics(&Calendar {
        title: plan.title.clone(),
        made: job.made,
        events: agenda::agenda(plan, prep).iter().map(event).collect(),
    }))
}

/// A number that tells plans apart, the same as long as title and school are.
pub(crate) fn plan_mark(plan: &Plan) -> u64 {
    identity(&format!("{}\n{}", plan.title, plan.school.as_deref().unwrap_or_default()))
}

/// What a task is known by within its plan.
fn name(what: &What) -> String {
    match what {
        What::Order => "order".to_owned(),
        What::Letter => "letter".to_owned(),
        What::TestRun => "test-run".to_owned(),
        What::Check => "check".to_owned(),
        What::Buy => "buy".to_owned(),
        What::Print => "print".to_owned(),
        What::Trays => "trays".to_owned(),
        What::Mix(place) => format!("mix-{place}"),
        What::Period(place) => format!("period-{place}"),
        What::Discard(place) => format!("discard-{place}"),
        What::Clear(day) => format!("clear-{:x}", identity(day)),
        What::Results => "results".to_owned(),
    }
}

/// A number that tells texts apart (FNV-1a, G. Fowler, L. C. Noll, P. Vo; constants from memory).
fn identity(text: &str) -> u64 {
    text.bytes().fold(0xcbf2_9ce4_8422_2325, |hash, byte| {
        (hash ^ u64::from(byte)).wrapping_mul(0x0100_0000_01b3)
    })
}

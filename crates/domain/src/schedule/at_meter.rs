//! Which bags have a turn at the breath meter, for whoever asks nothing else.

use super::course::{Frame, Task, made};
use super::plain;
use crate::plan::{Period, Plan};

/// Codes of a period's bags that have a turn at a meter as the plan has it, in the order of their turns;
/// nothing where the plan meters no bag. The same turns as in [`course()`](super::course()).
#[must_use]
pub fn at_meter(plan: &Plan, period: &Period) -> Option<Vec<String>> {
    let frame = Frame::of(plan, period, plain::minutes(plan, period, None), None);
    frame.metering?;
    let turns = made(&frame, None).turns.into_iter();
    let runs = turns.filter(|turn| matches!(turn.task, Task::Meter { .. }));
    Some(runs.map(|turn| turn.bag).collect())
}

//! What a bag list that stands lacks.

use super::own::make_own_references;
use super::room::{Room, Wanted};
use crate::plan::{CONTROLS, Plan, PlannedBag};

/// The bag, if its period, group and treatment are still in the plan. If its question is gone, or
/// no longer asks for the treatment, it goes to the question that has the treatment.
pub(super) fn still_there(plan: &Plan, bag: &PlannedBag) -> Option<PlannedBag> {
    let period = plan.period(&bag.period)?;
    let (home, _) = plan.treatments().find(|(_, own)| own.name == bag.treatment)?;
    let asked = if bag.question == CONTROLS {
        home == CONTROLS
    } else {
        let question = plan.questions.iter().find(|question| question.id == bag.question);
        question.is_some_and(|q| plan.answering(q).iter().any(|t| t.name == bag.treatment))
    };
    let question = if asked { bag.question.clone() } else { home.to_owned() };
    (bag.group <= period.groups).then(|| PlannedBag { question, ..bag.clone() })
}

/// The bags that the plan asks for and that are not among `listed`.
///
/// A bag goes to the period that has fewest of its treatment, then to the least busy one. A group
/// that gets a bag so, or that makes nothing its bags are compared with, makes its own reference.
pub(super) fn missing<'p>(plan: &'p Plan, listed: &[PlannedBag]) -> Vec<Wanted<'p>> {
    let mut rooms: Vec<Room<'p>> =
        (0..plan.periods.len()).map(|period| Room::of(plan, period)).collect();
    for bag in listed {
        seat(plan, &mut rooms, bag);
    }
    for question in &plan.questions {
        for treatment in &question.treatments {
            let wanted = treatment.replicates.unwrap_or(question.replicates) as usize;
            let own = |bag: &&PlannedBag| {
                bag.question == question.id && bag.treatment == treatment.name
            };
            for _ in listed.iter().filter(own).count()..wanted {
                let emptiest = rooms
                    .iter_mut()
                    .filter(|room| !room.seats.is_empty())
                    .min_by_key(|room| (room.count(&treatment.name), room.load()));
                if let Some(room) = emptiest {
                    room.take(&question.id, &treatment.name, question.reference_of(treatment));
                }
            }
        }
    }
    for room in &mut rooms {
        make_own_references(plan, room);
    }
    let mut missing = controls(plan, listed);
    for seat in rooms.iter().flat_map(|room| &room.seats) {
        missing.extend_from_slice(seat.fresh());
    }
    missing
}

/// Puts a bag that is listed with the group that makes it.
fn seat<'p>(plan: &'p Plan, rooms: &mut [Room<'p>], bag: &PlannedBag) {
    let period = plan.periods.iter().position(|period| period.name == bag.period);
    let room = period.and_then(|period| rooms.get_mut(period));
    // Group 0 is the teacher's bench and no seat of a room.
    let place = (bag.group as usize).checked_sub(1);
    let seat = room.zip(place).and_then(|(room, place)| room.seats.get_mut(place));
    let (Some(seat), Some(treatment)) = (seat, plan.treatment(&bag.treatment)) else { return };
    let question = plan.questions.iter().find(|question| question.id == bag.question);
    let reference = question.and_then(|question| question.reference_of(treatment));
    let id = question.map_or(CONTROLS, |question| question.id.as_str());
    seat.take(id, &treatment.name, reference);
    seat.listed = seat.bags.len();
}

/// Shared controls that a period lacks, for the teacher's bench.
fn controls<'p>(plan: &'p Plan, listed: &[PlannedBag]) -> Vec<Wanted<'p>> {
    let mut missing = Vec::new();
    for (period, named) in plan.periods.iter().enumerate() {
        for control in &plan.controls {
            let treatment = control.treatment.name.as_str();
            let own = listed.iter().filter(|bag| {
                bag.period == named.name
                    && bag.question == CONTROLS
                    && bag.treatment == treatment
            });
            let bag =
                Wanted { period, group: 0, question: CONTROLS, treatment, reference: None };
            missing.extend((own.count()..control.per_period as usize).map(|_| bag));
        }
    }
    missing
}

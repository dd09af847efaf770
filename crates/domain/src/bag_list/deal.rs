//! Deals the bags out to periods and groups, as if there were no list yet.

use super::own::make_own_references;
use super::room::{Room, Wanted};
use crate::plan::{CONTROLS, Plan};

/// All bags of the plan.
pub(super) fn deal(plan: &Plan) -> Vec<Wanted<'_>> {
    let mut rooms: Vec<Room<'_>> =
        (0..plan.periods.len()).map(|period| Room::of(plan, period)).collect();
    deal_treatments(plan, &mut rooms);
    for room in &mut rooms {
        make_own_references(plan, room);
    }
    let shared = (0..plan.periods.len()).flat_map(|period| {
        plan.controls.iter().flat_map(move |control| {
            let bag = Wanted {
                period,
                group: 0,
                question: CONTROLS,
                treatment: &control.treatment.name,
                reference: None,
            };
            (0..control.per_period).map(move |_| bag)
        })
    });
    let made = rooms.into_iter().flat_map(|room| room.seats).flat_map(|seat| seat.bags);
    shared.chain(made).collect()
}

/// Deals one treatment after the other around the periods, going on where the last one stopped.
///
/// A period has as many turns in the round as it has groups, spread evenly, so that every group of
/// the day gets its share and the bags of a treatment meet as many periods as they can.
fn deal_treatments<'p>(plan: &'p Plan, rooms: &mut [Room<'p>]) {
    let mut turns: Vec<(u64, usize)> = Vec::new();
    for (period, room) in rooms.iter().enumerate() {
        let groups = room.seats.len() as u64;
        // The middle of each group's share of the round, in millionths.
        turns.extend((0..groups).map(|g| ((2 * g + 1) * 500_000 / groups, period)));
    }
    turns.sort_unstable();
    let mut round = turns.iter().map(|(_, period)| *period).cycle();
    for question in &plan.questions {
        for treatment in &question.treatments {
            for _ in 0..treatment.replicates.unwrap_or(question.replicates) {
                let room = round.next().and_then(|period| rooms.get_mut(period));
                if let Some(room) = room {
                    room.take(&question.id, &treatment.name, question.reference_of(treatment));
                }
            }
        }
    }
}

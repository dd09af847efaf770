//! Reference bags that groups make for themselves.

use super::room::{Room, Seat};
use crate::plan::Plan;

/// Every group of two bags or more makes the reference that most of them lack; one whose bags
/// stand on the list already is left alone if it makes any.
pub(super) fn make_own_references<'p>(plan: &'p Plan, room: &mut Room<'p>) {
    for seat in room.seats.iter_mut().filter(|seat| seat.bags.len() >= 2) {
        if seat.fresh().is_empty() && seat.makes_a_reference() {
            continue;
        }
        let Some((question, reference)) = own_reference(plan, seat) else { continue };
        let asked = plan.questions.iter().find(|asked| asked.id == question);
        let compared =
            asked.zip(plan.treatment(reference)).and_then(|(q, t)| q.reference_of(t));
        seat.take(question, reference, compared);
    }
}

/// The reference that most of a group's bags are compared with and that it does not make yet,
/// with the question it answers.
fn own_reference<'p>(plan: &'p Plan, seat: &Seat<'p>) -> Option<(&'p str, &'p str)> {
    let lacking: Vec<(&str, &str)> = seat
        .bags
        .iter()
        .filter_map(|bag| Some((bag.question, bag.reference?)))
        .filter(|(_, reference)| plan.treatment(reference).is_some() && !seat.makes(reference))
        .collect();
    let count =
        |reference: &str| lacking.iter().filter(|(_, other)| *other == reference).count();
    // The first of the most frequent: later ones must be more frequent to win.
    lacking.iter().copied().reduce(
        |best, next| {
            if count(next.1) > count(best.1) { next } else { best }
        },
    )
}

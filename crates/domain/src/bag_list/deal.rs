//! Deals the bags out to periods and groups.

use crate::plan::{CONTROLS, Plan};

/// A bag that somebody is to make.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Wanted<'p> {
    /// Position of the period in the plan, from 0.
    pub(super) period: usize,
    /// Group, 0 for the teacher's bench.
    pub(super) group: u32,
    pub(super) question: &'p str,
    pub(super) treatment: &'p str,
    /// What it is compared with.
    reference: Option<&'p str>,
}

impl Wanted<'_> {
    pub(super) fn period_name<'p>(&self, plan: &'p Plan) -> &'p str {
        plan.periods.get(self.period).map_or("", |period| period.name.as_str())
    }
}

/// One group of one period with its bags so far.
struct Seat<'p> {
    period: usize,
    group: u32,
    /// In which order the groups of the period are asked; each period begins at another bench, so
    /// that a treatment does not always stand by the same window.
    turn: u32,
    bags: Vec<Wanted<'p>>,
}

impl<'p> Seat<'p> {
    fn makes(&self, treatment: &str) -> bool {
        self.bags.iter().any(|bag| bag.treatment == treatment)
    }

    /// How well a bag goes with those the group makes already.
    fn affinity(&self, treatment: &str, reference: Option<&str>) -> u8 {
        let makes_its_reference = reference.is_some_and(|reference| self.makes(reference));
        let is_their_reference = self.bags.iter().any(|bag| bag.reference == Some(treatment));
        if makes_its_reference || is_their_reference {
            2
        } else {
            u8::from(reference.is_some() && self.bags.iter().any(|b| b.reference == reference))
        }
    }

    fn take(&mut self, question: &'p str, treatment: &'p str, reference: Option<&'p str>) {
        let Self { period, group, .. } = *self;
        self.bags.push(Wanted { period, group, question, treatment, reference });
    }
}

/// The groups of one period with what they make so far.
struct Room<'p> {
    seats: Vec<Seat<'p>>,
}

impl<'p> Room<'p> {
    /// Gives a bag to the emptiest group that does not make such a one yet.
    fn take(&mut self, question: &'p str, treatment: &'p str, reference: Option<&'p str>) {
        let seat = self.seats.iter_mut().min_by_key(|seat| {
            let affinity = seat.affinity(treatment, reference);
            (seat.makes(treatment), seat.bags.len(), u8::MAX - affinity, seat.turn)
        });
        if let Some(seat) = seat {
            seat.take(question, treatment, reference);
        }
    }
}

/// All bags of the plan.
pub(super) fn deal(plan: &Plan) -> Vec<Wanted<'_>> {
    let mut rooms: Vec<Room<'_>> = plan
        .periods
        .iter()
        .enumerate()
        .map(|(period, at)| {
            let begin = 3 * u32::try_from(period).unwrap_or_default();
            let seats = (1..=at.groups).map(|group| {
                let turn = (group + begin) % at.groups;
                Seat { period, group, turn, bags: Vec::new() }
            });
            Room { seats: seats.collect() }
        })
        .collect();
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

/// Every group of two bags or more makes the reference that most of them lack.
fn make_own_references<'p>(plan: &'p Plan, room: &mut Room<'p>) {
    for seat in room.seats.iter_mut().filter(|seat| seat.bags.len() >= 2) {
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

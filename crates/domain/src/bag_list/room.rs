//! The groups of a period and what they make.

use crate::plan::Plan;

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
    pub(super) reference: Option<&'p str>,
}

impl Wanted<'_> {
    pub(super) fn period_name<'p>(&self, plan: &'p Plan) -> &'p str {
        plan.periods.get(self.period).map_or("", |period| period.name.as_str())
    }
}

/// One group of one period with its bags so far.
pub(super) struct Seat<'p> {
    period: usize,
    group: u32,
    /// In which order the groups of the period are asked; each period begins at another bench, so
    /// that a treatment does not always stand by the same window.
    turn: u32,
    pub(super) bags: Vec<Wanted<'p>>,
    /// How many of its bags, from the first, stand on the list already.
    pub(super) listed: usize,
}

impl<'p> Seat<'p> {
    pub(super) fn makes(&self, treatment: &str) -> bool {
        self.bags.iter().any(|bag| bag.treatment == treatment)
    }

    /// The bags that are not on the list yet.
    pub(super) fn fresh(&self) -> &[Wanted<'p>] {
        self.bags.get(self.listed..).unwrap_or_default()
    }

    /// Whether it makes something that one of its bags is compared with.
    pub(super) fn makes_a_reference(&self) -> bool {
        self.bags.iter().filter_map(|bag| bag.reference).any(|reference| self.makes(reference))
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

    pub(super) fn take(
        &mut self,
        question: &'p str,
        treatment: &'p str,
        reference: Option<&'p str>,
    ) {
        let Self { period, group, .. } = *self;
        self.bags.push(Wanted { period, group, question, treatment, reference });
    }
}

/// The groups of one period with what they make so far.
pub(super) struct Room<'p> {
    pub(super) seats: Vec<Seat<'p>>,
}

impl<'p> Room<'p> {
    /// The groups of a period, with nothing to make yet.
    pub(super) fn of(plan: &Plan, period: usize) -> Self {
        let groups = plan.periods.get(period).map_or(0, |period| period.groups);
        let begin = 3 * u32::try_from(period).unwrap_or_default();
        let seats = (1..=groups).map(|group| {
            let turn = (group + begin) % groups;
            Seat { period, group, turn, bags: Vec::new(), listed: 0 }
        });
        Self { seats: seats.collect() }
    }

    /// Bags of a treatment that its groups make.
    pub(super) fn count(&self, treatment: &str) -> usize {
        let bags = self.seats.iter().flat_map(|seat| &seat.bags);
        bags.filter(|bag| bag.treatment == treatment).count()
    }

    /// Bags that a thousand such groups would make.
    pub(super) fn load(&self) -> usize {
        let bags: usize = self.seats.iter().map(|seat| seat.bags.len()).sum();
        1000 * bags / self.seats.len().max(1)
    }

    /// Gives a bag to the emptiest group that does not make such a one yet.
    pub(super) fn take(
        &mut self,
        question: &'p str,
        treatment: &'p str,
        reference: Option<&'p str>,
    ) {
        let seat = self.seats.iter_mut().min_by_key(|seat| {
            let affinity = seat.affinity(treatment, reference);
            (seat.makes(treatment), seat.bags.len(), u8::MAX - affinity, seat.turn)
        });
        if let Some(seat) = seat {
            seat.take(question, treatment, reference);
        }
    }
}

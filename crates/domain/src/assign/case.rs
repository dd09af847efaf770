//! A day under some of its rules.

use super::day::{Arm, Day};
use super::rule::{Rule, Stock};

/// How many groups may work on a question.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Count {
    pub(super) period: Option<usize>,
    pub(super) question: usize,
    pub(super) least: u32,
    pub(super) most: u32,
}

/// A day under some of its rules: what each group may do, and what all must keep together.
pub(super) struct Case<'d> {
    pub(super) day: &'d Day,
    /// Bags of each group; a group whose number was taken back makes one.
    pub(super) bags: Vec<u32>,
    /// Whether a group may work on an arm, group by group.
    pub(super) allowed: Vec<Vec<bool>>,
    pub(super) counts: Vec<Count>,
    pub(super) stocks: Vec<&'d Stock>,
    /// Whether the tools get round, which hangs on the numbers of bags alone.
    pub(super) tools_suffice: bool,
}

impl<'d> Case<'d> {
    /// The day under all its rules.
    pub(super) fn whole(day: &'d Day) -> Self {
        Self::under(day, &vec![true; day.rules.len()])
    }

    /// The day under those of its rules that are marked.
    pub(super) fn under(day: &'d Day, active: &[bool]) -> Self {
        let rules: Vec<&Rule> = day
            .rules
            .iter()
            .zip(active)
            .filter(|(_, active)| **active)
            .map(|(rule, _)| rule)
            .collect();
        let usual = rules.iter().any(|rule| matches!(rule, Rule::UsualBags { .. }));
        let own = |g: usize| rules.iter().any(|rule| **rule == Rule::Bags { group: g });
        let bags: Vec<u32> = (day.groups.iter().enumerate())
            .map(|(g, group)| {
                let counts = if group.own_bags { own(g) } else { usual };
                if counts { group.bags.max(1) } else { 1 }
            })
            .collect();
        let mut case = Self {
            day,
            bags,
            allowed: vec![vec![true; day.arms.len()]; day.groups.len()],
            counts: Vec::new(),
            stocks: Vec::new(),
            tools_suffice: true,
        };
        for rule in rules {
            case.keep(rule);
        }
        case
    }

    fn keep(&mut self, rule: &'d Rule) {
        let day = self.day;
        match rule {
            Rule::Set { group, question } => self.only(*group, *question),
            Rule::Never { group, question } => {
                for (allowed, arm) in self.allowed[*group].iter_mut().zip(&day.arms) {
                    *allowed &= arm.question != *question;
                }
            }
            Rule::Least { period, question, groups } => self.counts.push(Count {
                period: *period,
                question: *question,
                least: *groups,
                most: u32::MAX,
            }),
            Rule::Most { period, question, groups } => self.counts.push(Count {
                period: *period,
                question: *question,
                least: 0,
                most: *groups,
            }),
            Rule::Bags { .. } | Rule::UsualBags { .. } => {}
            Rule::Tools { period, bags, .. } => {
                let own =
                    day.groups.iter().zip(&self.bags).filter(|(g, _)| g.period == *period);
                let made = own.map(|(_, bags)| bags).sum::<u32>() + day.bench_bags();
                self.tools_suffice &= made <= *bags;
            }
            Rule::Stock(stock) => self.stocks.push(stock),
        }
    }

    /// Leaves a group nothing but the arms of one question.
    pub(super) fn only(&mut self, group: usize, question: usize) {
        for (allowed, arm) in self.allowed[group].iter_mut().zip(&self.day.arms) {
            *allowed &= arm.question == question;
        }
    }

    /// Bags of an arm's treatments that a group would make.
    pub(super) fn slots(&self, group: usize, arm: usize) -> u32 {
        self.arm(arm).slots(self.bags[group])
    }

    pub(super) fn arm(&self, arm: usize) -> &'d Arm {
        &self.day.arms[arm]
    }

    /// Whether all groups make the same number of bags: then groups can be counted instead of bags.
    pub(super) fn is_even(&self) -> bool {
        self.bags.windows(2).all(|two| two[0] == two[1])
    }

    /// Whether a single bag of this arm needs a reference that somebody else of its period makes.
    pub(super) fn needs_control(&self, arm: usize) -> bool {
        let arm = self.arm(arm);
        arm.reference.is_some() && !arm.shared
    }
}

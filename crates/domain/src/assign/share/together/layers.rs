//! One period, group after group: all that its groups can do, as ways through a graph in layers.
//!
//! Two beginnings that leave the same choices and the same costs for the groups to come meet in one
//! state, so that equal groups are never told apart (Bellman 1957, *Dynamic Programming*, from memory).
//! A cheapest way through is a best sharing-out of the period, whatever its arms are charged.

use super::ahead::{Ahead, Limit};
use super::{Cell, Joint};
use crate::assign::case::Case;
use crate::assign::flow::Cost;
use crate::assign::share::Order;
use crate::assign::worth::Part;
use std::collections::HashMap;

/// Ways of one period that are kept at most: beyond that, the period is not laid out.
const MOST_STEPS: usize = 400_000;
/// What cannot be done costs more than anything.
pub(super) const NEVER: Cost = Cost::MAX / 4;

/// What one group may do.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Choice {
    pub(super) part: Part,
    /// Bags of treatments that it makes so.
    pub(super) slots: u32,
    /// What the group regrets.
    pub(super) regret: u32,
    /// 1 if its single bag waits for a control of the period, 2 if it makes one, where that is asked.
    control: u16,
    /// What it counts in each thing that the day has in common.
    pub(super) counts: Vec<u32>,
}

/// From a state of one layer to a state of the next.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Step {
    pub(super) from: usize,
    pub(super) to: usize,
    pub(super) choice: usize,
}

/// The layers of one period.
pub(super) struct Layers {
    /// Its groups, in the order in which they choose.
    pub(super) groups: Vec<usize>,
    /// What each of them may do.
    pub(super) choices: Vec<Vec<Choice>>,
    /// Steps of each group, by the state from which they lead.
    pub(super) steps: Vec<Vec<Step>>,
    /// How many states there are before each group, and at the end.
    pub(super) states: Vec<usize>,
    /// For each state at the end: treatments that the period goes without, and unevenness; nothing if
    /// a rule is broken there.
    pub(super) ends: Vec<Option<(u64, u64)>>,
}

/// Why a period is not laid out.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum NotLaid {
    /// No way keeps the rules and goes without so few treatments.
    None,
    /// There are too many.
    TooMany,
}

/// How far the groups that chose have come: bags of each arm, how far its controls are, and how many
/// groups work on a question that is limited in this period.
type State = Vec<u16>;

struct Layout<'c, 'd> {
    case: &'c Case<'d>,
    limits: Vec<Limit>,
    /// Bags of each arm beyond which more of them make no difference.
    enough: Vec<u16>,
    /// Treatments of each arm, as far as it matters whether they are made.
    kinds: Vec<u64>,
    /// Whether unevenness counts.
    uneven: bool,
    any: bool,
}

impl Layers {
    /// All ways of a period that go without at most so many treatments.
    pub(super) fn of(
        case: &Case<'_>,
        order: &Order,
        joint: &Joint,
        period: usize,
        most_missing: u64,
    ) -> Result<Self, NotLaid> {
        let own = case.counts.iter().filter(|count| count.period == Some(period));
        let limits = own.map(|count| (count.least, count.most, count.question)).collect();
        let layout = Layout::of(case, limits, joint.any);
        let here = |g: &&usize| case.day.groups[**g].period == period;
        let mut groups: Vec<usize> = order.groups.iter().filter(here).copied().collect();
        // Those with least choice come first: what they waste is known early.
        let arms = |g: usize| case.allowed[g].iter().filter(|allowed| **allowed).count();
        groups.sort_by_key(|g| (arms(*g), std::cmp::Reverse(case.bags[*g])));
        let choices: Vec<Vec<Choice>> =
            groups.iter().map(|g| layout.choices(order, joint, *g)).collect();
        let arms = case.day.arms.len();
        let mut now: Vec<State> = vec![vec![0; 2 * arms + layout.limits.len()]];
        let (mut steps, mut states) = (Vec::new(), vec![1]);
        let mut in_all = 0;
        for (g, of) in choices.iter().enumerate() {
            let ahead = Ahead::of(case, &layout.limits, &choices[g + 1..]);
            let mut next: Vec<State> = Vec::new();
            let mut known: HashMap<State, usize> = HashMap::new();
            let mut led: Vec<Step> = Vec::new();
            for (from, state) in now.iter().enumerate() {
                for (choice, chosen) in of.iter().enumerate() {
                    let Some(then) = layout.after(state, chosen) else { continue };
                    if layout.missing(&then, &ahead) > most_missing {
                        continue;
                    }
                    let to = *known.entry(then).or_insert_with_key(|then| {
                        next.push(then.clone());
                        next.len() - 1
                    });
                    led.push(Step { from, to, choice });
                }
            }
            in_all += led.len();
            if in_all > MOST_STEPS {
                return Err(NotLaid::TooMany);
            }
            states.push(next.len());
            steps.push(led);
            now = next;
        }
        let ends = now.iter().map(|state| layout.end(state)).collect();
        let mut layers = Self { groups, choices, steps, states, ends };
        layers.cut();
        let any = layers.ends.iter().any(Option::is_some);
        if any { Ok(layers) } else { Err(NotLaid::None) }
    }

    /// Takes away steps that lead nowhere.
    fn cut(&mut self) {
        let mut leads: Vec<bool> = self.ends.iter().map(Option::is_some).collect();
        for (steps, states) in self.steps.iter_mut().zip(&self.states).rev() {
            steps.retain(|step| leads[step.to]);
            leads = vec![false; *states];
            for step in &*steps {
                leads[step.from] = true;
            }
        }
    }

    /// What each group works on who goes this way.
    pub(super) fn parts(&self, way: &[usize]) -> Vec<Cell> {
        let all = self.groups.iter().zip(&self.choices).zip(way);
        all.map(|((group, choices), choice)| (*group, choices[*choice].part)).collect()
    }
}

impl<'c, 'd> Layout<'c, 'd> {
    fn of(case: &'c Case<'d>, limits: Vec<Limit>, any: bool) -> Self {
        let uneven = case.is_even() && !any;
        let arms = &case.day.arms;
        let kinds: Vec<u64> =
            arms.iter().map(|arm| if any { 0 } else { arm.treatments.len() as u64 }).collect();
        let enough = |kinds: &u64| match u16::try_from(*kinds) {
            Ok(kinds) if !uneven => kinds,
            _ => u16::MAX,
        };
        Self { case, limits, enough: kinds.iter().map(enough).collect(), kinds, uneven, any }
    }

    fn choices(&self, order: &Order, joint: &Joint, g: usize) -> Vec<Choice> {
        let case = self.case;
        let mut choices = Vec::new();
        for &arm in order.arms.iter().filter(|arm| case.allowed[g][**arm]) {
            let question = case.arm(arm).question;
            let regret = if self.any { 0 } else { case.day.groups[g].regret(question) };
            let mut add = |reference: bool, slots: u32| {
                let part = Part { arm, reference };
                let counts = joint.counts(arm, question, slots);
                let single = case.bags[g] == 1 && !reference;
                let control = if !case.needs_control(arm) { 0 } else { 2 - u16::from(single) };
                choices.push(Choice { part, slots, regret, control, counts });
            };
            add(false, case.slots(g, arm));
            if case.bags[g] == 1 && case.needs_control(arm) {
                add(true, 0);
            }
        }
        choices
    }

    fn after(&self, state: &State, chosen: &Choice) -> Option<State> {
        let (arms, arm) = (self.case.day.arms.len(), chosen.part.arm);
        let mut then = state.clone();
        let bags = then[arm].saturating_add(u16::try_from(chosen.slots).ok()?);
        then[arm] = bags.min(self.enough[arm]);
        then[arms + arm] = then[arms + arm].max(chosen.control);
        let question = self.case.arm(arm).question;
        for ((least, most, of), count) in self.limits.iter().zip(&mut then[2 * arms..]) {
            if *of == question {
                *count += 1;
                if u32::from(*count) > *most {
                    return None;
                }
                if *most == u32::MAX {
                    *count = (*count).min(u16::try_from(*least).unwrap_or(u16::MAX));
                }
            }
        }
        Some(then)
    }

    /// Treatments that the period lacks, arm by arm.
    fn lacking(&self, state: &State) -> Vec<u64> {
        let arms = self.kinds.iter().zip(state);
        arms.map(|(kinds, bags)| kinds.saturating_sub(u64::from(*bags))).collect()
    }

    /// Treatments that the period goes without at least from here on.
    fn missing(&self, state: &State, ahead: &Ahead) -> u64 {
        let lacking = self.lacking(state);
        let counts = &state[2 * self.kinds.len()..];
        lacking.iter().sum::<u64>() - ahead.more(self.case, &self.limits, &lacking, counts)
    }

    fn end(&self, state: &State) -> Option<(u64, u64)> {
        let arms = self.kinds.len();
        let without = state[arms..2 * arms].contains(&1);
        let mut limits = self.limits.iter().zip(&state[2 * arms..]);
        let few = limits.any(|((least, _, _), count)| u32::from(*count) < *least);
        if without || few {
            return None;
        }
        let uneven = state[..arms].iter().map(|bags| u64::from(*bags).pow(2)).sum();
        let uneven = if self.uneven { uneven } else { 0 };
        Some((self.lacking(state).iter().sum(), uneven))
    }
}

//! One period, group after group: all that its groups can do, as ways through a graph in layers.
//!
//! Two beginnings that leave the same choices and the same costs for the groups to come meet in one
//! state, so that equal groups are never told apart (Bellman 1957, *Dynamic Programming*, from memory).
//! A cheapest way through is a best sharing-out of the period, whatever its arms are charged.

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
    /// Least, most, and the question that they limit, in this period.
    limits: Vec<(u32, u32, usize)>,
    /// Whether bags beyond the number of treatments make a difference.
    all_bags: bool,
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
        let layout = Layout { case, limits, all_bags: case.is_even() };
        let here = |g: &&usize| case.day.groups[**g].period == period;
        let mut groups: Vec<usize> = order.groups.iter().filter(here).copied().collect();
        groups.sort_by_key(|g| std::cmp::Reverse(case.bags[*g]));
        let choices: Vec<Vec<Choice>> =
            groups.iter().map(|g| layout.choices(order, joint, *g)).collect();
        let most = |choices: &Vec<Choice>| choices.iter().map(|c| u64::from(c.slots)).max();
        let mut still: u64 = choices.iter().filter_map(most).sum();
        let kinds: u64 = case.day.arms.iter().map(|arm| arm.treatments.len() as u64).sum();
        let arms = case.day.arms.len();
        let mut now: Vec<State> = vec![vec![0; 2 * arms + layout.limits.len()]];
        let (mut steps, mut states) = (Vec::new(), vec![1]);
        let mut in_all = 0;
        for of in &choices {
            still -= most(of).unwrap_or(0);
            let mut next: Vec<State> = Vec::new();
            let mut known: HashMap<State, usize> = HashMap::new();
            let mut led: Vec<Step> = Vec::new();
            for (from, state) in now.iter().enumerate() {
                for (choice, chosen) in of.iter().enumerate() {
                    let Some(then) = layout.after(state, chosen) else { continue };
                    if kinds.saturating_sub(layout.kinds_made(&then) + still) > most_missing {
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
        let ends = now.iter().map(|state| layout.end(state, kinds)).collect();
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

    /// The cells that a way leaves behind.
    pub(super) fn parts(&self, way: &[usize]) -> impl Iterator<Item = Cell> + '_ {
        let all = self.groups.iter().zip(&self.choices).zip(way.to_vec());
        all.map(|((group, choices), choice)| (*group, choices[choice].part))
    }
}

impl Layout<'_, '_> {
    fn choices(&self, order: &Order, joint: &Joint, g: usize) -> Vec<Choice> {
        let case = self.case;
        let mut choices = Vec::new();
        for &arm in order.arms.iter().filter(|arm| case.allowed[g][**arm]) {
            let question = case.arm(arm).question;
            let regret = case.day.groups[g].regret(question);
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
        then[arm] += u16::try_from(chosen.slots).ok()?;
        if !self.all_bags {
            let kinds = u16::try_from(self.case.arm(arm).treatments.len()).ok()?;
            then[arm] = then[arm].min(kinds);
        }
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

    fn kinds_made(&self, state: &State) -> u64 {
        let arms = self.case.day.arms.iter().zip(state);
        arms.map(|(arm, bags)| (arm.treatments.len() as u64).min(u64::from(*bags))).sum()
    }

    fn end(&self, state: &State, kinds: u64) -> Option<(u64, u64)> {
        let arms = self.case.day.arms.len();
        let without = state[arms..2 * arms].contains(&1);
        let mut limits = self.limits.iter().zip(&state[2 * arms..]);
        let few = limits.any(|((least, _, _), count)| u32::from(*count) < *least);
        if without || few {
            return None;
        }
        let uneven = state[..arms].iter().map(|bags| u64::from(*bags).pow(2)).sum();
        let uneven = if self.all_bags { uneven } else { 0 };
        Some((kinds - self.kinds_made(state), uneven))
    }
}

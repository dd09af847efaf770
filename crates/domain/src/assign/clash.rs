//! Which rules clash, where no sharing-out keeps them all.

use super::case::Case;
use super::day::Day;
use super::share::{NoShare, Order, any_share};

/// Flows for one question whether some rules can be kept together.
const STEPS: u32 = 400;
/// Questions asked in search of a smallest clash, after a minimal one is known.
const ASKED: u32 = 1_000;
/// Steps of one search for the fewest rules that touch all others.
const TOUCHES: u32 = 200_000;

/// Rules that cannot be kept together.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Clash {
    /// The rules, by place in [`Day::rules`].
    pub rules: Vec<usize>,
    /// Whether it is proven that all of them but any one can be kept.
    pub minimal: bool,
    /// Whether it is proven that no fewer rules clash.
    pub smallest: bool,
}

/// Rules of a day that clash, if all of them together do.
///
/// One rule after the other is taken back; where the rest still clash it stays away (deletion filter;
/// Chinneck & Dravnieks 1991, *ORSA Journal on Computing* 3, 157-168). Then fewer are looked for:
/// whatever set of rules can be kept must leave out one of every clash, so the fewest rules that
/// touch every such rest are a bound, and a clash once they clash themselves (Ignatiev, Previti,
/// Liffiton & Marques-Silva 2015, *CP 2015*, 173-182). Both from memory; what is returned was checked
/// rule by rule. Many rules are tried at a time, since most have nothing to do with it.
pub fn clash(day: &Day) -> Option<Clash> {
    clash_within(day, ASKED)
}

/// The same, with at most so many questions asked in search of a smallest clash; with none, what is
/// minimal is good enough.
pub(super) fn clash_within(day: &Day, most: u32) -> Option<Clash> {
    let asks = Asks { day, order: Order::plain(day) };
    let mut active = vec![true; day.rules.len()];
    if asks.can(&active) != Some(false) {
        return None;
    }
    let mut minimal = true;
    let all: Vec<usize> = (0..active.len()).collect();
    asks.take_back(&all, &mut active, &mut minimal);
    let first: Vec<usize> = (0..active.len()).filter(|rule| active[*rule]).collect();
    let found = if most == 0 { None } else { asks.fewest(&first, most) };
    let (rules, smallest) = found.map_or((first, false), |found| (found, true));
    Some(Clash { rules, minimal: minimal || smallest, smallest })
}

impl Order {
    /// Groups and arms as they stand.
    pub(super) fn plain(day: &Day) -> Self {
        Self { groups: (0..day.groups.len()).collect(), arms: (0..day.arms.len()).collect() }
    }
}

struct Asks<'d> {
    day: &'d Day,
    order: Order,
}

impl Asks<'_> {
    /// Whether these rules can be kept together; nothing if that was not found out.
    fn can(&self, active: &[bool]) -> Option<bool> {
        match any_share(&Case::under(self.day, active), &self.order, STEPS) {
            Ok(()) => Some(true),
            Err(NoShare::Impossible) => Some(false),
            Err(NoShare::NotFound) => None,
        }
    }

    /// Takes rules back, many at a time where it can, as long as the rest still clash.
    fn take_back(&self, rules: &[usize], active: &mut [bool], minimal: &mut bool) {
        let mark = |active: &mut [bool], on: bool| rules.iter().for_each(|r| active[*r] = on);
        mark(active, false);
        match self.can(active) {
            Some(false) => {}
            found => {
                mark(active, true);
                if let [_] = rules {
                    *minimal &= found.is_some();
                } else {
                    let (first, second) = rules.split_at(rules.len() / 2);
                    self.take_back(first, active, minimal);
                    self.take_back(second, active, minimal);
                }
            }
        }
    }

    /// Adds rules, many at a time where it can, as long as all can be kept. Nothing if that was not
    /// found out.
    fn add(&self, rules: &[usize], active: &mut [bool], asked: &mut u32) -> Option<()> {
        if rules.is_empty() {
            return Some(());
        }
        *asked += 1;
        rules.iter().for_each(|rule| active[*rule] = true);
        if self.can(active)? {
            return Some(());
        }
        rules.iter().for_each(|rule| active[*rule] = false);
        if rules.len() > 1 {
            let (first, second) = rules.split_at(rules.len() / 2);
            self.add(first, active, asked)?;
            self.add(second, active, asked)?;
        }
        Some(())
    }

    /// A clash of the fewest rules, given one that is minimal; nothing if that took too long.
    fn fewest(&self, first: &[usize], most: u32) -> Option<Vec<usize>> {
        let all = self.day.rules.len();
        let mut asked = 0;
        let mut rests: Vec<Vec<usize>> = Vec::new();
        loop {
            let touching = touching(&rests, first.len())?;
            if touching.len() >= first.len() {
                return Some(first.to_vec());
            }
            let mut active = vec![false; all];
            for rule in &touching {
                active[*rule] = true;
            }
            asked += 1;
            if !self.can(&active)? {
                return Some(touching);
            }
            let others: Vec<usize> = (0..all).filter(|rule| !active[*rule]).collect();
            self.add(&others, &mut active, &mut asked)?;
            if asked > most {
                return None;
            }
            rests.push((0..all).filter(|rule| !active[*rule]).collect());
        }
    }
}

/// The fewest numbers of which every set has one, or any so many if no fewer than `most` do.
fn touching(sets: &[Vec<usize>], most: usize) -> Option<Vec<usize>> {
    let mut best: Vec<usize> = (0..most).collect();
    let mut steps = 0;
    look(sets, &mut Vec::new(), &mut best, &mut steps);
    best.sort_unstable();
    (steps < TOUCHES).then_some(best)
}

fn look(sets: &[Vec<usize>], taken: &mut Vec<usize>, best: &mut Vec<usize>, steps: &mut u32) {
    *steps += 1;
    if *steps >= TOUCHES {
        return;
    }
    let untouched = sets.iter().filter(|set| set.iter().all(|one| !taken.contains(one)));
    let Some(smallest) = untouched.clone().min_by_key(|set| set.len()) else {
        if taken.len() < best.len() {
            best.clone_from(taken);
        }
        return;
    };
    // Sets that share nothing need a number each.
    let mut apart: Vec<usize> = Vec::new();
    let mut need = 0;
    for set in untouched {
        if set.iter().all(|one| !apart.contains(one)) {
            apart.extend(set);
            need += 1;
        }
    }
    if taken.len() + need >= best.len() {
        return;
    }
    for &one in smallest {
        taken.push(one);
        look(sets, taken, best, steps);
        taken.pop();
    }
}

//! Every way to share out and deal a small day, one by one, by code that shares nothing with the
//! program's.

use barm_domain::assign::day::Day;
use barm_domain::assign::rule::Rule;
use std::collections::BTreeMap;

/// What is amiss with an answer: missing, short, regret, uneven.
pub(crate) type Amiss = (u64, u64, u64, u64);

/// Bags of each group if only these rules hold.
fn bags(day: &Day, rules: &[&Rule]) -> Vec<u32> {
    let usual = rules.iter().any(|rule| matches!(rule, Rule::UsualBags { .. }));
    let own =
        |g: usize| rules.iter().any(|rule| matches!(rule, Rule::Bags { group } if *group == g));
    let groups = day.groups.iter().enumerate();
    groups
        .map(|(g, group)| {
            let kept = if group.own_bags { own(g) } else { usual };
            if kept { group.bags } else { 1 }
        })
        .collect()
}

/// What a group may do: an arm with all multisets of bags that go with it.
fn kits(day: &Day, bags: u32) -> Vec<(usize, Vec<usize>)> {
    let mut kits = Vec::new();
    for (a, arm) in day.arms.iter().enumerate() {
        let mut base = Vec::new();
        let mut rest = bags;
        if bags >= 2
            && let Some(reference) = arm.reference
        {
            base.push(reference);
            rest -= 1;
        }
        let mut open = vec![(0, base)];
        for _ in 0..rest {
            let mut longer = Vec::new();
            for (from, kit) in &open {
                for at in *from..arm.treatments.len() {
                    let mut kit = kit.clone();
                    kit.push(arm.treatments[at]);
                    longer.push((at, kit));
                }
            }
            open = longer;
        }
        // While there are other treatments, no group makes two bags alike.
        let each = (rest as usize).div_ceil(arm.treatments.len());
        let fair = |kit: &Vec<usize>| {
            arm.treatments.iter().all(|t| kit.iter().filter(|bag| *bag == t).count() <= each)
        };
        kits.extend(open.into_iter().map(|(_, kit)| (a, kit)).filter(|(_, kit)| fair(kit)));
        if bags == 1 && arm.reference.is_some() && !arm.shared {
            kits.extend(arm.reference.map(|reference| (a, vec![reference])));
        }
    }
    kits
}

/// The least that is amiss if these rules hold; nothing if they cannot be kept.
pub(crate) fn least(day: &Day, active: &[bool]) -> Option<Amiss> {
    let rules: Vec<&Rule> =
        day.rules.iter().zip(active).filter(|(_, on)| **on).map(|(rule, _)| rule).collect();
    let bags = bags(day, &rules);
    let choices: Vec<Vec<(usize, Vec<usize>)>> = bags.iter().map(|n| kits(day, *n)).collect();
    let mut best = None;
    let mut chosen = Vec::new();
    go(day, &rules, &choices, &mut chosen, &mut best);
    best
}

fn go(
    day: &Day,
    rules: &[&Rule],
    choices: &[Vec<(usize, Vec<usize>)>],
    chosen: &mut Vec<(usize, Vec<usize>)>,
    best: &mut Option<Amiss>,
) {
    if chosen.len() == choices.len() {
        if holds(day, rules, chosen) {
            let amiss = amiss(day, chosen);
            if best.is_none_or(|best| amiss < best) {
                *best = Some(amiss);
            }
        }
        return;
    }
    let g = chosen.len();
    for kit in &choices[g] {
        let question = day.arms[kit.0].question;
        let refused = rules.iter().any(|rule| match rule {
            Rule::Set { group, question: set } => *group == g && *set != question,
            Rule::Never { group, question: never } => *group == g && *never == question,
            _ => false,
        });
        if !refused {
            chosen.push(kit.clone());
            go(day, rules, choices, chosen, best);
            chosen.pop();
        }
    }
}

fn holds(day: &Day, rules: &[&Rule], chosen: &[(usize, Vec<usize>)]) -> bool {
    let of = |p: usize| {
        let all = chosen.iter().zip(&day.groups);
        all.filter(move |(_, group)| group.period == p).map(|(kit, _)| kit)
    };
    let bench = |t: usize| day.bench.iter().any(|(on, bags)| *on == t && *bags > 0);
    let controlled = (0..day.periods.len()).all(|p| {
        of(p).all(|(arm, _)| {
            day.arms[*arm].reference.is_none_or(|reference| {
                bench(reference) || of(p).any(|(a, kit)| a == arm && kit.contains(&reference))
            })
        })
    });
    let on_bench: u32 = day.bench.iter().map(|(_, bags)| *bags).sum();
    controlled
        && rules.iter().all(|rule| {
            let count = |period: &Option<usize>, question: &usize| {
                let periods =
                    (0..day.periods.len()).filter(|p| period.is_none_or(|own| own == *p));
                let kits = periods.flat_map(of);
                kits.filter(|(arm, _)| day.arms[*arm].question == *question).count() as u32
            };
            match rule {
                Rule::Least { period, question, groups } => count(period, question) >= *groups,
                Rule::Most { period, question, groups } => count(period, question) <= *groups,
                Rule::Tools { period, bags, .. } => {
                    let made: usize = of(*period).map(|(_, kit)| kit.len()).sum();
                    made as u32 + on_bench <= *bags
                }
                Rule::Stock(stock) => {
                    let made: i64 =
                        chosen.iter().flat_map(|(_, kit)| kit).map(|t| stock.takes[*t]).sum();
                    let each = day.bench.iter().map(|(t, n)| stock.takes[*t] * i64::from(*n));
                    made + each.sum::<i64>() * day.periods.len() as i64 <= stock.most
                }
                _ => true,
            }
        })
}

fn amiss(day: &Day, chosen: &[(usize, Vec<usize>)]) -> Amiss {
    // Bags of each arm's treatments: arm, period, treatment.
    let mut made: BTreeMap<(usize, usize, usize), u64> = BTreeMap::new();
    for ((arm, kit), group) in chosen.iter().zip(&day.groups) {
        for bag in kit.iter().filter(|bag| day.arms[*arm].treatments.contains(bag)) {
            *made.entry((*arm, group.period, *bag)).or_default() += 1;
        }
    }
    let (mut missing, mut short, mut uneven) = (0, 0, 0);
    for (a, arm) in day.arms.iter().enumerate() {
        let mut all = 0;
        for p in 0..day.periods.len() {
            let bags = |t: &usize| made.get(&(a, p, *t)).copied().unwrap_or(0);
            missing += arm.treatments.iter().filter(|t| bags(t) == 0).count() as u64;
            let here: u64 = arm.treatments.iter().map(bags).sum();
            uneven += here * here;
            all += here;
        }
        short += arm.asked.iter().map(|n| u64::from(*n)).sum::<u64>().saturating_sub(all);
    }
    let regret = chosen.iter().zip(&day.groups).map(|((arm, _), group)| {
        let question = day.arms[*arm].question;
        let step = group.ranks.iter().take_while(|ranked| **ranked != question).count() as u64;
        step * (step + 1) / 2
    });
    (missing, short, regret.sum(), uneven)
}

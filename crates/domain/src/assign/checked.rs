//! The answer held against every rule once more, bag by bag, by none of the code that found it.

use super::answer::{Assigned, Made};
use super::day::Day;
use super::rule::Rule;
use std::collections::BTreeSet;

/// What is wrong with an answer, in words; nothing if it keeps everything.
pub fn check(day: &Day, assigned: &Assigned) -> Vec<String> {
    let mut wrong = Vec::new();
    if assigned.groups.len() != day.groups.len() {
        return vec!["the answer has not as many groups as the day".into()];
    }
    for (g, made) in assigned.groups.iter().enumerate() {
        group(day, g, made, &mut wrong);
    }
    controls(day, &assigned.groups, &mut wrong);
    for rule in &day.rules {
        if !kept(day, &assigned.groups, rule) {
            wrong.push(format!("the answer does not keep that {}", rule.words(day)));
        }
    }
    worth(day, assigned, &mut wrong);
    wrong
}

fn group(day: &Day, g: usize, made: &Made, wrong: &mut Vec<String>) {
    let (group, arm, name) = (&day.groups[g], &day.arms[made.arm], day.name_of(g));
    if made.bags.len() != group.bags as usize {
        wrong.push(format!("{name} makes {} bags, not {}", made.bags.len(), group.bags));
    }
    let strange = |bag: &usize| !arm.treatments.contains(bag) && arm.reference != Some(*bag);
    if made.bags.iter().any(strange) {
        wrong.push(format!("{name} makes a bag that its question does not ask for"));
    }
    // Each group makes its own control where its bag count allows.
    let own = arm.reference.is_none_or(|reference| made.bags.contains(&reference));
    if made.bags.len() >= 2 && !own {
        wrong.push(format!("{name} makes no control of its own"));
    }
}

/// Every period has a control of each question run there.
fn controls(day: &Day, groups: &[Made], wrong: &mut Vec<String>) {
    for period in 0..day.periods.len() {
        let here = || {
            let all = groups.iter().zip(&day.groups);
            all.filter(|(_, group)| group.period == period).map(|(made, _)| made)
        };
        let on_bench =
            |t: usize| day.bench.iter().any(|(bench, bags)| *bench == t && *bags > 0);
        for made in here() {
            let Some(reference) = day.arms[made.arm].reference else { continue };
            if !on_bench(reference) && !here().any(|other| other.bags.contains(&reference)) {
                wrong.push(format!(
                    "period {} has no bag of “{}” to compare with",
                    day.periods[period], day.treatments[reference]
                ));
            }
        }
    }
}

fn kept(day: &Day, groups: &[Made], rule: &Rule) -> bool {
    let question = |made: &Made| day.arms[made.arm].question;
    let count = |period: &Option<usize>, asked: &usize| {
        let all = groups.iter().zip(&day.groups);
        let of = all.filter(|(made, group)| {
            question(made) == *asked && period.is_none_or(|period| period == group.period)
        });
        of.count()
    };
    match rule {
        Rule::Set { group, question: set } => question(&groups[*group]) == *set,
        Rule::Never { group, question: never } => question(&groups[*group]) != *never,
        Rule::Least { period, question, groups: least } => {
            count(period, question) >= *least as usize
        }
        Rule::Most { period, question, groups: most } => {
            count(period, question) <= *most as usize
        }
        // Every group's number was held against its own above.
        Rule::Bags { .. } | Rule::UsualBags { .. } => true,
        Rule::Tools { period, bags, .. } => {
            let all = groups.iter().zip(&day.groups);
            let here = all.filter(|(_, group)| group.period == *period);
            let made: usize = here.map(|(made, _)| made.bags.len()).sum();
            made + day.bench_bags() as usize <= *bags as usize
        }
        Rule::Stock(stock) => {
            let made = groups.iter().flat_map(|made| &made.bags).map(|bag| stock.takes[*bag]);
            let bench = day.bench.iter().map(|(t, bags)| stock.takes[*t] * i64::from(*bags));
            made.sum::<i64>() + bench.sum::<i64>() * day.periods.len() as i64 <= stock.most
        }
    }
}

/// Counts once more what the answer says it is worth.
fn worth(day: &Day, assigned: &Assigned, wrong: &mut Vec<String>) {
    let (mut missing, mut short, mut regret) = (0_u64, 0_u64, 0_u64);
    for (a, arm) in day.arms.iter().enumerate() {
        let mut made_in_all = 0;
        for period in 0..day.periods.len() {
            let all = assigned.groups.iter().zip(&day.groups);
            let here = all.filter(|(made, group)| made.arm == a && group.period == period);
            let bags: Vec<usize> =
                here.flat_map(|(made, _)| made.bags.iter().copied()).collect();
            let bags = bags.iter().filter(|bag| arm.treatments.contains(bag));
            made_in_all += bags.clone().count();
            let kinds: BTreeSet<usize> = bags.copied().collect();
            missing += (arm.treatments.len() - kinds.len()) as u64;
        }
        short += (arm.asked.iter().sum::<u32>() as usize).saturating_sub(made_in_all) as u64;
    }
    for (group, made) in day.groups.iter().zip(&assigned.groups) {
        let rank = group.ranks.iter().position(|q| *q == day.arms[made.arm].question);
        let rank = rank.unwrap_or(group.ranks.len()) as u64;
        regret += rank * (rank + 1) / 2;
    }
    let said = &assigned.worth;
    if (missing, short, regret) != (said.missing, said.short, said.regret) {
        wrong.push(format!(
            "the answer is worth {missing}, {short}, {regret}, not {}, {}, {}",
            said.missing, said.short, said.regret
        ));
    }
    if assigned.bound > assigned.worth {
        wrong.push("the answer is better than its bound".into());
    }
}

//! Random small days.

use barm_domain::assign::day::{Arm, Day, Group};
use barm_domain::assign::rule::{Rule, Stock};
use barm_science::statistics::chance::Chance;

/// What a random day may have.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Like {
    pub(crate) periods: usize,
    pub(crate) groups: usize,
    pub(crate) questions: usize,
    /// Bags of a group, at most.
    pub(crate) bags: u32,
    /// Whether groups make different numbers of bags.
    pub(crate) uneven: bool,
    /// Rules by chance, about so many.
    pub(crate) rules: usize,
    /// Whether materials are short.
    pub(crate) stock: bool,
}

fn up_to(chance: &mut Chance, most: usize) -> usize {
    1 + chance.below(most)
}

/// A random day.
pub(crate) fn day(seed: u64, like: Like) -> Day {
    let mut chance = Chance::from_seed(seed);
    let chance = &mut chance;
    let mut day = Day {
        periods: (1..=up_to(chance, like.periods)).map(|p| p.to_string()).collect(),
        questions: (0..up_to(chance, like.questions))
            .map(|q| format!("question {q}"))
            .collect(),
        ..Day::default()
    };
    let new = |day: &mut Day| {
        day.treatments.push(format!("treatment {}", day.treatments.len()));
        day.treatments.len() - 1
    };
    for question in 0..day.questions.len() {
        for _ in 0..if chance.below(4) == 0 { 2 } else { 1 } {
            let reference = (chance.below(6) > 0).then(|| new(&mut day));
            let shared = reference.is_some() && chance.below(2) == 0;
            day.bench.extend(reference.filter(|_| shared).map(|t| (t, 1)));
            let treatments: Vec<usize> = (0..up_to(chance, 3)).map(|_| new(&mut day)).collect();
            let asked = chance.below(4) as u32;
            let asked = vec![asked; treatments.len()];
            day.arms.push(Arm { question, treatments, asked, reference, shared });
        }
    }
    let usual = up_to(chance, like.bags as usize) as u32;
    for period in 0..day.periods.len() {
        for number in 1..=up_to(chance, like.groups) as u32 {
            let own_bags = like.uneven && chance.below(2) == 0;
            let bags = if own_bags { up_to(chance, like.bags as usize) as u32 } else { usual };
            let mut ranks: Vec<usize> = (0..day.questions.len()).collect();
            for at in (1..ranks.len()).rev() {
                ranks.swap(at, chance.below(at + 1));
            }
            ranks.truncate(chance.below(ranks.len() + 1));
            day.groups.push(Group { period, number, bags, own_bags, ranks });
        }
    }
    for group in (0..day.groups.len()).filter(|g| day.groups[*g].own_bags) {
        day.rules.push(Rule::Bags { group });
    }
    if day.groups.iter().any(|group| !group.own_bags) {
        day.rules.push(Rule::UsualBags { bags: usual });
    }
    for _ in 0..if like.rules == 0 { 0 } else { chance.below(like.rules + 1) } {
        let rule = rule(chance, &day);
        day.rules.push(rule);
    }
    if like.stock {
        let takes: Vec<i64> = day.treatments.iter().map(|_| chance.below(4) as i64).collect();
        let all: i64 = day.groups.iter().map(|group| i64::from(group.bags)).sum();
        let bench: i64 = day.bench.iter().map(|(t, bags)| takes[*t] * i64::from(*bags)).sum();
        let bench = bench * day.periods.len() as i64;
        let most = bench + all + chance.below(2 * all as usize + 1) as i64;
        let in_words = format!("{most} g");
        day.rules.push(Rule::Stock(Stock { name: "flour".into(), in_words, takes, most }));
    }
    day
}

fn rule(chance: &mut Chance, day: &Day) -> Rule {
    let group = chance.below(day.groups.len());
    let question = chance.below(day.questions.len());
    let period = (chance.below(2) == 0).then(|| chance.below(day.periods.len()));
    let groups = chance.below(3) as u32;
    match chance.below(8) {
        0 | 1 => Rule::Set { group, question },
        2 | 3 => Rule::Never { group, question },
        4 => Rule::Least { period, question, groups: groups + 1 },
        5 | 6 => Rule::Most { period, question, groups },
        _ => {
            let period = chance.below(day.periods.len());
            let own = day.groups.iter().filter(|group| group.period == period);
            let made = own.map(|group| group.bags).sum::<u32>() + day.bench_bags();
            let bags = (made + 2).saturating_sub(chance.below(5) as u32);
            Rule::Tools { period, tools: "1 ruler".into(), bags }
        }
    }
}

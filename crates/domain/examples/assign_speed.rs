//! How long it takes to decide who does what on invented days of 5 periods with 10 groups each.
//!
//! ```text
//! cargo run --release -p barm-domain --example assign_speed [DAYS]
//! ```

#![allow(clippy::print_stdout, reason = "it prints what it measures")]

use barm_domain::assign::day::{Arm, Day, Group};
use barm_domain::assign::rule::Rule;
use barm_domain::assign::{NotAssigned, STEPS, assign};
use barm_science::statistics::chance::Chance;
use std::time::Instant;

/// A day on which every group ranks some of the questions; groups make 2 to 4 bags, all as many or
/// each its own number.
fn day(seed: u64, mixed: bool, rules: usize) -> Day {
    let mut chance = Chance::from_seed(seed);
    let mut day = Day {
        periods: (1..=5).map(|period| period.to_string()).collect(),
        questions: (0..2 + chance.below(6)).map(|question| question.to_string()).collect(),
        ..Day::default()
    };
    let new = |day: &mut Day| {
        day.treatments.push(String::new());
        day.treatments.len() - 1
    };
    for question in 0..day.questions.len() {
        let reference = Some(new(&mut day));
        let treatments: Vec<usize> = (0..2 + chance.below(4)).map(|_| new(&mut day)).collect();
        let asked = vec![2 + chance.below(5) as u32; treatments.len()];
        day.arms.push(Arm { question, treatments, asked, reference, shared: false });
    }
    let usual = 2 + chance.below(3) as u32;
    for period in 0..5 {
        for number in 1..=10 {
            let bags = if mixed { 2 + chance.below(3) as u32 } else { usual };
            let mut ranks: Vec<usize> = (0..day.questions.len()).collect();
            for at in (1..ranks.len()).rev() {
                ranks.swap(at, chance.below(at + 1));
            }
            ranks.truncate(1 + chance.below(3));
            day.groups.push(Group { period, number, bags, own_bags: mixed, ranks });
        }
    }
    day.rules.push(Rule::UsualBags { bags: usual });
    if mixed {
        day.rules = (0..50).map(|group| Rule::Bags { group }).collect();
    }
    for _ in 0..rules {
        let (group, question) = (chance.below(50), chance.below(day.questions.len()));
        let period = Some(chance.below(5));
        day.rules.push(match chance.below(4) {
            0 => Rule::Set { group, question },
            1 => Rule::Never { group, question },
            2 => Rule::Least { period, question, groups: 1 + chance.below(2) as u32 },
            _ => Rule::Most { period, question, groups: 1 + chance.below(4) as u32 },
        });
    }
    day
}

fn main() {
    let days: u64 = std::env::args().nth(1).and_then(|days| days.parse().ok()).unwrap_or(200);
    for (name, mixed, rules) in [
        ("as many bags each, wishes alone", false, 0),
        ("as many bags each, 12 rules", false, 12),
        ("2 to 4 bags, wishes alone", true, 0),
        ("2 to 4 bags, 12 rules", true, 12),
    ] {
        let (mut times, mut gaps, mut steps) = (Vec::new(), Vec::new(), Vec::new());
        let (mut proven, mut clashes, mut lost) = (0, 0, 0);
        for seed in 0..days {
            let day = day(seed, mixed, rules);
            let start = Instant::now();
            let found = assign(&day, seed, STEPS);
            times.push(start.elapsed().as_secs_f64());
            match found {
                Ok(found) => {
                    proven += u64::from(found.proven);
                    gaps.push(found.gap(&day));
                    steps.push(found.steps);
                }
                Err(NotAssigned::Clash(_)) => clashes += 1,
                Err(_) => lost += 1,
            }
        }
        times.sort_by(f64::total_cmp);
        gaps.sort_by(f64::total_cmp);
        steps.sort_unstable();
        let at = |share: f64| ((times.len() - 1) as f64 * share) as usize;
        println!(
            "{name}: median {:.3} s, 99 of 100 within {:.3} s, worst {:.3} s; {proven} of {} proven, \
             gap over 1 % on {}, widest {:.2} %, {clashes} clashes, {lost} not found; flows up to {}",
            times[at(0.5)],
            times[at(0.99)],
            times[at(1.0)],
            gaps.len(),
            gaps.iter().filter(|gap| **gap > 0.01).count(),
            100.0 * gaps.last().copied().unwrap_or(0.0),
            steps.last().copied().unwrap_or(0)
        );
    }
}

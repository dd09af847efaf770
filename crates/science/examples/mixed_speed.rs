//! How long comparisons with groups as chance take: one class, and a district's pooled table.
//!
//! `cargo run --release -p barm-science --example mixed_speed`

#![expect(clippy::print_stdout, reason = "a measurement is for reading")]

use barm_science::statistics::chance::Chance;
use barm_science::statistics::compare::{BagValue, Compared, Comparison, How, compare};
use std::time::Instant;

/// Bags of `blocks` periods with `groups` groups each; `made` says which treatments a group makes.
fn bags(
    blocks: usize,
    groups: usize,
    chance: &mut Chance,
    made: impl Fn(usize, usize, &mut Chance) -> Vec<usize>,
) -> Vec<BagValue> {
    let mut list = Vec::new();
    for block in 0..blocks {
        let day = 20.0 + 5.0 * chance.normal();
        for group in 0..groups {
            let habit = 2.0 * chance.normal();
            for treatment in made(block, group, chance) {
                let value = day + habit + treatment as f64 + 3.0 * chance.normal();
                list.push(BagValue { value, treatment, block, group: groups * block + group });
            }
        }
    }
    list
}

fn timed(name: &str, list: &[BagValue], compared: &Compared, times: usize) {
    let mut took: Vec<f64> = Vec::new();
    let mut last: Option<Comparison> = None;
    for _ in 0..times {
        let start = Instant::now();
        last = Some(compare(list, compared, &How::default()));
        took.push(start.elapsed().as_secs_f64() * 1e3);
    }
    took.sort_by(f64::total_cmp);
    let Some(last) = last else { return };
    let made = last.contrasts.iter().filter(|c| c.outcome.is_ok()).count();
    println!(
        "{name}: {} bags, {made} comparisons, {:?}, error {:.1e}: median {:.1} ms, longest {:.1} ms",
        list.len(),
        last.together,
        last.chance_error,
        took[took.len() / 2],
        took[took.len() - 1],
    );
}

fn main() {
    let mut chance = Chance::from_seed(6);
    let reference = Compared::Reference(0);
    let own = bags(1, 8, &mut chance, |_, group, _| vec![0, 1 + group % 4, 1 + group % 4]);
    timed("a period, each group with its own reference", &own, &reference, 21);
    let even = bags(5, 8, &mut chance, |_, group, _| vec![0, 1 + group % 4]);
    timed("five periods, even", &even, &reference, 21);
    let some = |most: usize| {
        move |_: usize, group: usize, chance: &mut Chance| {
            let count = 1 + chance.below(3);
            let mut made = vec![1 + (group + chance.below(most - 1)) % (most - 1); count];
            made.extend(if chance.uniform() < 0.5 { vec![0] } else { vec![] });
            made
        }
    };
    for treatments in [4, 6, 12] {
        let uneven = bags(5, 8, &mut chance, some(treatments));
        let name = format!("five periods, uneven, {treatments} treatments");
        timed(&name, &uneven, &reference, 21);
        timed(&format!("{name}, all pairs"), &uneven, &Compared::AllPairs, 11);
    }
    let district = bags(2_000, 25, &mut chance, |_, _, chance| {
        (0..4).map(|at| if at == 0 { 0 } else { chance.below(20) }).collect()
    });
    timed("a district", &district, &reference, 3);
    timed("a district, all pairs", &district, &Compared::AllPairs, 1);
    if let Ok(status) = std::fs::read_to_string("/proc/self/status") {
        let peak = status.lines().find(|line| line.starts_with("VmHWM"));
        println!("peak memory: {}", peak.unwrap_or("unknown"));
    }
}

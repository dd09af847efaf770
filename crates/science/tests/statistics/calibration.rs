//! How often the words and intervals are wrong, by simulation.

use crate::size::counts;
use barm_science::statistics::chance::Chance;
use barm_science::statistics::compare::{BagValue, Compared, Comparison, How, compare};
use barm_science::statistics::verdict::{Code, Direction, verdict};

/// A kind of day: bags of each treatment (the reference is treatment 0) in each period.
struct Cell {
    name: &'static str,
    bags: Vec<Vec<usize>>,
}

/// Every treatment with as many bags in every period.
fn even(name: &'static str, periods: usize, treatments: usize, bags: usize) -> Cell {
    Cell { name, bags: vec![vec![bags; treatments]; periods] }
}

fn cells() -> Vec<Cell> {
    vec![
        even("2 bags in 1 period, 2 treatments", 1, 2, 2),
        even("2 bags in 1 period, 4 treatments", 1, 4, 2),
        even("3 bags in 1 period, 3 treatments", 1, 3, 3),
        even("1 bag in each of 3 periods, 3 treatments", 3, 3, 1),
        even("1 bag in each of 5 periods, 6 treatments", 5, 6, 1),
        even("2 bags in each of 3 periods, 2 treatments", 3, 2, 2),
        Cell {
            name: "three periods, treatments in some of them",
            bags: vec![vec![2, 1, 2, 0], vec![1, 0, 2, 2], vec![1, 2, 0, 1]],
        },
        Cell {
            name: "four periods, uneven, 5 treatments",
            bags: vec![
                vec![1, 2, 0, 1, 1],
                vec![1, 0, 2, 1, 0],
                vec![2, 1, 1, 0, 1],
                vec![1, 1, 0, 2, 2],
            ],
        },
    ]
}

/// One class: normal bags with a spread of 4 mm around their period and `effect` of the treatment.
fn class(cell: &Cell, effect: impl Fn(usize) -> f64, chance: &mut Chance) -> Comparison {
    let mut list = Vec::new();
    for (block, treatments) in cell.bags.iter().enumerate() {
        let day = 20.0 + 6.0 * chance.normal();
        for (treatment, &count) in treatments.iter().enumerate() {
            for _ in 0..count {
                let value = day + effect(treatment) + 4.0 * chance.normal();
                list.push(BagValue { value, treatment, block, group: list.len() });
            }
        }
    }
    compare(&list, &Compared::Reference(0), &How::read_with(0.7))
}

/// Classes of one cell: fewer where each takes long, as uneven designs do.
fn classes(cell: &Cell) -> usize {
    let uneven = cell.bags.concat().contains(&0);
    if uneven { counts(60, 120, 2_000) } else { counts(300, 600, 10_000) }
}

/// The 99 % sampling error of a share of so many classes.
fn slack(share: f64, classes: usize) -> f64 {
    2.576 * (share * (1.0 - share) / classes as f64).sqrt()
}

#[test]
fn a_false_clear_comes_at_most_once_in_twenty_classes() {
    for (seed, cell) in cells().iter().enumerate() {
        let mut chance = Chance::from_seed(100 + seed as u64);
        let classes = classes(cell);
        let mut false_clear = [0_usize; 2];
        for _ in 0..classes {
            let answer = class(cell, |_| 0.0, &mut chance);
            for (readable, count) in [0.0, 3.0].iter().zip(&mut false_clear) {
                let clear = |c| verdict(c, *readable).code == Code::Clear;
                *count += usize::from(answer.contrasts.iter().any(clear));
            }
        }
        for count in false_clear {
            let share = count as f64 / classes as f64;
            let bar = 0.05 + slack(0.05, classes);
            assert!(share <= bar, "{}: {share} of {classes} classes, bar {bar}", cell.name);
        }
    }
}

#[test]
fn the_intervals_of_a_question_hold_together() {
    for (seed, cell) in cells().iter().enumerate() {
        let mut chance = Chance::from_seed(200 + seed as u64);
        let classes = classes(cell);
        let effect = |treatment: usize| 5.0 * treatment as f64;
        let hold = (0..classes)
            .filter(|_| {
                class(cell, effect, &mut chance).contrasts.iter().all(|contrast| {
                    let estimate = contrast.outcome.clone().unwrap();
                    (estimate.low..=estimate.high).contains(&effect(contrast.treatment))
                })
            })
            .count();
        let share = hold as f64 / classes as f64;
        let (low, high) = (0.93 - slack(0.93, classes), 0.98 + slack(0.98, classes));
        assert!((low..=high).contains(&share), "{}: {share} of {classes}", cell.name);
    }
}

/// The reason for 80 %: whatever the true difference, a leaning or a clear result points the wrong
/// way at most once in ten comparisons.
#[test]
fn a_direction_is_wrong_at_most_once_in_ten() {
    for (seed, cell) in cells().iter().enumerate().filter(|(_, cell)| cell.bags.len() < 4) {
        let mut chance = Chance::from_seed(300 + seed as u64);
        let (mut wrong, mut all) = (0_usize, 0_usize);
        for _ in 0..classes(cell) / 2 {
            for contrast in class(cell, |t| 0.4 * t as f64, &mut chance).contrasts {
                all += 1;
                wrong +=
                    usize::from(verdict(&contrast, 0.0).direction == Some(Direction::Less));
            }
        }
        let share = wrong as f64 / all as f64;
        assert!(share <= 0.10 + slack(0.10, all), "{}: {share} of {all}", cell.name);
    }
}

//! How often intervals with groups as chance are wrong, by simulation.

use crate::size::counts;
use barm_science::statistics::chance::Chance;
use barm_science::statistics::compare::{BagValue, Compared, Comparison, How, compare};
use barm_science::statistics::mixed::Policy;

/// A kind of day: which treatments (0 is the reference) a group makes in a period.
struct Cell {
    name: &'static str,
    periods: usize,
    groups: usize,
    made: fn(usize, usize) -> Vec<usize>,
}

fn cells() -> Vec<Cell> {
    vec![
        Cell {
            name: "one period, each group with its own reference",
            periods: 1,
            groups: 6,
            made: |_, group| vec![0, 1 + group % 3, 1 + group % 3],
        },
        Cell {
            name: "three periods, whole groups, two bags each",
            periods: 3,
            groups: 4,
            made: |_, group| vec![group % 4; 2],
        },
        Cell {
            name: "five periods, own references but for some",
            periods: 5,
            groups: 4,
            made: |period, group| {
                let treatment = 1 + (group + period) % 3;
                if (period + group) % 3 == 0 { vec![treatment; 2] } else { vec![0, treatment] }
            },
        },
        Cell {
            name: "one period, two groups a treatment",
            periods: 1,
            groups: 6,
            made: |_, group| vec![group % 3; 2],
        },
    ]
}

/// One class: a spread of 3 mm between bags, `ratio` times that between groups.
fn class(cell: &Cell, ratio: f64, how: &How, chance: &mut Chance) -> Comparison {
    let mut list = Vec::new();
    for block in 0..cell.periods {
        let day = 20.0 + 6.0 * chance.normal();
        for group in 0..cell.groups {
            let habit = 3.0 * ratio * chance.normal();
            for treatment in (cell.made)(block, group) {
                let value = day + habit + 2.0 * treatment as f64 + 3.0 * chance.normal();
                list.push(BagValue { value, treatment, block, group });
            }
        }
    }
    compare(&list, &Compared::Reference(0), how)
}

/// All 95 % intervals of a question hold together in 95 % of classes, within the 99 % error of the
/// simulation: at least where groups truly differ as much as bags do, and never in fewer than 93 %.
#[test]
fn the_intervals_of_a_question_hold_together() {
    let how = How::default();
    for (seed, cell) in cells().iter().enumerate() {
        for (ratio, least) in [(0.0, 0.945), (0.5, 0.93), (1.0, 0.93)] {
            let mut chance = Chance::from_seed(600 + seed as u64);
            let classes = counts(150, 300, 2_000);
            let hold = (0..classes)
                .filter(|_| {
                    class(cell, ratio, &how, &mut chance).contrasts.iter().all(|contrast| {
                        let found = contrast.outcome.as_ref().unwrap();
                        let truth = 2.0 * contrast.treatment as f64;
                        (found.low..=found.high).contains(&truth)
                    })
                })
                .count();
            let share = hold as f64 / classes as f64;
            let slack = 2.576 * (least * (1.0_f64 - least) / classes as f64).sqrt();
            assert!(share >= least - slack, "{}, {ratio}: {share} of {classes}", cell.name);
        }
    }
}

/// Where whole groups are compared, a kept share never makes intervals narrower.
#[test]
fn a_kept_share_widens_comparisons_of_whole_groups() {
    let plain = How::default();
    let kept = How { policy: Policy::LeastShare(0.2), ..plain };
    let whole =
        ["three periods, whole groups, two bags each", "one period, two groups a treatment"];
    for cell in cells().into_iter().filter(|cell| whole.contains(&cell.name)) {
        let width = |how: &How| {
            let mut chance = Chance::from_seed(700);
            let mut sum = 0.0;
            for _ in 0..counts(30, 100, 500) {
                for contrast in class(&cell, 0.0, how, &mut chance).contrasts {
                    let found = contrast.outcome.unwrap();
                    sum += found.high - found.low;
                }
            }
            sum
        };
        let (plain, kept) = (width(&plain), width(&kept));
        assert!(kept >= 0.999 * plain, "{}: {kept} {plain}", cell.name);
    }
}

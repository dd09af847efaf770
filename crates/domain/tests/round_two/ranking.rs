//! Whether the order of proposals is the one that simulated second rounds have.

use crate::class::{BARE, found, handed, scattered, sugar};
use crate::size::counts;
use barm_domain::outlook::Look;
use barm_domain::plan::{Plan, Round};
use barm_domain::power::expected;
use barm_domain::reading::Reading;
use barm_domain::round_two::{By, Proposal, RoundOne, pool, propose};
use barm_science::prior::Learned;
use barm_science::statistics::chance::Chance;
use barm_science::statistics::verdict::Code;

/// What is believed of the rise of a treatment beside the control (mm), as the proposals take it.
fn believed(plan: &Plan, name: &str, minute: f64) -> Vec<f64> {
    let rises = |name: &str| {
        let treatment = plan.treatment(name).expect("a treatment");
        expected(plan, treatment, 128, Look::default().seed).expect("a forecast").at(minute)
    };
    rises(name).less(&rises(BARE))
}

/// Verdicts of both rounds that are clear, on the average, with what half their intervals come to (mm).
fn simulated(
    first: &Plan,
    readings: &[Reading],
    one: &Proposal,
    sd: f64,
    times: usize,
) -> (f64, f64) {
    let minute = 24.0;
    let mut chance = Chance::from_seed(40);
    let beliefs: Vec<Vec<f64>> =
        one.told.iter().map(|told| believed(first, &told.pair.treatment, minute)).collect();
    let (mut clear, mut squares) = (0, 0.0);
    for _ in 0..times {
        let true_apart: Vec<f64> = beliefs
            .iter()
            .map(|belief| {
                belief[(chance.uniform() * belief.len() as f64) as usize % belief.len()]
            })
            .collect();
        let mean = |name: &str| {
            let at = one.told.iter().position(|told| told.pair.treatment == name);
            20.0 + at.map_or(0.0, |at| true_apart[at])
        };
        let two = scattered(&one.plan, mean, sd, &mut chance);
        let told = pool(&handed(first, readings), &handed(&one.plan, &two)).expect("rounds");
        for pair in &told.looks[0].again {
            let answer = &told.both.questions[0];
            let compared =
                answer.comparisons.iter().find(|c| c.treatment == pair.treatment).unwrap();
            clear += usize::from(compared.without.verdict.code == Code::Clear);
            // On the terms of the first look: by the standard error, not by the pooled level.
            let estimate = compared.without.difference.unwrap();
            squares += estimate.se * estimate.se / one.told.len() as f64;
        }
    }
    (clear as f64 / times as f64, (squares / times as f64).sqrt())
}

/// Draws what is believed, makes the second round's bags by chance, judges both rounds through the door of
/// the real day, and counts.
#[test]
fn more_bags_are_ranked_as_simulated_second_rounds_rank_them() {
    let first = sugar(Round::First, 4);
    let mut chance = Chance::from_seed(9);
    let mean = |name: &str| match name {
        "Spoon" => 24.0,
        "Pinch" => 22.0,
        _ => 20.0,
    };
    let readings = scattered(&first, mean, 4.0, &mut chance);
    let result = found(&first, &readings);
    let one = RoundOne { plan: &first, result: &result, learned: &Learned::default() };
    let all = propose(&one, By::Clear, &|_, _| ()).expect("second rounds").ranked;
    let sd = result.questions[0].variances.expect("a spread").bag.max(0.5);
    let open: Vec<&Proposal> = all
        .iter()
        .filter(|one| one.shared.new.is_empty() && [2, 8].contains(&one.each))
        .collect();
    assert!(open.len() >= 5, "{}", open.len());
    let times = counts(20, 80, 1_000);
    let tried: Vec<(f64, f64)> =
        open.iter().map(|one| simulated(&first, &readings, one, sd, times)).collect();
    for (one, (clear, se)) in open.iter().zip(&tried) {
        let names: Vec<&str> = one.told.iter().map(|t| t.pair.treatment.as_str()).collect();
        println!(
            "{names:?} x {}: clear {:.3}, simulated {clear:.3}; half {:.2}, se {se:.2}",
            one.each, one.gain.clear, one.gain.half_then
        );
    }
    // A chance of one of k verdicts in `times` classes is off by this at most, 99 times in 100.
    let error = 2.576 * (2.0 * 0.25 / times as f64).sqrt();
    for (a, one) in open.iter().enumerate() {
        for (b, other) in open.iter().enumerate() {
            let foretold = one.gain.clear - other.gain.clear;
            let seen = tried[a].0 - tried[b].0;
            assert!(foretold <= 0.1 || seen > -2.0 * error, "{a} {b}: {foretold} {seen}");
            let same = one.told.len() == 1 && other.told.len() == 1;
            if same && one.told[0].pair == other.told[0].pair && one.each > other.each {
                assert!(tried[a].1 < tried[b].1, "more bags, narrower: {a} {b}");
                assert!(one.gain.half_then < other.gain.half_then);
            }
        }
    }
}

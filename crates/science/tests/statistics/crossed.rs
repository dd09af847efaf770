//! Crossed questions against R and by hand.

use crate::experiments::{Trial, experiment, near, numbered, r_values};
use barm_science::statistics::compare::{How, NotComparable};
use barm_science::statistics::distribution::student;
use barm_science::statistics::factorial::{CrossedValue, Factorial, factorial};
use barm_science::statistics::mixed::MixedError;

fn crossed(trials: &[Trial]) -> Vec<CrossedValue> {
    let first = numbered(trials.iter().map(|t| t.treatment.as_str()));
    let second = numbered(trials.iter().map(|t| t.second.as_str()));
    let block = numbered(trials.iter().map(|t| t.block.as_str()));
    (0..trials.len())
        .map(|i| CrossedValue {
            value: trials[i].value,
            first: first[i],
            second: second[i],
            block: block[i],
            group: i,
        })
        .collect()
}

/// The sum of squares behind the test of the interaction: F · degrees of freedom · mean square error.
fn squares(answer: &Factorial) -> f64 {
    let (test, bag) = (answer.interaction.clone().unwrap(), answer.variances.unwrap().bag);
    test.f * test.df1 * bag * bag
}

/// R 4.2.2, `aov(breaks ~ wool * tension)`.
#[test]
fn the_interaction_agrees_with_r() {
    let answer =
        factorial(&crossed(&experiment("fac_warpbreaks")), (0, 0), &How::read_with(0.0));
    let r = r_values("fac_warpbreaks");
    let wanted = |what: &str| {
        r[&("summary(aov(breaks ~ wool * tension))".to_owned(), format!("wool:tension {what}"))]
    };
    let ours = answer.interaction.clone().unwrap();
    near("df", ours.df1, wanted("Df"), 0.0, 0.0);
    near("ss", squares(&answer), wanted("Sum Sq"), 1e-11, 0.0);
    near("F", ours.f, wanted("F value"), 1e-11, 0.0);
    near("p", ours.p, wanted("Pr(>F)"), 1e-11, 0.0);
}

/// Yamada et al. (1985) through Devore & Peck (2008), recomputed by R 4.2.2: interaction 181.25,
/// p 0.7276895, mean square error 135.875; sugar F 13.29347 with 1 degree of freedom, which is the
/// square of the main effect over its standard error.
#[test]
fn the_sugar_and_oxygen_experiment_agrees() {
    let answer =
        factorial(&crossed(&experiment("sugar-ethanol")), (0, 0), &How::read_with(0.0));
    let ours = answer.interaction.clone().unwrap();
    near("ss", squares(&answer), 181.25, 1e-11, 0.0);
    near("p", ours.p, 0.727_689_5, 1e-7, 0.0);
    let spread = answer.variances.unwrap().bag;
    near("mean square error", spread * spread, 135.875, 1e-12, 0.0);
    let sugar = answer.first[0].outcome.clone().unwrap();
    near("F", (sugar.difference / sugar.se).powi(2), 13.293_47, 1e-6, 0.0);
    near("df", sugar.df, 8.0, 1e-12, 0.0);
    assert_eq!((answer.first.len(), answer.second.len()), (1, 3));
}

/// Worked by hand: means 10 and 14 without enzyme, 12 and 22 with it, two bags each ±1. The enzyme
/// adds 5 on average and 6 more on the second food; SS of the interaction is 2 · 6²/4 = 18 and the
/// mean square error 2, so F is 9 on 1 and 4 degrees of freedom.
#[test]
fn a_two_by_two_question_is_what_one_works_by_hand() {
    let mean = [[10.0, 12.0], [14.0, 22.0]];
    let mut bags = Vec::new();
    for (first, row) in mean.iter().enumerate() {
        for (second, mean) in row.iter().enumerate() {
            for off in [-1.0, 1.0] {
                let (value, group) = (mean + off, bags.len());
                bags.push(CrossedValue { value, first, second, block: 0, group });
            }
        }
    }
    let answer = factorial(&bags, (0, 0), &How::read_with(0.0));
    let interaction = answer.interaction.clone().unwrap();
    near("ss", squares(&answer), 18.0, 1e-12, 0.0);
    near("F", interaction.f, 9.0, 1e-12, 0.0);
    near("p", interaction.p, student::two_sided(3.0, 4.0), 1e-12, 0.0);
    let food = answer.first[0].outcome.clone().unwrap();
    let enzyme = answer.second[0].outcome.clone().unwrap();
    near("food", food.difference, 7.0, 1e-13, 0.0);
    near("enzyme", enzyme.difference, 5.0, 1e-13, 0.0);
    near("se", enzyme.se, 1.0, 1e-13, 0.0);
    assert_eq!((answer.second[0].n, answer.second[0].n_reference), (4, 4));
}

#[test]
fn crossed_questions_that_cannot_be_answered_say_why() {
    let value = |first, second, value: f64| {
        let group = value.to_bits() as usize;
        CrossedValue { value, first, second, block: 0, group }
    };
    let empty_cell = [
        value(0, 0, 1.0),
        value(0, 0, 2.0),
        value(0, 1, 3.0),
        value(1, 0, 4.0),
        value(1, 0, 5.0),
    ];
    let answer = factorial(&empty_cell, (0, 0), &How::read_with(0.0));
    assert_eq!(answer.first[0].outcome, Err(NotComparable::EmptyCell));
    assert_eq!(answer.interaction, Err(MixedError::NothingToTest));
    let single = [value(0, 0, 1.0), value(0, 1, 2.0), value(1, 0, 3.0), value(1, 1, 7.0)];
    let answer = factorial(&single, (0, 0), &How::read_with(0.0));
    assert_eq!(
        answer.first[0].outcome,
        Err(NotComparable::TooFewBags { n: 2, n_reference: 2 })
    );
    assert_eq!(answer.interaction, Err(MixedError::NoRest));
    let absent = factorial(&single, (5, 0), &How::read_with(0.7));
    assert_eq!(absent.first.len(), 2);
    assert!(absent.first.iter().all(|effect| effect.outcome.is_err()));
    for wild in [f64::NAN, f64::INFINITY, 1e308] {
        let mut bags = single.to_vec();
        bags.push(value(0, 0, wild));
        let answer = factorial(&bags, (0, 0), &How::read_with(0.7));
        assert!(answer.interaction.is_err() && answer.first[0].outcome.is_err());
    }
    let nothing = factorial(&[], (0, 0), &How::read_with(0.7));
    assert!(nothing.interaction.is_err() && nothing.first.is_empty());
}

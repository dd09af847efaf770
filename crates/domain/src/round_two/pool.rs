//! Both rounds together.

use super::before::counts;
use super::gain::pooled_level;
use super::idea::Pair;
use super::merge::{merged, together};
use super::refused::NotPooled;
use crate::plan::{Plan, Round};
use crate::reading::{Reading, SetAside};
use crate::result::{ClassResult, analyze};
use barm_science::statistics::compare::LEVEL;
use barm_science::statistics::second_look::Sides;

/// A round that was made.
#[derive(Debug, Clone, Copy)]
pub struct Handed<'a> {
    /// Its plan.
    pub plan: &'a Plan,
    /// What was read.
    pub readings: &'a [Reading],
    /// What is set aside.
    pub set_aside: &'a [SetAside],
}

/// Both rounds of a question, as they are told.
#[derive(Debug, Clone, PartialEq)]
pub struct Pooled {
    /// Round one as it was told on its day.
    pub first: ClassResult,
    /// Round two by itself: judged as a question of its own where both may not be judged together, else
    /// without verdicts.
    pub second: ClassResult,
    /// Both rounds together, every period of each a block.
    pub both: ClassResult,
    /// The plan of both: what `both` is an analysis of.
    pub plan: Plan,
    /// How each question of round two was looked at.
    pub looks: Vec<Looks>,
    /// Which round the first plan's is: says whether both may be judged together.
    pub round: Round,
}

/// How a question was looked at.
#[derive(Debug, Clone, PartialEq)]
pub struct Looks {
    /// Its id.
    pub question: String,
    /// The level of round one by itself (1); nothing of a question that it did not ask or could not compare.
    pub first: Option<f64>,
    /// The level of both rounds together (1); nothing where round one used up everything.
    pub pooled: Option<f64>,
    /// Pairs that have new bags on both sides; the others stay as round one told them.
    pub again: Vec<Pair>,
}

/// Puts two rounds together and judges them.
///
/// Round one's bags count once, as bags. A round that was foreseen as the first of two was judged at
/// [`FIRST_OF_TWO`](barm_science::statistics::second_look::FIRST_OF_TWO), and both together at what that leaves;
/// one that was judged at the full level leaves nothing: then both together have a difference and an interval, but
/// no verdict, and round two is judged by itself. A question's level is the strictest that one of its
/// comparisons asks for.
///
/// # Errors
/// [`NotPooled`] says why they cannot be put together.
pub fn pool(first: &Handed<'_>, second: &Handed<'_>) -> Result<Pooled, NotPooled> {
    let plan = merged(first.plan, second.plan)?;
    let of = |one: &Handed<'_>| analyze(one.plan, &[], one.readings, one.set_aside);
    let told = of(first);
    let twice = first.plan.round == Round::First;
    let alone = of(second).judged_at(second.plan, &|_| (!twice).then_some(LEVEL));
    for (result, round) in [(&told, "first"), (&alone, "second")] {
        if result.minute.is_none() {
            return Err(NotPooled::NoReadings { round });
        }
    }
    let (readings, set_aside) =
        together((first.readings, first.set_aside), (second.readings, second.set_aside));
    let both = analyze(&plan, &[], &readings, &set_aside);
    let looks: Vec<Looks> = second
        .plan
        .questions
        .iter()
        .map(|question| looks(&question.id, twice, [&told, &alone, &both]))
        .collect();
    let level = |id: &str| looks.iter().find(|look| look.question == id)?.pooled;
    let both = both.judged_at(&plan, &level);
    Ok(Pooled { first: told, second: alone, both, plan, looks, round: first.plan.round })
}

/// How a question is looked at.
fn looks(id: &str, twice: bool, [first, second, both]: [&ClassResult; 3]) -> Looks {
    let answer = |result: &'_ ClassResult| {
        result.questions.iter().find(|answer| answer.question == id).cloned()
    };
    let (one, two, all) = (answer(first), answer(second), answer(both));
    let mut looks =
        Looks { question: id.to_owned(), first: None, pooled: Some(LEVEL), again: Vec::new() };
    let (Some(two), Some(all)) = (two, all) else { return looks };
    let comparisons = all.comparisons.len();
    for pair in &all.comparisons {
        let same = |other: &&crate::result::Compared| {
            other.treatment == pair.treatment && other.reference == pair.reference
        };
        let Some(new) = two.comparisons.iter().find(same).map(counts) else { continue };
        if new.n == 0 || new.n_reference == 0 {
            continue;
        }
        looks.again.push(Pair {
            question: id.to_owned(),
            treatment: pair.treatment.clone(),
            reference: pair.reference.clone(),
        });
        let before = one.as_ref().and_then(|one| one.comparisons.iter().find(same)).map(counts);
        let Some(before) = before else { continue };
        let Some(seen) = &before.difference else { continue };
        looks.first = one.as_ref().and_then(|one| one.level);
        let sides = |n: usize, n_reference: usize| Sides {
            bags: n as f64,
            bags_reference: n_reference as f64,
        };
        let pooled = counts(pair).difference.map_or(seen.df + 1.0, |both| both.df);
        let left = if twice {
            pooled_level(
                sides(before.n, before.n_reference),
                sides(new.n, new.n_reference),
                (seen.df, pooled),
                comparisons,
            )
        } else {
            0.0
        };
        looks.pooled = looks.pooled.map(|level| level.min(left));
    }
    looks.pooled = looks.pooled.filter(|level| *level > 0.0);
    looks
}

//! Two things varied at once: does one change what the other does?

use super::compare::{Estimate, How, NotComparable};
use super::mixed::{Family, JointTest, Mixed, MixedError, Place, Records, Told, Variances};
use std::collections::{BTreeMap, BTreeSet};

/// One value of one bag of a crossed question.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CrossedValue {
    /// The bag's one number, such as its rise at the last common reading (mm).
    pub value: f64,
    /// Level of the first variable, such as the food, by any number.
    pub first: usize,
    /// Level of the second variable, such as the enzyme, by any number.
    pub second: usize,
    /// Which block (class period), by any number.
    pub block: usize,
    /// Which group of that block made it, by any number.
    pub group: usize,
}

/// What a crossed question shows.
#[derive(Debug, Clone, PartialEq)]
pub struct Factorial {
    /// Test of whether the second variable does the same at all levels of the first.
    pub interaction: Result<JointTest, MixedError>,
    /// Each level of the first variable against its reference, averaged over the second.
    pub first: Vec<MainEffect>,
    /// Each level of the second variable against its reference, averaged over the first.
    pub second: Vec<MainEffect>,
    /// How much bags alike and groups differ, where it could be estimated.
    pub variances: Option<Variances>,
}

/// One level of a variable against its reference level.
#[derive(Debug, Clone, PartialEq)]
pub struct MainEffect {
    /// The level.
    pub level: usize,
    /// The level it is compared with.
    pub reference: usize,
    /// Bags of the level.
    pub n: usize,
    /// Bags of the reference level.
    pub n_reference: usize,
    /// The difference; its interval holds together with those of all main effects of the question.
    pub outcome: Result<Estimate, NotComparable>,
}

/// Analyzes a crossed question; `references` are the levels of the first and the second variable
/// that the others are compared with, `how` as in [`compare`](super::compare::compare).
///
/// ```text
/// value = block + cell + group + rest        a cell is one level of each variable
/// ```
///
/// A main effect weighs all levels of the other variable equally, whatever the number of bags
/// (Yates 1934, *J. Am. Stat. Assoc.* 29, 51–66, weighted squares of means), and needs a bag in
/// each cell that it averages.
pub fn factorial(bags: &[CrossedValue], references: (usize, usize), how: &How) -> Factorial {
    let cells = Cells::of(bags);
    let places: Vec<Place> = bags
        .iter()
        .map(|bag| Place {
            value: bag.value,
            treatment: cells.filled[&(bag.first, bag.second)],
            block: bag.block,
            group: bag.group,
        })
        .collect();
    let model = Records::of_treatments(&places, cells.filled.len())
        .map_err(MixedError::from)
        .and_then(|records| Mixed::of(&records, how));
    let effects = |of_first: bool| -> Vec<(Effect, Result<Told, NotComparable>)> {
        let (levels, reference) = if of_first {
            (&cells.firsts, references.0)
        } else {
            (&cells.seconds, references.1)
        };
        let effect = |&level: &usize| {
            let effect = Effect::of(bags, level, reference, of_first);
            let weights = cells.main(level, reference, of_first);
            (effect, effect.told(&model, weights))
        };
        levels.iter().filter(|&&level| level != reference).map(effect).collect()
    };
    let (first, second) = (effects(true), effects(false));
    let made: Vec<&Told> =
        first.iter().chain(&second).filter_map(|(_, told)| told.as_ref().ok()).collect();
    let family = match &model {
        Ok(model) if !made.is_empty() => {
            Some(Family::new(model, &made, None, (how.levels(), how.seed)))
        }
        _ => None,
    };
    let finish = |effects: &[(Effect, Result<Told, NotComparable>)]| -> Vec<MainEffect> {
        let one = |(effect, told): &(Effect, Result<Told, NotComparable>)| {
            let outcome = Estimate::of(told, &model, family.as_ref(), None);
            let &Effect { level, reference, n, n_reference } = effect;
            MainEffect { level, reference, n, n_reference, outcome }
        };
        effects.iter().map(one).collect()
    };
    Factorial {
        first: finish(&first),
        second: finish(&second),
        variances: model.as_ref().ok().map(Mixed::variances),
        interaction: model.and_then(|model| {
            let told: Vec<Told> =
                cells.interactions().iter().filter_map(|weights| model.told(weights)).collect();
            model.jointly(&told.iter().collect::<Vec<_>>()).ok_or(MixedError::NothingToTest)
        }),
    }
}

/// The cells that have a bag.
struct Cells {
    firsts: BTreeSet<usize>,
    seconds: BTreeSet<usize>,
    /// The number of each.
    filled: BTreeMap<(usize, usize), usize>,
}

impl Cells {
    fn of(bags: &[CrossedValue]) -> Self {
        let cells: BTreeSet<(usize, usize)> =
            bags.iter().map(|bag| (bag.first, bag.second)).collect();
        Self {
            firsts: cells.iter().map(|cell| cell.0).collect(),
            seconds: cells.iter().map(|cell| cell.1).collect(),
            filled: cells.into_iter().zip(0..).collect(),
        }
    }

    /// Weights of the cells in a main effect; `None` where one that it averages has no bag.
    fn main(&self, level: usize, reference: usize, of_first: bool) -> Option<Vec<f64>> {
        let others = if of_first { &self.seconds } else { &self.firsts };
        let share = 1.0 / others.len() as f64;
        let mut weights = vec![0.0; self.filled.len()];
        for (level, sign) in [(level, share), (reference, -share)] {
            for &other in others {
                let cell = if of_first { (level, other) } else { (other, level) };
                weights[*self.filled.get(&cell)?] += sign;
            }
        }
        Some(weights)
    }

    /// Weights that are 0 wherever the two variables merely add up, and together hold all such
    /// weights: each cell, less what the marks of levels can make of it.
    fn interactions(&self) -> Vec<Vec<f64>> {
        let mark = |is: &dyn Fn(&(usize, usize)) -> bool| -> Vec<f64> {
            self.filled.keys().map(|cell| f64::from(u8::from(is(cell)))).collect()
        };
        let mut added: Vec<Vec<f64>> = Vec::new();
        let marks = self.firsts.iter().map(|&a| mark(&|cell| cell.0 == a));
        for mark in marks.chain(self.seconds.iter().map(|&b| mark(&|cell| cell.1 == b))) {
            let rest = beside(&added, mark.clone());
            let (size, whole) = (libm::sqrt(square(&rest)), libm::sqrt(square(&mark)));
            if size > ROUNDING * whole {
                added.push(rest.into_iter().map(|v| v / size).collect());
            }
        }
        let cells = self.filled.keys().map(|&one| beside(&added, mark(&|cell| *cell == one)));
        cells.filter(|weights| square(weights) > ROUNDING).collect()
    }
}

/// Share of a vector below which what is left of it is rounding (1).
const ROUNDING: f64 = 1e-9;

/// What is left of a vector beside others that stand at right angles; twice, for the digits.
fn beside(others: &[Vec<f64>], mut vector: Vec<f64>) -> Vec<f64> {
    for _ in 0..2 {
        for other in others {
            let along: f64 = vector.iter().zip(other).map(|(a, b)| a * b).sum();
            for (v, other) in vector.iter_mut().zip(other) {
                *v -= along * other;
            }
        }
    }
    vector
}

fn square(vector: &[f64]) -> f64 {
    vector.iter().map(|v| v * v).sum()
}

/// The two levels of a main effect and their bags.
#[derive(Debug, Clone, Copy)]
struct Effect {
    level: usize,
    reference: usize,
    n: usize,
    n_reference: usize,
}

impl Effect {
    fn of(bags: &[CrossedValue], level: usize, reference: usize, of_first: bool) -> Self {
        let at = |bag: &CrossedValue| if of_first { bag.first } else { bag.second };
        let count = |wanted| bags.iter().filter(|bag| at(bag) == wanted).count();
        Self { level, reference, n: count(level), n_reference: count(reference) }
    }

    fn told(
        &self,
        model: &Result<Mixed, MixedError>,
        weights: Option<Vec<f64>>,
    ) -> Result<Told, NotComparable> {
        let &Self { n, n_reference, .. } = self;
        if n == 0 || n_reference == 0 {
            return Err(NotComparable::NoBags { n, n_reference });
        }
        let weights = weights.ok_or(NotComparable::EmptyCell)?;
        NotComparable::unless_told(model, &weights, (n, n_reference))
    }
}

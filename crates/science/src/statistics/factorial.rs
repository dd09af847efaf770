//! Two things varied at once: does one change what the other does?

use super::additive::{Additive, Row, Spread, marks, multiplier, without_level};
use super::anova::{self, AnovaError, Term};
use super::compare::{Estimate, NotComparable};
use super::linear::{self, Estimated, FitError};
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
}

/// What a crossed question shows.
#[derive(Debug, Clone, PartialEq)]
pub struct Factorial {
    /// Test of whether the second variable does the same at all levels of the first.
    pub interaction: Result<Term, AnovaError>,
    /// Each level of the first variable against its reference, averaged over the second.
    pub first: Vec<MainEffect>,
    /// Each level of the second variable against its reference, averaged over the first.
    pub second: Vec<MainEffect>,
    /// Spread of bags alike, where it could be estimated.
    pub spread: Option<Spread>,
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
/// that the others are compared with, `reading_doubt` as in [`compare`](super::compare::compare).
///
/// ```text
/// value = block + cell + rest        a cell is one level of each variable
/// ```
///
/// A main effect weighs all levels of the other variable equally, whatever the number of bags
/// (Yates 1934, *J. Am. Stat. Assoc.* 29, 51–66, weighted squares of means), and needs a bag in
/// each cell that it averages.
pub fn factorial(
    bags: &[CrossedValue],
    references: (usize, usize),
    reading_doubt: f64,
) -> Factorial {
    let firsts: BTreeSet<usize> = bags.iter().map(|bag| bag.first).collect();
    let seconds: BTreeSet<usize> = bags.iter().map(|bag| bag.second).collect();
    let cells: BTreeMap<(usize, usize), usize> = firsts
        .iter()
        .flat_map(|&a| seconds.iter().map(move |&b| (a, b)))
        .enumerate()
        .map(|(number, cell)| (cell, number))
        .collect();
    let rows: Vec<Row> = bags
        .iter()
        .filter_map(|bag| {
            let treatment = *cells.get(&(bag.first, bag.second))?;
            Some(Row { value: bag.value, block: bag.block, treatment })
        })
        .collect();
    let model = Additive::fit(&rows);
    let mean = |level: usize, of_first: bool, sign: f64| -> Vec<(usize, f64)> {
        let inside = |&(a, b): &(usize, usize)| level == if of_first { a } else { b };
        let over = if of_first { seconds.len() } else { firsts.len() };
        let weight = sign / over as f64;
        cells.iter().filter(|(cell, _)| inside(cell)).map(|(_, &at)| (at, weight)).collect()
    };
    let effects = |of_first: bool| -> Vec<(Effect, Result<Estimated, NotComparable>)> {
        let (levels, reference) =
            if of_first { (&firsts, references.0) } else { (&seconds, references.1) };
        let effect = |&level: &usize| {
            let effect = Effect::of(bags, level, reference, of_first);
            let parts = [mean(level, of_first, 1.0), mean(reference, of_first, -1.0)].concat();
            (effect, effect.told(&model, &parts))
        };
        levels.iter().filter(|&&level| level != reference).map(effect).collect()
    };
    let (first, second) = (effects(true), effects(false));
    let spread = model.as_ref().ok().and_then(|model| model.spread(reading_doubt));
    let comparable: Vec<&Estimated> =
        first.iter().chain(&second).flat_map(|(_, t)| t).collect();
    let judge = spread.and_then(|s| multiplier(&comparable, s.df).map(|times| (s, times)));
    let finish = |effects: Vec<(Effect, Result<Estimated, NotComparable>)>| {
        effects.into_iter().map(|(effect, told)| effect.finish(told, judge)).collect()
    };
    let interaction = interaction(&rows, &cells);
    Factorial { interaction, first: finish(first), second: finish(second), spread }
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
        model: &Result<Additive, FitError>,
        parts: &[(usize, f64)],
    ) -> Result<Estimated, NotComparable> {
        let &Self { n, n_reference, .. } = self;
        if n == 0 || n_reference == 0 {
            return Err(NotComparable::NoBags { n, n_reference });
        }
        match model {
            Ok(model) if parts.iter().any(|(cell, _)| !model.holds(*cell)) => {
                Err(NotComparable::EmptyCell)
            }
            Ok(model) => model.contrast(parts).ok_or(NotComparable::NoSharedBlock),
            Err(why) => Err(NotComparable::from_fit(why, n, n_reference)),
        }
    }

    fn finish(
        self,
        told: Result<Estimated, NotComparable>,
        judge: Option<(Spread, f64)>,
    ) -> MainEffect {
        let Self { level, reference, n, n_reference } = self;
        let outcome = told.and_then(|told| match judge {
            Some((spread, times)) => Ok(Estimate::new(&told, spread, times)),
            None => Err(NotComparable::TooFewBags { n, n_reference }),
        });
        MainEffect { level, reference, n, n_reference, outcome }
    }
}

/// F of what the cells hold beyond blocks and the two variables added up.
fn interaction(
    rows: &[Row],
    cells: &BTreeMap<(usize, usize), usize>,
) -> Result<Term, AnovaError> {
    let pair: BTreeMap<usize, (usize, usize)> =
        cells.iter().map(|(&pair, &cell)| (cell, pair)).collect();
    let level = |row: &Row, of_first: bool| {
        pair.get(&row.treatment).map_or(0, |&(a, b)| if of_first { a } else { b })
    };
    let levels =
        |of: &dyn Fn(&Row) -> usize| -> BTreeSet<usize> { rows.iter().map(of).collect() };
    let mut columns = marks(rows, &levels(&|row| row.block), |row| row.block);
    columns.extend(marks(rows, &levels(&|row| level(row, true)), |row| level(row, true)));
    columns.extend(marks(rows, &levels(&|row| level(row, false)), |row| level(row, false)));
    let added = columns.len();
    columns.extend(marks(rows, &levels(&|row| row.treatment), |row| row.treatment));
    let largest = rows.iter().fold(0.0_f64, |most, row| most.max(row.value.abs()));
    let fit = linear::fit(&columns, &without_level(rows))?;
    anova::one_term(&fit, added..columns.len(), largest)
}

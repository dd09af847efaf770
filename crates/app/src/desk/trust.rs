//! How far the words can be trusted, over many invented classes.

use super::{DeskError, Progress};
use barm_domain::trust::{Cell, Lesson, Tally};
use rayon::prelude::*;
use std::collections::BTreeMap;
use std::sync::atomic::{AtomicUsize, Ordering};

/// What many classes of each kind were told.
#[derive(Debug)]
pub(crate) struct Trust {
    /// Classes of each kind.
    pub(crate) classes: u64,
    /// What they were drawn from.
    pub(crate) seed: u64,
    /// Each kind with its counts.
    pub(crate) cells: Vec<(&'static Cell, Tally)>,
    /// How often "clear" is foretold of a true difference (1), by name, of kinds without slips.
    foretold: BTreeMap<&'static str, f64>,
}

/// How far what is found may be from what was foretold (1).
const FORETOLD: f64 = 0.05;

/// Classes that one core takes at a time.
const AT_A_TIME: u64 = 20;

/// Invents so many classes of each kind. The answer does not depend on how many run at a time.
pub(crate) fn trust(
    cells: &[&'static Cell],
    classes: u64,
    seed: u64,
    progress: &dyn Progress,
) -> Result<Trust, DeskError> {
    let lessons: Vec<Lesson> =
        cells.iter().map(|cell| Lesson::of(cell)).collect::<Result<_, _>>()?;
    let parts: Vec<(usize, u64)> = (0..lessons.len())
        .flat_map(|at| (0..classes.div_ceil(AT_A_TIME)).map(move |part| (at, part * AT_A_TIME)))
        .collect();
    let (done, of) = (AtomicUsize::new(0), lessons.len() * classes as usize);
    let counted: Vec<(usize, Tally)> = parts
        .par_iter()
        .map(|&(at, from)| {
            let until = (from + AT_A_TIME).min(classes);
            let mut tally = Tally::default();
            for number in from..until {
                tally += Tally::of(&lessons[at], number, seed);
            }
            let own = (until - from) as usize;
            progress.step("judging classes", done.fetch_add(own, Ordering::Relaxed) + own, of);
            (at, tally)
        })
        .collect();
    let mut tallies = vec![Tally::default(); lessons.len()];
    for (at, tally) in counted {
        tallies[at] += tally;
    }
    let foretold = cells.iter().zip(&lessons).filter(|(cell, _)| cell.is_foretold());
    let foretold = foretold
        .filter_map(|(cell, lesson)| Some((cell.name, lesson.foretold().ok()?)))
        .collect();
    let cells = cells.iter().copied().zip(tallies).collect();
    Ok(Trust { classes, seed, cells, foretold })
}

impl Trust {
    /// By how much more rarely "clear" is said of a true difference than in the same kind of class
    /// without slips (1), where both were tried.
    pub(crate) fn slips_cost(&self, cell: &Cell, tally: &Tally) -> Option<f64> {
        let bare = cell.without_slips()?;
        let (_, without) = self.cells.iter().find(|(other, _)| *other == bare)?;
        Some(without.true_clear.share()? - tally.true_clear.share()?)
    }

    /// How often "clear" is foretold of a true difference by what `barm power` goes by (1), without slips.
    pub(crate) fn foretold(&self, cell: &Cell) -> Option<f64> {
        self.foretold.get(cell.name).copied()
    }

    /// Kinds in which "clear" is found more than 5 percentage points more or less often than foretold, and how many
    /// kinds were asked.
    pub(crate) fn not_as_foretold(&self) -> (Vec<&'static str>, usize) {
        let both = self.cells.iter().filter_map(|(cell, tally)| {
            Some((cell.name, self.foretold(cell)? - tally.true_clear.share()?))
        });
        let both: Vec<(&str, f64)> = both.collect();
        let off = both.iter().filter(|(_, off)| off.abs() > FORETOLD);
        (off.map(|(name, _)| *name).collect(), both.len())
    }
}

//! How far the words can be trusted, over many invented classes.

use super::{DeskError, Progress};
use barm_domain::trust::{Cell, Lesson, Tally};
use rayon::prelude::*;
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
}

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
    Ok(Trust { classes, seed, cells: cells.iter().copied().zip(tallies).collect() })
}

impl Trust {
    /// By how much more rarely "clear" is said of a true difference than in the same kind of class
    /// without slips (1), where both were tried.
    pub(crate) fn slips_cost(&self, cell: &Cell, tally: &Tally) -> Option<f64> {
        let bare = cell.without_slips()?;
        let (_, without) = self.cells.iter().find(|(other, _)| *other == bare)?;
        Some(without.true_clear.share()? - tally.true_clear.share()?)
    }
}

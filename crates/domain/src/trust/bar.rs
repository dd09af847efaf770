//! What is asked of the words.

use super::cell::{Cell, Slips};
use super::tally::{Count, Tally};

/// Largest share of classes that may hear "clear" with no true difference (1).
const WRONG: f64 = 0.05;

/// What the upper 99 % bound on that share may be in one cell (1).
const IN_A_CELL: f64 = 0.065;

/// What it may be over all cells (1).
pub const OVER_ALL: f64 = 0.053;

/// Shares of classes between which intervals hold together (1).
const TOGETHER: (f64, f64) = (0.93, 0.98);

/// Something that is asked of every kind of class.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Bar {
    /// "Clear" with no true difference in at most 5 % of classes, by the teacher's rule; never where
    /// it is not to be had.
    Clear,
    /// The same by the school's rule of gaps in MADs.
    Large,
    /// Without slips, 95 % intervals of a question hold together in 93 to 98 % of classes.
    Together,
}

/// Whether what is asked is so.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Held {
    /// It holds.
    Yes,
    /// It does not.
    No,
    /// It is not asked of this kind of class.
    NotAsked,
}

impl Held {
    const fn if_so(so: bool) -> Self {
        if so { Self::Yes } else { Self::No }
    }
}

impl Bar {
    /// All of them.
    pub const ALL: [Self; 3] = [Self::Clear, Self::Large, Self::Together];

    /// The word that stands in files and tables.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Clear => "clear",
            Self::Large => "large-gap",
            Self::Together => "together",
        }
    }

    /// The count that it is about.
    pub const fn counted(self, tally: &Tally) -> Count {
        match self {
            Self::Clear => tally.false_clear,
            Self::Large => tally.false_large,
            Self::Together => tally.held,
        }
    }

    /// Whether it is asked of a kind of class that was counted so.
    pub fn is_asked(self, cell: &Cell, tally: &Tally) -> bool {
        match self {
            Self::Clear | Self::Large => tally.false_clear.of > 0,
            Self::Together => cell.slips == Slips::None && tally.held.of > 0,
        }
    }

    /// Whether it holds, by the bounds of the count: a wrong word's upper 99 % bound is at most 6.5 %;
    /// the share of intervals that hold together lies between 93 and 98 %.
    pub fn holds(self, cell: &Cell, tally: &Tally) -> Held {
        let count = self.counted(tally);
        if !self.is_asked(cell, tally) {
            return Held::NotAsked;
        }
        let (low, high) = TOGETHER;
        Held::if_so(match self {
            Self::Clear | Self::Large if !cell.can_be_clear() => count.found == 0,
            Self::Clear | Self::Large => count.at_most() <= IN_A_CELL,
            Self::Together => count.share().is_some_and(|share| (low..=high).contains(&share)),
        })
    }

    /// Whether so few classes leave it open that it holds, at `error` (1) of sampling.
    pub fn may_hold(
        self,
        cell: &Cell,
        tally: &Tally,
        error: impl Fn(f64, usize) -> f64,
    ) -> bool {
        let count = self.counted(tally);
        let Some(share) = count.share().filter(|_| self.is_asked(cell, tally)) else {
            return true;
        };
        let (low, high) = TOGETHER;
        match self {
            Self::Clear | Self::Large if !cell.can_be_clear() => count.found == 0,
            Self::Clear | Self::Large => share <= WRONG + error(WRONG, count.of),
            Self::Together => {
                share >= low - error(low, count.of) && share <= high + error(high, count.of)
            }
        }
    }
}

/// The counts of wrong words over all kinds of classes in which "clear" can be had: the teacher's rule
/// and the school's. Each is to have an upper 99 % bound of at most [`OVER_ALL`].
pub fn over_all<'a>(all: impl IntoIterator<Item = (&'a Cell, &'a Tally)>) -> [Count; 2] {
    let mut sums = [Count::default(); 2];
    for (_, tally) in all.into_iter().filter(|(cell, _)| cell.can_be_clear()) {
        sums[0] += tally.false_clear;
        sums[1] += tally.false_large;
    }
    sums
}

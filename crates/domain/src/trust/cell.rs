//! A kind of class.

use super::cells::CELLS;

/// A kind of class, by which the words are tried.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Cell {
    /// Its name: bags of a treatment, periods, treatments, who makes bags, spread between groups,
    /// `wide` for unequal spreads, what becomes of slips, `twice` for two rounds.
    pub name: &'static str,
    /// Bags of each treatment but the reference, which may have more.
    pub bags: usize,
    /// Periods.
    pub periods: usize,
    /// Treatments, the reference counted.
    pub treatments: usize,
    /// Who makes which bags.
    pub made: Made,
    /// Standard deviation of bags that one group makes alike in one period (mm), before reading.
    pub bag_sd_mm: f64,
    /// Standard deviation between groups over that between bags (1).
    pub group_sd: f64,
    /// Whether every second treatment spreads twice as much as the others.
    pub wide: bool,
    /// Slips, and what becomes of them.
    pub slips: Slips,
    /// Whether a second round is made on another day, whatever the first said, and both are judged
    /// together.
    pub twice: bool,
}

/// Who makes which bags.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Made {
    /// Each group makes one bag of every treatment.
    Whole,
    /// Each group makes one bag of its treatment and one of the reference.
    Own,
    /// Each bag is made by a group of its own.
    Each,
    /// Each group makes two bags of one treatment.
    Pairs,
    /// One group makes all bags of a treatment.
    Tied,
}

impl Made {
    /// The word that stands in names.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Whole => "whole",
            Self::Own => "own",
            Self::Each => "each",
            Self::Pairs => "pairs",
            Self::Tied => "tied",
        }
    }

    /// What a group makes, in words.
    pub const fn says(self) -> &'static str {
        match self {
            Self::Whole => "each group makes one bag of every treatment",
            Self::Own => "each group makes one bag of its treatment and one of the reference",
            Self::Each => "each bag is made by a group of its own",
            Self::Pairs => "each group makes two bags of one treatment",
            Self::Tied => "one group makes all bags of a treatment",
        }
    }
}

/// Slips, and what becomes of them.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Slips {
    /// There are none.
    None,
    /// They happen, and nobody looks at what the program asks.
    Ignored,
    /// They happen, and what the program offers is taken.
    Mended,
}

impl Slips {
    /// The word that stands in names, and in tables.
    pub const fn word(self) -> &'static str {
        match self {
            Self::None => "none",
            Self::Ignored => "ignored",
            Self::Mended => "mended",
        }
    }
}

impl Cell {
    /// Whether a class of this kind may hear "clear" at all: with one bag each, or where one group
    /// made all bags of a treatment, chance and group cannot be told from the treatment.
    pub const fn can_be_clear(&self) -> bool {
        self.bags > 1 && !matches!(self.made, Made::Tied)
    }

    /// Whether power foretells how often its true difference is found: not with slips, and not over two
    /// rounds.
    pub const fn is_foretold(&self) -> bool {
        matches!(self.slips, Slips::None) && !self.twice
    }

    /// The true difference that is to be found (mm): twice the spread of bags.
    pub const fn difference_mm(&self) -> f64 {
        2.0 * self.bag_sd_mm
    }

    /// The kind of class that is the same but for slips, where there is one and this has slips.
    pub fn without_slips(&self) -> Option<&'static Self> {
        let bare = self.name.strip_suffix(self.slips.word())?.strip_suffix('-')?;
        CELLS.iter().find(|cell| cell.name == bare)
    }
}

//! How many bags want something in each minute: what the teacher has to walk to.

use super::course::Turn;
use std::collections::BTreeSet;

/// Bags that want something, minute by minute.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Load {
    /// How many different bags are sealed, read or pushed in the minute that begins then; from the bell on, up
    /// to the last minute with any.
    pub bags: Vec<u32>,
}

impl Load {
    /// Of these turns.
    pub(super) fn of(turns: &[Turn]) -> Self {
        let mut asks: BTreeSet<(usize, &str)> = BTreeSet::new();
        for turn in turns {
            // A thousandth of a minute is no time; a turn on the minute is in the minute that begins.
            let minute = (turn.at_min + 1e-3).floor().clamp(0.0, 1440.0) as usize;
            asks.insert((minute, &turn.bag));
        }
        let last = asks.last().map_or(0, |(minute, _)| minute + 1);
        let mut bags = vec![0; last];
        for (minute, _) in asks {
            bags[minute] += 1;
        }
        Self { bags }
    }

    /// The first of the busiest minutes, with its bags; nothing where no bag wants anything.
    pub fn peak(&self) -> Option<(u32, u32)> {
        let most = self.bags.iter().max().copied().filter(|most| *most > 0)?;
        let at = self.bags.iter().position(|bags| *bags == most)?;
        Some((u32::try_from(at).unwrap_or(u32::MAX), most))
    }
}

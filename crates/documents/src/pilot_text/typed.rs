//! A pilot's sheet as it is typed: every cell as the person wrote it, sound or not.

use barm_domain::pilot::Part;
use std::collections::BTreeMap;

/// What is written once on a sheet, as `(id, first cell of its row)`.
pub(super) const HEADS: [(&str, &str); 6] = [
    ("date", "date"),
    ("room", "room"),
    ("yeast", "yeast lot"),
    ("bags", "bag lot"),
    ("enzyme", "enzyme lot"),
    ("meter", "meter name"),
];

/// What may have gone into a bag, as `(id, heading)`.
pub(super) const WENT: [(&str, &str); 5] = [
    ("yeast", "yeast"),
    ("food", "food"),
    ("water", "water (mL)"),
    ("temperature", "temperature (°C)"),
    ("tray", "tray (°C)"),
];

/// The longest cell (letters).
const LONGEST: usize = 60;
/// The most rows of a table.
pub(super) const MOST: usize = 99;

/// A sheet as it is typed. A cell has an id:
///
/// - `date`, `room`, `yeast`, `bags`, `enzyme`, `meter`: what is written once;
/// - `spoon-0`: mass of the first teaspoon;
/// - `cooling-0-at` and `cooling-0`: minute and temperature of the bag of plain water;
/// - `syringe-0-at` and `syringe-0`: air put in so far and the card's height;
/// - `made-A-yeast` (`food`, `water`, `temperature`, `tray`): what went into bag A;
/// - `minute-0` and `bag-A-0`: a minute and the height of bag A's card at it;
/// - `ethanol-0-at`, `ethanol-0` and `ethanol-0-warm`: strength, display, and temperature.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct TypedSheet {
    cells: BTreeMap<String, String>,
}

impl TypedSheet {
    /// The part of the pilot that a cell belongs to; `Some(None)` for what is written once, and
    /// nothing for what is no cell.
    pub fn part(id: &str) -> Option<Option<Part>> {
        if HEADS.iter().any(|(own, _)| *own == id) {
            return Some(None);
        }
        let pieces: Vec<&str> = id.split('-').collect();
        let row = |piece: &str| piece.parse::<usize>().is_ok_and(|row| row < MOST);
        let letter = |piece: &str| {
            piece.len() == 1 && piece.chars().all(|letter| letter.is_ascii_uppercase())
        };
        let part = match pieces.as_slice() {
            ["spoon", at] if row(at) => Part::Spoons,
            ["cooling", at] | ["cooling", at, "at"] if row(at) => Part::Dummy,
            ["syringe", at] | ["syringe", at, "at"] if row(at) => Part::Syringe,
            ["made", bag, went] if letter(bag) && WENT.iter().any(|(own, _)| own == went) => {
                Part::Bags
            }
            ["minute", at] if row(at) => Part::Bags,
            ["bag", bag, at] if letter(bag) && row(at) => Part::Bags,
            ["ethanol", at] | ["ethanol", at, "at" | "warm"] if row(at) => Part::Meter,
            _ => return None,
        };
        Some(Some(part))
    }

    /// What stands in a cell; nothing where nobody wrote.
    pub fn get(&self, id: &str) -> &str {
        self.cells.get(id).map_or("", String::as_str)
    }

    /// Writes a cell, on one line and not longer than a cell is. What is no cell is left out.
    pub fn set(&mut self, id: &str, text: &str) {
        if Self::part(id).is_none() {
            return;
        }
        let plain = text.trim().chars().map(|c| if c.is_control() { ' ' } else { c });
        let text: String = plain.take(LONGEST).collect();
        if text.is_empty() {
            self.cells.remove(id);
        } else {
            self.cells.insert(id.to_owned(), text);
        }
    }

    /// Whether nothing stands on it.
    pub fn is_empty(&self) -> bool {
        self.cells.is_empty()
    }

    /// Whether something was read for a part; what only says where to read does not count.
    pub fn has(&self, part: Part) -> bool {
        let mut own = self.cells.keys().filter(|id| Self::part(id) == Some(Some(part)));
        own.any(|id| !(id.ends_with("-at") || id.starts_with("minute-")))
    }

    /// This sheet with one part as another sheet has it, and what is written once.
    #[must_use]
    pub fn with(&self, part: Part, of: &Self) -> Self {
        let takes =
            |id: &String| matches!(Self::part(id), Some(of) if of.is_none_or(|of| of == part));
        let own = self.cells.iter().filter(|(id, _)| !takes(id));
        let theirs = of.cells.iter().filter(|(id, _)| takes(id));
        let cells = own.chain(theirs).map(|(id, text)| (id.clone(), text.clone())).collect();
        Self { cells }
    }

    /// Whether another sheet says the same of one part.
    pub fn same_in(&self, part: Part, other: &Self) -> bool {
        let only = |sheet: &Self| {
            let mut only = Self::default().with(part, sheet);
            for (id, _) in HEADS {
                only.set(id, "");
            }
            only.write().text
        };
        only(self) == only(other)
    }

    /// Numbers of the rows of a table, such as `cooling` or `minute`, in order.
    pub fn rows(&self, table: &str) -> Vec<usize> {
        let row = |id: &String| {
            let pieces: Vec<&str> = id.split('-').collect();
            match pieces.as_slice() {
                ["bag", _, row] if table == "minute" => row.parse().ok(),
                [own, row, ..] if *own == table => row.parse().ok(),
                _ => None,
            }
        };
        let mut all: Vec<usize> = self.cells.keys().filter_map(row).collect();
        all.sort_unstable();
        all.dedup();
        all
    }

    /// Letters of bags of which something is written, in order.
    pub fn letters(&self) -> Vec<String> {
        let letter = |id: &String| {
            let (table, rest) = id.split_once('-')?;
            let letter = rest.split('-').next()?;
            ["bag", "made"].contains(&table).then(|| letter.to_owned())
        };
        let mut all: Vec<String> = self.cells.keys().filter_map(letter).collect();
        all.sort();
        all.dedup();
        all
    }
}

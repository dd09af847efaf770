//! Bag codes as people type them.

use super::quoted::quoted;
use barm_domain::code::{BagCode, CodeError};
use barm_domain::nearest::nearest;
use barm_domain::plan::{Plan, PlannedBag};
use std::cell::RefCell;
use std::collections::BTreeMap;

/// The bags of a plan by their codes.
pub(super) struct Codes<'a> {
    bags: &'a [PlannedBag],
    places: BTreeMap<&'a str, usize>,
    /// What was meant by codes that are none, as far as it was looked up: the search is slow, and a
    /// wrong file may hold thousands of them.
    meant: RefCell<BTreeMap<String, String>>,
}

/// So many different wrong codes are looked up; whoever has more has the wrong file.
const LOOKED_UP: usize = 100;

impl<'a> Codes<'a> {
    /// The codes of a plan.
    pub(super) fn of(plan: &'a Plan) -> Self {
        let places = plan.bags.iter().enumerate().map(|(at, bag)| (bag.code.as_str(), at));
        Self { bags: &plan.bags, places: places.collect(), meant: RefCell::default() }
    }

    /// The bag at a place of the plan's list.
    pub(super) fn bag(&self, place: usize) -> Option<&'a PlannedBag> {
        self.bags.get(place)
    }

    /// The place in the plan's list of the bag that a cell names, if it is one of the plan's:
    /// written as it stands there, or as a code may be typed.
    pub(super) fn exact(&self, cell: &str) -> Option<usize> {
        let written = cell.trim();
        let as_typed = || {
            let code: BagCode = written.parse().ok()?;
            self.places.get(code.to_string().as_str())
        };
        self.places.get(written).or_else(as_typed).copied()
    }

    /// The place in the plan's list of the bag that a cell names, or why it names none.
    ///
    /// # Errors
    /// The reason, with the code that was probably meant.
    pub(super) fn find(&self, cell: &str) -> Result<usize, String> {
        if let Some(place) = self.exact(cell) {
            return Ok(place);
        }
        if is_total(cell) {
            return Err(format!("{} is a line of totals or means, not a bag", quoted(cell)));
        }
        let why = match cell.parse::<BagCode>() {
            Ok(_) => "is a code, but of no bag of this plan",
            Err(CodeError::Check { .. }) => {
                "is no bag code: a character is wrong or two are swapped"
            }
            Err(CodeError::Shape { .. }) => "is no bag of this plan",
        };
        Err(format!("{} {why}{}", quoted(cell), self.meant(cell)))
    }

    fn meant(&self, cell: &str) -> String {
        let mut meant = self.meant.borrow_mut();
        if let Some(known) = meant.get(cell) {
            return known.clone();
        }
        if meant.len() >= LOOKED_UP {
            return String::new();
        }
        let found = nearest(cell, self.bags.iter().map(|bag| bag.code.as_str()))
            .map(|code| format!("; did you mean {code}?"))
            .unwrap_or_default();
        meant.insert(cell.to_owned(), found.clone());
        found
    }
}

/// Whether a cell heads a line that sums others up.
fn is_total(cell: &str) -> bool {
    const WORDS: [&str; 17] = [
        "total", "totals", "totales", "sum", "suma", "mean", "means", "average", "averages",
        "avg", "media", "promedio", "median", "mediana", "max", "min", "range",
    ];
    let word: String =
        cell.chars().take_while(|c| c.is_alphabetic()).flat_map(char::to_lowercase).collect();
    WORDS.contains(&word.as_str())
}

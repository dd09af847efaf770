//! Bag codes as people type them.

use super::quoted::quoted;
use barm_domain::nearest::nearest;
use barm_domain::plan::{Plan, PlannedBag};
use std::collections::BTreeMap;

/// The bags of a plan by their codes.
pub(super) struct Codes<'a> {
    bags: &'a [PlannedBag],
    places: BTreeMap<String, usize>,
}

impl<'a> Codes<'a> {
    /// The codes of a plan.
    pub(super) fn of(plan: &'a Plan) -> Self {
        let places =
            plan.bags.iter().enumerate().map(|(at, bag)| (plain(&bag.code), at)).collect();
        Self { bags: &plan.bags, places }
    }

    /// The bag at a place of the plan's list.
    pub(super) fn bag(&self, place: usize) -> Option<&'a PlannedBag> {
        self.bags.get(place)
    }

    /// The place in the plan's list of the bag that a cell names, if it is one of the plan's.
    pub(super) fn exact(&self, cell: &str) -> Option<usize> {
        self.places.get(&plain(cell)).copied()
    }

    /// The place in the plan's list of the bag that a cell names, or why it names none.
    pub(super) fn find(&self, cell: &str) -> Result<usize, String> {
        if let Some(place) = self.exact(cell) {
            return Ok(place);
        }
        if is_total(cell) {
            return Err(format!("{} is a line of totals or means, not a bag", quoted(cell)));
        }
        let meant = nearest(cell, self.bags.iter().map(|bag| bag.code.as_str()))
            .map(|code| format!("; did you mean {code}?"))
            .unwrap_or_default();
        Err(format!("{} is no bag of this plan{meant}", quoted(cell)))
    }
}

/// Capital letters and digits only.
fn plain(code: &str) -> String {
    code.chars().filter(|c| c.is_alphanumeric()).flat_map(char::to_uppercase).take(40).collect()
}

/// Whether a cell heads a line that sums others up.
fn is_total(cell: &str) -> bool {
    let word: String =
        cell.chars().take_while(|c| c.is_alphabetic()).flat_map(char::to_lowercase).collect();
    matches!(
        word.as_str(),
        "total"
            | "totals"
            | "totales"
            | "sum"
            | "suma"
            | "mean"
            | "means"
            | "average"
            | "averages"
            | "avg"
            | "media"
            | "promedio"
            | "median"
            | "mediana"
            | "max"
            | "min"
            | "range"
            | "count"
    )
}

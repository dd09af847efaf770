//! Everything there is to do, from three weeks before the first day to clearing away.
//!
//! Lead times are those of a school: what is ordered takes weeks, what is fresh is bought in the
//! last one (common practice, no source). What falls on a weekend is done on the Friday before.

mod day;

use crate::plan::Plan;
use crate::prep::Prep;
use jiff::ToSpan as _;
use jiff::civil::{Date, DateTime, Weekday};

/// Something to do.
#[derive(Debug, Clone, PartialEq)]
pub struct Task {
    /// What it is.
    pub what: What,
    /// When.
    pub when: When,
}

/// When something is to be done.
#[derive(Debug, Clone, PartialEq)]
pub enum When {
    /// Some time on that day.
    On(Date),
    /// From one time to another, in the time of the school.
    At {
        /// When it begins.
        from: DateTime,
        /// When it is done.
        to: DateTime,
        /// IANA name of the school's time zone.
        zone: String,
    },
}

/// What is to be done.
#[derive(Debug, Clone, PartialEq)]
pub enum What {
    /// Order what a grocery does not have: enzymes, bags, cards, labels.
    Order,
    /// Send the letter about allergens and safety to families; ask the nurse.
    Letter,
    /// Try one bag of each food with the school's own water and yeast.
    TestRun,
    /// Go through the groups' plans and the bag list once more.
    Check,
    /// Buy yeast and food.
    Buy,
    /// Print everything, and a test print first.
    Print,
    /// Lay out the trays.
    Trays,
    /// Make a stock solution: its place in [`Prep::stocks`].
    Mix(usize),
    /// A period: its place in [`Plan::periods`].
    Period(usize),
    /// Throw away what is left of a stock solution: its place in [`Prep::stocks`].
    Discard(usize),
    /// Count bags back, empty them, clear away; the name of the day.
    Clear(String),
    /// Type what was written on paper; show the class what it found.
    Results,
}

/// Days before the first school day by which each thing is to be done.
const AHEAD: [(What, i64); 7] = [
    (What::Order, 21),
    (What::Letter, 21),
    (What::TestRun, 14),
    (What::Check, 7),
    (What::Buy, 5),
    (What::Print, 2),
    (What::Trays, 1),
];

/// Everything to do, in the order of time; nothing for a plan without days.
#[must_use]
pub fn agenda(plan: &Plan, prep: &Prep) -> Vec<Task> {
    let dates = plan.days.iter().map(|day| day.date);
    let (Some(first), Some(last)) = (dates.clone().min(), dates.max()) else {
        return Vec::new();
    };
    let ahead = AHEAD.iter().map(|(what, days)| {
        let when = When::On(school_day(first.saturating_sub(days.days()), -1));
        Task { what: what.clone(), when }
    });
    let mut tasks: Vec<Task> = ahead.collect();
    for school_day in &plan.days {
        tasks.extend(day::tasks(plan, prep, school_day));
    }
    let when = When::On(school_day(last.saturating_add(1.day()), 1));
    tasks.push(Task { what: What::Results, when });
    tasks.sort_by_key(|task| task.when.starts());
    tasks
}

/// That day, or the next one that is no Saturday or Sunday, forwards or back.
fn school_day(date: Date, step: i64) -> Date {
    let mut day = date;
    while matches!(day.weekday(), Weekday::Saturday | Weekday::Sunday) {
        let next = day.saturating_add(step.days());
        if next == day {
            break;
        }
        day = next;
    }
    day
}

impl When {
    /// When it begins; what lasts a day begins with it.
    pub fn starts(&self) -> DateTime {
        match self {
            Self::On(date) => date.at(0, 0, 0, 0),
            Self::At { from, .. } => *from,
        }
    }
}

#[cfg(test)]
mod tests;

//! What groups wish and the teacher sets, as rows that somebody typed, read against a plan.

mod read;

use super::day::Day;
use super::of_plan::{MOST_BAGS, day, usual_bags};
use super::rule::Rule;
use super::stock::stocks;
use crate::plan::Plan;
use crate::prep::PrepError;

/// One row as it was typed. With a group it is that group's; without one it limits a question.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Row {
    /// Line of the file, from 1.
    pub line: u64,
    /// Name of the period; blank in a limit for the whole day.
    pub period: String,
    /// Number of the group; blank in a limit.
    pub group: String,
    /// Questions that the group ranks, the dearest first; blank cells are passed over.
    pub choices: Vec<String>,
    /// The question that the teacher sets.
    pub set: String,
    /// Questions that the group must not get.
    pub never: Vec<String>,
    /// How many bags the group makes, where that is not the usual number.
    pub bags: String,
    /// The question that a limit is about.
    pub question: String,
    /// At least so many groups.
    pub least: String,
    /// At most so many groups.
    pub most: String,
}

/// A row that cannot be taken as it is.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("line {line}: {what}; {fix}")]
pub struct Bad {
    /// Line of the file, from 1.
    pub line: u64,
    /// What is wrong.
    pub what: String,
    /// What to do.
    pub fix: String,
}

/// How the day is to be taken, beside the rows.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct Taken {
    /// Bags of each group without a number of its own; else [`usual_bags`].
    pub bags: Option<u32>,
    /// Whether nothing more is bought than lies in the cupboard.
    pub stock_only: bool,
}

/// A day with its wishes and rules, ready to be shared out.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Prepared {
    /// The day.
    pub day: Day,
    /// Bags of each group without a number of its own.
    pub bags: u32,
    /// What is worth knowing about the rows, each a sentence.
    pub notes: Vec<String>,
}

/// Why there is no day to share out.
#[derive(Debug, Clone, PartialEq)]
pub enum NotPrepared {
    /// Rows that cannot be taken as they are, all of them.
    Rows(Vec<Bad>),
    /// A recipe cannot be measured out, so that nobody knows what the cupboard is good for.
    Prep(PrepError),
}

/// Reads rows against a plan.
///
/// # Errors
/// [`NotPrepared`] with every bad row, or with the recipe that cannot be measured out.
pub fn prepare(plan: &Plan, rows: &[Row], taken: Taken) -> Result<Prepared, NotPrepared> {
    let bags = taken.bags.unwrap_or_else(|| usual_bags(plan)).clamp(1, MOST_BAGS);
    let mut day = day(plan, bags);
    day.rules.push(Rule::UsualBags { bags });
    if taken.stock_only {
        day.rules.extend(stocks(plan).map_err(NotPrepared::Prep)?);
    }
    let mut reader = read::Reader::new(plan, day);
    if rows.is_empty() {
        reader.bad(1, "there is no row under the heads", "write one row for each group");
    }
    for row in rows {
        reader.row(row);
    }
    let read::Reader { mut day, bad, mut notes, .. } = reader;
    if !bad.is_empty() {
        return Err(NotPrepared::Rows(bad));
    }
    if day.groups.iter().all(|group| group.own_bags) {
        day.rules.retain(|rule| !matches!(rule, Rule::UsualBags { .. }));
    }
    let silent = day.groups.iter().enumerate().filter(|(g, group)| {
        let set = |rule: &Rule| matches!(rule, Rule::Set { group, .. } if group == g);
        group.ranks.is_empty() && !day.rules.iter().any(set)
    });
    let silent = silent.count();
    if silent > 0 {
        notes.push(match silent {
            1 => "1 group has no wish that counts and no question set; it fills what is open.".into(),
            more => format!(
                "{more} groups have no wish that counts and no question set; they fill what is open."
            ),
        });
    }
    Ok(Prepared { day, bags, notes })
}

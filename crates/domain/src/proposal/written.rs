//! A proposal as it is written, in a form or in a line of a file.

use super::level::{self, Unclear};
use super::opened::{Opened, opened};
use super::wording;
use super::{Beside, Level, MOST_BAGS, MOST_LEVELS, Proposal};
use crate::finding::{Finding, Severity};
use crate::nearest::plain;
use crate::plan::{Plan, Variable};

/// A proposal as it is written. Nothing of it need make sense.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Written {
    /// Name of the period.
    pub period: String,
    /// Number of the group.
    pub group: u32,
    /// The question.
    pub asks: String,
    /// The one thing it changes, such as `food`.
    pub changes: String,
    /// What it changes it to, such as `honey` or `2 g`.
    pub levels: Vec<String>,
    /// What every bag has beside that, such as `white sugar + 0.5 g`.
    pub keeps: String,
    /// What the levels are compared with: one of them, or a control such as `No food`.
    pub beside: String,
    /// Bags of each level.
    pub bags: u32,
}

impl Written {
    /// Reads the proposal against a plan and the cupboard that the teacher opened. What cannot be
    /// read is named, all of it at once.
    ///
    /// # Errors
    /// The faults for which there is no proposal to judge.
    pub fn read(&self, plan: &Plan) -> Result<Proposal, Vec<Finding>> {
        let mut found = Vec::new();
        let mut fault = |code, message: String, fix: &str, at: &str| {
            found.push(Finding::new(Severity::Fault, code, message, fix).at(at));
        };
        let period = plan.period(&self.period);
        if period.is_none_or(|period| !(1..=period.groups).contains(&self.group)) {
            let message =
                format!("The plan has no group {} in period “{}”.", self.group, self.period);
            fault(
                "not-a-group",
                message,
                "Write the period and the group as the plan does.",
                "group",
            );
        }
        let changes = plain(&self.changes);
        let variable = Variable::ALL.into_iter().find(|one| plain(one.words()) == changes);
        if variable.is_none() {
            let words = Variable::ALL.map(Variable::words).join(", ");
            let message =
                format!("“{}” is not one thing that a bag can differ in.", self.changes);
            fault("unclear-change", message, &format!("Write one of: {words}."), "changes");
        }
        if !(1..=MOST_BAGS).contains(&self.bags) {
            let message = format!("{} bags of each kind is not a number to make.", self.bags);
            fault("unclear-bags", message, "Write 1 to 4.", "bags");
        }
        if self.levels.len() > MOST_LEVELS {
            let message =
                format!("{} kinds of bag are more than a group can read.", self.levels.len());
            fault("too-many-levels", message, "Keep up to six.", "levels");
        }
        let open = opened(plan);
        let mut levels = Vec::new();
        if let Some(variable) = variable {
            let written =
                self.levels.iter().map(String::as_str).filter(|w| !w.trim().is_empty());
            for (place, level) in written.enumerate() {
                match level::read(plan, &open, variable, &self.keeps, level) {
                    Ok(difference) => {
                        levels.push(Level { name: level::name(variable, level), difference });
                    }
                    Err(unclear) => found.push(unclear_level(&unclear, level, place)),
                }
            }
        }
        found.extend(one_twice(&levels));
        if !found.is_empty() {
            return Err(found);
        }
        let variable = variable.unwrap_or(Variable::Food);
        Ok(Proposal {
            period: self.period.clone(),
            group: self.group,
            asks: wording(variable, &levels),
            variable,
            beside: self.beside(plan, &open, variable, &levels),
            levels,
            bags: self.bags,
        })
    }

    fn beside(
        &self,
        plan: &Plan,
        open: &Opened,
        variable: Variable,
        levels: &[Level],
    ) -> Option<Beside> {
        let wanted = plain(&self.beside);
        if wanted.is_empty() {
            return None;
        }
        let named = levels.iter().position(|level| plain(&level.name) == wanted);
        // The same thing may be written in another way, such as `sugar` and `white sugar`.
        let meant = || {
            let difference =
                level::read(plan, open, variable, &self.keeps, &self.beside).ok()?;
            levels.iter().position(|level| level.difference == difference)
        };
        if let Some(place) = named.or_else(meant) {
            return Some(Beside::Level(place));
        }
        if let Some(place) = place_in(&self.beside).filter(|place| *place < levels.len()) {
            return Some(Beside::Level(place));
        }
        let control = plan.controls.iter().find(|c| plain(&c.treatment.name) == wanted);
        control.map(|control| Beside::Treatment(control.treatment.name.clone()))
    }
}

/// Two kinds of one name: a plan could not tell their bags apart.
fn one_twice(levels: &[Level]) -> Option<Finding> {
    let twice = levels.iter().enumerate().find(|(place, level)| {
        levels[..*place].iter().any(|earlier| plain(&earlier.name) == plain(&level.name))
    });
    twice.map(|(place, level)| {
        let message = format!("“{}” stands there twice.", level.name);
        let fix = "Change one of them, or count them as one kind of bag.";
        Finding::new(Severity::Fault, "levels-not-distinct", message, fix)
            .at(format!("levels[{place}]"))
    })
}

/// The kind that is named by its place on the sheet, as in `kind 2`, whatever the language.
fn place_in(words: &str) -> Option<usize> {
    let place: usize = words.split_whitespace().next_back()?.parse().ok()?;
    // A word before it, or none; an amount such as `2 g` ends in its unit.
    if words.split_whitespace().count() > 2 { None } else { place.checked_sub(1) }
}

fn unclear_level(unclear: &Unclear, level: &str, place: usize) -> Finding {
    let (code, message) = match unclear {
        Unclear::NotOpen(what) => {
            ("not-in-cupboard", format!("There is no {what} in the cupboard today."))
        }
        Unclear::Meaning => {
            ("unclear-level", format!("“{level}” does not say what goes into the bag."))
        }
    };
    let fix = "Write what is in the cupboard, or an amount with its unit.";
    Finding::new(Severity::Fault, code, message, fix).at(format!("levels[{place}]"))
}

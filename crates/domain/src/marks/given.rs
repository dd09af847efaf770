//! Marks as they are given to one student.

use super::rubric::{LEVELS, Rubric};
use std::collections::BTreeMap;

/// The most characters of a remark (own rule: half a page).
pub const MOST_CHARACTERS: usize = 1000;

/// What a student's marks rest on.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Basis {
    /// The group's own bags.
    #[default]
    Own,
    /// The class's data: the student was away, or the group's bags failed.
    ClassData,
}

/// What one student is given.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Given {
    /// Level of each strand by its id, 0 to 4; a strand without one is not marked yet.
    pub levels: BTreeMap<String, u8>,
    /// The teacher's words for each strand, by its id.
    pub remarks: BTreeMap<String, String>,
    /// What the marks rest on.
    pub basis: Basis,
}

/// Why a mark cannot be given.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum GivenFault {
    /// No such strand.
    #[error("the rubric has no strand {strand}")]
    NoStrand {
        /// As it was asked.
        strand: String,
    },
    /// No such level.
    #[error("a level is 0 (nothing handed in) to {LEVELS}; {level} is none")]
    NoLevel {
        /// As it was asked.
        level: u8,
    },
    /// A remark that is too long.
    #[error("a remark may have {MOST_CHARACTERS} characters; this one has {characters}")]
    TooLong {
        /// How long it is.
        characters: usize,
    },
}

impl Given {
    /// Gives a level of a strand, or takes it back.
    ///
    /// # Errors
    /// [`GivenFault`]; nothing is changed then.
    pub fn mark(
        &mut self,
        rubric: &Rubric,
        strand: &str,
        level: Option<u8>,
    ) -> Result<(), GivenFault> {
        known(rubric, strand)?;
        match level {
            Some(level) if usize::from(level) > LEVELS => {
                return Err(GivenFault::NoLevel { level });
            }
            Some(level) => self.levels.insert(strand.to_owned(), level),
            None => self.levels.remove(strand),
        };
        Ok(())
    }

    /// Writes the teacher's words for a strand; empty ones take them back.
    ///
    /// # Errors
    /// [`GivenFault`]; nothing is changed then.
    pub fn remark(
        &mut self,
        rubric: &Rubric,
        strand: &str,
        words: &str,
    ) -> Result<(), GivenFault> {
        known(rubric, strand)?;
        let words = words.trim();
        let characters = words.chars().count();
        if characters > MOST_CHARACTERS {
            return Err(GivenFault::TooLong { characters });
        }
        if words.is_empty() {
            self.remarks.remove(strand);
        } else {
            self.remarks.insert(strand.to_owned(), words.to_owned());
        }
        Ok(())
    }

    /// Levels added up over the rubric's strands, beside the most there are; `None` while one is not marked. Levels
    /// of strands that the rubric no longer has do not count.
    pub fn sum(&self, rubric: &Rubric) -> Option<(usize, usize)> {
        let levels = rubric.strands.iter().map(|strand| self.levels.get(&strand.id));
        let sum: Option<usize> = levels.map(|level| level.map(|l| usize::from(*l))).sum();
        Some((sum?, LEVELS * rubric.strands.len()))
    }

    /// Strands that are not marked yet, in the rubric's order.
    pub fn open<'r>(&self, rubric: &'r Rubric) -> Vec<&'r str> {
        let open = rubric.strands.iter().filter(|strand| !self.levels.contains_key(&strand.id));
        open.map(|strand| strand.id.as_str()).collect()
    }
}

fn known(rubric: &Rubric, strand: &str) -> Result<(), GivenFault> {
    match rubric.strand(strand) {
        Some(_) => Ok(()),
        None => Err(GivenFault::NoStrand { strand: strand.chars().take(60).collect() }),
    }
}

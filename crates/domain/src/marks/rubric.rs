//! What is marked, and what each level of it looks like.

use super::usual::{LEVEL_NAMES, STRANDS};
use std::collections::BTreeSet;

/// Levels of a strand, from 1; 0 says that nothing was handed in.
pub const LEVELS: usize = 4;

/// The most strands that a rubric may have: more are not marked in 90 s (own rule).
pub const MOST_STRANDS: usize = 12;

/// The most characters of a strand's name or of what a level looks like.
const MOST_CHARACTERS: usize = 300;

/// A rubric, as the teacher has it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Rubric {
    /// What the levels are called, from 1.
    pub levels: [String; LEVELS],
    /// What is marked, in the order of the page.
    pub strands: Vec<Strand>,
}

/// One thing that is marked.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Strand {
    /// By which marks know it, whatever it is called: letters, digits and `_`.
    pub id: String,
    /// What it is called.
    pub name: String,
    /// What each level looks like, from 1.
    pub looks: [String; LEVELS],
}

/// What is wrong with a rubric.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum RubricFault {
    /// It marks nothing, or too much.
    #[error("a rubric has 1 to {MOST_STRANDS} strands; this one has {strands}")]
    Strands {
        /// How many it has.
        strands: usize,
    },
    /// A strand without a usable id.
    #[error(
        "strand {place}: its id may have letters, digits and _ only, and must not be empty"
    )]
    Id {
        /// Its place, from 1.
        place: usize,
    },
    /// Two strands with one id.
    #[error("two strands are called {id}; marks could not tell them apart")]
    Twice {
        /// That id.
        id: String,
    },
    /// A text that is missing or too long.
    #[error("{what} needs 1 to {MOST_CHARACTERS} characters; it has {characters}")]
    Text {
        /// Which text.
        what: String,
        /// How long it is.
        characters: usize,
    },
}

impl Default for Rubric {
    /// The rubric that is offered first, in own words.
    fn default() -> Self {
        let strand = |&(id, name, looks): &(&str, &str, [&str; LEVELS])| Strand {
            id: id.to_owned(),
            name: name.to_owned(),
            looks: looks.map(str::to_owned),
        };
        Self {
            levels: LEVEL_NAMES.map(str::to_owned),
            strands: STRANDS.iter().map(strand).collect(),
        }
    }
}

impl Rubric {
    /// The strand of an id.
    pub fn strand(&self, id: &str) -> Option<&Strand> {
        self.strands.iter().find(|strand| strand.id == id)
    }

    /// All that is wrong with it, in its order.
    pub fn faults(&self) -> Vec<RubricFault> {
        let mut faults = Vec::new();
        let strands = self.strands.len();
        if strands == 0 || strands > MOST_STRANDS {
            faults.push(RubricFault::Strands { strands });
        }
        let mut text = |what: String, text: &str| {
            let characters = text.trim().chars().count();
            if characters == 0 || characters > MOST_CHARACTERS {
                faults.push(RubricFault::Text { what, characters });
            }
        };
        for (at, level) in self.levels.iter().enumerate() {
            text(format!("the name of level {}", at + 1), level);
        }
        for (place, strand) in (1..).zip(&self.strands) {
            text(format!("the name of strand {place}"), &strand.name);
            for (at, looks) in (1..).zip(&strand.looks) {
                text(format!("strand {place}, level {at}"), looks);
            }
        }
        let mut seen = BTreeSet::new();
        for (place, strand) in (1..).zip(&self.strands) {
            let known = |c: char| c.is_ascii_alphanumeric() || c == '_';
            if strand.id.is_empty() || !strand.id.chars().all(known) {
                faults.push(RubricFault::Id { place });
            } else if !seen.insert(&strand.id) {
                faults.push(RubricFault::Twice { id: strand.id.clone() });
            }
        }
        faults
    }
}

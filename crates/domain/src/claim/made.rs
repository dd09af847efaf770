//! A claim as a group makes it.

use crate::amount;
use crate::nearest::nearest;
use crate::plan::{Plan, Question};

/// The most characters that each of a claim's texts may have: two pages by hand (own rule).
pub const MOST_CHARACTERS: usize = 4000;

/// The largest difference that a claim may name (mm): no bag of the trade is as thick.
const MOST_MM: f64 = 300.0;

/// Which way a treatment differs from what it stands beside.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Says {
    /// It rose more.
    More,
    /// It rose less.
    Less,
    /// No difference can be read.
    NoReadableDifference,
}

impl Says {
    /// All of them.
    pub const ALL: [Self; 3] = [Self::More, Self::Less, Self::NoReadableDifference];

    /// The word that stands in files.
    pub const fn word(self) -> &'static str {
        match self {
            Self::More => "more",
            Self::Less => "less",
            Self::NoReadableDifference => "no-readable-difference",
        }
    }
}

/// A claim of one group.
#[derive(Debug, Clone, PartialEq)]
pub struct Claim {
    /// Id of the question.
    pub question: String,
    /// The treatment it is about.
    pub treatment: String,
    /// Which way it differs.
    pub says: Says,
    /// By how much (mm, above 0), where the group says so.
    pub by_mm: Option<f64>,
    /// What the group saw, in its own words.
    pub evidence: String,
    /// Why that answers the question, in its own words.
    pub reasoning: String,
}

/// A claim as it was typed.
#[derive(Debug, Clone, Copy, Default)]
pub struct Typed<'t> {
    /// Id of the question.
    pub question: &'t str,
    /// The treatment.
    pub treatment: &'t str,
    /// The word of [`Says`].
    pub says: &'t str,
    /// By how much, as people write lengths; empty where nothing is said.
    pub by: &'t str,
    /// What was seen.
    pub evidence: &'t str,
    /// Why that answers the question.
    pub reasoning: &'t str,
}

/// Why a claim cannot be taken.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum ClaimFault {
    /// No question of the plan has that id.
    #[error("there is no question {question:?} in this plan")]
    NoQuestion {
        /// As it was typed.
        question: String,
    },
    /// The question does not compare that treatment.
    #[error("{treatment:?} is not compared in this question{}", meant(nearest))]
    NoTreatment {
        /// As it was typed.
        treatment: String,
        /// What may be meant.
        nearest: Option<String>,
    },
    /// Neither more, less nor no readable difference.
    #[error("say whether it rose more or less, or that no difference can be read")]
    NoDirection,
    /// The size is no length that can be.
    #[error("{by:?} is no difference in height; write it like 6 mm, or leave it empty")]
    NoLength {
        /// As it was typed.
        by: String,
    },
    /// A size for no difference.
    #[error("no readable difference has no size; leave it empty, or say more or less")]
    SizeOfNothing,
    /// A text that is too long.
    #[error(
        "{part} has {characters} characters; {MOST_CHARACTERS} is the most, about two pages"
    )]
    TooLong {
        /// Which text.
        part: &'static str,
        /// How long it is.
        characters: usize,
    },
}

fn meant(nearest: &Option<String>) -> String {
    nearest.as_ref().map(|name| format!("; do you mean {name}?")).unwrap_or_default()
}

impl Claim {
    /// Reads a typed claim by the plan.
    ///
    /// # Errors
    /// All that is wrong with it, in the order of its parts.
    pub fn read(plan: &Plan, typed: &Typed<'_>) -> Result<Self, Vec<ClaimFault>> {
        let mut faults = Vec::new();
        for (part, text) in [("evidence", typed.evidence), ("reasoning", typed.reasoning)] {
            let characters = text.chars().count();
            if characters > MOST_CHARACTERS {
                faults.push(ClaimFault::TooLong { part, characters });
            }
        }
        let question = plan.questions.iter().find(|one| one.id == typed.question);
        let treatment = match question {
            None => {
                faults.push(ClaimFault::NoQuestion { question: short(typed.question) });
                None
            }
            Some(question) => match compared(plan, question, typed.treatment.trim()) {
                Ok(name) => Some(name),
                Err(fault) => {
                    faults.push(fault);
                    None
                }
            },
        };
        let says = Says::ALL.into_iter().find(|says| says.word() == typed.says.trim());
        if says.is_none() {
            faults.push(ClaimFault::NoDirection);
        }
        let by_mm = match size(typed.by) {
            Ok(by_mm) => by_mm,
            Err(fault) => {
                faults.push(fault);
                None
            }
        };
        if by_mm.is_some() && says == Some(Says::NoReadableDifference) {
            faults.push(ClaimFault::SizeOfNothing);
        }
        match (treatment, says) {
            (Some(treatment), Some(says)) if faults.is_empty() => Ok(Self {
                question: typed.question.to_owned(),
                treatment,
                says,
                by_mm,
                evidence: typed.evidence.trim().to_owned(),
                reasoning: typed.reasoning.trim().to_owned(),
            }),
            _ => Err(faults),
        }
    }
}

/// The treatment of a question that is compared with something, by its name in any case.
fn compared(plan: &Plan, question: &Question, typed: &str) -> Result<String, ClaimFault> {
    let answering = plan.answering(question).into_iter();
    let names: Vec<&str> = answering
        .filter(|treatment| plan.beside(question, treatment).is_some())
        .map(|treatment| treatment.name.as_str())
        .collect();
    let same = |name: &&&str| name.to_lowercase() == typed.to_lowercase();
    match names.iter().find(same) {
        Some(name) => Ok((*name).to_owned()),
        None => Err(ClaimFault::NoTreatment {
            treatment: short(typed),
            nearest: nearest(&short(typed), names.iter().copied()).map(str::to_owned),
        }),
    }
}

/// A difference in height (mm).
fn size(typed: &str) -> Result<Option<f64>, ClaimFault> {
    let typed = typed.trim();
    if typed.is_empty() {
        return Ok(None);
    }
    let none = || ClaimFault::NoLength { by: short(typed) };
    let mm = amount::millimeters(typed).map_err(|_| none())?;
    if mm > 0.0 && mm <= MOST_MM { Ok(Some(mm)) } else { Err(none()) }
}

/// The beginning of what was typed, for a sentence that quotes it.
fn short(typed: &str) -> String {
    typed.chars().take(60).collect()
}

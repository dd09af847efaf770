//! What a caution is: when it is given, what it says, and on whose word.

use super::choices::Choices;
use crate::finding::{Field, Finding, Severity};

/// The last sentence of every caution that a school or a state may have rules about.
pub const LOCAL_RULES: &str = "Your school's and state's rules come first.";

/// What to do about a finding, without [`LOCAL_RULES`]: for a page that says that sentence once, at
/// the head of its cautions.
pub fn without_local_rules(fix: &str) -> &str {
    fix.strip_suffix(LOCAL_RULES).map_or(fix, str::trim_end)
}

/// What stands between a caution and the answer that the plan gives.
const ANSWERS: &str = " The plan answers: ";

/// What a caution says, without the answer that the plan gives: for a page that shows the answer in
/// a field of its own.
pub fn without_answer(message: &str) -> &str {
    message.split_once(ANSWERS).map_or(message, |(says, _)| says)
}

/// One caution and what brings it up.
#[derive(Debug, Clone, Copy)]
pub struct CautionRule {
    /// Code, such as `S10`; never given to another caution.
    pub code: &'static str,
    /// What can hurt, in a few words.
    pub hazard: &'static str,
    /// What in a plan brings it up.
    pub trigger: &'static str,
    /// Who says so; values that were not read again say "from memory".
    pub source: &'static str,
    /// Whether a school or a state may have a rule about it.
    pub local: bool,
    /// What it says about a plan that brings it up.
    pub(super) look: fn(&Choices<'_>) -> Option<Said>,
}

/// What a caution says about one plan.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Said {
    /// What can happen, in one sentence.
    pub message: String,
    /// What to do.
    pub fix: String,
    /// What in the plan brings it up.
    pub at: Option<Field>,
}

impl Said {
    pub(super) fn new(message: impl Into<String>, fix: impl Into<String>) -> Self {
        Self { message: message.into(), fix: fix.into(), at: None }
    }

    pub(super) fn at(self, at: impl Into<Option<Field>>) -> Self {
        Self { at: at.into(), ..self }
    }
}

impl CautionRule {
    /// The finding for this plan, if the plan brings it up.
    pub(super) fn find(&self, choices: &Choices<'_>) -> Option<Finding> {
        let said = (self.look)(choices)?;
        let fix = if self.local { format!("{} {LOCAL_RULES}", said.fix) } else { said.fix };
        let answers: Vec<&str> = choices
            .plan
            .answered
            .iter()
            .filter(|answered| answered.caution.trim().eq_ignore_ascii_case(self.code))
            .map(|answered| answered.answer.trim())
            .collect();
        let (severity, message) = if answers.is_empty() {
            (Severity::Caution, said.message)
        } else {
            let answer = answers.join("; ");
            (Severity::Note, format!("{}{ANSWERS}“{answer}”", said.message))
        };
        let source = Some(self.source);
        Some(Finding { severity, code: self.code, message, fix, at: said.at, source })
    }
}

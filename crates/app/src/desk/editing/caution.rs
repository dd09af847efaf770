//! Cautions while a plan is edited, and what the teacher did about them.

use super::said::Said;
use barm_documents::plan_text;
use barm_domain::check::{CAUTION_RULES, without_answer};
use barm_domain::plan::{Answered, Plan};

/// A caution that the plan brings up.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Caution {
    /// What it says, without the answer.
    pub(crate) said: Said,
    /// What was done about it, as the plan says; empty if nothing is written.
    pub(crate) answer: String,
}

/// The most letters of an answer.
pub(crate) const LONGEST: usize = 300;

/// Whether something that is said is a caution, answered or not.
pub(super) fn is_caution(said: &Said) -> bool {
    CAUTION_RULES.iter().any(|rule| rule.code == said.code)
}

/// A caution with the answer of a plan.
pub(super) fn with_answer(plan: Option<&Plan>, said: Said) -> Caution {
    let answer = plan.map(|plan| answer(plan, said.code)).unwrap_or_default();
    let message = without_answer(&said.message).to_owned();
    Caution { said: Said { message, ..said }, answer }
}

fn answer(plan: &Plan, code: &str) -> String {
    let own = plan.answered.iter().filter(|one| is_for(one, code));
    own.map(|one| one.answer.trim()).collect::<Vec<_>>().join("; ")
}

fn is_for(answered: &Answered, code: &str) -> bool {
    answered.caution.trim().eq_ignore_ascii_case(code)
}

/// The text with answers to cautions as they were typed: by code, empty to take one back. What is
/// no caution is left out; so is everything where the text has mistakes.
pub(crate) fn answered(text: &str, typed: &[(String, String)]) -> String {
    let read = plan_text::read_with_old_list(text.as_bytes());
    let Some(plan) = read.plan.filter(|_| read.mistakes.is_empty()) else {
        return text.to_owned();
    };
    let mut new = plan.clone();
    for (code, typed) in typed {
        let known = CAUTION_RULES.iter().find(|rule| rule.code == code);
        let words: Vec<&str> = typed.split_whitespace().collect();
        let typed: String = words.join(" ").chars().take(LONGEST).collect();
        let Some(rule) = known.filter(|rule| answer(&plan, rule.code) != typed) else {
            continue;
        };
        new.answered.retain(|one| !is_for(one, rule.code));
        if !typed.is_empty() {
            new.answered.push(Answered { caution: rule.code.to_owned(), answer: typed });
        }
    }
    if new.answered == plan.answered { text.to_owned() } else { plan_text::write(&new, text) }
}

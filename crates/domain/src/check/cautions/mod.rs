//! Cautions: what could hurt someone, brought up by the plan's own choices and by nothing else.
//!
//! Each rule has a trigger and a source. Where it names an amount, that is the high side of what
//! is expected of this very plan. A caution that the plan answers stays as a note.

mod alcohol;
mod choices;
mod enzymes;
mod eyes;
mod foods;
mod gas;
mod heat;
mod ingredients;
mod living;
mod pressure;
mod room;
mod rule;
mod scald;
mod tools;
mod waste;
mod wording;

pub use room::not_by_a_substitute;
pub use rule::{CautionRule, LOCAL_RULES, without_answer, without_local_rules};

use crate::finding::{Field, Finding, Severity};
use crate::outlook::{Entry, Overnight};
use crate::plan::Plan;
use choices::Choices;

/// All cautions, in the order of their codes.
pub const CAUTION_RULES: [CautionRule; 32] = [
    enzymes::DUST,
    enzymes::SPLASH,
    heat::SCALD,
    heat::LONG_CONTACT,
    eyes::GOGGLES,
    eyes::EYEWASH,
    pressure::BURST,
    pressure::OVERNIGHT,
    foods::TASTING,
    foods::ALLERGENS,
    foods::MILK,
    foods::FLOURS,
    living::YEAST,
    waste::DISPOSAL,
    alcohol::ALCOHOL,
    tools::MOUTHPIECES,
    tools::PERSON_TEST,
    tools::THERMOMETERS,
    room::SLIPS,
    heat::POWER,
    room::CROWDING,
    room::DUTY,
    tools::GLOVES,
    gas::CARBON_DIOXIDE,
    gas::SMELL,
    room::BAG_OVER_FACE,
    living::YEAST_ALLERGY,
    room::SUBSTITUTE,
    tools::SYRINGES,
    heat::COOKED_STARCH,
    waste::EMPTYING,
    gas::SNIFFING,
];

/// Code of the warning about an answer to a caution that does not exist.
pub const ANSWER_TO_NOTHING: &str = "answer-to-nothing";

/// Every caution that the plan brings up, in the order of their codes, then answers that answer no
/// caution.
///
/// Cautions that rest on a forecast stay silent without one.
pub(super) fn cautions(
    plan: &Plan,
    outlook: &[Entry],
    overnight: &[Overnight],
) -> Vec<Finding> {
    let choices = Choices::of(plan, outlook, overnight);
    let mut found: Vec<Finding> =
        CAUTION_RULES.iter().filter_map(|rule| rule.find(&choices)).collect();
    found.extend(answers_to_nothing(plan));
    found
}

fn answers_to_nothing(plan: &Plan) -> impl Iterator<Item = Finding> {
    let numbered = plan.answered.iter().enumerate();
    numbered
        .filter(|(_, answered)| {
            let code = answered.caution.trim();
            CAUTION_RULES.iter().all(|rule| !rule.code.eq_ignore_ascii_case(code))
        })
        .map(|(a, answered)| Finding {
            severity: Severity::Warning,
            code: ANSWER_TO_NOTHING,
            message: format!(
                "The plan answers “{}”, but no caution has that code.",
                answered.caution
            ),
            fix: "Write the code of the caution as it is printed, such as S10.".to_owned(),
            at: Some(Field(format!("answered[{a}].caution"))),
            source: None,
        })
}

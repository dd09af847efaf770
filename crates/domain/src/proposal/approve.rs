//! Approved proposals become questions, treatments and bags of the plan.

use super::{Beside, Proposal};
use crate::bag_list::{BagListError, Given, give};
use crate::plan::{Difference, Plan, Question, Treatment, Variable};

/// Why a proposal cannot come into the plan.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum ApproveError {
    /// There is nothing to compare with.
    #[error(
        "group {group} of period {period} compares with nothing; send it back with a question"
    )]
    NoReference {
        /// Name of the period.
        period: String,
        /// The group.
        group: u32,
    },
    /// A code or period is missing for its bags.
    #[error(transparent)]
    Bags(#[from] BagListError),
}

/// The plan with these proposals in it.
///
/// Of what a group wrote, only what a bag can be made of comes into the plan, and its question in
/// the plan's words: a plan is never deleted, and what a child wrote must be deletable.
///
/// Groups that ask the same share one question, so that their bags are replicates of each other.
/// The bags that such a group had leave the list; questions and treatments that nobody makes any
/// more leave the plan. Everything else stays.
///
/// # Errors
/// [`ApproveError`] if one compares with nothing, or if there are no codes left.
pub fn approve(plan: &Plan, proposals: &[Proposal]) -> Result<Plan, ApproveError> {
    let mut new = plan.clone();
    let mut given = Vec::new();
    for proposal in proposals {
        let Some(beside) = &proposal.beside else {
            return Err(ApproveError::NoReference {
                period: proposal.period.clone(),
                group: proposal.group,
            });
        };
        let names: Vec<String> = proposal
            .levels
            .iter()
            .map(|level| name_for(&new, proposal.variable, &level.name, &level.difference))
            .collect();
        let reference = match beside {
            Beside::Level(place) => names.get(*place).cloned().unwrap_or_default(),
            Beside::Treatment(name) => name.clone(),
        };
        let question = question_for(&mut new, proposal, &reference, &names);
        let mut bags = |treatment: &str, bags: u32| {
            given.push(Given {
                period: proposal.period.clone(),
                group: proposal.group,
                question: question.clone(),
                treatment: treatment.to_owned(),
                bags,
            });
        };
        for name in &names {
            bags(name, proposal.bags);
        }
        // A group that is compared with a shared control makes one of its own, too.
        if !names.contains(&reference) {
            bags(&reference, 1);
        }
    }
    let list = give(&new, &given)?;
    new.bags = list.bags;
    new.retired_codes = list.retired;
    clear_out(&mut new);
    Ok(new)
}

/// The name under which a level stands in the plan: that of a shared control, or of a treatment of
/// a question about the same thing, that is made just so; or its own, with a number where another
/// has it.
fn name_for(plan: &Plan, variable: Variable, name: &str, difference: &Difference) -> String {
    let wanted = plan.base.with(difference);
    let alike = plan.questions.iter().filter(|question| question.variable == variable);
    let alike = alike.flat_map(|question| &question.treatments);
    let controls = plan.controls.iter().map(|control| &control.treatment);
    if let Some(same) = alike.chain(controls).find(|t| plan.recipe(t) == wanted) {
        return same.name.clone();
    }
    let free = |name: &String| plan.treatment(name).is_none();
    let numbered = (2..).map(|number| format!("{name} ({number})"));
    std::iter::once(name.to_owned()).chain(numbered).find(free).unwrap_or_default()
}

/// The id of the question that a proposal asks, made where the plan does not ask it yet.
fn question_for(
    plan: &mut Plan,
    proposal: &Proposal,
    reference: &str,
    names: &[String],
) -> String {
    let asked = plan.questions.iter().position(|question| {
        let own = question.treatments.iter().map(|t| &t.name).chain(&question.uses);
        let own: Vec<&String> = own.collect();
        question.variable == proposal.variable
            && question.crossed_with.is_none()
            && question.reference.as_deref() == Some(reference)
            && names.iter().all(|name| own.contains(&name) || name == reference)
    });
    if let Some(asked) = asked {
        return plan.questions[asked].id.clone();
    }
    let stem = proposal.variable.words().replace(' ', "-");
    let free = |id: &String| plan.questions.iter().all(|question| question.id != *id);
    let numbered = (2..).map(|number| format!("{stem}-{number}"));
    let id = std::iter::once(stem.clone()).chain(numbered).find(free).unwrap_or_default();
    let (mut treatments, mut uses) = (Vec::new(), Vec::new());
    for (name, level) in names.iter().zip(&proposal.levels) {
        if plan.treatment(name).is_some() {
            uses.push(name.clone());
        } else {
            treatments.push(Treatment {
                name: name.clone(),
                beside: None,
                replicates: None,
                difference: level.difference.clone(),
            });
        }
    }
    uses.retain(|name| name != reference);
    plan.questions.push(Question {
        id: id.clone(),
        asks: proposal.asks.clone(),
        variable: proposal.variable,
        crossed_with: None,
        reference: Some(reference.to_owned()),
        treatments,
        uses,
        replicates: 0,
    });
    id
}

/// Takes out what nobody makes any more, and counts the bags that are there.
fn clear_out(plan: &mut Plan) {
    let bags = plan.bags.clone();
    let count = |name: &str| {
        u32::try_from(bags.iter().filter(|bag| bag.treatment == name).count())
            .unwrap_or(u32::MAX)
    };
    let compared: Vec<String> = plan
        .questions
        .iter()
        .filter(|question| bags.iter().any(|bag| bag.question == question.id))
        .flat_map(|q| {
            q.reference.iter().chain(q.treatments.iter().filter_map(|t| t.beside.as_ref()))
        })
        .cloned()
        .collect();
    for question in &mut plan.questions {
        question.treatments.retain(|t| count(&t.name) > 0 || compared.contains(&t.name));
        question.uses.retain(|name| count(name) > 0);
        let most = question.treatments.iter().map(|t| count(&t.name)).max().unwrap_or_default();
        question.replicates = most.max(1);
        for treatment in &mut question.treatments {
            let own = count(&treatment.name);
            treatment.replicates = (own != question.replicates && own > 0).then_some(own);
        }
    }
    plan.questions.retain(|question| {
        !question.treatments.is_empty() || bags.iter().any(|bag| bag.question == question.id)
    });
}

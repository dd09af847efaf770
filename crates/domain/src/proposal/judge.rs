//! Judges a proposal with the checks that judge a plan.

use super::{Beside, Proposal, Written, partners};
use crate::check;
use crate::finding::{Finding, Severity};
use crate::outlook::Entry;
use crate::plan::{Plan, Question, Treatment};

/// Id of the question of a proposal while it stands in a plan of its own.
pub(super) const TRIAL: &str = "proposal";

/// A proposal with what the checks say.
#[derive(Debug, Clone, PartialEq)]
pub struct Judged {
    /// As it was written.
    pub written: Written,
    /// What it means, if it means something.
    pub proposal: Option<Proposal>,
    /// Faults, warnings, notes and cautions that it brings, faults first.
    pub found: Vec<Finding>,
}

impl Judged {
    /// How many faults it has.
    pub fn faults(&self) -> usize {
        self.found.iter().filter(|finding| finding.severity == Severity::Fault).count()
    }
}

/// The plan with this proposal as its only question: what is judged and forecast. With the same
/// question in other groups there are more bags of each kind.
pub fn trial(plan: &Plan, proposal: &Proposal, partners: usize) -> Plan {
    let mut trial = plan.clone();
    trial.bags.clear();
    let groups = u32::try_from(partners + 1).unwrap_or(u32::MAX);
    let reference = proposal.beside.as_ref().map(|beside| match beside {
        Beside::Level(place) => {
            proposal.levels.get(*place).map(|level| level.name.clone()).unwrap_or_default()
        }
        Beside::Treatment(name) => name.clone(),
    });
    // A level that is made just like a control of the plan would be there twice.
    trial.controls.retain(|control| {
        let name = &control.treatment.name;
        proposal.levels.iter().all(|level| level.name != *name)
    });
    trial.questions = vec![Question {
        id: TRIAL.into(),
        asks: proposal.asks.clone(),
        variable: proposal.variable,
        crossed_with: None,
        reference,
        treatments: proposal.levels.iter().map(treatment).collect(),
        uses: Vec::new(),
        replicates: proposal.bags.saturating_mul(groups),
    }];
    trial
}

fn treatment(level: &super::Level) -> Treatment {
    Treatment {
        name: level.name.clone(),
        beside: None,
        replicates: None,
        difference: level.difference.clone(),
    }
}

/// Judges a proposal beside all others of the class; `outlook` is that of its [`trial`], or empty
/// where nothing may rest on a forecast.
pub fn judge(plan: &Plan, written: &Written, all: &[Proposal], outlook: &[Entry]) -> Judged {
    let proposal = match written.read(plan) {
        Ok(proposal) => proposal,
        Err(found) => return Judged { written: written.clone(), proposal: None, found },
    };
    let trial = trial(plan, &proposal, partners(&proposal, all).len());
    let mut found = check::check(&trial, outlook);
    found.retain(|finding| brought(plan, finding));
    Judged { written: written.clone(), proposal: Some(proposal), found }
}

/// Whether a finding is about the proposal and not about the school day around it.
fn brought(plan: &Plan, finding: &Finding) -> bool {
    if finding.severity == Severity::Caution {
        // Cautions that the plan has anyway are answered with the plan; what is in a food differs
        // from food to food.
        let of_foods = ["S10", "S11", "S12"].contains(&finding.code);
        return !check::check(plan, &[]).iter().any(|own| {
            own.code == finding.code && (own.message == finding.message || !of_foods)
        });
    }
    OWN.contains(&finding.code)
        || finding.at.as_ref().is_some_and(|field| field.0.starts_with("question["))
            && finding.code != "no-bag-list"
}

/// Codes that a proposal answers for, wherever in the plan they stand.
const OWN: [&str; 17] = [
    "two-variables",
    "other-variable",
    "same-as-reference",
    "no-reference",
    "one-level",
    "levels-not-distinct",
    "no-gas",
    "no-replicate",
    "few-replicates",
    "nothing-to-cut",
    "cannot-make",
    "cannot-foresee",
    "water-scalds",
    "water-hot",
    "water-cool",
    "overfull",
    "blind-card",
];

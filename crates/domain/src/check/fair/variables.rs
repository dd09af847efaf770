//! One thing changed at a time, and something to compare with that differs in just that.

use super::change::changes_for;
use crate::finding::{Finding, Severity};
use crate::plan::{Plan, Question, Treatment, Variable};
use std::collections::BTreeSet;

pub(super) fn findings(plan: &Plan) -> Vec<Finding> {
    let questions = plan.questions.iter().enumerate();
    questions.flat_map(|(q, question)| Checked { plan, question, q }.findings()).collect()
}

/// A question under the lens.
struct Checked<'p> {
    plan: &'p Plan,
    question: &'p Question,
    q: usize,
}

impl<'p> Checked<'p> {
    fn findings(&self) -> Vec<Finding> {
        let mut found = Vec::new();
        let mut alone = Vec::new();
        let mut two = BTreeSet::new();
        for (t, treatment) in self.compared() {
            let Some(beside) = self.plan.beside(self.question, treatment) else {
                let stands_alone = !self.plan.is_reference(self.question, &treatment.name);
                alone.extend(stands_alone.then_some(treatment.name.as_str()));
                continue;
            };
            let Some(reference) = self.plan.treatment(beside) else { continue };
            let finding = self.against(t, treatment, reference);
            if finding.as_ref().is_some_and(|f| f.code == "two-variables") {
                two.insert(treatment.name.as_str());
            }
            found.extend(finding);
        }
        if let Some(first) = alone.first() {
            found.push(self.no_reference(first));
        }
        found.extend(self.among_themselves(&two));
        found
    }

    /// Own treatments with their position, then those taken in from elsewhere.
    fn compared(&self) -> impl Iterator<Item = (Option<usize>, &'p Treatment)> {
        let own = self.question.treatments.iter().enumerate().map(|(t, own)| (Some(t), own));
        let used = self.question.uses.iter().filter_map(|name| self.plan.treatment(name));
        let question = self.question;
        let plan = self.plan;
        let used = used.filter(move |t| plan.beside(question, t).is_some());
        own.chain(used.map(|treatment| (None, treatment)))
    }

    fn changes(&self, one: &Treatment, other: &Treatment) -> BTreeSet<Variable> {
        let (one, other) = (self.plan.recipe(one), self.plan.recipe(other));
        changes_for(self.plan, self.question.variable, &one, &other)
    }

    fn at(&self, t: Option<usize>) -> String {
        match t {
            Some(t) => format!("question[{}].treatment[{t}]", self.q),
            None => format!("question[{}].uses", self.q),
        }
    }

    /// What of a change the question does not speak of.
    fn beyond(&self, changed: &BTreeSet<Variable>) -> Vec<Variable> {
        let asked = [Some(self.question.variable), self.question.crossed_with];
        changed.iter().copied().filter(|v| !asked.contains(&Some(*v))).collect()
    }

    fn against(
        &self,
        t: Option<usize>,
        treatment: &Treatment,
        reference: &Treatment,
    ) -> Option<Finding> {
        let variable = self.question.variable;
        let changed = self.changes(treatment, reference);
        let (name, other) = (&treatment.name, &reference.name);
        let finding = if changed.is_empty() {
            Finding::new(
                Severity::Fault,
                "same-as-reference",
                format!("“{name}” is made just like “{other}”, so there is no change to see."),
                format!("Change the {} in “{name}”, or take it out.", variable.words()),
            )
        } else if !self.beyond(&changed).is_empty() && changed.contains(&variable) {
            self.two_variables(name, other, &changed)
        } else if !changed.contains(&variable) {
            Finding::new(
                Severity::Fault,
                "other-variable",
                format!(
                    "You ask what the {} does, but “{name}” and “{other}” differ in the {}.",
                    variable.words(),
                    words(&changed)
                ),
                format!("Change just the {}, and keep all else the same.", variable.words()),
            )
        } else if changed.len() > 1 {
            Finding::new(
                Severity::Fault,
                "no-matching-reference",
                format!(
                    "“{name}” needs a bag next to it that differs in the {} and in no other way.",
                    variable.words()
                ),
                format!(
                    "Compare “{name}” with a bag that has the same {}: write beside = \"…\".",
                    self.question.crossed_with.unwrap_or(variable).words()
                ),
            )
        } else {
            return None;
        };
        Some(finding.at(self.at(t)))
    }

    fn two_variables(&self, name: &str, other: &str, changed: &BTreeSet<Variable>) -> Finding {
        Finding::new(
            Severity::Fault,
            "two-variables",
            format!(
                "“{name}” and “{other}” differ in more than one thing: {}.",
                words(changed)
            ),
            format!(
                "Change just the {}, or no one can tell which change did it.",
                self.question.variable.words()
            ),
        )
    }

    fn no_reference(&self, name: &str) -> Finding {
        Finding::new(
            Severity::Fault,
            "no-reference",
            format!("There is no bag to compare “{name}” with."),
            "Name the bag that the others are compared with: write reference = \"…\".",
        )
        .at(format!("question[{}].reference", self.q))
    }

    /// Treatments that are fair beside their reference may still not be fair beside each other.
    fn among_themselves(&self, known: &BTreeSet<&str>) -> Option<Finding> {
        let own = &self.question.treatments;
        for (t, treatment) in own.iter().enumerate() {
            for earlier in &own[..t] {
                let named =
                    [treatment, earlier].iter().any(|t| known.contains(t.name.as_str()));
                let changed = self.changes(treatment, earlier);
                if !named && !self.beyond(&changed).is_empty() {
                    let finding = self.two_variables(&treatment.name, &earlier.name, &changed);
                    return Some(finding.at(self.at(Some(t))));
                }
            }
        }
        None
    }
}

/// `food and water`, `food, bag and water`.
fn words(variables: &BTreeSet<Variable>) -> String {
    let words: Vec<&str> = variables.iter().map(|variable| variable.words()).collect();
    match words.as_slice() {
        [] => String::new(),
        [one] => (*one).to_owned(),
        [first @ .., last] => format!("{} and {last}", first.join(", ")),
    }
}

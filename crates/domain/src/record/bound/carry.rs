//! Carrying what an older version says of a bag into the newest plan.

use super::alike::{alike, difference};
use crate::plan::{CONTROLS, Control, LabelFood, Plan, Question, Recipe, Treatment};
use std::collections::{BTreeMap, BTreeSet};

/// What a thing of an older version is called where the newest has another of that name.
pub(super) fn older(name: &str, version: u32) -> String {
    format!("{name} (plan {version})")
}

/// The name and the version, if this is what such a thing is called.
pub(crate) fn older_name(written: &str) -> Option<(&str, u32)> {
    let (name, version) = written.strip_suffix(')')?.rsplit_once(" (plan ")?;
    Some((name, version.parse().ok()?))
}

/// The version by which something is made that is called as an older version's thing, such as
/// `Honey (plan 2)`; nothing for any other name.
#[must_use]
pub fn older_version(written: &str) -> Option<u32> {
    Some(older_name(written)?.1)
}

/// Whether something is called `name`, by itself or as that of an older version.
fn is_called(written: &str, name: &str) -> bool {
    written == name || older_name(written).is_some_and(|(stem, _)| stem == name)
}

/// The newest plan, while things of older versions come in.
pub(super) struct Carry {
    pub(super) plan: Plan,
    /// Treatments by which bags that are not held are made or judged; they stay as they are.
    in_use: BTreeSet<String>,
    /// Names under which a treatment of a held bag stands.
    taken: BTreeSet<String>,
    /// What treatments of older versions are called now.
    names: BTreeMap<(u32, String), String>,
    /// What questions of older versions are called now.
    questions: BTreeMap<(u32, String), String>,
}

impl Carry {
    pub(super) fn into(newest: &Plan, in_use: BTreeSet<String>) -> Self {
        let plan = newest.clone();
        let (taken, names, questions) = Default::default();
        Self { plan, in_use, taken, names, questions }
    }

    /// What a treatment of a version is called now.
    pub(super) fn name(&self, version: u32, treatment: &str) -> Option<&String> {
        self.names.get(&(version, treatment.to_owned()))
    }

    /// Finds a treatment of a version where the plan makes it just so.
    pub(super) fn find(&mut self, version: u32, old: &Plan, name: &str) {
        let Some(treatment) = old.treatment(name) else { return };
        let recipe = self.with_foods(version, old, old.recipe(treatment));
        let own = self.plan.treatments().map(|(_, own)| own);
        let same = own
            .filter(|own| is_called(&own.name, name))
            .find(|own| alike(&self.plan.recipe(own), &recipe))
            .map(|own| own.name.clone());
        if let Some(same) = same {
            self.call(version, name, same);
        }
    }

    /// Brings in a treatment just as a version makes it, if nothing is made so. It keeps its name
    /// where nobody makes it any other way; versions must come newest first.
    pub(super) fn bring(&mut self, version: u32, old: &Plan, name: &str) {
        self.find(version, old, name);
        let stands = old.treatments().find(|(_, own)| own.name == name);
        let Some((home, treatment)) = stands.filter(|_| self.name(version, name).is_none())
        else {
            return;
        };
        let recipe = self.with_foods(version, old, old.recipe(treatment));
        let difference = difference(&self.plan.base, &recipe);
        let there = self.plan.treatment(name).is_some();
        if there && !self.in_use.contains(name) && !self.taken.contains(name) {
            for own in treatments(&mut self.plan).filter(|own| own.name == name) {
                own.difference = difference.clone();
            }
            self.call(version, name, name.to_owned());
            return;
        }
        let called = if there { older(name, version) } else { name.to_owned() };
        let (beside, replicates) = (None, treatment.replicates);
        let new = Treatment { name: called.clone(), beside, replicates, difference };
        self.add(version, old, home, new);
        self.call(version, name, called);
    }

    fn call(&mut self, version: u32, name: &str, called: String) {
        self.taken.insert(called.clone());
        self.names.insert((version, name.to_owned()), called);
    }

    fn add(&mut self, version: u32, old: &Plan, home: &str, treatment: Treatment) {
        if home == CONTROLS {
            self.plan.controls.push(Control { treatment, per_period: 1 });
            return;
        }
        let id = self.question(version, old, home);
        let question = self.plan.questions.iter_mut().find(|question| question.id == id);
        if let Some(question) = question {
            question.treatments.push(treatment);
        }
    }

    /// The id of a version's question, which is brought in if the plan asks something else under
    /// its id, or nothing.
    pub(super) fn question(&mut self, version: u32, old: &Plan, id: &str) -> String {
        if let Some(known) = self.questions.get(&(version, id.to_owned())) {
            return known.clone();
        }
        let Some(asked) = old.questions.iter().find(|question| question.id == id) else {
            return id.to_owned();
        };
        let same = |own: &&Question| {
            is_called(&own.id, id)
                && (own.variable, own.crossed_with) == (asked.variable, asked.crossed_with)
        };
        let called = if let Some(same) = self.plan.questions.iter().find(same) {
            same.id.clone()
        } else {
            let there = self.plan.questions.iter().any(|own| own.id == id);
            let called = if there { older(id, version) } else { id.to_owned() };
            let (treatments, uses) = Default::default();
            let new = Question { id: called.clone(), treatments, uses, ..asked.clone() };
            self.plan.questions.push(new);
            called
        };
        self.questions.insert((version, id.to_owned()), called.clone());
        called
    }

    /// Sets a treatment of a version beside what that version compares it with, as far as nobody
    /// whose bag is not held compares otherwise.
    pub(super) fn beside(&mut self, version: u32, old: &Plan, question: &str, name: &str) {
        let of = old.questions.iter().find(|own| own.id == question);
        let Some((of, treatment)) = of.zip(old.treatment(name)) else { return };
        let beside = old.beside(of, treatment).and_then(|beside| self.name(version, beside));
        let (Some(beside), Some(called)) = (beside.cloned(), self.name(version, name).cloned())
        else {
            return;
        };
        let id = self.question(version, old, question);
        let Some(asked) = self.plan.questions.iter_mut().find(|own| own.id == id) else {
            return;
        };
        let stands = asked.treatments.iter().find(|own| own.name == called);
        let stands = stands.and_then(|own| own.beside.as_ref()).or(asked.reference.as_ref());
        if stands == Some(&beside) {
            return;
        }
        let idle = |name: &String| !self.in_use.contains(name) && !self.taken.contains(name);
        if treatment.beside.is_none() && asked.reference.as_ref().is_none_or(idle) {
            asked.reference = Some(beside);
        } else if !self.in_use.contains(&called)
            && let Some(own) = asked.treatments.iter_mut().find(|own| own.name == called)
        {
            own.beside = Some(beside);
        }
    }

    /// Takes out treatments of which holding has taken the last bag, so that none stands there
    /// as if it had been tried.
    pub(super) fn clear_out(&mut self, newest: &Plan) {
        let plan = &self.plan;
        let bags = |plan: &Plan, name: &str| plan.bags.iter().any(|bag| bag.treatment == name);
        let gone = |name: &str| {
            bags(newest, name)
                && !bags(plan, name)
                && !self.in_use.contains(name)
                && plan.questions.iter().all(|question| !plan.is_reference(question, name))
        };
        let names = plan.treatments().map(|(_, own)| own.name.clone());
        let gone: BTreeSet<String> = names.filter(|name| gone(name)).collect();
        for question in &mut self.plan.questions {
            question.treatments.retain(|own| !gone.contains(&own.name));
            question.uses.retain(|name| !gone.contains(name));
        }
        self.plan.controls.retain(|control| !gone.contains(&control.treatment.name));
    }

    /// Whether a treatment answers a question.
    pub(super) fn answers(&self, question: &str, treatment: &str) -> bool {
        if question == CONTROLS {
            return self.plan.is_control(treatment);
        }
        let question = self.plan.questions.iter().find(|own| own.id == question);
        question.is_some_and(|own| {
            self.plan.answering(own).iter().any(|answer| answer.name == treatment)
        })
    }

    /// Lets a treatment answer a question, if the plan has both.
    pub(super) fn lend(&mut self, question: &str, treatment: &str) {
        if let Some(own) = self.plan.questions.iter_mut().find(|own| own.id == question) {
            own.uses.push(treatment.to_owned());
        }
    }

    /// The recipe with the foods that its version describes from a label, as that version
    /// describes them.
    fn with_foods(&mut self, version: u32, old: &Plan, mut recipe: Recipe) -> Recipe {
        let extras = recipe.extras.iter_mut().map(|extra| &mut extra.item);
        for item in recipe.food.iter_mut().chain(extras) {
            let Some(food) = old.label_foods.iter().find(|food| food.name == *item) else {
                continue;
            };
            let same = |own: &&LabelFood| {
                is_called(&own.name, item)
                    && **own == LabelFood { name: own.name.clone(), ..food.clone() }
            };
            if let Some(same) = self.plan.label_foods.iter().find(same) {
                item.clone_from(&same.name);
                continue;
            }
            if self.plan.label_foods.iter().any(|own| own.name == *item) {
                *item = older(item, version);
            }
            self.plan.label_foods.push(LabelFood { name: item.clone(), ..food.clone() });
        }
        recipe
    }
}

fn treatments(plan: &mut Plan) -> impl Iterator<Item = &mut Treatment> {
    let own = plan.questions.iter_mut().flat_map(|question| &mut question.treatments);
    own.chain(plan.controls.iter_mut().map(|control| &mut control.treatment))
}

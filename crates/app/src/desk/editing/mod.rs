//! A plan while its teacher edits it: a form over the same text, what the checks say beside each
//! field, and what the bags may do.

mod caution;
mod field;
mod foresight;
mod form;
mod outlook;
mod said;
#[cfg(test)]
mod tests;
mod verdict;

pub(crate) use caution::{Caution, LONGEST, answered};
pub(crate) use field::{FormField, Input};
pub(in crate::desk) use foresight::forecast;
pub(crate) use form::{Section, Table};
pub(in crate::desk) use outlook::chart;
pub(crate) use outlook::{Chart, Foreseen, Step, foresee};
pub(crate) use said::{Said, place};
pub(crate) use verdict::Verdict;
pub(in crate::desk) use verdict::verdicts;

use crate::desk::{Wording, say};
use barm_documents::plan_text::{self, Draft};
use barm_domain::check;
use barm_domain::finding::{Field, Finding, Severity};
use barm_domain::pilot::Known;
use barm_domain::plan::Plan;
use barm_domain::ready;
use said::{beside, of_finding, of_mistake};
use std::sync::Arc;

/// A plan that is being edited.
#[derive(Debug)]
pub(crate) struct Editing {
    /// Its text.
    pub(crate) text: String,
    /// The form over it, section by section; empty where the text is not TOML.
    pub(crate) sections: Vec<Section>,
    /// What has no field of its own, faults first.
    pub(crate) around: Vec<Said>,
    /// Cautions, answered or not.
    pub(crate) cautions: Vec<Caution>,
    /// How many faults there are in all.
    pub(crate) faults: usize,
    /// Foods in its bags: id and name.
    pub(crate) foods: Vec<(String, String)>,
    /// Foods that could be swapped in: id and name.
    pub(crate) larder: Vec<(String, String)>,
    /// Who makes how many bags, in a sentence.
    pub(crate) bags: String,
    /// The plan that would be saved, where the text says one.
    pub(crate) plan: Option<Arc<Plan>>,
}

impl Editing {
    /// Opens the text of a plan, sound or not, with the lots that its forecasts go by.
    pub(crate) fn open(w: Wording, text: &str, known: &Known) -> Self {
        let read = plan_text::read_with_old_list(text.as_bytes());
        let sound = read.mistakes.is_empty();
        // Saving brings the bag list into step, so that nobody is told to mend it by hand.
        let plan = read.plan.filter(|_| sound).map(in_step);
        let plan = plan.map(|plan| Plan { known: known.clone(), ..plan });
        let mistakes = read.mistakes.into_iter().map(of_mistake);
        let mut said: Vec<Said> = match &plan {
            Some(plan) => check::check(plan, &[]).into_iter().map(of_finding).collect(),
            None => mistakes.collect(),
        };
        let faults = said.iter().filter(|said| said.severity == Severity::Fault).count();
        let (cautions, rest): (Vec<Said>, Vec<Said>) =
            said.drain(..).partition(caution::is_caution);
        let cautions =
            cautions.into_iter().map(|said| caution::with_answer(plan.as_ref(), said));
        let mut cautions: Vec<Caution> = cautions.collect();
        // The place of one does not change when it is answered.
        cautions.sort_by_key(|one| one.said.code);
        let mut sections =
            Draft::open(text).map(|mut d| form::sections(w, &mut d)).unwrap_or_default();
        let around = beside(&mut sections, rest);
        Self {
            text: text.to_owned(),
            sections,
            around,
            cautions,
            faults,
            foods: plan.as_ref().map(ready::foods_of).unwrap_or_default(),
            larder: larder(plan.as_ref()),
            bags: plan.as_ref().map(|plan| bags(w, plan)).unwrap_or_default(),
            plan: plan.map(Arc::new),
        }
    }

    /// All fields of the form.
    pub(crate) fn fields(&self) -> impl Iterator<Item = &FormField> {
        let tables = self.sections.iter().flat_map(|section| &section.tables);
        tables.flat_map(|table| &table.fields)
    }
}

/// Foods that are offered in place of another.
fn larder(plan: Option<&Plan>) -> Vec<(String, String)> {
    let label = plan.into_iter().flat_map(|plan| &plan.label_foods);
    let own = label.map(|food| (food.name.clone(), food.name.clone()));
    let built_in =
        ready::OFFERED.iter().filter(|one| !one.id.contains('-') && one.id != "salt");
    let named = |id: &str| (id.to_owned(), barm_domain::cupboard::spoken(id).to_owned());
    own.chain(built_in.map(|one| named(one.id))).collect()
}

fn bags(w: Wording, plan: &Plan) -> String {
    let all = plan.bags.len();
    if all == 0 {
        return say!(w, "plan-no-bags");
    }
    let bench = plan.bags.iter().filter(|bag| bag.group == 0).count();
    say!(w, "plan-bag-count", bags = all, periods = plan.periods.len(), bench = bench)
}

/// Whether the text of a plan can be saved.
pub(crate) fn sound(text: &str) -> bool {
    plan_text::read_with_old_list(text.as_bytes()).mistakes.is_empty()
}

/// The text with fields as they were typed. Fields that are not in it are left out.
pub(crate) fn edited(text: &str, typed: &[(String, String)]) -> String {
    let Some(mut draft) = Draft::open(text) else { return text.to_owned() };
    let mut changed = false;
    for (field, value) in typed {
        let field = Field(field.clone());
        let stands = draft.value(&field).unwrap_or_default();
        if stands.trim() != value.trim() {
            changed |= draft.put(&field, value);
        }
    }
    if changed { draft.text() } else { text.to_owned() }
}

/// What a button of the form does to the text: adds to a list, or takes out of one.
pub(crate) fn reshaped(w: Wording, text: &str, what: &str) -> Option<String> {
    let mut draft = Draft::open(text)?;
    let done = match what.split_once(' ')? {
        ("out", table) => form::out(&mut draft, table),
        ("add", list) => form::add(w, &mut draft, list),
        _ => false,
    };
    done.then(|| draft.text())
}

/// The text with one food in place of another, everywhere.
pub(crate) fn swapped(w: Wording, text: &str, from: &str, to: &str) -> Result<String, String> {
    let plan = plan_text::read_with_old_list(text.as_bytes()).plan;
    let plan = plan.ok_or_else(|| say!(w, "plan-swap-faults"))?;
    let new = ready::swap(&plan, from, to).map_err(|error| sentence(&error.to_string()))?;
    Ok(plan_text::write(&new, text))
}

/// The plan with its bag list in step with the rest; as it is where that cannot be.
fn in_step(plan: Plan) -> Plan {
    match barm_domain::bag_list::write(&plan) {
        Ok(list) => Plan { bags: list.bags, retired_codes: list.retired, ..plan },
        Err(_) => plan,
    }
}

/// The text with its bag list in step with the rest; as it is where that cannot be.
pub(crate) fn with_bags(text: &str) -> String {
    let Some(plan) = plan_text::read_with_old_list(text.as_bytes()).plan else {
        return text.to_owned();
    };
    let new = in_step(plan.clone());
    if (&new.bags, &new.retired_codes) == (&plan.bags, &plan.retired_codes) {
        return text.to_owned();
    }
    plan_text::write(&new, text)
}

/// A message as a sentence.
pub(crate) fn sentence(says: &str) -> String {
    let mut letters = says.chars();
    let first =
        letters.next().map(|c| c.to_uppercase().collect::<String>()).unwrap_or_default();
    let end = if says.ends_with(['.', '?', '!']) { "" } else { "." };
    format!("{first}{}{end}", letters.as_str())
}

/// Findings that rest on a forecast come when it is there.
pub(crate) fn late(found: &[Finding]) -> impl Iterator<Item = &Finding> {
    const LATE: [&str; 4] = ["overfull", "vent", "nothing-shows", "may-not-show"];
    found.iter().filter(|finding| LATE.contains(&finding.code))
}

//! The queue of proposals: each judged and foreseen, gravest first, and what they cover together.

use super::editing::{self, Chart, Verdict};
use super::{DeskError, Wording};
use barm_documents::plan_text;
use barm_documents::proposals::{self as table, Row};
use barm_domain::finding::Severity;
use barm_domain::outlook::{Look, gather};
use barm_domain::plan::Plan;
use barm_domain::prep;
use barm_domain::proposal::{
    Covered, Judged, Proposal, approve, coverage, judge, partners, trial,
};
use barm_science::food;
use rayon::prelude::*;
use std::path::Path;

/// Draws of a proposal's forecast: enough to say whether something shows, for forty at once.
const DRAWS: usize = 128;

/// One proposal of the queue.
#[derive(Debug)]
pub(crate) struct Queued {
    /// The proposal with its words.
    pub(crate) row: Row,
    /// What the checks say, with the forecast.
    pub(crate) judged: Judged,
    /// Groups elsewhere that ask the same.
    pub(crate) partners: Vec<(String, u32)>,
    /// Shows, may not show, bag holds.
    pub(crate) verdicts: Vec<Verdict>,
    /// What it may do.
    pub(crate) chart: Option<Chart>,
    /// Major allergens in its foods.
    pub(crate) allergens: Vec<&'static str>,
    /// What it adds to the shopping (dollars), as far as prices are known.
    pub(crate) cost: Option<f64>,
}

/// All proposals of an investigation.
#[derive(Debug)]
pub(crate) struct Queue {
    /// Proposals, most faults first.
    pub(crate) lines: Vec<Queued>,
    /// What they cover.
    pub(crate) covered: Vec<Covered>,
    /// Groups of the plan.
    pub(crate) groups: usize,
}

impl Queue {
    /// What most groups picked, if that is so many that the class would learn one thing only.
    pub(crate) fn all_picked(&self) -> Option<&Covered> {
        self.covered.first().filter(|first| {
            first.groups.len() >= 3 && first.groups.len() * 2 > self.lines.len()
        })
    }

    /// Proposals without a fault.
    pub(crate) fn sound(&self) -> impl Iterator<Item = &Proposal> {
        let sound = self.lines.iter().filter(|line| line.judged.faults() == 0);
        sound.filter_map(|line| line.judged.proposal.as_ref())
    }
}

/// Judges and forecasts proposals. The answer does not depend on how many run at a time.
pub(crate) fn queue(w: Wording, plan: &Plan, rows: &[Row]) -> Queue {
    let all: Vec<Proposal> =
        rows.iter().filter_map(|row| row.written.read(plan).ok()).collect();
    let before = prep::prep(plan).ok().map(|prep| prep.shopping.cost);
    let mut lines: Vec<Queued> =
        rows.par_iter().map(|row| queued(w, plan, row, &all, before)).collect();
    let warnings = |line: &Queued| {
        line.judged.found.iter().filter(|found| found.severity == Severity::Warning).count()
    };
    lines.sort_by_key(|line| {
        let period = plan.periods.iter().position(|p| p.name == line.row.written.period);
        let grave = (line.judged.faults(), warnings(line));
        (std::cmp::Reverse(grave), period, line.row.written.group)
    });
    let groups = plan.periods.iter().map(|period| period.groups as usize).sum();
    Queue { lines, covered: coverage(&all), groups }
}

fn queued(w: Wording, plan: &Plan, row: &Row, all: &[Proposal], before: Option<f64>) -> Queued {
    let read = row.written.read(plan).ok();
    let partner: Vec<(String, u32)> = read
        .iter()
        .flat_map(|own| partners(own, all))
        .map(|other| (other.period.clone(), other.group))
        .collect();
    let mut line = Queued {
        row: row.clone(),
        judged: judge(plan, &row.written, all, &[]),
        partners: partner,
        verdicts: Vec::new(),
        chart: None,
        allergens: Vec::new(),
        cost: None,
    };
    let Some(proposal) = read else { return line };
    let trial = trial(plan, &proposal, line.partners.len());
    let look = Look { draws: DRAWS, ..Look::default() };
    let treatments = trial.treatments().map(|(_, treatment)| treatment);
    let treated: Result<Vec<_>, _> =
        treatments.map(|one| editing::forecast(&trial, one, look)).collect();
    if let Ok(treated) = treated {
        let treated: Vec<_> = treated.into_iter().map(|one| (*one).clone()).collect();
        let entries = gather(&trial, &treated);
        line.judged = judge(plan, &row.written, all, &entries);
        line.verdicts = editing::verdicts(w, &trial, &entries);
        line.chart = trial
            .questions
            .first()
            .and_then(|question| editing::chart(w, &trial, &entries, &[], question));
    }
    line.allergens = allergens(plan, &proposal);
    let after = approve(plan, std::slice::from_ref(&proposal)).ok();
    let after = after.and_then(|plan| prep::prep(&plan).ok()).map(|prep| prep.shopping.cost);
    line.cost = before.zip(after).map(|(before, after)| after - before);
    line
}

fn allergens(plan: &Plan, proposal: &Proposal) -> Vec<&'static str> {
    let mut found = Vec::new();
    for level in &proposal.levels {
        let recipe = plan.base.with(&level.difference);
        let food = recipe.food.as_deref().and_then(food::by_id);
        for allergen in
            food.into_iter().flat_map(|food| food.allergens.iter().chain(food.traces))
        {
            if !found.contains(&allergen.name()) {
                found.push(allergen.name());
            }
        }
    }
    found
}

/// Reads a table of proposals.
pub(crate) fn read(path: &Path) -> Result<Vec<Row>, DeskError> {
    let bytes = super::plan_file::bytes(path)?;
    table::read(&bytes).map_err(|wrong| DeskError::Proposals { path: path.to_owned(), wrong })
}

/// What approving a table did.
#[derive(Debug)]
pub(crate) struct Approved {
    /// Proposals that are in the plan now: period and group.
    pub(crate) taken: Vec<(String, u32)>,
    /// The others, with what is wrong with each.
    pub(crate) left: Vec<Queued>,
}

/// Puts every proposal without a fault into a plan file.
pub(crate) fn approve_file(
    plan: &Path,
    tables: &[std::path::PathBuf],
) -> Result<Approved, DeskError> {
    let open = super::open_plan(plan)?;
    let mut rows = Vec::new();
    for table in tables {
        rows.extend(read(table)?);
    }
    let queue = queue(Wording::english(), &open.plan, &rows);
    let sound: Vec<Proposal> = queue.sound().cloned().collect();
    let new = approve(&open.plan, &sound)?;
    let old = String::from_utf8_lossy(&super::plan_file::bytes(plan)?).into_owned();
    super::new_plan::replace_plan(plan, &plan_text::write(&new, &old))?;
    Ok(Approved {
        taken: sound.iter().map(|one| (one.period.clone(), one.group)).collect(),
        left: queue.lines.into_iter().filter(|line| line.judged.faults() > 0).collect(),
    })
}

/// A plan and a table of proposals, for tests of pages that know neither text.
#[cfg(test)]
pub(crate) fn both(plan: &str, rows: &str) -> (Plan, Vec<Row>) {
    let plan = plan_text::read(plan.as_bytes()).plan.expect("a sound plan");
    (plan, table::read(rows.as_bytes()).expect("a table"))
}

//! Checking a plan: mistakes of the file, then faults, feasibility and cautions.

use super::outlook::overnight;
use super::pilot::lots_beside;
use super::plan_file::bytes;
use super::{DeskError, Outlook, Progress, outlook};
use barm_documents::page::prints;
use barm_documents::plan_text::{self, Mistake, Place, Places};
use barm_domain::check;
use barm_domain::finding::{Finding, Severity};
use barm_domain::outlook::{Look, OutlookError};
use barm_domain::pilot::Known;
use barm_domain::plan::Plan;
use std::path::Path;

/// A finding with its place in the file.
#[derive(Debug)]
pub(crate) struct Located {
    /// The finding.
    pub(crate) finding: Finding,
    /// Where, if it has a place.
    pub(crate) place: Option<Place>,
}

/// What a check says about a plan file.
#[derive(Debug)]
pub(crate) struct Checked {
    /// Everything there is to say, gravest first.
    pub(crate) found: Vec<Located>,
    /// Whether the file is no text or no TOML, so that no plan can be made out at all.
    pub(crate) unreadable: bool,
    /// One line about the lots that the forecast goes by, if a pilot tried any.
    pub(crate) by_pilot: Option<String>,
}

/// Everything there is to say about a plan file, gravest first.
///
/// A file with mistakes gives its mistakes only: what rests on them could not be trusted.
pub(crate) fn check(
    path: &Path,
    look: Look,
    progress: &dyn Progress,
) -> Result<Checked, DeskError> {
    let read = plan_text::read(&bytes(path)?);
    let unreadable = read.unreadable;
    let Some(mut plan) = read.plan.filter(|_| read.mistakes.is_empty()) else {
        let found = read.mistakes.into_iter().map(mistake).collect();
        return Ok(Checked { found, unreadable, by_pilot: None });
    };
    plan.known = Known::of(&lots_beside(path)?);
    let mut found = all_findings(&plan, look, progress);
    found.extend(unprinted(&plan));
    found.sort_by_key(|finding| finding.severity);
    Ok(Checked { found: locate(found, &read.places), unreadable, by_pilot: plan.known.says() })
}

/// Texts of a plan with letters that our pages cannot print.
pub(crate) fn unprinted(plan: &Plan) -> Vec<Finding> {
    check::letters_missing(plan, prints)
}

/// Every finding of a plan.
///
/// What rests on the forecast of a treatment that has none is silent; a fault says so.
pub(crate) fn all_findings(plan: &Plan, look: Look, progress: &dyn Progress) -> Vec<Finding> {
    match outlook(plan, look, progress) {
        Ok(outlook) => findings(plan, &outlook, look, progress),
        // A plan without a day or without time: the check says so by itself.
        Err(_) => check::check(plan, &[]),
    }
}

/// Every finding of a plan whose forecasts are made.
pub(crate) fn findings(
    plan: &Plan,
    outlook: &Outlook,
    look: Look,
    progress: &dyn Progress,
) -> Vec<Finding> {
    let (overnight, mut failed) = overnight(plan, look, progress);
    let known = |error: &OutlookError| {
        outlook.failed.iter().any(|other| other.treatment() == error.treatment())
    };
    failed.retain(|error| !known(error));
    let mut found = check::check_overnight(plan, &outlook.entries, &overnight);
    let failed = outlook.failed.iter().chain(&failed);
    found.extend(failed.filter_map(|error| check::unforeseen(plan, error)));
    found.sort_by_key(|finding| finding.severity);
    found
}

/// How many faults a plan has, as far as that can be told without a forecast.
pub(crate) fn faults_without_forecast(plan: &Plan) -> usize {
    check::check(plan, &[]).iter().filter(|f| f.severity == Severity::Fault).count()
}

/// Findings with their places in the file.
fn locate(found: Vec<Finding>, places: &Places) -> Vec<Located> {
    let located = |finding: Finding| {
        let place = finding.at.as_ref().and_then(|field| places.of(field));
        Located { finding, place }
    };
    found.into_iter().map(located).collect()
}

fn mistake(mistake: Mistake) -> Located {
    let place = Place { line: mistake.line, column: mistake.column };
    let message = match &mistake.field {
        Some(field) => format!("{field}: {}", mistake.what),
        None => mistake.what,
    };
    // A bag of a class that is gone is no slip of the pen.
    let of_list = mistake.field.as_ref().is_some_and(|field| field.0.starts_with("bag["));
    let fix = if of_list {
        format!("{}; or run `barm bags` if the rest of the plan was changed", mistake.fix)
    } else {
        mistake.fix
    };
    Located {
        finding: Finding {
            severity: Severity::Fault,
            code: "plan-text",
            message,
            fix,
            at: mistake.field,
            source: None,
        },
        place: Some(place),
    }
}

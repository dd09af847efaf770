//! Second rounds: what a class could make next, the plan of one of them, and both rounds together.

use super::plan_file::bytes;
use super::{DeskError, OpenPlan, Progress, analyze, write_new};
use barm_documents::plan_text;
use barm_documents::readings::{self, ReadingsFile};
use barm_domain::plan::Plan;
use barm_domain::reading::Rejected;
use barm_domain::result::ClassResult;
use barm_domain::result::taught::DayTaught;
use barm_domain::round_two::{
    By, Handed, Pooled, Proposal, Proposals, RoundOne, pool, propose,
};
use std::collections::BTreeMap;
use std::path::Path;

/// What a class could make next.
#[derive(Debug)]
pub(crate) struct Next {
    /// Second rounds, the most telling first.
    pub(crate) proposals: Proposals,
    /// What the forecasts rest on, and what has to be known of the readings.
    pub(crate) notes: Vec<String>,
}

/// Both rounds together.
#[derive(Debug)]
pub(crate) struct BothRounds {
    /// What they say.
    pub(crate) pooled: Pooled,
    /// Rows that were not taken, with the number of their round.
    pub(crate) rejected: Vec<(u8, Rejected)>,
    /// What has to be said of a file as a whole.
    pub(crate) notes: Vec<String>,
}

/// Proposes second rounds from a plan and its readings; what the readings teach is worked out first.
pub(crate) fn round_two(
    open: &OpenPlan,
    readings: &Path,
    by: By,
    progress: &dyn Progress,
) -> Result<Next, DeskError> {
    let analysis = analyze(open, readings, progress)?;
    let mut notes: Vec<String> = analysis.above_all.iter().cloned().collect();
    let rows = analysis.rejected.len();
    if rows > 0 {
        let (rows, were) = if rows == 1 {
            ("1 row".to_owned(), "was")
        } else {
            (format!("{rows} rows"), "were")
        };
        notes
            .push(format!("{rows} of the readings {were} not taken; barm analyze lists them."));
    }
    progress.step("learning from the day", 0, 1);
    let result = analysis.result.clone();
    let day = match analysis.with_day(&open.plan, &BTreeMap::new()) {
        Ok(analysis) => Ok(analysis.day),
        Err(DeskError::Day(why)) => Err(why.to_string()),
        Err(other) => return Err(other),
    };
    let next = next_of(&open.plan, &result, day, by, progress)?;
    notes.extend(next.notes);
    Ok(Next { notes, ..next })
}

/// The same from what a class found, and from what its day taught or why that could not be worked out.
pub(crate) fn next_of(
    plan: &Plan,
    result: &ClassResult,
    day: Result<Option<DayTaught>, String>,
    by: By,
    progress: &dyn Progress,
) -> Result<Next, DeskError> {
    let mut notes = Vec::new();
    let day = day.unwrap_or_else(|why| {
        notes.push(format!(
            "What the day teaches could not be worked out ({why}); forecasts go by what is usual."
        ));
        None
    });
    if let Some(day) = &day {
        notes.push(super::voice(plan).day_rests_on(day));
    }
    let learned = day.as_ref().map(|day| day.learned.clone()).unwrap_or_default();
    let one = RoundOne { plan, result, learned: &learned };
    let proposals =
        propose(&one, by, &|done, of| progress.step("weighing second rounds", done, of))?;
    Ok(Next { proposals, notes })
}

/// One of the proposals by its rank, from 1.
pub(crate) fn proposal(next: &Next, rank: usize) -> Result<&Proposal, DeskError> {
    let ranked = &next.proposals.ranked;
    let chosen = rank.checked_sub(1).and_then(|at| ranked.get(at));
    chosen.ok_or(DeskError::NoProposal { rank, ranks: ranked.len() })
}

/// Writes the plan of a second round to a new file, in the words of the first one's file.
pub(crate) fn write_second(first: &Path, with: &Plan, into: &Path) -> Result<(), DeskError> {
    let old = String::from_utf8_lossy(&bytes(first)?).into_owned();
    write_new(into, plan_text::write(with, &old).as_bytes())
}

/// Puts two rounds together.
pub(crate) fn both_rounds(
    first: (&OpenPlan, &Path),
    second: (&OpenPlan, &Path),
) -> Result<BothRounds, DeskError> {
    let read = |(open, path): (&OpenPlan, &Path)| -> Result<ReadingsFile, DeskError> {
        Ok(readings::read(&bytes(path)?, &open.plan))
    };
    let files = [read(first)?, read(second)?];
    let plans = [&first.0.plan, &second.0.plan];
    let handed = |at: usize| Handed {
        plan: plans[at],
        readings: &files[at].readings,
        set_aside: &files[at].set_aside,
    };
    let pooled = pool(&handed(0), &handed(1))?;
    let mut rejected = Vec::new();
    for (round, file, result) in [(1, &files[0], &pooled.first), (2, &files[1], &pooled.second)]
    {
        let mut rows: Vec<Rejected> =
            file.rejected.iter().chain(&result.rejected).cloned().collect();
        rows.sort_by_key(|row| row.line);
        rejected.extend(rows.into_iter().map(|row| (round, row)));
    }
    let notes = files.iter().filter_map(|file| file.above_all.clone()).collect();
    Ok(BothRounds { pooled, rejected, notes })
}

/// Why a second look must be stricter, for students, in every language.
pub(crate) fn why_stricter() -> Vec<String> {
    super::Catalog::all().map(|language| language.say("second-look-why")).collect()
}

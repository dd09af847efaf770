//! `barm approve`, and the queue that `barm check --proposals` shows.

use super::failure::Failure;
use super::{FAULTY, page};
use crate::desk::queue::{self, Queue, Queued};
use barm_domain::finding::Severity;
use std::io::Write;
use std::path::PathBuf;
use std::process::ExitCode;

/// Put proposals of groups into a plan: questions, treatments and bags
///
/// Proposals with a fault are left out and named; exit code 1 if there are any. The tables are
/// described in docs/proposals.md.
#[derive(clap::Args, Debug)]
pub(super) struct Arguments {
    /// The plan file; it is changed
    #[arg(value_name = "PLAN")]
    plan: PathBuf,
    /// Tables of proposals
    #[arg(value_name = "TABLE", required = true)]
    tables: Vec<PathBuf>,
}

pub(super) fn run(arguments: &Arguments, out: &mut impl Write) -> Result<ExitCode, Failure> {
    let done = queue::approve_file(&arguments.plan, &arguments.tables)?;
    let file = arguments.plan.display();
    let groups: Vec<String> =
        done.taken.iter().map(|(period, group)| format!("P{period} group {group}")).collect();
    let says = match groups.len() {
        0 => format!("Nothing was approved, and {file} says what it said."),
        count => format!("Approved into {file}: {count} proposals ({}).", groups.join(", ")),
    };
    page::paragraph(out, 2, &says)?;
    if done.left.is_empty() {
        return Ok(ExitCode::SUCCESS);
    }
    page::part(out, "Left out: send them back with a question")?;
    for line in &done.left {
        one(out, line)?;
    }
    Ok(ExitCode::from(FAULTY))
}

/// The queue of a table, most faults first.
pub(super) fn show(out: &mut impl Write, queue: &Queue) -> Result<ExitCode, Failure> {
    let count = queue.lines.len();
    page::title(out, &format!("{count} proposals of {} groups", queue.groups))?;
    for line in &queue.lines {
        one(out, line)?;
    }
    page::part(out, "What they cover")?;
    for covered in &queue.covered {
        let groups: Vec<String> =
            covered.groups.iter().map(|(period, group)| format!("P{period}-{group}")).collect();
        let says = format!(
            "{}: {}. {} bags of each, by {}.",
            covered.variable.words(),
            covered.levels.join(", "),
            covered.bags,
            groups.join(", ")
        );
        page::paragraph(out, 4, &says)?;
    }
    if let Some(most) = queue.all_picked() {
        let says = format!(
            "{} of {count} groups picked the same. Ask some what else could matter.",
            most.groups.len()
        );
        page::paragraph(out, 2, &says)?;
    }
    let faulty = queue.lines.iter().any(|line| line.judged.faults() > 0);
    Ok(if faulty { ExitCode::from(FAULTY) } else { ExitCode::SUCCESS })
}

fn one(out: &mut impl Write, line: &Queued) -> Result<(), Failure> {
    let written = &line.row.written;
    let head = format!(
        "Period {}, group {}: {} ({})",
        written.period,
        written.group,
        if written.asks.is_empty() { "no question written" } else { &written.asks },
        written.changes
    );
    page::part(out, &head)?;
    page::paragraph(out, 4, &written.levels.join(", "))?;
    for finding in &line.judged.found {
        if finding.severity <= Severity::Warning || finding.severity == Severity::Caution {
            let word = finding.severity.word();
            page::paragraph(out, 4, &format!("{word} {}  {}", finding.code, finding.message))?;
            page::note(out, 4, &format!("\u{2192} {}", finding.fix))?;
        }
    }
    for verdict in &line.verdicts {
        page::paragraph(out, 4, &format!("{}: {}", verdict.word, verdict.says))?;
    }
    if !line.partners.is_empty() {
        let partners: Vec<String> =
            line.partners.iter().map(|(period, group)| format!("P{period}-{group}")).collect();
        page::paragraph(out, 4, &format!("The same question: {}.", partners.join(", ")))?;
    }
    if !line.allergens.is_empty() {
        page::paragraph(out, 4, &format!("Allergens: {}.", line.allergens.join(", ")))?;
    }
    if let Some(cost) = line.cost.filter(|cost| *cost > 0.005) {
        page::paragraph(out, 4, &format!("Adds ${cost:.2} to the shopping."))?;
    }
    Ok(())
}

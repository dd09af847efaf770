//! `barm check`.

use super::failure::Failure;
use super::{FAULTY, UNREADABLE, approve, page, progress};
use crate::desk::{self, Located};
use crate::json;
use barm_domain::check::{LOCAL_RULES, without_local_rules};
use barm_domain::finding::Severity;
use barm_domain::outlook::Look;
use std::io::Write;
use std::path::PathBuf;
use std::process::ExitCode;

/// Check a plan: is it a fair test, can it be done, who could be hurt
///
/// Exit code 1 if the plan has a fault, 2 if the file cannot be read as a plan.
#[derive(clap::Args, Debug)]
pub(super) struct Arguments {
    /// The plan file
    #[arg(value_name = "PLAN")]
    plan: PathBuf,
    /// Judge a table of proposals (docs/proposals.md) by this plan, most faults first
    #[arg(long, value_name = "TABLE", conflicts_with = "json")]
    proposals: Option<PathBuf>,
    /// Answer in JSON (shape in docs/json.md)
    #[arg(long)]
    json: bool,
}

pub(super) fn run(arguments: &Arguments, out: &mut impl Write) -> Result<ExitCode, Failure> {
    if let Some(table) = &arguments.proposals {
        let rows = desk::queue::read(table)?;
        let open = desk::open_plan(&arguments.plan)?;
        return approve::show(
            out,
            &desk::queue::queue(desk::Wording::english(), &open.plan, &rows),
        );
    }
    let line = progress::Line::new();
    let checked = desk::check(&arguments.plan, Look::default(), &line)?;
    drop(line);
    let found = &checked.found;
    let faulty = found.iter().any(|located| located.finding.severity == Severity::Fault);
    if arguments.json {
        json::write(out, &json::findings(found))?;
    } else {
        let file = arguments.plan.display().to_string();
        page::title(out, &format!("Check of {file}"))?;
        if let Some(says) = &checked.by_pilot {
            page::paragraph(out, 0, says)?;
        }
        // Said once over the cautions, or over the notes where every caution is answered: after each
        // of them it would drown them.
        let local = found.iter().map(|located| &located.finding);
        let local = local.filter(|finding| finding.fix.ends_with(LOCAL_RULES));
        let local = local.map(|finding| finding.severity).max();
        for (severity, head) in PARTS {
            let rules = (local == Some(*severity)).then_some(LOCAL_RULES);
            let own = found.iter().filter(|l| l.finding.severity == *severity);
            list(out, &file, (head, rules), own)?;
        }
        if !faulty {
            writeln!(out)?;
            writeln!(out, "No faults.")?;
        }
    }
    Ok(match (checked.unreadable, faulty) {
        (true, _) => ExitCode::from(UNREADABLE),
        (false, true) => ExitCode::from(FAULTY),
        (false, false) => ExitCode::SUCCESS,
    })
}

const PARTS: &[(Severity, &str)] = &[
    (Severity::Fault, "Faults: mend these first"),
    (Severity::Warning, "Warnings: it may disappoint"),
    (Severity::Note, "Notes"),
    (Severity::Caution, "Cautions"),
];

fn list<'a>(
    out: &mut impl Write,
    file: &str,
    (head, rules): (&str, Option<&str>),
    found: impl Iterator<Item = &'a Located>,
) -> Result<(), Failure> {
    let mut found = found.peekable();
    if found.peek().is_none() {
        return Ok(());
    }
    page::part(out, head)?;
    if let Some(rules) = rules {
        writeln!(out, "{rules}")?;
    }
    for located in found {
        let finding = &located.finding;
        let place =
            located.place.map(|place| format!("  ({file}:{}:{})", place.line, place.column));
        let place = place.unwrap_or_default();
        page::paragraph(out, 4, &format!("{}  {}{place}", finding.code, finding.message))?;
        page::note(out, 4, &format!("\u{2192} {}", without_local_rules(&finding.fix)))?;
        if let Some(source) = finding.source {
            page::note(out, 6, &format!("source: {source}"))?;
        }
    }
    Ok(())
}

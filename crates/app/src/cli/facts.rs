//! `barm facts`.

use super::failure::Failure;
use crate::{desk, json};
use std::io::Write;
use std::process::ExitCode;

/// List every constant and parameter with its value, range and source
///
/// "sourced": read in the source named. "derived": worked out from sourced numbers. "memory":
/// recalled and not read again; a trial in your own room is better.
#[derive(clap::Args, Debug)]
pub(super) struct Arguments {
    /// Answer in JSON (shape in docs/json.md)
    #[arg(long)]
    json: bool,
    /// Only those whose name or source holds this text
    #[arg(value_name = "TEXT")]
    only: Option<String>,
}

pub(super) fn run(arguments: &Arguments, out: &mut impl Write) -> Result<ExitCode, Failure> {
    let mut facts = desk::facts();
    if let Some(only) = &arguments.only {
        let only = only.to_lowercase();
        facts.retain(|fact| {
            fact.name.to_lowercase().contains(&only)
                || fact.source.to_lowercase().contains(&only)
        });
    }
    if arguments.json {
        json::write(out, &json::facts(&facts))?;
        return Ok(ExitCode::SUCCESS);
    }
    for fact in &facts {
        let range = fact
            .range
            .map(|(low, high)| format!("  ({} to {})", number(low), number(high)))
            .unwrap_or_default();
        let unit = if fact.unit == "1" { "" } else { fact.unit };
        writeln!(out, "{} = {} {unit}{range}", fact.name, number(fact.value))?;
        writeln!(out, "    {}: {}", fact.status.word(), fact.source)?;
    }
    writeln!(out, "{} facts", facts.len())?;
    Ok(ExitCode::SUCCESS)
}

/// A number as short as it can be without losing a digit.
fn number(value: f64) -> String {
    let plain = format!("{value}");
    if plain.len() > 10 { format!("{value:e}") } else { plain }
}

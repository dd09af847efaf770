//! `barm facts`.

use super::failure::Failure;
use crate::desk::{self, Fact};
use crate::json;
use std::io::Write;
use std::path::{Path, PathBuf};
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
    /// Answer as Markdown tables, one a subject, for reading and checking
    #[arg(long, conflicts_with = "json")]
    markdown: bool,
    /// Write the laws as pictures (SVG) into this folder, beside what others measured
    #[arg(long, value_name = "FOLDER", conflicts_with_all = ["json", "markdown", "only"])]
    pictures: Option<PathBuf>,
    /// Only those whose name or source holds this text
    #[arg(value_name = "TEXT")]
    only: Option<String>,
}

pub(super) fn run(arguments: &Arguments, out: &mut impl Write) -> Result<ExitCode, Failure> {
    if let Some(folder) = &arguments.pictures {
        return pictures(out, folder);
    }
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
    if arguments.markdown {
        markdown(out, facts)?;
        return Ok(ExitCode::SUCCESS);
    }
    for fact in &facts {
        let range = range(fact).map(|range| format!("  ({range})")).unwrap_or_default();
        let unit = unit(fact);
        writeln!(out, "{} = {} {unit}{range}", fact.name, number(fact.value))?;
        writeln!(out, "    {}: {}", fact.status.word(), fact.source)?;
    }
    writeln!(out, "{} facts", facts.len())?;
    Ok(ExitCode::SUCCESS)
}

/// Writes every law as a picture, and says where.
fn pictures(out: &mut impl Write, folder: &Path) -> Result<ExitCode, Failure> {
    let all = desk::law_pictures(folder)?;
    for picture in &all {
        let left = if picture.kept_yours { "  (yours was left as it is)" } else { "" };
        writeln!(out, "{}{left}", picture.path.display())?;
    }
    writeln!(out, "{} pictures of laws; what they show stands in docs/science", all.len())?;
    Ok(ExitCode::SUCCESS)
}

/// A table for each subject: what stands before the first dot of a name.
fn markdown(out: &mut impl Write, mut facts: Vec<Fact>) -> Result<(), Failure> {
    facts.sort_by(|a, b| subject(a).cmp(subject(b)));
    writeln!(out, "# Facts")?;
    writeln!(out)?;
    writeln!(
        out,
        "{} numbers. Status: *sourced*, read in the source named; *derived*, worked out from sourced \
         numbers; *memory*, recalled and not read again. Written by `barm facts --markdown`.",
        facts.len()
    )?;
    for own in facts.chunk_by(|a, b| subject(a) == subject(b)) {
        writeln!(out, "\n## {}\n", subject(&own[0]).replace('_', " "))?;
        writeln!(out, "| name | value | unit | range | status | source |")?;
        writeln!(out, "|---|---:|---|---|---|---|")?;
        for fact in own {
            let (value, unit, range) =
                (number(fact.value), unit(fact), range(fact).unwrap_or_default());
            let (status, source) = (fact.status.word(), fact.source.replace('|', "\\|"));
            let name = fact.name;
            writeln!(out, "| `{name}` | {value} | {unit} | {range} | {status} | {source} |")?;
        }
    }
    Ok(())
}

fn subject(fact: &Fact) -> &'static str {
    fact.name.split('.').next().unwrap_or(fact.name)
}

fn unit(fact: &Fact) -> &'static str {
    if fact.unit == "1" { "" } else { fact.unit }
}

fn range(fact: &Fact) -> Option<String> {
    fact.range.map(|(low, high)| format!("{} to {}", number(low), number(high)))
}

/// A number as short as it can be without losing a digit.
fn number(value: f64) -> String {
    let plain = format!("{value}");
    if plain.len() > 10 { format!("{value:e}") } else { plain }
}

//! `barm bags`.

use super::failure::Failure;
use super::page;
use crate::desk;
use std::io::Write;
use std::path::PathBuf;
use std::process::ExitCode;

/// Bring a plan's bag list in step with its questions, periods and groups, and save it
///
/// Bags that stay keep their codes, and a code once given is never given to another bag. Notes
/// and order of the file stay; a file of an older format is upgraded.
#[derive(clap::Args, Debug)]
pub(super) struct Arguments {
    /// The plan file
    #[arg(value_name = "PLAN")]
    plan: PathBuf,
}

pub(super) fn run(arguments: &Arguments, out: &mut impl Write) -> Result<ExitCode, Failure> {
    let (open, before, after) = desk::renew_bags(&arguments.plan)?;
    page::title(out, &open.plan.title)?;
    writeln!(out, "{after} bags, {before} before.")?;
    for period in &open.plan.periods {
        let own = open.plan.bags.iter().filter(|bag| bag.period == period.name).count();
        writeln!(out, "Period {}: {own} bags", period.name)?;
    }
    Ok(ExitCode::SUCCESS)
}

//! `barm bags`.

use super::failure::Failure;
use super::page;
use crate::desk;
use std::io::Write;
use std::path::PathBuf;
use std::process::ExitCode;

/// Add what is missing to a plan's bag list after a change of questions, periods or groups
///
/// A bag whose period, group and treatment are still in the plan stays as it is, so that labels
/// that are printed stay true. A code once given is never given to another bag. Notes and order of
/// the file stay; a file of an older format is upgraded.
#[derive(clap::Args, Debug)]
pub(super) struct Arguments {
    /// The plan file
    #[arg(value_name = "PLAN")]
    plan: PathBuf,
    /// Deal all bags out again, as if there were no list; printed labels may go stale
    #[arg(long)]
    anew: bool,
}

pub(super) fn run(arguments: &Arguments, out: &mut impl Write) -> Result<ExitCode, Failure> {
    let renewed = desk::renew_bags(&arguments.plan, arguments.anew)?;
    let plan = &renewed.open.plan;
    page::title(out, &plan.title)?;
    let (after, before, stay) = (plan.bags.len(), renewed.before, renewed.stay);
    writeln!(out, "{after} bags, {before} before.")?;
    let (new, gone) = (after - stay, before - stay);
    writeln!(out, "{stay} stay as they were, {new} are new, {gone} are gone.")?;
    for period in &plan.periods {
        let own = plan.bags.iter().filter(|bag| bag.period == period.name).count();
        writeln!(out, "Period {}: {own} bags", period.name)?;
    }
    for (name, listed, asked) in &renewed.more {
        let says = format!(
            "“{name}” has {listed} bags, and the plan asks for {asked}. They stay, since labels may \
             be printed."
        );
        page::paragraph(out, 2, &says)?;
    }
    for (period, groups) in &renewed.idle {
        let word = if *groups == 1 { "group has" } else { "groups have" };
        let says = format!(
            "Period {period}: {groups} {word} no bag. Raise the replicates of a question and run \
             this again."
        );
        page::paragraph(out, 2, &says)?;
    }
    if !renewed.more.is_empty() || !renewed.idle.is_empty() {
        let says = "Or deal all bags out again with --anew; then print all labels again.";
        page::paragraph(out, 2, says)?;
    }
    Ok(ExitCode::SUCCESS)
}

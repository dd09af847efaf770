//! The command line: parse, call the desk, show what it says.
//!
//! Exit codes: 0 fine, 1 the plan or the data have faults, 2 unreadable input or wrong use.

mod analyze;
mod approve;
mod assign;
mod backup;
mod bags;
mod check;
mod compare;
mod demo;
mod facts;
mod failure;
mod fit;
mod grades;
mod kept;
mod new;
mod page;
mod passphrase;
mod pilot;
mod power;
mod predict;
mod prep;
mod print;
mod progress;
mod rehearse;
mod round_two;
mod schedule;
mod serve;
mod share;
mod take;
mod trust;
mod years;

use clap::{Parser, Subcommand};
use failure::Failure;
use std::io::{self, Write};
use std::process::ExitCode;

/// Plan, predict, prepare and make sense of a class practical with yeast in zip bags
///
/// Without a command, Barm opens in the browser on this computer. `barm demo` does the whole job
/// on an invented school and leaves the papers in a folder.
#[derive(Parser, Debug)]
#[command(name = "barm", version, max_term_width = 100)]
struct Arguments {
    #[command(subcommand)]
    command: Option<Command>,
}

#[derive(Subcommand, Debug)]
enum Command {
    Demo(demo::Arguments),
    New(new::Arguments),
    Bags(bags::Arguments),
    Check(check::Arguments),
    Approve(approve::Arguments),
    Assign(assign::Arguments),
    Pilot(pilot::Arguments),
    Predict(predict::Arguments),
    Power(power::Arguments),
    Prep(prep::Arguments),
    Schedule(schedule::Arguments),
    Print(print::Arguments),
    Analyze(analyze::Arguments),
    Share(share::Arguments),
    Take(take::Arguments),
    Years(years::Arguments),
    RoundTwo(round_two::Arguments),
    Compare(compare::Arguments),
    Fit(fit::Arguments),
    Facts(facts::Arguments),
    Trust(trust::Arguments),
    Serve(serve::Arguments),
    Rehearse(rehearse::Arguments),
    Passphrase(passphrase::Arguments),
    Grades(grades::Arguments),
    Kept(kept::Arguments),
    Backup(backup::Backup),
    Restore(backup::Restore),
    Export(backup::Export),
}

/// Runs the command that was asked for.
pub(crate) fn run() -> ExitCode {
    let arguments = Arguments::parse();
    let mut out = io::BufWriter::new(io::stdout().lock());
    let result = match &arguments.command {
        Some(Command::Demo(a)) => demo::run(a, &mut out),
        Some(Command::New(a)) => new::run(a, &mut out),
        Some(Command::Bags(a)) => bags::run(a, &mut out),
        Some(Command::Check(a)) => check::run(a, &mut out),
        Some(Command::Approve(a)) => approve::run(a, &mut out),
        Some(Command::Assign(a)) => assign::run(a, &mut out),
        Some(Command::Pilot(a)) => pilot::run(a, &mut out),
        Some(Command::Predict(a)) => predict::run(a, &mut out),
        Some(Command::Power(a)) => power::run(a, &mut out),
        Some(Command::Prep(a)) => prep::run(a, &mut out),
        Some(Command::Schedule(a)) => schedule::run(a, &mut out),
        Some(Command::Print(a)) => print::run(a, &mut out),
        Some(Command::Analyze(a)) => analyze::run(a, &mut out),
        Some(Command::Share(a)) => share::run(a, &mut out),
        Some(Command::Take(a)) => take::run(a, &mut out),
        Some(Command::Years(a)) => years::run(a, &mut out),
        Some(Command::RoundTwo(a)) => round_two::run(a, &mut out),
        Some(Command::Compare(a)) => compare::run(a, &mut out),
        Some(Command::Fit(a)) => fit::run(a, &mut out),
        Some(Command::Facts(a)) => facts::run(a, &mut out),
        Some(Command::Trust(a)) => trust::run(a, &mut out),
        Some(Command::Serve(a)) => serve::run(a, &mut out),
        Some(Command::Rehearse(a)) => rehearse::run(a, &mut out),
        Some(Command::Passphrase(a)) => passphrase::run(a, &mut out),
        Some(Command::Grades(a)) => grades::run(a, &mut out),
        Some(Command::Kept(a)) => kept::run(a, &mut out),
        Some(Command::Backup(a)) => backup::backup(a, &mut out),
        Some(Command::Restore(a)) => backup::restore(a, &mut out),
        Some(Command::Export(a)) => backup::export(a, &mut out),
        None => serve::here(&mut out),
    };
    // What was said before a failure is said before the failure is.
    let result = result.and_then(|code| out.flush().map(|()| code).map_err(Failure::from));
    match result {
        Ok(code) => code,
        Err(failure) => failure.tell(),
    }
}

/// Exit code for a plan or data with faults.
const FAULTY: u8 = 1;
/// Exit code for a file from which no plan can be made out.
const UNREADABLE: u8 = 2;

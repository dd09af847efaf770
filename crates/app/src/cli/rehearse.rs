//! `barm rehearse`.

use super::failure::Failure;
use super::{page, progress, serve};
use crate::desk::rehearse::{self, Drive, Report, Stage, Wish};
use crate::desk::room::Kind;
use crate::system;
use crate::web::{Ask, Reach, serve as serve_pages};
use std::io::Write;
use std::net::Ipv4Addr;
use std::path::PathBuf;
use std::process::ExitCode;
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};
use tokio::sync::oneshot;

/// Practice a period with simulated groups
///
/// Serves the pages of the class day on this computer while simulated groups come in with their
/// codes and type, slips and all. Ring the bell on the run page, and run the period as you would.
/// At the end it says what went wrong at the benches and what the run page showed of it.
/// Everything is made up; it lies in a folder of its own, apart from your record.
#[derive(clap::Args, Debug)]
pub(super) struct Arguments {
    /// Plan file
    plan: PathBuf,
    /// Period to practice [default: the first of the plan]
    #[arg(long, value_name = "NAME")]
    period: Option<String>,
    /// How many times as fast as a true clock
    #[arg(long, value_name = "N", default_value_t = 10.0)]
    speed: f64,
    /// Another number gives another class
    #[arg(long, value_name = "NUMBER", default_value_t = 1)]
    seed: u64,
    /// Ring the bells too and stop at the end, so that nobody has to do anything
    #[arg(long)]
    alone: bool,
    /// Folder for the rehearsal [default: a folder of your own, shown at the start]
    #[arg(long, value_name = "DIR")]
    data: Option<PathBuf>,
    /// Port to listen on; 0 takes a free one [default: 8420, or the next that is free]
    #[arg(long)]
    port: Option<u16>,
}

/// Runs `rehearse`.
pub(super) fn run(arguments: &Arguments, out: &mut impl Write) -> Result<ExitCode, Failure> {
    let beside = || system::data_folder().with_file_name("barm-rehearsal");
    let folder = arguments.data.clone().unwrap_or_else(beside);
    // If it cannot be made, opening it says why.
    let _ = system::private_folder(&folder);
    let wish = Wish {
        period: arguments.period.as_deref(),
        seed: arguments.seed,
        speed: arguments.speed,
        kind: Kind::Rehearsal,
    };
    let stage = rehearse::stage(&arguments.plan, &folder, wish)?;
    let play = Play { port: arguments.port, alone: arguments.alone, stays: !arguments.alone };
    let report = play_and_report(&stage, play, out)?;
    Ok(report)
}

/// How a stage is played.
#[derive(Debug, Clone, Copy)]
pub(super) struct Play {
    /// Port to listen on.
    pub(super) port: Option<u16>,
    /// Whether the bells are rung too.
    pub(super) alone: bool,
    /// Whether the pages stay when the groups are done.
    pub(super) stays: bool,
}

fn play_and_report(
    stage: &Stage,
    play: Play,
    out: &mut impl Write,
) -> Result<ExitCode, Failure> {
    writeln!(out, "A rehearsal: no group and no reading here is real, and none ever counts.")?;
    self::play(stage, play, out)?;
    Ok(ExitCode::SUCCESS)
}

/// Serves the pages, drives the groups, says how it went.
pub(super) fn play(stage: &Stage, play: Play, out: &mut impl Write) -> Result<(), Failure> {
    let (listener, port) = serve::listen(Ipv4Addr::LOCALHOST, play.port, out)?;
    welcome(stage, play, port, out)?;
    let runtime = tokio::runtime::Runtime::new()?;
    let ask = Ask {
        listener,
        shelf: Arc::clone(&stage.shelf),
        reach: Reach::default(),
        clock: Arc::clone(&stage.clock),
        certificate: None,
    };
    let stop = Arc::new(AtomicBool::new(false));
    let (end, ended) = oneshot::channel::<()>();
    let flag = Arc::clone(&stop);
    let until = async move {
        tokio::select! {
            () = system::told_to_stop() => {}
            _ = ended => {}
        }
        flag.store(true, Ordering::Relaxed);
    };
    let server = runtime.spawn(serve_pages(ask, until));
    let drive = Drive { port, alone: play.alone };
    let line = progress::Line::new();
    let report = rehearse::rehearse(stage, drive, &stop, &line);
    drop(line);
    let report = report?;
    told(stage, &report, out)?;
    if play.stays && !stop.load(Ordering::Relaxed) {
        writeln!(out, "\nThe pages stay open. Stop with {}.", system::how_to_stop())?;
        out.flush()?;
    } else {
        // It may have been told already.
        let _ = end.send(());
    }
    let served = runtime.block_on(server);
    served.map_err(std::io::Error::other)??;
    writeln!(out, "Stopped.")?;
    Ok(())
}

fn welcome(stage: &Stage, play: Play, port: u16, out: &mut impl Write) -> Result<(), Failure> {
    let script = &stage.script;
    let groups = script.devices.iter().filter(|device| device.group > 0).count();
    // Not by the name that the record's own pages go by: a browser keeps who is signed in by name.
    let address = format!("http://127.0.0.1:{port}");
    let codes = stage.shelf.doors.codes(&stage.room, &script.period, stage.clock.now())?;
    writeln!(
        out,
        "Period {} with {groups} simulated groups, {} times as fast as a true clock.",
        script.period,
        stage.clock.speed()
    )?;
    writeln!(out, "It lies in {}", stage.shelf.folder.display())?;
    writeln!(out)?;
    let mut rows = vec![
        vec!["Run page".to_owned(), format!("{address}{}", stage.run_page())],
        vec!["Passphrase, this time".to_owned(), stage.passphrase.clone()],
    ];
    if let Some((group, code)) = codes.groups.first() {
        rows.push(vec![
            format!("Page of group {group}"),
            format!("{address}/join with the codes {} and {code}", codes.period),
        ]);
    }
    rows.push(vec![
        "Wall".to_owned(),
        format!("{address}/join with the page code {}", codes.wall),
    ]);
    page::rows(out, &["", ""], &[], rows)?;
    writeln!(out)?;
    if !play.alone {
        writeln!(out, "The groups wait for the bell: ring it on the run page.")?;
    }
    writeln!(out, "Stop with {}.", system::how_to_stop())?;
    out.flush()?;
    Ok(())
}

fn told(stage: &Stage, report: &Report, out: &mut impl Write) -> Result<(), Failure> {
    page::part(out, "What was typed")?;
    writeln!(
        out,
        "{} of {} entries sent: {} saved, {} refused.",
        report.sent, report.of, report.saved, report.refused
    )?;
    let wrong = report.went_wrong();
    page::part(out, "What went wrong, and what the run page showed of it")?;
    if wrong.is_empty() {
        // The demonstration is one class, the same each time.
        let other = if stage.room.kind == Kind::Rehearsal {
            " Another --seed gives another class."
        } else {
            ""
        };
        writeln!(out, "Nothing went wrong.{other}")?;
        return Ok(());
    }
    let rows = wrong.iter().map(|one| {
        vec![
            one.bag.clone(),
            one.minute.map(|minute| format!("minute {minute}")).unwrap_or_default(),
            one.what.clone(),
            if one.shown { "shown" } else { "not shown" }.to_owned(),
        ]
    });
    page::rows(out, &["bag", "", "what", ""], &[], rows.collect::<Vec<_>>())?;
    let shown = wrong.iter().filter(|one| one.shown).count();
    writeln!(out)?;
    let says = format!(
        "{shown} of {} were shown on the run page of period {} or dealt with. A small slip looks \
         like what bags do anyhow; no page can tell it.",
        wrong.len(),
        stage.script.period
    );
    page::paragraph(out, 0, &says)?;
    Ok(())
}

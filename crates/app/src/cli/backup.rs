//! `barm backup`, `barm restore` and `barm export`.

use super::failure::Failure;
use crate::desk::room::{Shelf, backups};
use crate::system;
use jiff::Timestamp;
use std::io::Write;
use std::path::PathBuf;
use std::process::ExitCode;

/// Write the whole record into one file, and read it through
///
/// While Barm is running, use its page instead: Shelf, Backups of the record.
#[derive(clap::Args, Debug)]
pub(super) struct Backup {
    /// The file to write [default: one with the date, in the folder `backups` of the data folder]
    #[arg(value_name = "FILE")]
    file: Option<PathBuf>,
    /// Folder that holds the record [default: a folder of your own]
    #[arg(long, value_name = "DIR")]
    data: Option<PathBuf>,
}

/// Put a backup in place of the record
///
/// Stop the program first. What is on record now is put aside beside it, not thrown away. Words that
/// were deleted since the backup was made do not come back.
#[derive(clap::Args, Debug)]
pub(super) struct Restore {
    /// The backup
    #[arg(value_name = "FILE")]
    file: PathBuf,
    /// Folder that holds the record [default: a folder of your own]
    #[arg(long, value_name = "DIR")]
    data: Option<PathBuf>,
}

/// Write everything on record as plain text that any program can read
///
/// Passphrase, codes and sessions are left out. Stop the program first.
#[derive(clap::Args, Debug)]
pub(super) struct Export {
    /// An empty folder, or one that is not there yet
    #[arg(value_name = "DIR")]
    folder: PathBuf,
    /// Folder that holds the record [default: a folder of your own]
    #[arg(long, value_name = "DIR")]
    data: Option<PathBuf>,
}

fn folder(data: Option<&PathBuf>) -> PathBuf {
    let folder = data.cloned().unwrap_or_else(system::data_folder);
    // If it cannot be made, opening it says why.
    let _ = system::private_folder(&folder);
    folder
}

/// Runs `backup`.
pub(super) fn backup(arguments: &Backup, out: &mut impl Write) -> Result<ExitCode, Failure> {
    let now = Timestamp::now();
    let shelf = Shelf::open(&folder(arguments.data.as_ref()), now)?;
    let made = backups::make_backup(&shelf, arguments.file.as_deref(), now)?;
    writeln!(out, "{}", made.path.display())?;
    writeln!(
        out,
        "Read through: {} investigations, {} entries. Copy it to another disk.",
        made.investigations, made.entries
    )?;
    Ok(ExitCode::SUCCESS)
}

/// Runs `restore`.
pub(super) fn restore(arguments: &Restore, out: &mut impl Write) -> Result<ExitCode, Failure> {
    let now = Timestamp::now();
    let restored = backups::restore(&folder(arguments.data.as_ref()), &arguments.file, now)?;
    writeln!(
        out,
        "The record is back, from {}: {} investigations, {} entries.",
        restored.path.display(),
        restored.investigations,
        restored.entries
    )?;
    if let Some(aside) = &restored.set_aside {
        writeln!(out, "What was there before lies in {}", aside.display())?;
    }
    Ok(ExitCode::SUCCESS)
}

/// Runs `export`.
pub(super) fn export(arguments: &Export, out: &mut impl Write) -> Result<ExitCode, Failure> {
    let shelf = Shelf::open(&folder(arguments.data.as_ref()), Timestamp::now())?;
    let files = backups::export(&shelf, &arguments.folder)?;
    writeln!(out, "{files} files in {}", arguments.folder.display())?;
    Ok(ExitCode::SUCCESS)
}

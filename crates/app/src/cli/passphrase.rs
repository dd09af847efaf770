//! `barm passphrase`.

use super::failure::Failure;
use crate::desk::doors::suggest;
use crate::desk::room::Shelf;
use crate::system;
use jiff::Timestamp;
use std::io::{self, BufRead, Write};
use std::path::PathBuf;
use std::process::ExitCode;

/// Make a new passphrase for the teacher, at this computer
///
/// Stop the program first. The old passphrase is gone, and whoever was signed in as the teacher
/// must sign in again. Nothing else is changed.
#[derive(clap::Args, Debug)]
pub(super) struct Arguments {
    /// Folder that holds the record [default: a folder of your own]
    #[arg(long, value_name = "DIR")]
    data: Option<PathBuf>,
    /// Type your own instead of getting a random one
    #[arg(long)]
    own: bool,
}

/// Runs `passphrase`.
pub(super) fn run(arguments: &Arguments, out: &mut impl Write) -> Result<ExitCode, Failure> {
    let folder = arguments.data.clone().unwrap_or_else(system::data_folder);
    let _ = system::private_folder(&folder);
    let shelf = Shelf::open(&folder, Timestamp::now())?;
    let passphrase = if arguments.own {
        writeln!(out, "Type four words or at least 15 characters, then Enter:")?;
        out.flush()?;
        let mut typed = String::new();
        io::stdin().lock().read_line(&mut typed)?;
        typed.trim_end_matches(['\r', '\n']).to_owned()
    } else {
        suggest()?
    };
    shelf.doors.new_passphrase(&passphrase)?;
    if arguments.own {
        writeln!(out, "The passphrase was changed.")?;
    } else {
        writeln!(out, "The new passphrase, shown only now:\n\n    {passphrase}\n")?;
    }
    writeln!(out, "Whoever was signed in as the teacher must sign in again.")?;
    Ok(ExitCode::SUCCESS)
}

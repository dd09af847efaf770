//! `barm kept`.

use super::failure::Failure;
use super::{FAULTY, page};
use crate::desk::Wording;
use crate::desk::room::Shelf;
use crate::desk::room::people::{about_whom, delete_all, look_for, people_view};
use crate::desk::room::traces::Looked;
use crate::system;
use jiff::Timestamp;
use std::io::Write;
use std::path::PathBuf;
use std::process::ExitCode;

/// Say what is kept about whom; look for a name; delete all that people wrote
///
/// While Barm is running, use its page instead: Shelf, What is kept about whom.
#[derive(clap::Args, Debug)]
pub(super) struct Arguments {
    /// Folder that holds the record [default: a folder of your own]
    #[arg(long, value_name = "DIR")]
    data: Option<PathBuf>,
    /// Look through every byte of that folder for a name or a sentence of six letters or more
    #[arg(long, value_name = "NAME", value_parser = six_letters)]
    look_for: Option<String>,
    /// Delete all that people wrote, for good, here and in every backup that can be reached, and look
    /// whether anything is left
    #[arg(long)]
    delete: bool,
}

fn six_letters(text: &str) -> Result<String, String> {
    let text = text.trim();
    if text.len() < 6 {
        return Err("fewer than six letters stand everywhere by chance".to_owned());
    }
    Ok(text.to_owned())
}

pub(super) fn run(arguments: &Arguments, out: &mut impl Write) -> Result<ExitCode, Failure> {
    let folder = arguments.data.clone().unwrap_or_else(system::data_folder);
    // If it cannot be made, opening it says why.
    let _ = system::private_folder(&folder);
    let now = Timestamp::now();
    let shelf = Shelf::open(&folder, now)?;
    let mut left = false;
    if arguments.delete {
        page::title(out, "Deleted")?;
        let done = delete_all(&shelf, now)?;
        if done.is_empty() {
            writeln!(out, "Nobody wrote anything in words.")?;
        }
        for (id, deleted) in &done {
            let says = format!(
                "Investigation {id}: {} texts deleted; counted again, {} are left; gone from {} backups.",
                deleted.words,
                deleted.left,
                deleted.backups.len()
            );
            page::paragraph(out, 2, &says)?;
            for (path, _, why) in &deleted.unreached {
                page::paragraph(out, 4, &format!("Not reached: {path}: {why}"))?;
            }
            if let Some(looked) = &deleted.looked {
                left |= traces(out, looked)?;
            }
            left |= deleted.left > 0 || !deleted.unreached.is_empty();
        }
    }
    if let Some(name) = &arguments.look_for {
        page::title(out, "Looked for")?;
        left |= traces(out, &look_for(&shelf, name))?;
    }
    if !arguments.delete && arguments.look_for.is_none() {
        whom(out, &shelf, now)?;
    }
    Ok(if left { ExitCode::from(FAULTY) } else { ExitCode::SUCCESS })
}

fn whom(out: &mut impl Write, shelf: &Shelf, now: Timestamp) -> Result<(), Failure> {
    let view = people_view(shelf, now)?;
    page::title(out, "What is kept about whom")?;
    let rows = about_whom(Wording::english()).map(|row| row.to_vec());
    page::rows(out, &["Who", "What is kept", "Until when"], &[], rows)?;
    page::part(out, "Texts that people wrote")?;
    for one in &view.of {
        let due = one.due.filter(|_| one.words > 0);
        let due = due.map(|day| format!(" (go on {day})")).unwrap_or_default();
        page::paragraph(out, 2, &format!("{}: {}{due}", one.title, one.words))?;
    }
    if view.of.is_empty() {
        writeln!(out, "There is no investigation yet.")?;
    }
    let word = if view.backups == 1 { "backup" } else { "backups" };
    let says = format!("All of it lies in {}, with {} {word}.", view.folder, view.backups);
    page::paragraph(out, 0, &says)?;
    Ok(())
}

/// What a look through every byte found; whether it found anything, or could not look.
fn traces(out: &mut impl Write, looked: &Looked) -> Result<bool, Failure> {
    let says = format!(
        "Looked through every byte of {} files ({} bytes) for {} pieces.",
        looked.files, looked.bytes, looked.pieces
    );
    page::paragraph(out, 2, &says)?;
    if looked.short > 0 {
        let says =
            format!("{} texts of fewer than six letters were not looked for.", looked.short);
        page::paragraph(out, 2, &says)?;
    }
    if looked.found.is_empty() {
        writeln!(out, "None of it stands anywhere.")?;
    }
    for path in &looked.found {
        writeln!(out, "It stands in {path}")?;
    }
    for path in &looked.unread {
        writeln!(out, "Could not be read: {path}")?;
    }
    Ok(!looked.found.is_empty() || !looked.unread.is_empty())
}

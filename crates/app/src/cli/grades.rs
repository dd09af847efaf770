//! `barm grades`.

use super::failure::Failure;
use super::{FAULTY, page};
use crate::desk::Wording;
use crate::desk::room::roster::write_grades;
use crate::desk::room::{Kind, Shelf};
use crate::system;
use jiff::Timestamp;
use std::io::Write;
use std::path::PathBuf;
use std::process::ExitCode;

/// Write every student's grade, for the school's gradebook and as a plain table
///
/// Each period gets a table with names, and OneRoster 1.1 and 1.2 with ids only (docs/roster.md).
/// The roster, the groups and the marks come from Barm's pages. While Barm is running, use its page
/// instead: Marks, Grades for the gradebook.
#[derive(clap::Args, Debug)]
pub(super) struct Arguments {
    /// Folder to write them into
    #[arg(value_name = "FOLDER")]
    to: PathBuf,
    /// Number of the investigation [default: the newest that has a roster with groups]
    #[arg(long, value_name = "NUMBER")]
    investigation: Option<i64>,
    /// Folder that holds the record [default: a folder of your own]
    #[arg(long, value_name = "DIR")]
    data: Option<PathBuf>,
}

pub(super) fn run(arguments: &Arguments, out: &mut impl Write) -> Result<ExitCode, Failure> {
    let folder = arguments.data.clone().unwrap_or_else(system::data_folder);
    // If they cannot be made, opening them says why.
    let _ = system::private_folder(&folder);
    let now = Timestamp::now();
    let shelf = Shelf::open(&folder, now)?;
    let _ = system::private_folder(&arguments.to);
    let asked = (arguments.investigation, arguments.to.as_path());
    let done = write_grades(&shelf, asked, Wording::english(), now)?;
    page::title(out, &format!("Grades: {}", done.title))?;
    if done.kind != Kind::Real {
        page::paragraph(out, 0, "No class made this: the readings are invented.")?;
    }
    let rows = done.periods.iter().map(|(period, tally)| {
        let counts = [tally.students, tally.points, tally.missing, tally.excused, tally.open];
        let counts = counts.map(|count| count.to_string());
        std::iter::once(period.clone()).chain(counts).collect()
    });
    let heads = ["Period", "Students", "With points", "Missing", "Excused", "Not marked yet"];
    page::rows(out, &heads, &[1, 2, 3, 4, 5], rows.collect::<Vec<Vec<String>>>())?;
    writeln!(out)?;
    for path in &done.files {
        writeln!(out, "{}", path.display())?;
    }
    for (name, why) in &done.left {
        page::paragraph(out, 0, &format!("Not written: {name}: {why}."))?;
    }
    let says = "OneRoster 1.1 has no way to write “missing” and “excused”; 1.2 has. These files name students \
                or their ids: `barm kept` finds and deletes what lies in Barm's own folder, and not these.";
    page::paragraph(out, 0, says)?;
    Ok(if done.left.is_empty() { ExitCode::SUCCESS } else { ExitCode::from(FAULTY) })
}

//! `barm share`.

use super::failure::Failure;
use super::page;
use crate::desk;
use crate::desk::shared::{Form, Licence, Said, share};
use clap::builder::{PossibleValue, PossibleValuesParser};
use std::io::Write;
use std::path::PathBuf;
use std::process::ExitCode;

/// Write a class's data for others: codes and numbers, no names
///
/// What is in it stands in docs/package.md. Title, school, place, dates, wording and notes stay
/// behind. Nothing that is there is overwritten.
#[derive(clap::Args, Debug)]
pub(super) struct Arguments {
    /// The plan file
    #[arg(value_name = "PLAN")]
    plan: PathBuf,
    /// The readings
    #[arg(value_name = "READINGS")]
    readings: PathBuf,
    /// Where to: a name that ends in .zip for a data package in one file, in .csv for one plain
    /// table, any other for the package as a folder
    #[arg(long, value_name = "PATH")]
    to: PathBuf,
    /// License of the data
    #[arg(long, default_value = Licence::CcBy.id(), value_parser = licences())]
    license: String,
    /// Say in which grade the class is
    #[arg(long)]
    grade: bool,
}

fn licences() -> PossibleValuesParser {
    let value = |one: Licence| PossibleValue::new(one.id()).help(one.title());
    Licence::ALL.map(value).to_vec().into()
}

pub(super) fn run(arguments: &Arguments, out: &mut impl Write) -> Result<ExitCode, Failure> {
    let open = desk::open_plan(&arguments.plan)?;
    let said = Said {
        licence: Licence::of(&arguments.license).unwrap_or_default(),
        grade: arguments.grade,
        made_up: false,
    };
    let given = share(&open, &arguments.readings, &arguments.to, said)?;
    let rows = given.parcel.rows();
    page::title(out, "Data for others")?;
    if let Some(says) = &given.above_all {
        page::paragraph(out, 0, says)?;
    }
    let count = |what: &str, count: usize| vec![what.to_owned(), count.to_string()];
    let counts = [
        count("treatments", rows.treatments.len()),
        count("bags", rows.bags.len()),
        count("heights", rows.readings.len()),
        count("bags set aside", rows.set_aside.len()),
        count("pushes at the breath meter", rows.meter.len()),
    ];
    page::rows(out, &["", ""], &[1], counts)?;
    if given.rejected > 0 {
        let rows = match given.rejected {
            1 => "1 row of the readings was not taken and is".to_owned(),
            more => format!("{more} rows of the readings were not taken and are"),
        };
        let says = format!("{rows} not in it; `barm analyze` says why.");
        page::paragraph(out, 0, &says)?;
    }
    if Form::of(&arguments.to) == Form::Table && !rows.meter.is_empty() {
        page::paragraph(out, 0, "What the breath meter showed is not in the plain table.")?;
    }
    writeln!(out)?;
    for path in &given.files {
        writeln!(out, "{}", path.display())?;
    }
    let says = "Codes and numbers only: title, school, place, dates, wording and notes stayed behind. \
                Periods and groups are numbers; whoever was there still knows who they are.";
    page::paragraph(out, 0, says)?;
    Ok(ExitCode::SUCCESS)
}

//! From a colleague's package to a plan and its readings.

use super::out::write_all;
use super::package::Package;
use crate::desk::DeskError;
use crate::desk::plan_file::{OpenPlan, sound};
use barm_documents::{plan_text, readings};
use barm_domain::shared::Investigation;
use jiff::civil::Date;
use std::path::{Path, PathBuf};

/// What was taken.
#[derive(Debug)]
pub(crate) struct Taken {
    /// The package.
    pub(crate) package: Package,
    /// The same as a plan with readings.
    pub(crate) investigation: Investigation,
    /// The plan and the readings, where they were written.
    pub(crate) files: Vec<PathBuf>,
    /// Pushes of the breath meter of gas that was thinned, which no file of readings can say.
    pub(crate) thinned: usize,
}

/// The files that are written.
const PLAN: &str = "plan.toml";
const READINGS: &str = "readings.csv";

/// Reads a package and, if a folder is named, writes a plan and its readings into it; over nothing that
/// is there, and nothing at all where the package is refused.
pub(crate) fn take(path: &Path, to: Option<&Path>, date: Date) -> Result<Taken, DeskError> {
    let package = Package::open(path)?;
    let mut investigation = package.investigation(date)?;
    let of_air = |one: &barm_domain::result::meter::MeterReading| one.sample.air_ml > 0.0;
    let before = investigation.meter.len();
    investigation.meter.retain(|one| !of_air(one));
    let thinned = before - investigation.meter.len();
    let text = plan_text::write_new(&investigation.plan);
    // Bags, cards or rooms of others may be none that a plan can have.
    let OpenPlan { plan, .. } = sound(path, plan_text::read(text.as_bytes()))?;
    investigation.plan = plan;
    let own = &investigation;
    let table = readings::write(&own.readings, &own.set_aside, &own.meter);
    let files = match to {
        Some(folder) => {
            if folder.is_file() {
                return Err(DeskError::Taken { path: folder.to_owned() });
            }
            let files = [(PLAN.to_owned(), text.into_bytes()), (READINGS.to_owned(), table)];
            write_all(folder, &files)?
        }
        None => Vec::new(),
    };
    Ok(Taken { package, investigation, files, thinned })
}

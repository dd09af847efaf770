//! From a colleague's package to a plan and its readings.

use super::out::write_all;
use super::package::Package;
use crate::desk::DeskError;
use crate::desk::plan_file::{OpenPlan, sound};
use barm_documents::{plan_text, readings};
use barm_domain::plan::Treatment;
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
    /// The plan as a file.
    pub(crate) plan_text: String,
    /// The readings as a file.
    pub(crate) table: Vec<u8>,
    /// Pushes of the breath meter of gas that was thinned, which no file of readings can say.
    pub(crate) thinned: usize,
}

/// A treatment of what was taken.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct TreatmentLine {
    /// What it is called: its code and what is in it.
    pub(crate) name: String,
    /// Its bags.
    pub(crate) bags: usize,
    /// The code of what it is compared with, if it is compared.
    pub(crate) beside: Option<String>,
}

impl Taken {
    /// What an opened package says as a plan and its readings, under a title and from a day on, for a
    /// package tells neither.
    pub(crate) fn of(
        package: Package,
        title: Option<&str>,
        date: Date,
    ) -> Result<Self, DeskError> {
        let mut investigation = package.investigation(date)?;
        if let Some(title) = title {
            title.clone_into(&mut investigation.plan.title);
        }
        let of_air = |one: &barm_domain::result::meter::MeterReading| one.sample.air_ml > 0.0;
        let before = investigation.meter.len();
        investigation.meter.retain(|one| !of_air(one));
        let thinned = before - investigation.meter.len();
        let plan_text = plan_text::write_new(&investigation.plan);
        // Bags, cards or rooms of others may be none that a plan can have.
        let OpenPlan { plan, .. } =
            sound(&package.path, plan_text::read(plan_text.as_bytes()))?;
        investigation.plan = plan;
        let own = &investigation;
        let table = readings::write(&own.readings, &own.set_aside, &own.meter);
        Ok(Self { package, investigation, plan_text, table, thinned })
    }

    /// Its treatments, in the plan's order.
    pub(crate) fn treatments(&self) -> Vec<TreatmentLine> {
        let plan = &self.investigation.plan;
        let line = |(question, treatment): (&str, &Treatment)| {
            let bags = plan.bags.iter().filter(|bag| bag.treatment == treatment.name);
            let asked = plan.questions.iter().find(|one| one.id == question);
            let beside = asked.and_then(|asked| asked.reference_of(treatment));
            // Names begin with their code.
            let beside = beside.and_then(|name| name.split(' ').next()).map(str::to_owned);
            TreatmentLine { name: treatment.name.clone(), bags: bags.count(), beside }
        };
        plan.treatments().map(line).collect()
    }
}

/// The files that are written.
const PLAN: &str = "plan.toml";
const READINGS: &str = "readings.csv";

/// Reads a package and, if a folder is named, writes a plan and its readings into it; over nothing that
/// is there, and nothing at all where the package is refused. What was written comes with it.
pub(crate) fn take(
    path: &Path,
    to: Option<&Path>,
    date: Date,
) -> Result<(Taken, Vec<PathBuf>), DeskError> {
    let taken = Taken::of(Package::open(path)?, None, date)?;
    let files = match to {
        Some(folder) => {
            if folder.is_file() {
                return Err(DeskError::Taken { path: folder.to_owned() });
            }
            let plan = taken.plan_text.clone().into_bytes();
            let files = [(PLAN.to_owned(), plan), (READINGS.to_owned(), taken.table.clone())];
            write_all(folder, &files)?
        }
        None => Vec::new(),
    };
    Ok((taken, files))
}

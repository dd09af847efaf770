//! From an investigation to data for others: codes and numbers only.

use crate::desk::plan_file::bytes;
use crate::desk::{DeskError, OpenPlan, must_be_free, write_new};
use barm_documents::package::{self, About, Licence};
use barm_documents::readings;
use barm_domain::plan::Plan;
use barm_domain::reading::{Reading, SetAside};
use barm_domain::result::meter::MeterReading;
use barm_domain::shared::{Rows, Shared};
use barm_store::written::Folder;
use std::path::{Path, PathBuf};

/// In which form data are given away.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Form {
    /// A data package in one file.
    Zip,
    /// A data package as a folder.
    Folder,
    /// One plain table.
    Table,
}

impl Form {
    /// The form that a name asks for: a zip, a table, or else a folder.
    pub(crate) fn of(path: &Path) -> Self {
        let ending = path.extension().map(|ending| ending.to_string_lossy().to_lowercase());
        match ending.as_deref() {
            Some("zip") => Self::Zip,
            Some("csv") => Self::Table,
            _ => Self::Folder,
        }
    }
}

/// What a teacher says of the data beside them.
#[derive(Debug, Clone, Copy, Default)]
pub(crate) struct Said {
    /// The license.
    pub(crate) licence: Licence,
    /// Whether the grade is told.
    pub(crate) grade: bool,
    /// Whether no class made the bags, whatever the plan says.
    pub(crate) made_up: bool,
}

/// Data that are ready to be given away.
#[derive(Debug)]
pub(crate) struct Parcel {
    shared: Shared,
    about: About,
}

impl Parcel {
    /// What can be given away of a plan and what was read.
    pub(crate) fn new(
        plan: &Plan,
        readings: &[Reading],
        set_aside: &[SetAside],
        meter: &[MeterReading],
        said: Said,
    ) -> Result<Self, DeskError> {
        let shared = Shared::of(plan, readings, set_aside, meter)?;
        if shared.rows().readings.is_empty() {
            return Err(DeskError::NothingToShare);
        }
        let about = About {
            licence: said.licence,
            grade: said.grade.then_some(plan.grade),
            made_up: said.made_up || plan.invented,
            readable_mm: Some(plan.readable_mm),
            interval_min: Some(plan.timing.interval_min),
        };
        Ok(Self { shared, about })
    }

    /// A data package in one file.
    pub(crate) fn zip(&self) -> Vec<u8> {
        package::write(&self.shared, &self.about)
    }

    /// A data package, file by file.
    pub(super) fn files(&self) -> Vec<(String, Vec<u8>)> {
        package::files(&self.shared, &self.about)
    }

    /// One plain table.
    pub(crate) fn table(&self) -> Vec<u8> {
        package::flat(&self.shared)
    }

    /// Whether no class made the bags.
    pub(crate) const fn is_made_up(&self) -> bool {
        self.about.made_up
    }

    /// The data themselves.
    pub(crate) fn into_shared(self) -> Shared {
        self.shared
    }

    /// What is in it.
    pub(crate) const fn rows(&self) -> &Rows {
        self.shared.rows()
    }
}

/// What was given away.
#[derive(Debug)]
pub(crate) struct Given {
    /// What is in it.
    pub(crate) parcel: Parcel,
    /// What lies where, in the order in which it was written.
    pub(crate) files: Vec<PathBuf>,
    /// Rows of the readings that were not taken, and so are not in it.
    pub(crate) rejected: usize,
    /// What has to be said of the file of readings as a whole.
    pub(crate) above_all: Option<String>,
}

/// Writes data of a plan and its readings for others, over nothing that is there.
pub(crate) fn share(
    open: &OpenPlan,
    readings: &Path,
    to: &Path,
    said: Said,
) -> Result<Given, DeskError> {
    let form = Form::of(to);
    match form {
        Form::Zip => must_be_free(to, "data.zip")?,
        Form::Table => must_be_free(to, "data.csv")?,
        Form::Folder if to.is_file() => return Err(DeskError::Taken { path: to.to_owned() }),
        Form::Folder => {}
    }
    let file = readings::read(&bytes(readings)?, &open.plan);
    let plan = &open.plan;
    let parcel = Parcel::new(plan, &file.readings, &file.set_aside, &file.meter, said)?;
    let files = match form {
        Form::Zip => {
            write_new(to, &parcel.zip())?;
            vec![to.to_owned()]
        }
        Form::Table => {
            write_new(to, &parcel.table())?;
            vec![to.to_owned()]
        }
        Form::Folder => write_all(to, &package::files(&parcel.shared, &parcel.about))?,
    };
    let (rejected, above_all) = (file.rejected.len(), file.above_all);
    Ok(Given { parcel, files, rejected, above_all })
}

/// Writes files into a folder: all of them, or none where one of somebody else's is in the way.
pub(in crate::desk) fn write_all(
    folder: &Path,
    files: &[(String, Vec<u8>)],
) -> Result<Vec<PathBuf>, DeskError> {
    let mut open = Folder::open(folder)?;
    for (name, bytes) in files {
        if open.keeps_yours(name, bytes)? {
            return Err(DeskError::Taken { path: open.path_of(name) });
        }
    }
    let mut written = Vec::new();
    for (name, bytes) in files {
        open.write(name, bytes)?;
        written.push(open.path_of(name));
    }
    Ok(written)
}

//! One question over the packages of several classes.

use super::package::{Package, is_unpacked};
use crate::desk::DeskError;
use barm_documents::chart::{Estimate, IntervalRow, Look, Terminal};
use barm_domain::years::{Class, Difference, Years};
use jiff::civil::Date;
use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};

/// What several classes found.
#[derive(Debug)]
pub(crate) struct YearsFound {
    /// The classes, in the order handed in.
    pub(crate) classes: Vec<Class>,
    /// What they say together.
    pub(crate) years: Years,
    /// Packages that could not be read, with the reason.
    pub(crate) not_read: Vec<(PathBuf, String)>,
}

/// Reads packages, and those of folders, and compares their classes. A package that is refused does not
/// keep the others from being told.
///
/// # Errors
/// [`DeskError`] where no package could be read.
pub(crate) fn years(paths: &[PathBuf]) -> Result<YearsFound, DeskError> {
    let mut packages = Vec::new();
    for path in paths {
        packages.extend(packages_at(path)?);
    }
    let (mut classes, mut not_read, mut first) = (Vec::new(), Vec::new(), None);
    for path in packages {
        // The day is of no account here.
        let made = Package::open(&path).and_then(|package| {
            let investigation = package.investigation(Date::constant(2000, 1, 1))?;
            let name = package.name();
            Ok(Class { name, shared: package.opened.shared, investigation })
        });
        match made {
            Ok(class) => classes.push((path, class)),
            Err(error) => {
                not_read.push((path, error.to_string()));
                first = first.or(Some(error));
            }
        }
    }
    if let (true, Some(error)) = (classes.is_empty(), first) {
        return Err(error);
    }
    Ok(compared(told_apart(classes), not_read))
}

/// What classes say together.
pub(super) fn compared(classes: Vec<Class>, not_read: Vec<(PathBuf, String)>) -> YearsFound {
    let years = Years::of(&classes);
    YearsFound { classes, years, not_read }
}

/// The packages at a place: the package itself, or all that lie in a folder, by name.
fn packages_at(path: &Path) -> Result<Vec<PathBuf>, DeskError> {
    if !path.is_dir() || is_unpacked(path) {
        return Ok(vec![path.to_owned()]);
    }
    let fails = |source| DeskError::Read { path: path.to_owned(), source };
    let mut found = Vec::new();
    for entry in fs::read_dir(path).map_err(fails)? {
        let one = entry.map_err(fails)?.path();
        let zip = one.extension().is_some_and(|ending| ending.eq_ignore_ascii_case("zip"));
        if (zip && one.is_file()) || (one.is_dir() && is_unpacked(&one)) {
            found.push(one);
        }
    }
    found.sort();
    if found.is_empty() {
        Err(DeskError::NoPackages { path: path.to_owned() })
    } else {
        Ok(found)
    }
}

/// Classes with names that tell them apart: where two files have one name, with their folders.
fn told_apart(classes: Vec<(PathBuf, Class)>) -> Vec<Class> {
    let mut counts: BTreeMap<String, usize> = BTreeMap::new();
    for (_, class) in &classes {
        *counts.entry(class.name.clone()).or_default() += 1;
    }
    let apart = |(path, class): (PathBuf, Class)| {
        let twice = counts.get(&class.name).is_some_and(|count| *count > 1);
        let name = if twice { path.display().to_string() } else { class.name };
        Class { name, ..class }
    };
    classes.into_iter().map(apart).collect()
}

/// Each class of a difference with its interval, then all together, then the next one.
pub(super) fn class_rows(classes: &[Class], of: &Difference) -> Vec<IntervalRow> {
    let row = |name: String, look, difference, verdict: String| IntervalRow {
        name,
        look,
        difference,
        verdict,
    };
    let estimate = |value, low, high| Some(Estimate { value, low, high });
    let mut rows: Vec<IntervalRow> = of
        .classes
        .iter()
        .map(|found| {
            let name = classes.get(found.class).map(|class| class.name.clone());
            let told = found.difference.map(|one| Estimate {
                value: one.estimate,
                low: one.low,
                high: one.high,
            });
            let (bags, beside) = found.bags;
            let verdict = match told {
                Some(_) => format!("{bags} and {beside} bags"),
                None => "can’t tell".to_owned(),
            };
            row(name.unwrap_or_default(), Look(2), told, verdict)
        })
        .collect();
    if let Some(together) = &of.together {
        let mean = together.mean;
        let told = estimate(mean.estimate, mean.low, mean.high);
        rows.push(row("all classes".into(), Look(1), told, String::new()));
        if let Some((low, high)) = of.next {
            let told = estimate(mean.estimate, low, high);
            rows.push(row("the next class".into(), Look(3), told, "forecast".into()));
        }
    }
    rows
}

/// The same as a small picture.
pub(crate) fn years_chart(terminal: Terminal, classes: &[Class], of: &Difference) -> String {
    terminal.intervals(&of.reference_says(), &class_rows(classes, of))
}

//! The manifest of a roster: which version it is, and which files come with it.

use super::Version;
use crate::bundle::{Bundle, Refused};
use crate::readings::quoted::quoted;
use crate::rfc4180::{self, needed};
use std::collections::BTreeMap;

/// Its name in the zip.
pub(super) const FILE: &str = "manifest.csv";

/// What a manifest says.
pub(super) struct Manifest {
    /// The version.
    pub(super) version: Version,
    properties: BTreeMap<String, String>,
}

impl Manifest {
    /// Reads the manifest of a bundle.
    pub(super) fn of(bundle: &mut Bundle<'_>) -> Result<Self, Refused> {
        let Some(bytes) = bundle.read(FILE)? else {
            return Err(Refused::whole(
                "there is no manifest.csv in the zip, so this is no OneRoster export",
                "export “OneRoster CSV”, version 1.1 or 1.2, from the school's system",
            ));
        };
        let mut properties = BTreeMap::new();
        for row in rfc4180::read(FILE, &bytes, &[needed("propertyName"), needed("value")])? {
            let (name, value) = (row.cell(0).trim(), row.cell(1).trim());
            // Some write the star that marks new files in the tables of version 1.2.
            let name = name.trim_end_matches('*').to_owned();
            if properties.insert(name.clone(), value.to_owned()).is_some() {
                let what = format!("{} stands there twice", quoted(&name));
                return Err(Refused::of(FILE, what, "export it again").on(row.line));
            }
        }
        let version = version(properties.get("oneroster.version").map(String::as_str))?;
        Ok(Self { version, properties })
    }

    /// Gives a file that has to be there with all its rows.
    pub(super) fn whole(
        &self,
        bundle: &mut Bundle<'_>,
        name: &str,
    ) -> Result<Vec<u8>, Refused> {
        let (file, property) = (format!("{name}.csv"), format!("file.{name}"));
        let refused = |what: String, fix: &str| Err(Refused::of(FILE, what, fix));
        let Some(mode) = self.properties.get(&property) else {
            let what = format!("it does not say whether {file} is there ({property})");
            return refused(what, "export it again");
        };
        match mode.to_ascii_lowercase().as_str() {
            "bulk" => {}
            "absent" => {
                let what =
                    format!("{file} is not in this export, and nothing works without it");
                return refused(what, "export users, classes and enrollments");
            }
            "delta" => {
                let what = format!("{file} holds only what changed since another export");
                return refused(what, "export everything (“bulk”), not changes (“delta”)");
            }
            _ => {
                let what = format!("{} is none of bulk, delta, absent", quoted(mode));
                return refused(what, "export it again");
            }
        }
        let found = bundle.read(&file)?;
        found.ok_or_else(|| {
            let what = format!("it says that {file} is there, but the zip does not have it");
            Refused::of(FILE, what, "export it again")
        })
    }
}

fn version(written: Option<&str>) -> Result<Version, Refused> {
    let fix = "export version 1.1 or 1.2";
    match written {
        Some("1.1" | "1.1.1") => Ok(Version::V1_1),
        Some("1.2" | "1.2.1") => Ok(Version::V1_2),
        Some(other) => {
            let what = format!("OneRoster version {} is not read here", quoted(other));
            Err(Refused::of(FILE, what, fix))
        }
        None => Err(Refused::of(FILE, "it does not name its version (oneroster.version)", fix)),
    }
}

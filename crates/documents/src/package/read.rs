//! From a package to shared data.

use super::row::{Cells, add};
use super::tables::{QUESTION, TABLES, Table};
use super::{FORMAT, Licence, descriptor};
use crate::bundle::{Bundle, Limits, Refused};
use crate::readings::quoted::quoted;
use crate::rfc4180::{self, Column};
use barm_domain::shared::{Rows, Shared};
use serde_json::Value;
use std::collections::BTreeMap;

/// What a package held.
#[derive(Debug, Clone, PartialEq)]
pub struct Opened {
    /// The data.
    pub shared: Shared,
    /// Its licence, if it is one that is known here.
    pub licence: Option<Licence>,
    /// US grade of the class, if that is said.
    pub grade: Option<u8>,
    /// Whether it says that no class made these bags.
    pub made_up: bool,
    /// The smallest difference in rise that counted as readable (mm), if that is said.
    pub readable_mm: Option<f64>,
    /// Minutes between readings as they were planned, if that is said.
    pub interval_min: Option<f64>,
}

/// Reads a package of ours, of this or an older layout, or of others if it has our columns; columns
/// and tables beyond them are passed over.
///
/// # Errors
/// [`Refused`] with one sentence: what is missing, newer, or cannot be.
pub fn read(zip: &[u8]) -> Result<Opened, Refused> {
    let mut bundle = Bundle::open(zip, &Limits::USUAL)?;
    opened(&mut |name| bundle.read(name), "in the zip")
}

/// Reads a package that was unpacked: its files by their names within its folder, with `/` between
/// folders.
///
/// # Errors
/// As [`read`].
pub fn read_files(files: &BTreeMap<String, Vec<u8>>) -> Result<Opened, Refused> {
    opened(&mut |name| Ok(files.get(name).cloned()), "in the folder")
}

/// A file of a package by its name.
type Files<'a> = dyn FnMut(&str) -> Result<Option<Vec<u8>>, Refused> + 'a;

fn opened(package: &mut Files<'_>, place: &str) -> Result<Opened, Refused> {
    let fix = "choose a data package as it was downloaded";
    let Some(bytes) = package(descriptor::FILE)? else {
        let what = format!("there is no datapackage.json {place}, so this is no data package");
        return Err(Refused::whole(&what, fix));
    };
    let text = rfc4180::text(descriptor::FILE, &bytes)?;
    let descriptor: Value = serde_json::from_str(text)
        .map_err(|_| Refused::of(descriptor::FILE, "this is no JSON", fix))?;
    let own = &descriptor["barm"];
    match &own["format"] {
        Value::Null => {}
        Value::Number(format)
            if format.as_u64().is_some_and(|one| (1..=FORMAT).contains(&one)) => {}
        Value::Number(format) if format.as_u64().is_some_and(|one| one > FORMAT) => {
            let what = format!(
                "the package has layout {format}, and this program reads up to {FORMAT}"
            );
            return Err(Refused::of(descriptor::FILE, what, "open it with a newer program"));
        }
        _ => {
            return Err(Refused::of(
                descriptor::FILE,
                "its layout (barm.format) is no number",
                fix,
            ));
        }
    }
    let mut rows = Rows::default();
    for (table, file) in files(&descriptor)? {
        let Some(bytes) = package(&file)? else {
            let what = format!("it names the file {}, which is not {place}", quoted(&file));
            return Err(Refused::of(descriptor::FILE, what, fix));
        };
        let column =
            |field: &super::Field| Column { head: field.name, needed: field.name != QUESTION };
        let columns: Vec<Column> = table.fields.iter().map(column).collect();
        for row in rfc4180::read(&file, &bytes, &columns)? {
            let cells = Cells { file: &file, table, row: &row };
            add(&cells, &mut rows).map_err(|refused| refused.on(row.line))?;
        }
    }
    let shared = Shared::new(rows);
    let shared =
        shared.map_err(|error| Refused::whole(&error.to_string(), "ask for it again"))?;
    let licence = descriptor["licenses"][0]["name"].as_str().and_then(Licence::of);
    let grade = own["grade"].as_u64().and_then(|grade| u8::try_from(grade).ok());
    let made_up = own["madeUp"].as_bool().unwrap_or(false);
    let within = |key: &str, least: f64, most: f64| {
        own[key].as_f64().filter(|value| (least..=most).contains(value))
    };
    let (readable_mm, interval_min) =
        (within("readableMm", 0.5, 50.0), within("intervalMin", 0.5, 240.0));
    Ok(Opened { shared, licence, grade, made_up, readable_mm, interval_min })
}

/// The file of each table, as the descriptor names it.
fn files(descriptor: &Value) -> Result<Vec<(&'static Table, String)>, Refused> {
    let resources = descriptor["resources"].as_array().map_or(&[][..], Vec::as_slice);
    let path = |table: &Table| {
        let resource = resources.iter().find(|one| one["name"].as_str() == Some(table.name))?;
        match &resource["path"] {
            Value::String(path) => Some(path.clone()),
            // A table may be in several parts; ours are in one.
            Value::Array(paths) if paths.len() == 1 => paths[0].as_str().map(str::to_owned),
            _ => None,
        }
    };
    let missing: Vec<String> = TABLES
        .iter()
        .filter(|table| path(table).is_none())
        .map(|table| {
            let heads: Vec<&str> = table.fields.iter().map(|field| field.name).collect();
            format!("“{}” ({})", table.name, heads.join(", "))
        })
        .collect();
    if !missing.is_empty() {
        let tables = if missing.len() == 1 { "table" } else { "tables" };
        let what = format!("the package lacks the {tables} {}", missing.join(", "));
        let fix = "choose a package of yeast bags with these tables and columns";
        return Err(Refused::of(descriptor::FILE, what, fix));
    }
    Ok(TABLES.iter().filter_map(|table| Some((table, path(table)?))).collect())
}

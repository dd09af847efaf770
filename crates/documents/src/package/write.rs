//! From shared data to a package.

use super::tables::{TABLES, Table};
use super::{About, cells, descriptor, readme};
use crate::bundle::pack;
use crate::rfc4180;
use barm_domain::shared::{Rows, Shared};
use std::borrow::Cow;

/// The files of a package: `datapackage.json`, `README.md` and a table for each of [`TABLES`], all of
/// them also where they have no row.
///
/// No cell can be taken for a formula: cells are codes, numbers from 0 up, and words of ours.
pub fn files(shared: &Shared, about: &About) -> Vec<(String, Vec<u8>)> {
    let tables: Vec<(&Table, Vec<u8>)> =
        TABLES.iter().map(|table| (table, written(table, shared.rows()))).collect();
    let sizes: Vec<(&Table, usize)> =
        tables.iter().map(|(table, bytes)| (*table, bytes.len())).collect();
    let readme = readme::written(shared.rows(), about).into_bytes();
    let mut files = vec![
        (descriptor::FILE.to_owned(), descriptor::written(about, &sizes)),
        ("README.md".to_owned(), readme),
    ];
    files.extend(
        tables.into_iter().map(|(table, bytes)| (format!("{}.csv", table.name), bytes)),
    );
    files
}

/// Writes a package as a zip. The same data make the same bytes.
pub fn write(shared: &Shared, about: &About) -> Vec<u8> {
    let files = files(shared, about);
    let files: Vec<(&str, &[u8])> =
        files.iter().map(|(name, bytes)| (name.as_str(), bytes.as_slice())).collect();
    pack(&files)
}

fn written(table: &Table, rows: &Rows) -> Vec<u8> {
    let heads: Vec<&str> = table.fields.iter().map(|field| field.name).collect();
    let cells: Vec<Vec<String>> = match table.name {
        "treatments" => rows.treatments.iter().map(cells::of_treatment).collect(),
        "ingredients" => rows.ingredients.iter().map(cells::of_ingredient).collect(),
        "bags" => rows.bags.iter().map(cells::of_bag).collect(),
        "readings" => rows.readings.iter().map(cells::of_reading).collect(),
        "set-aside" => rows.set_aside.iter().map(cells::of_aside).collect(),
        _ => rows.meter.iter().map(cells::of_meter).collect(),
    };
    rfc4180::write(&heads, cells.into_iter().map(|row| row.into_iter().map(Cow::Owned)))
}

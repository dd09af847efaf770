//! The columns of OneRoster, by a list that others made: `columns.csv`. Its last column says how well
//! each row is known; nobody here read the specification again.

use crate::grades::{files, grades};
use crate::school::School;
use barm_documents::roster::{Version, write};
use std::collections::BTreeMap;

const LIST: &str = include_str!("columns.csv");

/// Heads and which of them need a cell, by file, of version 1.1.
fn listed() -> BTreeMap<String, Vec<(String, bool)>> {
    let mut reader = csv::Reader::from_reader(LIST.as_bytes());
    let mut files: BTreeMap<String, Vec<(String, bool)>> = BTreeMap::new();
    for row in reader.records().map(Result::unwrap) {
        let heads = files.entry(row[1].to_owned()).or_default();
        assert_eq!(row[2].parse(), Ok(heads.len() + 1), "{row:?}");
        heads.push((row[3].to_owned(), &row[4] == "yes"));
    }
    assert_eq!(files.len(), 7);
    files
}

fn table(bytes: &[u8]) -> (Vec<String>, Vec<csv::StringRecord>) {
    let mut reader = csv::Reader::from_reader(bytes);
    let heads = reader.headers().unwrap().iter().map(str::to_owned).collect();
    (heads, reader.records().map(Result::unwrap).collect())
}

#[test]
fn what_is_written_in_1_1_has_the_listed_columns_in_order_and_fills_those_that_need_it() {
    let zip = write(&grades(), Version::V1_1).unwrap().zip;
    let files = files(&zip);
    for file in ["manifest.csv", "categories.csv", "lineItems.csv", "results.csv"] {
        let (heads, rows) = table(&files[file]);
        let listed = &listed()[file];
        assert_eq!(heads, listed.iter().map(|(head, _)| head.clone()).collect::<Vec<_>>());
        assert!(!rows.is_empty(), "{file}");
        for row in &rows {
            for ((head, needs), cell) in listed.iter().zip(row) {
                assert!(!needs || !cell.is_empty(), "{file}: {head} in {row:?}");
            }
        }
    }
}

// The list says in words what 1.2 changes: categories get a weight, work names its session otherwise
// and its school, results get more columns. Whether results name a scale is left open (the list says
// so, another description of the final release puts scales into a file of their own); it is left out.
#[test]
fn what_is_written_in_1_2_has_what_the_list_says_is_new() {
    let zip = write(&grades(), Version::V1_2).unwrap().zip;
    let (files, listed) = (files(&zip), listed());
    let heads = |file: &str| table(&files[file]).0;
    let old =
        |file: &str| listed[file].iter().map(|(head, _)| head.clone()).collect::<Vec<_>>();
    let new = |file: &str| {
        let heads = heads(file);
        heads.into_iter().filter(|head| !old(file).contains(head)).collect::<Vec<_>>()
    };
    assert_eq!(new("manifest.csv"), [""; 0]);
    assert_eq!(new("categories.csv"), ["weight"]);
    assert_eq!(new("lineItems.csv"), ["academicSessionSourcedId", "schoolSourcedId"]);
    let more = ["textScore", "classSourcedId", "inProgress", "incomplete", "late", "missing"];
    assert_eq!(new("results.csv"), more);
    for file in ["categories.csv", "lineItems.csv", "results.csv"] {
        let heads = heads(file);
        let missing = old(file).into_iter().filter(|head| !heads.contains(head));
        let missing: Vec<String> = missing.collect();
        let renamed: &[&str] =
            if file == "lineItems.csv" { &["gradingPeriodSourcedId"] } else { &[] };
        assert_eq!(missing, renamed);
    }
}

#[test]
fn the_invented_school_writes_the_listed_columns() {
    let (school, listed) = (School::of(Version::V1_1), listed());
    for file in ["manifest.csv", "classes.csv", "users.csv", "enrollments.csv"] {
        let heads = table(&school.0[file]).0;
        assert_eq!(
            heads,
            listed[file].iter().map(|(head, _)| head.clone()).collect::<Vec<_>>()
        );
    }
}

#[test]
fn a_manifest_speaks_of_every_file_once() {
    for version in Version::ALL {
        let zip = write(&grades(), version).unwrap().zip;
        let files = files(&zip);
        let (_, rows) = table(&files["manifest.csv"]);
        let said: BTreeMap<&str, &str> = rows.iter().map(|row| (&row[0], &row[1])).collect();
        assert_eq!(said.len(), rows.len());
        assert_eq!(said["oneroster.version"], version.word());
        assert_eq!(said["manifest.version"], "1.0");
        for (name, mode) in said.iter().filter(|(name, _)| name.starts_with("file.")) {
            let file = format!("{}.csv", name.trim_start_matches("file."));
            let there = if files.contains_key(&file) { "bulk" } else { "absent" };
            assert_eq!(*mode, there, "{name}");
        }
        let count = said.keys().filter(|name| name.starts_with("file.")).count();
        assert_eq!(count, if version == Version::V1_1 { 13 } else { 21 });
    }
}

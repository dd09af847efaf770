//! Packages that are refused, each with a sentence.

use crate::any::small;
use crate::by_hand::{Part, cases, deflated, stored, zip};
use crate::files;
use barm_documents::package::{About, read, write};
use proptest::prelude::*;
use std::collections::BTreeMap;

/// A package as its files.
pub(crate) fn package() -> BTreeMap<String, Vec<u8>> {
    files(&write(&small(), &About::default()))
}

/// The files with other words in one of them; they have to be there.
fn with(file: &str, old: &str, new: &str) -> BTreeMap<String, Vec<u8>> {
    let mut package = package();
    let text = String::from_utf8(package[file].clone()).unwrap();
    assert!(text.contains(old), "{old} in {text}");
    package.insert(file.to_owned(), text.replacen(old, new, 1).into_bytes());
    package
}

pub(crate) fn zipped(files: &BTreeMap<String, Vec<u8>>) -> Vec<u8> {
    let parts: Vec<Part> = files.iter().map(|(name, bytes)| deflated(name, bytes)).collect();
    zip(&parts, b"")
}

pub(crate) fn says(files: &BTreeMap<String, Vec<u8>>, expected: &str) {
    let said = read(&zipped(files)).expect_err("it is refused").to_string();
    assert!(said.contains("; ") && !said.contains('\n'), "{said}");
    assert!(said.contains(expected), "“{expected}” in {said}");
}

#[test]
fn an_unchanged_package_is_read() {
    assert_eq!(read(&zipped(&package())).unwrap().shared, small());
}

#[test]
fn a_newer_layout_is_refused_and_told_apart_from_nonsense() {
    let layout =
        |new: &str| with("datapackage.json", "\"format\": 1", &format!("\"format\": {new}"));
    says(&layout("2"), "has layout 2, and this program reads up to 1");
    for nonsense in ["0", "-1", "1.5", "\"1\"", "[1]", "true"] {
        says(&layout(nonsense), "is no number");
    }
}

#[test]
fn what_is_no_data_package_is_refused() {
    let mut files = package();
    files.remove("datapackage.json");
    says(&files, "no datapackage.json");
    for text in ["", "hello", "{", "[1, 2"] {
        files.insert("datapackage.json".into(), text.into());
        says(&files, "datapackage.json: this is no JSON");
    }
    let deep = "[".repeat(60_000);
    files.insert("datapackage.json".into(), deep.into());
    says(&files, "this is no JSON");
    for text in ["{}", "[]", "1", "null", "{\"resources\": {}}", "{\"resources\": [1, {}]}"] {
        files.insert("datapackage.json".into(), text.into());
        says(&files, "lacks the tables “treatments”");
    }
}

#[test]
fn a_table_or_a_column_that_is_missing_is_named() {
    let renamed = with("datapackage.json", "\"name\": \"readings\"", "\"name\": \"other\"");
    says(&renamed, "lacks the table “readings” (bag, minute, height_mm)");
    let elsewhere =
        with("datapackage.json", "\"path\": \"bags.csv\"", "\"path\": \"../bags.csv\"");
    says(&elsewhere, "\"../bags.csv\", which is not in the zip");
    let far = with(
        "datapackage.json",
        "\"path\": \"bags.csv\"",
        "\"path\": \"https://example.org/b\"",
    );
    says(&far, "which is not in the zip");
    says(
        &with("readings.csv", "height_mm", "height_cm"),
        "readings.csv, line 1: there is no column “height_mm”",
    );
    says(&with("readings.csv", "bag,minute", "bag;minute"), "parted by semicolons");
    let mut without = package();
    without.remove("meter.csv");
    says(&without, "names the file \"meter.csv\", which is not in the zip");
}

#[test]
fn a_cell_that_cannot_be_is_named_with_its_line() {
    for (file, old, new, expected) in [
        ("readings.csv", "4.02", "soon", "readings.csv, line 3: \"soon\" stands under minute"),
        ("readings.csv", "4.02", "", "a number has to be"),
        ("readings.csv", "4.02", "NaN", "a number has to be"),
        ("readings.csv", "4.02", "inf", "a number has to be"),
        ("readings.csv", "4.02", "4,02", "4 cells under 3 heads"),
        ("readings.csv", "4.02", "0", "P1-02B-6 at minute 0 stands there twice"),
        ("readings.csv", "7.5", "-1", "height_mm of P1-02B-6 is -1"),
        ("readings.csv", "7.5", "1e9", "it has to be from 0 to 1000"),
        ("readings.csv", "P1-02B-6,4", "P1-02B-7,4", "the code of a bag has to be"),
        ("readings.csv", "P1-02B-6,4", "p102b6,4", "the code of a bag has to be"),
        ("readings.csv", "P1-02B-6,4", "Ann,4", "\"Ann\" stands under bag"),
        ("bags.csv", "P1-02B-6,1,2", "P1-02B-6,2,2", "the period of the bag's code"),
        ("bags.csv", "P1-02B-6,1,2", "P1-02B-6,1,3", "the group of the bag's code"),
        ("bags.csv", "T01", "T02", "bags: T02 is in no row of the table “treatments”"),
        ("bags.csv", "T01", "honey", "such as T01"),
        ("bags.csv", "860", "86", "pressure_hPa of P1-02B-6 is 86"),
        ("treatments.csv", "false", "maybe", "true or false"),
        ("treatments.csv", "instant", "wild", "none, active-dry, instant, compressed"),
        ("treatments.csv", "instant,2", "none,2", "has grams of yeast, but no yeast"),
        ("treatments.csv", "bench,", "tray,", "only if, it lies in one"),
        ("treatments.csv", "T01,2,,", "T01,2,T01,", "compared with itself"),
        ("treatments.csv", "T01,2,,", "T01,0,,", "question of T01 is 0"),
        ("ingredients.csv", "honey", "grandma's jam", "a food or an enzyme that is known here"),
        ("ingredients.csv", "2.5,g", "2.5,kg", "g, mL, [drp], {piece}"),
        ("set-aside.csv", "leak", "Ann was ill", "leak, amount, no-zero, moved, other"),
        ("meter.csv", "0.12,,20", "0.12,,0", "without any gas"),
        ("meter.csv", ",,26", ",1.5,26", "a whole number has to be"),
    ] {
        says(&with(file, old, new), expected);
    }
}

#[test]
fn bundles_that_are_refused_are_refused_here_too() {
    let parts = || package().into_iter().map(|(name, bytes)| stored(&name, &bytes));
    assert!(read(&zip(&parts().collect::<Vec<_>>(), b"")).is_ok());
    for part in [
        stored("../evil", b""),
        stored("README.MD", b""),
        Part { flags: 1, ..stored("x", b"") },
        Part { size: 300 << 20, ..stored("x", b"") },
    ] {
        assert!(read(&zip(&parts().chain([part]).collect::<Vec<_>>(), b"")).is_err());
    }
    assert!(read(b"no zip").is_err());
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(cases()))]

    #[test]
    fn a_changed_file_is_read_or_refused_in_words(
        at in any::<prop::sample::Index>(), place in any::<prop::sample::Index>(),
        text in "[,\"\r\n{}:0-9a-zé.\0-]{0,4}", length in 0_usize..6,
    ) {
        let mut package = package();
        let name = at.get(&package.keys().cloned().collect::<Vec<_>>()).clone();
        let mut bytes = package[&name].clone();
        let from = place.index(bytes.len());
        let to = (from + length).min(bytes.len());
        bytes.splice(from..to, text.into_bytes());
        package.insert(name, bytes);
        if let Err(refused) = read(&zipped(&package)) {
            let said = refused.to_string();
            prop_assert!(said.contains("; ") && !said.contains('\n'), "{}", said);
        }
    }
}

//! Open data out and in.

mod any;
#[path = "../by_hand/mod.rs"]
mod by_hand;
mod foreign;
mod plan;
mod rebuilt;
mod refused;
mod units;
mod validator;
mod years;

use any::{any_shared, small};
use barm_documents::bundle::{Bundle, Limits};
use barm_documents::package::{About, Licence, Opened, TABLES, read, write};
use by_hand::cases;
use proptest::prelude::*;
use std::collections::BTreeMap;

/// The files of a package.
pub(crate) fn files(zip: &[u8]) -> BTreeMap<String, Vec<u8>> {
    let mut bundle = Bundle::open(zip, &Limits::USUAL).unwrap();
    let names: Vec<String> = bundle.names().map(str::to_owned).collect();
    let read = |name: String| {
        let bytes = bundle.read(&name).unwrap().unwrap();
        (name, bytes)
    };
    names.into_iter().map(read).collect()
}

/// The text of a file of a package.
pub(crate) fn text(zip: &[u8], name: &str) -> String {
    String::from_utf8(files(zip)[name].clone()).unwrap()
}

#[test]
fn a_package_holds_a_descriptor_a_text_and_every_table() {
    let zip = write(&small(), &About::default());
    let names: Vec<String> = files(&zip).into_keys().collect();
    let mut expected = vec!["README.md".to_owned(), "datapackage.json".to_owned()];
    expected.extend(TABLES.iter().map(|table| format!("{}.csv", table.name)));
    expected.sort();
    assert_eq!(names, expected);
    let readings = text(&zip, "readings.csv");
    assert_eq!(readings, "bag,minute,height_mm\r\nP1-02B-6,0,6\r\nP1-02B-6,4.02,7.5\r\n");
    let meter = text(&zip, "meter.csv");
    let heads = "bag,turn,minute,percent,liquid_Cel,gas_mL,air_mL\r\n";
    assert_eq!(meter, format!("{heads}P1-02B-6,,26,0.12,,20,0\r\n"));
}

#[test]
fn a_stranger_reads_what_was_done_by_whom_and_in_which_units() {
    let about = About { licence: Licence::Cc0, grade: Some(7), ..About::default() };
    let readme = text(&write(&small(), &about), "README.md");
    for part in [
        "No bag was measured by any instrument beyond a ruler",
        "class practical",
        "known by numbers only",
        "in grade 7",
        "breath meter",
        "CC0-1.0",
        "| `minute` | min | ",
        "| `water_Cel` | Cel | ",
        "### bags.csv (1 row)",
    ] {
        assert!(readme.contains(part), "{part}\n{readme}");
    }
    for table in TABLES {
        for field in table.fields {
            assert!(readme.contains(&format!("| `{}` |", field.name)), "{}", field.name);
        }
    }
    assert!(!readme.contains("invented"), "{readme}");
    let made_up = text(&write(&small(), &About { made_up: true, ..about }), "README.md");
    assert!(made_up.contains("These data are invented"));
    assert!(made_up.lines().all(|line| line.len() < 240));
}

#[test]
fn the_licence_is_the_one_that_was_chosen() {
    assert_eq!(Licence::default().id(), "CC-BY-4.0");
    for licence in Licence::ALL {
        let zip = write(&small(), &About { licence, ..About::default() });
        assert_eq!(read(&zip).unwrap().licence, Some(licence));
        assert!(text(&zip, "README.md").contains(licence.address()));
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(cases()))]

    #[test]
    fn what_is_written_is_read_again(
        shared in any_shared(), at in 0_usize..4, grade in prop::option::of(5_u8..13), made_up: bool,
    ) {
        let licence = Licence::ALL[at];
        let (readable_mm, interval_min) = (grade.map(|grade| f64::from(grade) / 2.0), Some(4.0));
        let about = About { licence, grade, made_up, readable_mm, interval_min };
        let zip = write(&shared, &about);
        let again = read(&zip).map_err(|refused| TestCaseError::fail(refused.to_string()))?;
        prop_assert_eq!(&write(&again.shared, &about), &zip);
        prop_assert_eq!(
            again,
            Opened { shared, licence: Some(licence), grade, made_up, readable_mm, interval_min }
        );
    }

    #[test]
    fn no_cell_is_a_formula_and_none_is_no_number(shared in any_shared()) {
        for (name, bytes) in files(&write(&shared, &About::default())) {
            if !name.ends_with(".csv") {
                continue;
            }
            let mut reader = csv::Reader::from_reader(bytes.as_slice());
            for row in reader.records() {
                for cell in &row.unwrap() {
                    let odd = cell.starts_with(['=', '+', '-', '@', '\'', ' ', '\t']);
                    prop_assert!(!odd && cell != "NaN" && cell != "inf", "{}: {}", name, cell);
                }
            }
        }
    }
}

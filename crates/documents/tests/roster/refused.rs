//! Exports that are refused, each with a sentence and with nothing left of it.

use crate::by_hand::{Part, cases, stored, zip};
use crate::school::School;
use barm_documents::roster::{Version, read};
use jiff::civil::date;
use proptest::prelude::*;

fn school() -> School {
    School::of(Version::V1_1)
}

fn says(school: &School, expected: &str) {
    let said = school.refused();
    assert!(said.contains(expected), "“{expected}” in {said}");
}

#[test]
fn the_manifest_decides_what_has_to_be_there() {
    says(&school().without("manifest.csv"), "no manifest.csv in the zip");
    for file in ["users", "classes", "enrollments"] {
        let name: &'static str = ["users.csv", "classes.csv", "enrollments.csv"]
            .into_iter()
            .find(|name| name.starts_with(file))
            .unwrap();
        says(&school().without(name), &format!("it says that {file}.csv is there"));
        let is = format!("file.{file},bulk");
        let with = |new: &str| school().with("manifest.csv", &is, new);
        says(
            &with(&format!("file.{file},absent")),
            &format!("{file}.csv is not in this export"),
        );
        says(&with(&format!("file.{file},delta")), "only what changed");
        says(&with(&format!("file.{file},some")), "\"some\" is none of bulk, delta, absent");
        says(&with("file.other,bulk"), &format!("whether {file}.csv is there"));
        says(&with(&format!("{is}\n{is}")), "stands there twice");
    }
    for version in ["1.0", "1.3", "2.0", "", "x\"\"y"] {
        let new = format!("oneroster.version,\"{version}\"");
        says(&school().with("manifest.csv", "oneroster.version,1.1", &new), "is not read here");
    }
    says(&school().with("manifest.csv", "oneroster.", "other."), "does not name its version");
    says(&school().with("manifest.csv", "propertyName", "name"), "no column “propertyName”");
}

#[test]
fn a_column_that_is_needed_has_to_be_there() {
    for (file, columns) in [
        ("users.csv", &["sourcedId", "givenName", "familyName"][..]),
        ("classes.csv", &["sourcedId", "title"]),
        ("enrollments.csv", &["sourcedId", "classSourcedId", "userSourcedId", "role"]),
    ] {
        for column in columns {
            let text = school().text(file);
            let (heads, rest) = text.split_once('\n').unwrap();
            let heads: Vec<&str> =
                heads.split(',').map(|head| if head == *column { "x" } else { head }).collect();
            let changed = format!("{}\n{rest}", heads.join(","));
            let changed = school().with_bytes(file, changed.into());
            says(&changed, &format!("{file}, line 1: there is no column “{column}”"));
        }
    }
    says(&school().with("users.csv", "userIds", "sourcedId"), "“sourcedId” stands there twice");
}

#[test]
fn text_in_other_alphabets_or_with_other_separators_is_refused() {
    let users = school().text("users.csv");
    let wide = |little: bool| -> Vec<u8> {
        let mark = std::iter::once(0xfeff_u16).chain(users.encode_utf16());
        mark.flat_map(|unit| if little { unit.to_le_bytes() } else { unit.to_be_bytes() })
            .collect()
    };
    says(
        &school().with_bytes("users.csv", wide(true)),
        "users.csv: the file is written in UTF-16",
    );
    says(&school().with_bytes("users.csv", wide(false)), "UTF-16");
    let unmarked = wide(true)[2..].to_vec();
    says(&school().with_bytes("users.csv", unmarked), "users.csv, line 1: there is a NUL");
    let mut latin = users.clone().into_bytes();
    let at = users.find("Ann,").unwrap();
    latin[at] = 0xe9;
    says(
        &school().with_bytes("users.csv", latin.clone()),
        "line 2: a sign is not written in UTF-8",
    );
    latin[at] = 0;
    says(&school().with_bytes("users.csv", latin), "line 2: there is a NUL");
    for (sign, called) in [(";", "semicolons"), ("\t", "tabs"), ("|", "bars")] {
        let parted = users.replace(',', sign);
        says(&school().with_bytes("users.csv", parted.into()), &format!("parted by {called}"));
    }
    says(&school().with_bytes("users.csv", Vec::new()), "users.csv, line 1: the file is empty");
}

#[test]
fn rows_that_are_not_quite_right_are_refused_with_their_line() {
    let users = |old: &str, new: &str| school().with("users.csv", old, new);
    says(&users("Cy,Nobody", "Cy,\"Nobody"), "line 5: a quotation mark is opened");
    says(&users("Cy,Nobody", "Cy \"C\",Nobody"), "line 5: there is a quotation mark inside");
    says(&users("Cy,Nobody", "Cy,Nobody,more"), "line 5: there are 19 cells under 18 heads");
    says(&users("s3,,", "s1,,"), "line 5: the sourcedId \"s1\" stands there twice");
    says(&users("s3,,", ",,"), "line 5: the row has no sourcedId");
    says(&users("s3,,", "s3,gone,"), "\"gone\" is no status");
    says(&school().with("classes.csv", "c2,", "c1,"), "\"c1\" stands there twice");
    let enrollments = |old: &str, new: &str| school().with("enrollments.csv", old, new);
    says(&enrollments("e3,", "e1,"), "enrollments.csv, line 4: the sourcedId \"e1\"");
    says(&enrollments("c1,o1,s1", ",o1,s1"), "line 2: the enrollment names no class");
    says(&enrollments("2027-06-10", "10/06/2027"), "line 3: \"10/06/2027\" is no date");
    says(&enrollments("2027-06-10", "2027-06-101"), "is no date");
    says(&enrollments("student", "aide"), "no student is in any class");
}

#[test]
fn ids_that_a_spreadsheet_would_compute_are_refused() {
    for id in ["=1+1", "+1(2)", "-1|x!A1", "@SUM(1)"] {
        let with = |file: &'static str, school: School| school.with(file, "s3", id);
        let school = with("users.csv", with("enrollments.csv", school()));
        says(&school, "looks like a formula");
    }
    for id in ["-17", "@17", "'17", "a=b"] {
        let school = school().with("users.csv", "s3", id).with("enrollments.csv", "s3", id);
        assert_eq!(school.taken().roster.sections()[0].students[0].id.as_str(), id);
    }
}

#[test]
fn bundles_that_are_refused_are_refused_here_too() {
    let parts = || {
        let files = school().0.into_iter();
        files.map(|(name, bytes)| stored(name, &bytes)).collect::<Vec<Part>>()
    };
    let refuse = |parts: &[Part]| read(&zip(parts, b""), date(2027, 3, 9)).unwrap_err();
    assert!(read(&zip(&parts(), b""), date(2027, 3, 9)).is_ok());
    let more = |part: Part| [parts(), vec![part]].concat();
    for part in [
        stored("../users.csv", b""),
        stored("Users.csv", b""),
        stored("C:\\users.csv", b""),
        Part { flags: 1, ..stored("x.csv", b"") },
        Part { size: 300 << 20, ..stored("x.csv", b"") },
        Part { method: 12, ..stored("x.csv", b"") },
    ] {
        refuse(&more(part));
    }
    // In a folder of its own an export is read all the same.
    let inside = parts().into_iter().map(|part| {
        let name = [b"my export/".as_slice(), &part.name].concat();
        Part { local_name: name.clone(), name, ..part }
    });
    assert!(read(&zip(&inside.collect::<Vec<_>>(), b""), date(2027, 3, 9)).is_ok());
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(cases()))]

    #[test]
    fn any_table_is_read_or_refused_in_words(
        file in prop::sample::select(vec!["manifest.csv", "users.csv", "classes.csv", "enrollments.csv"]),
        bytes in prop::collection::vec(any::<u8>(), 0..200),
    ) {
        if let Err(refused) = school().with_bytes(file, bytes).read() {
            prop_assert!(refused.to_string().contains("; "));
        }
    }

    #[test]
    fn a_changed_table_is_read_or_refused_in_words(
        file in prop::sample::select(vec!["manifest.csv", "users.csv", "classes.csv", "enrollments.csv"]),
        at in any::<prop::sample::Index>(), text in "[,\"\r\n;=a-z0-9\u{e9}\0]{0,4}",
    ) {
        let mut bytes = school().0[file].clone();
        let at = at.index(bytes.len());
        bytes.splice(at..at, text.into_bytes());
        if let Err(refused) = school().with_bytes(file, bytes).read() {
            let said = refused.to_string();
            prop_assert!(said.contains("; ") && !said.contains('\n'), "{}", said);
        }
    }
}

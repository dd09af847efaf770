//! Bundles from outside: what is opened, and every way in which one is refused.

#[path = "../by_hand/mod.rs"]
mod by_hand;
mod limits;
mod refused;

use barm_documents::bundle::{Bundle, Limits, pack};
use by_hand::{Part, cases, deflated, stored, sum, zip};
use proptest::prelude::*;

/// Opens a bundle and unpacks all of it.
fn all(bytes: &[u8], limits: &Limits) -> Result<Vec<(String, Vec<u8>)>, String> {
    let mut bundle = Bundle::open(bytes, limits).map_err(|refused| refused.to_string())?;
    let names: Vec<String> = bundle.names().map(str::to_owned).collect();
    let read = |name: String| {
        let bytes = bundle.read(&name).map_err(|refused| refused.to_string())?;
        Ok((name, bytes.expect("it is listed")))
    };
    names.into_iter().map(read).collect()
}

fn opened(bytes: &[u8]) -> Vec<(String, Vec<u8>)> {
    all(bytes, &Limits::USUAL).unwrap()
}

/// Why a zip is refused: one sentence that says what to do.
fn refused(bytes: &[u8]) -> String {
    let said = all(bytes, &Limits::USUAL).expect_err("it is refused");
    assert!(said.contains("; ") && !said.contains('\n'), "{said}");
    said
}

fn file(name: &str, bytes: &[u8]) -> (String, Vec<u8>) {
    (name.to_owned(), bytes.to_vec())
}

// The checksum of "123456789" stands in every catalog of CRCs (R. Williams, 1993).
#[test]
fn the_test_counts_checksums_as_everybody_does() {
    assert_eq!(sum(b"123456789"), 0xcbf4_3926);
}

#[test]
fn stored_and_deflated_files_are_read() {
    let parts = [stored("a.csv", b"one"), deflated("b.csv", b"two"), stored("empty.csv", b"")];
    let expected = vec![file("a.csv", b"one"), file("b.csv", b"two"), file("empty.csv", b"")];
    assert_eq!(opened(&zip(&parts, b"")), expected);
    assert_eq!(opened(&zip(&parts, b"made by hand")), expected);
    let behind = Part { flags: 8, ..deflated("a.csv", b"one") };
    assert_eq!(opened(&zip(&[behind], b"")), [file("a.csv", b"one")]);
    let accents = Part { flags: 1 << 11, ..stored("Année.csv", b"1") };
    assert_eq!(opened(&zip(&[accents], b"")), [file("Année.csv", b"1")]);
    assert_eq!(opened(&zip(&[], b"")), []);
}

#[test]
fn one_folder_around_everything_and_what_desktops_leave_are_passed_over() {
    let parts = [
        Part { mode: 0o040_755, ..stored("export/", b"") },
        stored("export/users.csv", b"1"),
        stored("export/.DS_Store", b"x"),
        stored("__MACOSX/export/._users.csv", b"x"),
    ];
    assert_eq!(opened(&zip(&parts, b"")), [file("users.csv", b"1")]);
    let two = [stored("a/users.csv", b"1"), stored("b/users.csv", b"2")];
    let expected = [file("a/users.csv", b"1"), file("b/users.csv", b"2")];
    assert_eq!(opened(&zip(&two, b"")), expected);
}

#[test]
fn a_file_that_is_not_there_is_not_there() {
    let bytes = zip(&[stored("a.csv", b"1")], b"");
    let mut bundle = Bundle::open(&bytes, &Limits::USUAL).unwrap();
    assert_eq!(bundle.read("b.csv").unwrap(), None);
    assert_eq!(bundle.read("A.csv").unwrap(), None);
}

/// Some packers write sizes for files beyond 4 GiB whatever the file is; that does no harm.
#[test]
fn sizes_in_64_bits_are_read() {
    use std::io::Write as _;
    let mut writer = zip::ZipWriter::new(std::io::Cursor::new(Vec::new()));
    let options = zip::write::SimpleFileOptions::default().large_file(true);
    writer.start_file("a.csv", options).unwrap();
    writer.write_all(b"one").unwrap();
    let bytes = writer.finish().unwrap().into_inner();
    assert_eq!(opened(&bytes), [file("a.csv", b"one")]);
}

/// Archives like those that are let in, with some bytes changed.
fn nearly(changes: &[(usize, u8)]) -> Vec<u8> {
    let parts =
        [stored("a.csv", b"one"), deflated("b/c.csv", b"two two two"), stored("d/", b"")];
    let mut bytes = zip(&parts, b"comment");
    let length = bytes.len();
    for (at, byte) in changes {
        bytes[at % length] = *byte;
    }
    bytes
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(cases()))]

    #[test]
    fn what_is_packed_is_unpacked(
        files in prop::collection::btree_map("[a-z]{1,8}", prop::collection::vec(any::<u8>(), 0..300), 0..6),
    ) {
        let named: Vec<(String, Vec<u8>)> =
            files.into_iter().map(|(name, bytes)| (format!("{name}.csv"), bytes)).collect();
        let borrowed: Vec<(&str, &[u8])> =
            named.iter().map(|(name, bytes)| (name.as_str(), bytes.as_slice())).collect();
        let packed = pack(&borrowed);
        prop_assert_eq!(&pack(&borrowed), &packed);
        prop_assert_eq!(all(&packed, &Limits::USUAL), Ok(named));
    }

    #[test]
    fn any_bytes_are_opened_or_refused_in_words(bytes in prop::collection::vec(any::<u8>(), 0..400)) {
        let as_zip = [b"PK\x03\x04".as_slice(), &bytes].concat();
        for bytes in [bytes, as_zip] {
            if let Err(said) = all(&bytes, &Limits::USUAL) {
                prop_assert!(said.contains("; "), "{}", said);
            }
        }
    }

    #[test]
    fn changed_archives_are_opened_or_refused_in_words(
        changes in prop::collection::vec((any::<usize>(), any::<u8>()), 1..6),
    ) {
        if let Err(said) = all(&nearly(&changes), &Limits::USUAL) {
            prop_assert!(said.contains("; ") && !said.contains('\n'), "{}", said);
        }
    }
}

//! Bundles from outside: what is opened, and every way in which one is refused.

#[path = "../by_hand/mod.rs"]
mod by_hand;

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

#[test]
fn what_is_no_whole_zip_is_refused() {
    let good = zip(&[stored("a.csv", b"one"), deflated("b.csv", b"two")], b"");
    assert!(refused(b"").contains("no zip file"));
    assert!(refused(b"sourcedId,status\n1,\n").contains("no zip file"));
    assert!(refused(b"PK").contains("damaged"));
    for end in 2..good.len() {
        refused(&good[..end]);
    }
    let before = [b"PK junk".as_slice(), &good].concat();
    assert!(refused(&before).contains("before or behind"), "{}", refused(&before));
    let behind = [good.as_slice(), b"junk"].concat();
    assert!(refused(&behind).contains("before or behind"), "{}", refused(&behind));
    // A comment in which another end of another archive hides.
    let hidden = zip(&[stored("evil.csv", b"1")], b"");
    let two = zip(&[stored("a.csv", b"one")], &hidden);
    refused(&two);
}

#[test]
fn locked_and_strangely_packed_files_are_refused() {
    let locked = Part { flags: 1, ..stored("a.csv", b"one") };
    assert!(refused(&zip(&[locked], b"")).contains("password"));
    // Shrink, implode, deflate64, bzip2, LZMA, Zstandard, XZ, PPMd, AES, and none.
    for method in [1, 6, 9, 12, 14, 93, 95, 98, 99, 0xffff] {
        let part = Part { method, ..stored("a.csv", b"one") };
        let said = refused(&zip(&[part], b""));
        assert!(
            said.contains("packed in a way") || said.contains("damaged"),
            "{method}: {said}"
        );
    }
    let link = Part { mode: 0o120_777, ..stored("a.csv", b"/etc/passwd") };
    assert!(refused(&zip(&[link], b"")).contains("link"));
    let folder = stored("a/", b"inside");
    assert!(refused(&zip(&[folder], b"")).contains("folder"));
}

#[test]
fn names_that_lead_elsewhere_are_refused() {
    for name in [
        "../a.csv",
        "a/../../b.csv",
        "/a.csv",
        "C:/a.csv",
        "c:a.csv",
        "a\\b.csv",
        "..\\a.csv",
        "\\\\server\\a.csv",
        "//server/a.csv",
        "a.csv:b",
        "./a.csv",
        "a//b.csv",
        "a.csv.",
        "a.csv ",
        "a\0.csv",
        "a\n.csv",
        "..",
        "",
    ] {
        refused(&zip(&[stored(name, b"1")], b""));
    }
    let raw = Part { name: b"\xe9.csv".to_vec(), ..stored("", b"1") };
    let raw = Part { local_name: raw.name.clone(), ..raw };
    assert!(refused(&zip(&[raw], b"")).contains("UTF-8"));
}

#[test]
fn no_name_means_two_files() {
    let same = [stored("a.csv", b"1"), stored("a.csv", b"2")];
    assert!(refused(&zip(&same, b"")).contains("one name"));
    let capitals = [stored("users.csv", b"1"), stored("Users.CSV", b"2")];
    assert!(refused(&zip(&capitals, b"")).contains("but for capitals"));
}

#[test]
fn headers_that_do_not_agree_are_refused() {
    let two_ways = "do not agree";
    let renamed = Part { local_name: b"b.csv".to_vec(), ..stored("a.csv", b"1") };
    assert!(refused(&zip(&[renamed], b"")).contains(two_ways));
    let hidden = Part { listed: false, ..stored("b.csv", b"2") };
    assert!(refused(&zip(&[stored("a.csv", b"1"), hidden], b"")).contains(two_ways));
    let bytes = b"one and all";
    let other = Part { points_to: Some(0), ..stored("b.csv", bytes) };
    assert!(refused(&zip(&[stored("a.csv", bytes), other], b"")).contains(two_ways));
}

#[test]
fn files_that_are_not_what_they_claim_are_refused() {
    let damaged = "a.csv: the file is damaged";
    let wrong_sum = Part { sum: 1, ..stored("a.csv", b"one") };
    assert!(refused(&zip(&[wrong_sum], b"")).contains(damaged));
    for size in [2, 4] {
        let wrong_size = Part { size, ..deflated("a.csv", b"one") };
        assert!(refused(&zip(&[wrong_size], b"")).contains(damaged), "{size}");
    }
    let no_deflate = Part { packed: vec![0xff; 20], ..deflated("a.csv", b"one") };
    assert!(refused(&zip(&[no_deflate], b"")).contains(damaged));
}

#[test]
fn bombs_are_refused_before_they_are_unpacked() {
    let zeros = vec![b'0'; 3 << 20];
    let bomb = pack(&[("a.csv", &zeros)]);
    assert!(bomb.len() < 30_000, "{}", bomb.len());
    assert!(refused(&bomb).contains("-fold"), "{}", refused(&bomb));
    // Nothing of it is needed, yet the whole bundle is refused.
    let beside = pack(&[("a.csv", b"1"), ("b.bin", &zeros)]);
    assert!(refused(&beside).contains("-fold"));
    let claims = Part { size: 65 << 20, ..deflated("a.csv", b"one") };
    assert!(refused(&zip(&[claims], b"")).contains("65 MiB, more than 64 MiB"));
    // It claims little, and much would come out.
    let packed = &bomb[30 + "a.csv".len()..];
    let liar = Part { packed: packed.to_vec(), ..deflated("a.csv", b"0000") };
    assert!(refused(&zip(&[liar], b"")).contains("damaged"));
}

#[test]
fn every_limit_holds_to_the_byte() {
    let files = [stored("a.csv", b"12345"), stored("b.csv", b"678")];
    let bytes = zip(&files, b"");
    let fits = Limits { packed: bytes.len() as u64, entries: 2, file: 5, total: 8, ratio: 100 };
    assert!(all(&bytes, &fits).is_ok());
    for (limits, says) in [
        (Limits { packed: fits.packed - 1, ..fits }, "the zip file has"),
        (Limits { entries: 1, ..fits }, "2 files in the zip, more than 1"),
        (Limits { file: 4, ..fits }, "a.csv: the file would have 5 bytes, more than 4 bytes"),
        (Limits { total: 7, ..fits }, "8 bytes in all, more than 7 bytes"),
    ] {
        let said = all(&bytes, &limits).unwrap_err();
        assert!(said.contains(says), "{said}");
    }
    let large = vec![b'0'; (1 << 20) + 1];
    let packed = pack(&[("a.csv", &large)]);
    assert!(all(&packed, &Limits { ratio: 1100, ..Limits::USUAL }).is_ok());
    assert!(all(&packed, &Limits { ratio: 900, ..Limits::USUAL }).is_err());
    let free = pack(&[("a.csv", &large[1..])]);
    assert!(all(&free, &Limits { ratio: 1, ..Limits::USUAL }).is_ok());
}

#[test]
fn many_files_are_too_many() {
    let parts: Vec<Part> = (0..201).map(|at| stored(&format!("{at}.csv"), b"")).collect();
    assert!(refused(&zip(&parts, b"")).contains("201 files in the zip, more than 200"));
    assert_eq!(opened(&zip(&parts[..200], b"")).len(), 200);
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

//! Archives that are refused for what they are.

use crate::by_hand::{Part, deflated, stored, zip};
use crate::{all, refused};
use barm_documents::bundle::Limits;

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

/// An archive with other bytes in the record at its end, counted from the record's start.
fn with_end(at: usize, bytes: &[u8]) -> Vec<u8> {
    let mut archive = zip(&[stored("a.csv", b"one"), stored("b.csv", b"two")], b"");
    let end = archive.len() - 22;
    archive[end + at..end + at + bytes.len()].copy_from_slice(bytes);
    archive
}

#[test]
fn an_end_that_counts_or_points_wrongly_is_refused() {
    assert_eq!(all(&with_end(0, b"PK"), &Limits::USUAL).map(|files| files.len()), Ok(2));
    for (at, bytes, what) in [
        (4, &[1, 0][..], "another disk"),
        (8, &[1, 0, 1, 0], "one file less than there are"),
        (8, &[3, 0, 3, 0], "one file more than there are"),
        (8, &[0, 0, 0, 0], "no file"),
        (12, &[1, 0, 0, 0], "a directory of one byte"),
        (16, &[0, 0, 0, 0], "a directory at the beginning"),
        (16, &[0xff, 0xff, 0xff, 0x7f], "a directory far outside"),
    ] {
        let refused = all(&with_end(at, bytes), &Limits::USUAL);
        assert!(refused.is_err(), "{what}: {refused:?}");
    }
}

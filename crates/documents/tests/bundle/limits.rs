//! Archives that are refused for how much they are.

use crate::by_hand::{Part, deflated, stored, zip};
use crate::{all, opened, refused};
use barm_documents::bundle::{Limits, pack};

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

//! A file that a person has changed is never overwritten.

use barm_store::written::{Folder, MEMORY, Outcome};
use std::fs;

#[test]
fn new_then_unchanged_then_updated() {
    let place = tempfile::tempdir().unwrap();
    let folder = place.path().join("a/b");
    let mut open = Folder::open(&folder).unwrap();
    assert_eq!(open.write("plan.toml", b"one").unwrap(), Outcome::Written);
    assert_eq!(open.write("plan.toml", b"one").unwrap(), Outcome::AlreadyThere);
    let mut again = Folder::open(&folder).unwrap();
    assert_eq!(again.write("plan.toml", b"two").unwrap(), Outcome::Written);
    assert_eq!(fs::read(folder.join("plan.toml")).unwrap(), b"two");
}

#[test]
fn a_change_by_a_person_stays() {
    let place = tempfile::tempdir().unwrap();
    let mut folder = Folder::open(place.path()).unwrap();
    folder.write("plan.toml", b"one").unwrap();
    fs::write(place.path().join("plan.toml"), b"mine").unwrap();
    assert_eq!(folder.write("plan.toml", b"two").unwrap(), Outcome::KeptYours);
    assert_eq!(fs::read(place.path().join("plan.toml")).unwrap(), b"mine");
}

#[test]
fn a_file_that_was_there_before_stays() {
    let place = tempfile::tempdir().unwrap();
    fs::write(place.path().join("report.pdf"), b"mine").unwrap();
    let mut folder = Folder::open(place.path()).unwrap();
    assert_eq!(folder.write("report.pdf", b"ours").unwrap(), Outcome::KeptYours);
}

#[test]
fn a_removed_file_is_written_again() {
    let place = tempfile::tempdir().unwrap();
    let mut folder = Folder::open(place.path()).unwrap();
    folder.write("plan.toml", b"one").unwrap();
    fs::remove_file(place.path().join("plan.toml")).unwrap();
    assert_eq!(folder.write("plan.toml", b"one").unwrap(), Outcome::Written);
}

#[test]
fn a_lost_or_broken_memory_means_hands_off() {
    let place = tempfile::tempdir().unwrap();
    Folder::open(place.path()).unwrap().write("plan.toml", b"one").unwrap();
    fs::write(place.path().join(MEMORY), b"\xff\xfe nonsense\n\n").unwrap();
    let mut folder = Folder::open(place.path()).unwrap();
    assert_eq!(folder.write("plan.toml", b"two").unwrap(), Outcome::KeptYours);
}

#[test]
fn a_folder_that_cannot_be_made_says_which() {
    let place = tempfile::tempdir().unwrap();
    fs::write(place.path().join("file"), b"").unwrap();
    let error = Folder::open(&place.path().join("file/below")).unwrap_err();
    assert!(error.to_string().contains("below"), "{error}");
}

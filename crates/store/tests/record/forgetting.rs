//! Deleted words are gone from every byte on disk.

use crate::made::{at, reading};
use crate::places::Ground;
use barm_domain::record::WordsKey;
use barm_store::{Kind, Place};
use std::fs;
use std::path::{Path, PathBuf};
use tempfile::TempDir;

/// Stands in every planted word and nowhere else.
const MARK: &str = "Zwitschermaschine";

/// Every file below a folder that holds the mark.
fn with_mark(folder: &Path) -> Vec<PathBuf> {
    let mut found = Vec::new();
    for entry in fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() {
            found.extend(with_mark(&path));
        } else if fs::read(&path).unwrap().windows(MARK.len()).any(|w| w == MARK.as_bytes()) {
            found.push(path);
        }
    }
    found
}

#[test]
fn no_byte_of_a_deleted_word_is_left_in_the_record_its_log_or_its_backups() {
    let ground = Ground::folder();
    let Place::Folder(record) = &ground.place else { panic!("a folder") };
    let elsewhere = TempDir::new().unwrap();
    let store = ground.open();
    let id = store.add_investigation("Syrup or oats", Kind::Real, at(0)).unwrap().id;
    let other = store.add_investigation("Bananas", Kind::Real, at(0)).unwrap().id;
    // Words of every length, also longer than a page, with others in between, so that pages are
    // split and words are moved.
    let lengths = [0, 1, 40, 300, 1500, 3000, 4090, 9000, 60_000];
    for round in 0..30_u32 {
        for (at_length, length) in (0_u32..).zip(lengths) {
            let key = WordsKey(u128::from(round * 7919 % 1000) << 64 | u128::from(at_length));
            let text = format!("{MARK} {} {MARK}", "y".repeat(length));
            store.keep_words(id, key, &format!("reason {MARK}"), &text).unwrap();
        }
        store.append(id, vec![reading(round, 3.0)]).unwrap();
        let kept = WordsKey(u128::from(round) << 32 | 1 << 127);
        store.keep_words(other, kept, "reason", &"it stays ".repeat(50)).unwrap();
        if round % 10 == 0 {
            let path = elsewhere.path().join(format!("{round}.sqlite"));
            store.backup_to(&path, at(i64::from(round))).unwrap();
        }
        // A reader that has been at work.
        store.all_words(id).unwrap();
    }
    store.keep_secret(&format!("secret {MARK}"), MARK).unwrap();
    store.drop_secret(&format!("secret {MARK}")).unwrap();
    store.keep_setting(&format!("setting {MARK}"), MARK).unwrap();
    store.drop_setting(&format!("setting {MARK}")).unwrap();
    assert!(with_mark(record).len() >= 2, "the search must find the record and its log before");
    assert_eq!(with_mark(elsewhere.path()).len(), 3);

    let moved = elsewhere.path().join("moved");
    fs::rename(elsewhere.path().join("10.sqlite"), &moved).unwrap();
    let forgotten = store.forget_all_words(id).unwrap();
    assert_eq!(forgotten.words, 270);
    assert_eq!(forgotten.backups.len(), 2);
    let [unreached] = &forgotten.unreached[..] else { panic!("{forgotten:?}") };
    assert_eq!(unreached.path, elsewhere.path().join("10.sqlite"));
    assert_eq!(unreached.made, at(10));
    assert_eq!(with_mark(record), [] as [PathBuf; 0], "while the program runs");
    assert_eq!(with_mark(elsewhere.path()), std::slice::from_ref(&moved));

    // The moved one is back, and is cleaned with the next deletion.
    fs::rename(&moved, elsewhere.path().join("10.sqlite")).unwrap();
    let forgotten = store.forget_words(&[]).unwrap();
    assert_eq!(forgotten.backups, [elsewhere.path().join("10.sqlite")]);
    assert_eq!(forgotten.unreached, []);
    assert_eq!(with_mark(elsewhere.path()), [] as [PathBuf; 0]);
    store.append(id, vec![reading(1000, 3.0)]).unwrap();
    assert_eq!(store.all_words(other).unwrap().len(), 30);
    drop(store);
    assert_eq!(with_mark(record), [] as [PathBuf; 0], "after it was closed");

    // The record itself is whole, here and in the backups.
    let store = ground.open();
    assert_eq!(store.full_check().unwrap().entries, 31);
    assert_eq!(store.backups().unwrap().len(), 3);
}

#[test]
fn a_program_that_died_before_it_had_overwritten_does_so_when_it_is_opened() {
    let ground = Ground::folder();
    let Place::Folder(record) = &ground.place else { panic!("a folder") };
    let store = ground.open();
    let id = store.add_investigation("Syrup or oats", Kind::Real, at(0)).unwrap().id;
    let text = format!("{MARK} {}", "y".repeat(9000));
    store.keep_words(id, WordsKey(1), "reason", &text).unwrap();
    drop(store);
    // What the deletion leaves behind if nothing comes after its commit.
    let file = rusqlite::Connection::open(record.join("record.sqlite")).unwrap();
    file.execute_batch(
        "pragma secure_delete = off; begin; delete from words;
         insert into setting values ('wipe', 'due'); commit",
    )
    .unwrap();
    drop(file);
    assert_eq!(with_mark(record), [record.join("record.sqlite")]);
    let store = ground.open();
    assert_eq!(with_mark(record), [] as [PathBuf; 0]);
    assert_eq!(store.setting("wipe").unwrap(), None);
}

/// On a server the tables hold nothing of it any more. Its write-ahead log, its own backups and
/// its replicas are its keeper's; `docs/decisions/0011-a-sealed-bag-stays-what-it-was.md` says so.
#[test]
fn no_byte_of_a_deleted_word_is_left_in_the_tables_of_a_server() {
    let Some(ground) = Ground::server() else { return };
    let store = ground.open();
    let id = store.add_investigation("Syrup or oats", Kind::Real, at(0)).unwrap().id;
    let other = store.add_investigation("Bananas", Kind::Real, at(0)).unwrap().id;
    // Also longer than a page, which the server lays out of the line, with others in between.
    for (nth, length) in (0_u32..).zip([0, 40, 1500, 9000, 60_000]) {
        let text = format!("{MARK} {} {MARK}", "y".repeat(length));
        store
            .keep_words(id, WordsKey(u128::from(nth)), &format!("reason {MARK}"), &text)
            .unwrap();
        let kept = WordsKey(u128::from(nth) | 1 << 127);
        store.keep_words(other, kept, "reason", &"it stays ".repeat(50)).unwrap();
        store.append(id, vec![reading(nth, 3.0)]).unwrap();
    }
    let Place::Postgres(address) = &ground.place else { panic!("a server") };
    // So that what is in memory is in the files.
    let written = || {
        let mut line = postgres::Client::connect(address, postgres::NoTls).unwrap();
        line.batch_execute("checkpoint").unwrap();
    };
    written();
    assert!(!with_mark(&ground.tables()).is_empty(), "the search must find them before");
    assert_eq!(store.forget_all_words(id).unwrap().words, 5);
    written();
    assert_eq!(with_mark(&ground.tables()), [] as [PathBuf; 0]);
    assert_eq!(store.all_words(other).unwrap().len(), 5);
}

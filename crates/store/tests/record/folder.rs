//! What can be wrong with the folder of a record, and the sentence for it.

use crate::made::at;
use crate::places::Ground;
use barm_store::{Kind, Place, Store, StoreError};
use std::fs;
use std::path::{Path, PathBuf};
use tempfile::TempDir;

fn open(folder: &Path) -> Result<Store, StoreError> {
    Store::open(&Place::Folder(folder.to_owned()))
}

fn file_of(ground: &Ground) -> PathBuf {
    let Place::Folder(folder) = &ground.place else { panic!("a folder") };
    folder.join("record.sqlite")
}

#[test]
fn a_second_copy_of_the_program_is_told_who_has_it() {
    let ground = Ground::folder();
    let store = ground.open();
    let refused = Store::open(&ground.place).unwrap_err();
    let StoreError::InUse { pid, .. } = refused else { panic!("{refused}") };
    assert_eq!(pid, Some(std::process::id()));
    drop(store);
    ground.open();
}

#[test]
fn a_file_that_is_something_else_is_left_alone() {
    let folder = TempDir::new().unwrap();
    let path = folder.path().join("record.sqlite");
    for bytes in [&b"Dear diary, today we grew yeast in bags."[..], b"x"] {
        fs::write(&path, bytes).unwrap();
        let refused = open(folder.path()).unwrap_err();
        assert!(matches!(refused, StoreError::NotARecord { .. }), "{refused}");
        assert_eq!(fs::read(&path).unwrap(), bytes);
    }
    fs::remove_file(&path).unwrap();
    let other = rusqlite::Connection::open(&path).unwrap();
    other.execute_batch("create table recipe (id integer)").unwrap();
    drop(other);
    let refused = open(folder.path()).unwrap_err();
    assert!(matches!(refused, StoreError::NotARecord { .. }), "{refused}");
}

#[test]
fn an_empty_file_becomes_a_record() {
    let folder = TempDir::new().unwrap();
    fs::write(folder.path().join("record.sqlite"), b"").unwrap();
    let store = open(folder.path()).unwrap();
    store.add_investigation("Syrup or oats", Kind::Real, at(0)).unwrap();
}

#[test]
fn a_damaged_file_is_noticed_at_the_start() {
    let ground = Ground::folder();
    let store = ground.open();
    let id = store.add_investigation("Syrup or oats", Kind::Real, at(0)).unwrap().id;
    for number in 0..200 {
        store.save_plan(id, &format!("{number} {}", "x".repeat(500)), at(number)).unwrap();
    }
    drop(store);
    let path = file_of(&ground);
    let mut bytes = fs::read(&path).unwrap();
    let middle = bytes.len() / 2 / 4096 * 4096;
    bytes[middle..middle + 4096].fill(0xa5);
    fs::write(&path, bytes).unwrap();
    let refused = Store::open(&ground.place).unwrap_err();
    assert!(matches!(refused, StoreError::Damaged { .. }), "{refused}");
    assert!(refused.to_string().contains("restore the newest backup"), "{refused}");
}

#[test]
fn a_record_of_a_newer_program_names_it() {
    let ground = Ground::folder();
    drop(ground.open());
    let file = rusqlite::Connection::open(file_of(&ground)).unwrap();
    file.execute_batch("insert into migration values (99, 'more', '7.2.0')").unwrap();
    drop(file);
    let refused = Store::open(&ground.place).unwrap_err();
    let StoreError::Newer { program, .. } = &refused else { panic!("{refused}") };
    assert_eq!(program, "7.2.0");
}

#[test]
fn a_folder_in_place_of_the_file_is_said_so() {
    let folder = TempDir::new().unwrap();
    fs::create_dir(folder.path().join("record.sqlite")).unwrap();
    assert!(open(folder.path()).is_err());
}

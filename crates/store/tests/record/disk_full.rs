//! A disk that fills up, and a folder that takes no writing.

use crate::made::{at, reading};
use crate::server::is_root;
use crate::size::skip;
use barm_domain::record::Key;
use barm_store::{Kind, Place, Store, StoreError};
use std::collections::BTreeSet;
use std::fs;
use std::os::unix::fs::PermissionsExt as _;
use std::path::Path;
use std::process::{Command, Stdio};
use tempfile::TempDir;

/// A small disk of its own, which only root can make.
struct Disk {
    folder: TempDir,
}

impl Disk {
    fn of_size(size: &str) -> Option<Self> {
        let folder = TempDir::new().unwrap();
        let made = is_root() && mount(&["-t", "tmpfs", "-o", size, "tmpfs"], folder.path());
        made.then_some(Self { folder })
    }

    fn path(&self) -> &Path {
        self.folder.path()
    }
}

impl Drop for Disk {
    fn drop(&mut self) {
        let _ = Command::new("umount").arg(self.path()).status();
    }
}

fn mount(arguments: &[&str], on: &Path) -> bool {
    let mut mount = Command::new("mount");
    mount.args(arguments).arg(on).stderr(Stdio::null());
    mount.status().is_ok_and(|status| status.success())
}

#[test]
fn a_full_disk_loses_nothing_and_writing_goes_on_when_there_is_room() {
    let Some(disk) = Disk::of_size("size=3m") else {
        return skip("a record on a full disk", "a small disk cannot be mounted here");
    };
    let folder = disk.path().join("record");
    let place = Place::Folder(folder.clone());
    let store = Store::open(&place).unwrap();
    let id = store.add_investigation("Syrup or oats", Kind::Real, at(0)).unwrap().id;
    let ballast = disk.path().join("ballast");
    fs::write(&ballast, vec![7; 900_000]).unwrap();

    let mut told: BTreeSet<Key> = BTreeSet::new();
    let mut number = 0;
    let refused = loop {
        let entries: Vec<_> = (number..number + 50).map(|n| reading(n, 1.5)).collect();
        number += 50;
        match store.append(id, entries) {
            Ok(receipts) => told.extend(receipts.iter().map(|receipt| receipt.key)),
            Err(error) => break error,
        }
        assert!(number < 100_000, "the disk never fills up");
    };
    assert!(matches!(refused, StoreError::DiskFull { .. }), "{refused}");
    assert_eq!(
        refused.to_string(),
        format!(
            "the disk that holds {} is full, so this was not kept; free some space and try again",
            folder.join("record.sqlite").display()
        )
    );
    // Still full: still refused, and what is there can be read.
    assert!(
        store
            .append(id, (0..50).map(|n| reading(900_000 + n, 1.5)).collect::<Vec<_>>())
            .is_err()
    );
    assert_eq!(store.entries(id, 0).unwrap().len(), told.len());
    let backup = store.backup_to(&disk.path().join("backup.sqlite"), at(1));
    assert!(backup.is_err());
    assert!(!disk.path().join("backup.sqlite.part").exists());

    fs::remove_file(&ballast).unwrap();
    let receipts = store.append(id, vec![reading(950_000, 2.5)]).unwrap();
    told.extend(receipts.iter().map(|receipt| receipt.key));
    drop(store);
    let store = Store::open(&place).unwrap();
    store.full_check().unwrap();
    let found: BTreeSet<Key> =
        store.entries(id, 0).unwrap().into_iter().map(|(_, entry)| entry.key).collect();
    assert_eq!(found, told);
}

#[test]
fn a_disk_that_is_full_from_the_start_is_said_so() {
    let Some(disk) = Disk::of_size("size=64k") else {
        return skip("a new record on a full disk", "a small disk cannot be mounted here");
    };
    fs::write(disk.path().join("ballast"), vec![7; 40_000]).unwrap();
    let refused = Store::open(&Place::Folder(disk.path().join("record"))).unwrap_err();
    assert!(matches!(refused, StoreError::DiskFull { .. }), "{refused}");
}

#[test]
fn a_folder_that_takes_no_writing_is_said_so() {
    let check = |folder: &Path| {
        let refused = Store::open(&Place::Folder(folder.to_owned())).unwrap_err();
        assert!(matches!(refused, StoreError::ReadOnly { .. }), "{refused}");
        let said = refused.to_string();
        assert!(said.contains("allow writing there or choose another folder"), "{said}");
    };
    if !is_root() {
        let folder = TempDir::new().unwrap();
        fs::set_permissions(folder.path(), fs::Permissions::from_mode(0o555)).unwrap();
        check(folder.path());
        return check(&folder.path().join("below"));
    }
    let Some(disk) = Disk::of_size("size=3m") else {
        return skip("a folder that takes no writing", "a small disk cannot be mounted here");
    };
    drop(Store::open(&Place::Folder(disk.path().join("old"))).unwrap());
    assert!(mount(&["-o", "remount,ro"], disk.path()));
    check(&disk.path().join("new"));
    check(&disk.path().join("old"));
}

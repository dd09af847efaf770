//! Backups, restoring and exports by command, and a record on a server.

use std::fs;
use std::path::Path;
use std::process::{Command, Output};
use tempfile::TempDir;

fn barm(arguments: &[&str], data: &Path) -> Output {
    Command::new(env!("CARGO_BIN_EXE_barm"))
        .args(arguments)
        .arg("--data")
        .arg(data)
        .output()
        .expect("barm starts")
}

fn said(output: &Output) -> String {
    assert!(output.status.success(), "{}", String::from_utf8_lossy(&output.stderr));
    String::from_utf8_lossy(&output.stdout).into_owned()
}

#[test]
fn a_record_is_copied_put_back_and_written_as_text() {
    let folder = TempDir::new().expect("a folder");
    let data = folder.path().join("data");
    // The passphrase is something to look for.
    said(&barm(&["passphrase"], &data));
    let file = folder.path().join("copy.sqlite");
    let file_name = file.display().to_string();
    let made = said(&barm(&["backup", &file_name], &data));
    assert!(made.contains("Read through: 0 investigations, 0 entries"), "{made}");
    let again = barm(&["backup", &file_name], &data);
    assert_eq!(again.status.code(), Some(2), "a file of that name is left alone");
    let named = said(&barm(&["backup"], &data));
    assert!(Path::new(named.lines().next().expect("a path")).is_file(), "{named}");
    fs::write(data.join("record.sqlite"), b"a spilled drink").expect("spoiled");
    assert_ne!(barm(&["backup"], &data).status.code(), Some(0));
    let back = said(&barm(&["restore", &file_name], &data));
    assert!(
        back.contains("The record is back") && back.contains("What was there before"),
        "{back}"
    );
    said(&barm(&["backup"], &data));
    let out = folder.path().join("text").display().to_string();
    let told = said(&barm(&["export", &out], &data));
    assert!(told.contains("2 files"), "{told}");
    assert!(folder.path().join("text/README.txt").is_file());
    let full = barm(&["export", &out], &data);
    assert_eq!(full.status.code(), Some(2), "a folder with something in it is left alone");
}

#[test]
fn what_is_no_backup_changes_nothing_and_says_so() {
    let folder = TempDir::new().expect("a folder");
    let data = folder.path().join("data");
    said(&barm(&["backup"], &data));
    let before = fs::read(data.join("record.sqlite")).expect("a record");
    let none = folder.path().join("letter.txt");
    fs::write(&none, "Dear all").expect("written");
    for file in
        [none.display().to_string(), folder.path().join("nowhere").display().to_string()]
    {
        let refused = barm(&["restore", &file], &data);
        assert_eq!(refused.status.code(), Some(2));
        let says = String::from_utf8_lossy(&refused.stderr).into_owned();
        assert!(says.starts_with("barm: ") && says.contains(&file), "{says}");
    }
    assert_eq!(fs::read(data.join("record.sqlite")).expect("a record"), before);
}

//! The archive that a teacher gets: packed, unpacked into an empty folder, and started there.
#![cfg(unix)]

#[path = "../examples/pack/archive.rs"]
mod archive;
#[path = "../examples/pack/licences.rs"]
mod licences;
#[allow(dead_code)]
mod program;
#[allow(dead_code)]
mod serving;
#[path = "../examples/pack/sheet.rs"]
mod sheet;

use archive::Packing;
use sheet::System;
use std::path::Path;
use std::process::Command;

/// Longest sheet that prints on one page (lines of a monospaced letter of 10 points).
const ONE_PAGE: usize = 66;

/// Text of a file of the archive.
fn text(folder: &Path, name: &str) -> String {
    std::fs::read_to_string(folder.join(name)).unwrap_or_else(|error| panic!("{name}: {error}"))
}

#[test]
fn an_archive_unpacked_into_an_empty_folder_starts_and_names_every_licence() {
    let made = tempfile::tempdir().expect("a folder");
    // What helps to find faults is half of the program that tests run.
    let binary = made.path().join("small");
    let small =
        Command::new("strip").arg("-o").arg(&binary).arg(env!("CARGO_BIN_EXE_barm")).status();
    let binary = match small {
        Ok(done) if done.success() => binary,
        _ => env!("CARGO_BIN_EXE_barm").into(),
    };
    let target = archive::host().expect("a target");
    let packing =
        Packing { binary, out: made.path().join("out"), target: target.clone(), effort: 1 };
    let folder = packing.gather().expect("gathered");
    let archive = packing.archive(&folder, false).expect("packed");
    let empty = tempfile::tempdir().expect("a folder");
    let unpacked =
        Command::new("tar").arg("-xzf").arg(&archive).current_dir(empty.path()).status();
    assert!(unpacked.expect("tar").success());
    let own = empty.path().join(packing.name());
    let parts = licences::parts(&archive::root(), &target).expect("parts");
    let licences = text(&own, "LICENCES-OF-OTHERS.txt");
    assert!(parts.len() > 100, "{}", parts.len());
    for part in &parts {
        let line = format!("  {} {}: {}\n", part.name, part.version, part.licence);
        assert!(licences.contains(&line) && !part.licence.is_empty(), "{line}");
    }
    // What every one of these demands: its text goes along.
    for words in [
        "Permission is hereby granted, free of charge",
        "TERMS AND CONDITIONS FOR USE, REPRODUCTION, AND DISTRIBUTION",
        "SIL OPEN FONT LICENSE",
    ] {
        assert!(licences.contains(words), "{words}");
    }
    for licence in ["LICENSE", "LICENSE-MIT", "LICENSE-APACHE"] {
        assert_eq!(text(&own, licence), text(&archive::root(), licence));
    }
    assert!(text(&own, "CLASS-DAY.md").contains("one device"));
    // It needs nothing of where it was built, and nothing of the environment.
    let data = empty.path().join("data");
    let mut command = Command::new(own.join("barm"));
    command.env_clear().current_dir(&own);
    let server =
        serving::Server::run(command.args(["serve", "--port", "0", "--data"]).arg(&data));
    assert!(server.ask("GET /join HTTP/1.1").starts_with("HTTP/1.1 200"));
    assert!(server.said.contains(&data.display().to_string()), "{}", server.said);
    drop(server);
    // The file to double-click starts it too, and shows what a failure said.
    let taken = empty.path().join("taken");
    std::fs::write(&taken, "a file").expect("written");
    let started = Command::new(own.join("start-barm.sh"))
        .env("XDG_DATA_HOME", &taken)
        .current_dir(empty.path())
        .output()
        .expect("it can be run");
    assert_eq!(started.status.code(), Some(2));
    assert!(String::from_utf8_lossy(&started.stderr).starts_with("barm: "), "{started:?}");
}

#[test]
fn the_start_sheet_is_one_page_for_every_system_and_says_where_it_was_run() {
    let page = text(&archive::root().join("packaging"), "START-HERE.txt");
    for (target, ending) in [
        ("x86_64-unknown-linux-gnu", "start-barm.sh"),
        ("aarch64-apple-darwin", "start-barm.command"),
        ("x86_64-pc-windows-msvc", "start-barm.bat"),
    ] {
        let sheet = sheet::sheet(&page, "0.1.0", System::of(target));
        assert!(!sheet.contains(['{', '}']), "{target}: an open place is left\n{sheet}");
        assert!(sheet.lines().count() <= ONE_PAGE, "{target}: more than a page");
        assert!(sheet.lines().all(|line| line.chars().count() <= 92), "{target}: too wide");
        assert!(sheet.is_ascii(), "{target}: a plain editor shows plain letters only");
        for needed in [
            ending,
            "STOP",
            "DATA LIES",
            "ONE phone",
            "keep devices apart",
            "CAUTIONS",
            "not run",
        ] {
            assert!(sheet.contains(needed), "{target}: {needed}");
        }
    }
}

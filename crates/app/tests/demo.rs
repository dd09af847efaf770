//! `barm demo`: the whole job on an invented school, without harm to what a person has changed.

mod program;

use std::collections::BTreeMap;
use std::fs;
use std::path::Path;

const FILES: [&str; 5] =
    ["plan.toml", "readings.csv", "forecast.pdf", "prep.pdf", "results.pdf"];

fn demo(folder: &Path) -> String {
    let (out, err) = program::run(folder, &["demo", "--out", "day"]).ended(0);
    assert_eq!(err, "", "a log holds answers only");
    out
}

/// Every file of a folder with its bytes.
fn everything(folder: &Path) -> BTreeMap<String, Vec<u8>> {
    let entries =
        fs::read_dir(folder).expect("the folder").map(|entry| entry.expect("an entry"));
    entries
        .map(|entry| {
            let name = entry.file_name().into_string().expect("a plain name");
            (name, fs::read(entry.path()).expect("a file"))
        })
        .collect()
}

#[test]
fn the_demo_does_the_whole_job_and_twice_is_as_once() {
    let home = tempfile::tempdir().expect("a folder");
    let first = demo(home.path());
    let day = home.path().join("day");
    let written = everything(&day);
    for name in FILES {
        let bytes = written.get(name).unwrap_or_else(|| panic!("{name} is not there"));
        assert!(!name.ends_with(".pdf") || bytes.starts_with(b"%PDF"), "{name}");
        assert!(first.contains(name), "{name} is not named in\n{first}");
    }
    assert_eq!(
        written["plan.toml"],
        fs::read(program::invented().join("plan.toml")).expect("it")
    );
    assert!(first.contains("invented"), "{first}");
    assert!(first.lines().count() <= 75, "{} lines:\n{first}", first.lines().count());
    assert!(first.lines().all(|line| line.chars().count() <= 100), "{first}");
    assert!(!first.contains("left as it is"), "nothing was there before:\n{first}");

    let second = demo(home.path());
    assert_eq!(first, second, "it says the same again");
    assert_eq!(written, everything(&day), "nothing changes");
}

#[test]
fn a_changed_plan_is_kept_and_used() {
    let home = tempfile::tempdir().expect("a folder");
    let day = home.path().join("day");
    fs::create_dir(&day).expect("made");
    let plan = fs::read_to_string(program::invented().join("plan.toml")).expect("the plan");
    let title = "Which breakfast-cupboard food feeds yeast best?";
    let mine = plan.replacen(title, "What does Ms. Alder's class feed its yeast?", 1);
    assert_ne!(plan, mine);
    fs::write(day.join("plan.toml"), &mine).expect("written");

    let out = demo(home.path());
    assert_eq!(fs::read_to_string(day.join("plan.toml")).expect("it"), mine, "kept");
    assert!(out.starts_with("What does Ms. Alder's class feed its yeast?\n"), "used:\n{out}");
    let line = out.lines().find(|line| line.contains("plan.toml")).expect("its line");
    assert!(line.contains("yours, left as it is"), "said so: {line}");
    let line = out.lines().find(|line| line.contains("readings.csv")).expect("its line");
    assert!(!line.contains("yours"), "only the plan is theirs: {line}");
}

#[test]
fn a_folder_that_cannot_be_made_is_one_sentence_and_2() {
    let home = tempfile::tempdir().expect("a folder");
    fs::write(home.path().join("note.txt"), "a file, not a folder").expect("written");
    let (out, err) = program::run(home.path(), &["demo", "--out", "note.txt/day"]).ended(2);
    assert_eq!(out, "");
    one_sentence(&err, "note.txt/day");
    assert_eq!(fs::read_to_string(home.path().join("note.txt")).expect("it").len(), 20);
}

/// One sentence that names the place; causes and hints stand under it, set in.
fn one_sentence(err: &str, place: &str) {
    let own: Vec<&str> = err.lines().filter(|line| !line.starts_with("  ")).collect();
    assert_eq!(own.len(), 1, "{err}");
    assert!(own[0].starts_with("barm: cannot ") && own[0].contains(place), "{err}");
    assert!(err.lines().any(|line| line.starts_with("  try: ")), "{err}");
}

#[cfg(unix)]
#[test]
fn a_folder_that_cannot_be_written_to_is_one_sentence_and_2() {
    use std::os::unix::fs::PermissionsExt;
    let home = tempfile::tempdir().expect("a folder");
    let day = home.path().join("day");
    fs::create_dir(&day).expect("made");
    fs::set_permissions(&day, fs::Permissions::from_mode(0o555)).expect("set");
    if fs::write(day.join("probe"), "").is_ok() {
        program::skip("a_folder_that_cannot_be_written_to", "this user may write anywhere");
        return;
    }
    let (out, err) = program::run(home.path(), &["demo", "--out", "day"]).ended(2);
    assert_eq!(out, "");
    one_sentence(&err, "day");
    assert!(everything(&day).is_empty());
}

//! `barm rehearse` as a person runs it.

use crate::program;
use barm_store::{Kind, Place, Store};
use jiff::Timestamp;
use std::path::Path;

fn rehearse(folder: &Path, code: i32) -> (String, String) {
    let plan = program::invented().join("plan.toml");
    let plan = plan.to_str().expect("a plain name");
    let data = folder.to_str().expect("a plain name");
    let arguments = ["rehearse", plan, "--period", "2", "--alone", "--speed", "1500"];
    let more = ["--port", "0", "--data", data];
    program::run(folder, &[&arguments[..], &more[..]].concat()).ended(code)
}

#[test]
fn a_rehearsal_runs_from_bell_to_bell_and_says_how_it_went() {
    let home = tempfile::tempdir().expect("a folder");
    let folder = home.path().join("rehearsal");
    std::fs::create_dir(&folder).expect("made");
    let (out, _) = rehearse(&folder, 0);
    assert!(out.contains("no group and no reading here is real"), "{out}");
    let line = out.lines().find(|line| line.contains("entries sent")).expect("it counts");
    let numbers: Vec<usize> = line
        .split(|c: char| !c.is_ascii_digit())
        .filter_map(|number| number.parse().ok())
        .collect();
    let &[sent, of, saved, refused] = numbers.as_slice() else { panic!("{line}") };
    assert!(of > 200, "{line}");
    assert_eq!((sent, saved, refused), (of, of, 0), "{line}");
    let store = Store::open(&Place::Folder(folder)).expect("the record");
    let all = store.investigations().expect("a list");
    assert_eq!(all.iter().map(|one| one.kind).collect::<Vec<_>>(), [Kind::Rehearsal]);
    let entries = store.entries(all[0].id, 0).expect("entries");
    let of_groups = entries.iter().filter(|(_, entry)| {
        matches!(&entry.who, barm_domain::record::Who::Group { period, .. } if **period == *"2")
    });
    assert!(of_groups.count() > 200, "the groups wrote it");
}

#[test]
fn a_rehearsal_never_lies_beside_a_real_class() {
    let home = tempfile::tempdir().expect("a folder");
    let store = Store::open(&Place::Folder(home.path().to_owned())).expect("a record");
    store.add_investigation("Real", Kind::Real, Timestamp::now()).expect("begun");
    drop(store);
    let (_, err) = rehearse(home.path(), 2);
    assert!(err.contains("holds the record of a real class"), "{err}");
    assert!(err.contains("--data"), "{err}");
    let store = Store::open(&Place::Folder(home.path().to_owned())).expect("a record");
    assert_eq!(store.investigations().expect("a list").len(), 1, "nothing was added");
}

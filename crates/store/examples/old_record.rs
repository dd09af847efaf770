//! Writes a small record with invented content, as programs to come will find it:
//! `cargo run -p barm-store --example old_record -- crates/store/tests/old/0.1.0-1.db`, where
//! 0.1.0 is the program and 1 its newest step of `src/migrate.rs`. Run it once before a step is
//! added; the files are kept for ever, and never written anew.

use barm_domain::code::BagCode;
use barm_domain::record::{Entry, Key, Odd, Subject, What, Who, WordsKey};
use barm_store::{Code, Kind, Place, Store};
use jiff::Timestamp;
use std::path::PathBuf;

fn at(seconds: i64) -> Timestamp {
    Timestamp::from_second(1_790_000_000 + seconds).expect("a moment")
}

fn main() {
    let path: PathBuf = std::env::args_os().nth(1).expect("where to write it").into();
    let folder = path.with_extension("folder");
    let store = Store::open(&Place::Folder(folder.clone())).expect("an empty folder");
    let id = store.add_investigation("Syrup or oats", Kind::Invented, at(0)).expect("kept").id;
    store.save_plan(id, "# not a whole plan: version 1\n", at(1)).expect("kept");
    store.save_plan(id, "# not a whole plan: version 2\n", at(2)).expect("kept");
    let bag = BagCode::all_of(1, 1).next().expect("a code");
    let group = Who::Group { period: "1".into(), group: 1 };
    let period = || Subject::Period("1".into());
    let words = WordsKey(77);
    let guess = What::Guess { expects: vec![(bag, 12.5)], because: Some(words) };
    let told = [
        (Subject::Investigation, What::PlanSaved { version: 1 }, Who::Teacher),
        (period(), What::Began, Who::Teacher),
        (Subject::Group { period: "1".into(), group: 1 }, guess, group.clone()),
        (Subject::Bag(bag), What::Sealed { plan: 1 }, group.clone()),
        (Subject::Bag(bag), What::Zero { height_mm: 3.5 }, group.clone()),
        (Subject::Bag(bag), What::Reading { planned: Some(4), height_mm: 21.0 }, group.clone()),
        (Subject::Bag(bag), What::Odd(Odd::Foam), group),
        (Subject::Bag(bag), What::Correction { of: key(6), height_mm: 12.0 }, Who::Teacher),
        (period(), What::Ended, Who::Teacher),
    ];
    let entries = (1..).zip(told).map(|(number, (subject, what, who))| {
        let when = at(60 * i64::from(number));
        Entry { key: key(number), subject, what, measured: when, arrived: when, who }
    });
    store.append(id, entries.collect::<Vec<_>>()).expect("kept");
    store.keep_words(id, words, "reason", "Syrup is sweet.").expect("kept");
    store.keep_setting("colour", "ink").expect("kept");
    let code = Code {
        code: "CAFE7".into(),
        role: "period".into(),
        investigation: id,
        period: Some("1".into()),
        group: None,
        made: at(3),
        ends: None,
    };
    assert!(store.keep_code(&code).expect("kept"));
    store.backup_to(&path, at(700)).expect("a file of its own");
    drop(store);
    std::fs::remove_dir_all(folder).expect("nobody has it open");
}

fn key(number: u32) -> Key {
    Key::new(1_790_000_000_000 + u64::from(number), u128::from(number))
}

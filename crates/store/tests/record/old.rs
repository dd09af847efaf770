//! Records that older programs wrote are opened, upgraded, and say what they said.
//!
//! The files in `tests/old` are named for the program and its newest step, and were written by
//! `examples/old_record.rs` at that time. None of them is ever written anew.

use barm_domain::code::BagCode;
use barm_domain::record::{Home, Key, Known, Odd, WordsKey, replay};
use barm_store::{Place, Store};
use jiff::Timestamp;
use rusqlite::Connection;
use std::fs;
use std::path::{Path, PathBuf};
use tempfile::TempDir;

fn old_ones() -> Vec<PathBuf> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/old");
    let all = fs::read_dir(folder).expect("a folder").map(|one| one.expect("a file").path());
    let mut all: Vec<PathBuf> =
        all.filter(|path| path.extension().is_some_and(|e| e == "db")).collect();
    all.sort();
    assert!(!all.is_empty());
    all
}

/// A copy of an old record, in a folder of its own.
fn copy(old: &Path) -> TempDir {
    let folder = TempDir::new().expect("a folder");
    fs::copy(old, folder.path().join("record.sqlite")).expect("a copy");
    folder
}

fn open(folder: &TempDir) -> Store {
    let place = Place::Folder(folder.path().to_owned());
    Store::open(&place).unwrap_or_else(|error| panic!("{error}"))
}

/// What the example wrote, by hand.
fn says_what_it_said(store: &Store) {
    let all = store.investigations().expect("read");
    let titles: Vec<&str> = all.iter().map(|one| one.title.as_str()).collect();
    assert_eq!(titles, ["Syrup or oats"]);
    let id = all[0].id;
    let plans = store.plans(id).expect("read");
    assert_eq!(plans.len(), 2);
    assert_eq!(plans[1], (2, "# not a whole plan: version 2\n".to_owned()));
    let entries: Vec<_> =
        store.entries(id, 0).expect("read").into_iter().map(|(_, entry)| entry).collect();
    assert_eq!(entries.len(), 9);
    let code = BagCode::all_of(1, 1).next().expect("a code");
    let mut known = Known::default();
    known.bags.insert(code, Home { period: "1".into(), group: 1 });
    let standing = replay(&known, &entries);
    assert!(standing.refused.is_empty(), "{:?}", standing.refused);
    let bag = &standing.bags[&code];
    assert_eq!(bag.rises(), [(0.0, 0.0), (1.0, 8.5)]);
    assert!((bag.readings[0].mended[0].height_mm - 21.0).abs() < 1e-9);
    assert_eq!(bag.readings[0].key, Key::new(1_790_000_000_006, 6));
    assert_eq!(bag.odd[0].odd, Odd::Foam);
    let guess = standing.groups[&("1".to_owned(), 1)].guess.as_ref().expect("a guess");
    assert_eq!(guess.expects, [(code, 12.5)]);
    let words = store.words(WordsKey(77)).expect("read");
    assert_eq!(words.as_deref(), Some("Syrup is sweet."));
    assert_eq!(store.setting("colour").expect("read").as_deref(), Some("ink"));
    assert_eq!(store.codes(id).expect("read")[0].code, "CAFE7");
    store.full_check().expect("whole");
}

#[test]
fn every_old_record_opens_and_says_what_it_said_and_its_copy_is_kept() {
    for old in old_ones() {
        let before = fs::read(&old).expect("its bytes");
        let folder = copy(&old);
        let store = open(&folder);
        says_what_it_said(&store);
        // The copy from before is on the list, whole, and can be put back.
        let backups = store.backups().expect("a list");
        let kept =
            backups.iter().find(|one| one.path.starts_with(folder.path())).expect("a copy");
        assert!(kept.made > Timestamp::UNIX_EPOCH);
        assert_eq!(Store::check_backup(&kept.path).expect("whole").entries, 9);
        drop(store);
        let again = open(&folder);
        assert_eq!(again.backups().expect("a list").len(), backups.len(), "made once");
        drop(again);
        let place = Place::Folder(folder.path().to_owned());
        let now = Timestamp::from_second(1_800_000_000).expect("a moment");
        Store::restore(&place, &kept.path, now).expect("put back");
        says_what_it_said(&open(&folder));
        assert_eq!(fs::read(&old).expect("its bytes"), before, "the old file is never touched");
    }
}

#[test]
fn a_record_of_a_newer_program_is_refused_in_one_sentence_and_not_touched() {
    for old in old_ones() {
        let folder = copy(&old);
        let path = folder.path().join("record.sqlite");
        let sql =
            "insert into migration (version, name, program) values (99, 'later', '9.1.0')";
        let connection = Connection::open(&path).expect("opens");
        connection.execute(sql, []).expect("written");
        drop(connection);
        let place = Place::Folder(folder.path().to_owned());
        let refused = Store::open(&place).expect_err("newer").to_string();
        assert!(refused.contains("9.1.0"), "{refused}");
        assert!(!refused.contains('\n') && !refused.contains(". "), "one sentence: {refused}");
        let beside = fs::read_dir(folder.path()).expect("a folder");
        let copies = beside.filter(|one| {
            let name = one.as_ref().expect("a file").file_name();
            name.to_string_lossy().contains("before")
        });
        assert_eq!(copies.count(), 0);
    }
}

#[test]
fn what_entries_add_up_to_can_be_kept_and_thrown_away() {
    let folder = copy(&old_ones()[0]);
    let store = open(&folder);
    let one = |subject: &str, last| barm_store::Summary {
        subject: subject.into(),
        last,
        program: "0.1.0".into(),
        body: "{}".into(),
    };
    assert_eq!(store.last_places().expect("read"), [(1, 9)]);
    store.keep_summaries(1, "bag", &[one("a", 3), one("b", 4)]).expect("kept");
    store.keep_summaries(1, "shelf", &[one("", 9)]).expect("kept");
    store.keep_summaries(1, "bag", &[one("a", 9)]).expect("kept");
    assert_eq!(store.summaries("bag").expect("read"), [(1, one("a", 9))]);
    assert_eq!(store.summaries("shelf").expect("read"), [(1, one("", 9))]);
    assert!(store.keep_summaries(7, "bag", &[one("a", 1)]).is_err());
    store.drop_summaries().expect("gone");
    assert!(store.summaries("bag").expect("read").is_empty());
    says_what_it_said(&store);
}

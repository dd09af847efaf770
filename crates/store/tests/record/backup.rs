//! Backups, restoring, checking, and plain files.

use crate::made::{at, reading};
use crate::places::{Ground, tell};
use barm_domain::record::WordsKey;
use barm_store::{Code, Kind, Place, Session, Store, StoreError};
use std::fs;
use std::sync::atomic::{AtomicBool, Ordering};
use std::thread;
use tempfile::TempDir;

/// A record with something of everything.
fn fill(store: &Store) -> i64 {
    let id = store.add_investigation("Syrup or oats", Kind::Real, at(0)).unwrap().id;
    store.save_plan(id, "title = \"one\"\n", at(1)).unwrap();
    store.save_plan(id, "title = \"two\"\n", at(2)).unwrap();
    store.save_pilot(id, "format = 1\n", "spoon,3.1 g\n", at(2)).unwrap();
    store.append(id, (1..=50).map(|n| reading(n, f64::from(n))).collect::<Vec<_>>()).unwrap();
    store.keep_words(id, WordsKey(1), "reason", "because it is sweet").unwrap();
    store.keep_words(id, WordsKey(2), "reason", "because it is warm").unwrap();
    store.keep_secret("passphrase", "hash").unwrap();
    store.keep_setting("language", "es").unwrap();
    let code = Code {
        code: "WREN-4".into(),
        role: "bench".into(),
        investigation: id,
        period: Some("2".into()),
        group: Some(1),
        made: at(0),
        ends: None,
    };
    store.keep_code(&code).unwrap();
    let session = Session {
        role: "teacher".into(),
        investigation: None,
        period: None,
        group: None,
        made: at(0),
        seen: at(0),
        ends: at(1000),
    };
    store.keep_session("token", &session).unwrap();
    id
}

fn same(restored: &Store, original: &Store, id: i64) {
    assert_eq!(restored.investigations().unwrap(), original.investigations().unwrap());
    assert_eq!(restored.entries(id, 0).unwrap(), original.entries(id, 0).unwrap());
    assert_eq!(restored.plans(id).unwrap(), original.plans(id).unwrap());
    assert_eq!(restored.pilots(id).unwrap(), original.pilots(id).unwrap());
    assert_eq!(restored.pilots(id).unwrap()[2].readings, "spoon,3.1 g\n");
    assert_eq!(restored.all_words(id).unwrap(), original.all_words(id).unwrap());
    assert_eq!(restored.codes(id).unwrap(), original.codes(id).unwrap());
    assert_eq!(restored.secret("passphrase").unwrap().as_deref(), Some("hash"));
    assert_eq!(restored.setting("language").unwrap().as_deref(), Some("es"));
}

#[test]
fn a_backup_restores_everything_on_both_engines() {
    tell(|ground| {
        let folder = TempDir::new().unwrap();
        let backup = folder.path().join("monday.sqlite");
        let store = ground.open();
        let id = fill(&store);
        let checked = store.backup_to(&backup, at(9)).unwrap();
        assert_eq!((checked.investigations, checked.entries), (1, 50));
        assert_eq!(store.backups().unwrap()[0].path, backup);
        // One whole file, nothing beside it.
        assert_eq!(fs::read_dir(folder.path()).unwrap().count(), 1);
        tell(|elsewhere| {
            let restored = Store::restore(&elsewhere.place, &backup, at(10)).unwrap();
            assert_eq!((restored.checked.entries, restored.set_aside), (50, None));
            let restored = elsewhere.open();
            same(&restored, &store, id);
            // Nobody is signed in in it, and it can be written.
            assert_eq!(restored.session("token", at(1)).unwrap(), None);
            assert_eq!(restored.append(id, vec![reading(99, 1.0)]).unwrap()[0].seq, 51);
        });
    });
}

#[test]
fn a_record_is_backed_up_while_it_is_written() {
    let ground = Ground::folder();
    let folder = TempDir::new().unwrap();
    let store = ground.open();
    let id = fill(&store);
    let enough = AtomicBool::new(false);
    thread::scope(|scope| {
        let writing = scope.spawn(|| {
            let mut number = 1000;
            while !enough.load(Ordering::Relaxed) {
                store.append(id, vec![reading(number, 1.0)]).unwrap();
                number += 1;
            }
            number - 1000
        });
        for number in 0..5 {
            let path = folder.path().join(format!("{number}.sqlite"));
            let before = store.entries(id, 0).unwrap().len();
            let checked = store.backup_to(&path, at(number)).unwrap();
            assert!(checked.entries >= before, "a backup lacks what was on record before it");
        }
        enough.store(true, Ordering::Relaxed);
        assert!(writing.join().unwrap() > 0);
    });
}

#[test]
fn restoring_sets_aside_what_was_there_and_brings_no_deleted_words_back() {
    let ground = Ground::folder();
    let folder = TempDir::new().unwrap();
    let backup = folder.path().join("monday.sqlite");
    let store = ground.open();
    let id = fill(&store);
    store.backup_to(&backup, at(9)).unwrap();
    // The backup is on a stick that is not plugged in when words are deleted.
    let stick = folder.path().join("stick.sqlite");
    fs::rename(&backup, &stick).unwrap();
    let forgotten = store.forget_words(&[WordsKey(1)]).unwrap();
    assert_eq!(forgotten.unreached.len(), 1);
    store.append(id, vec![reading(60, 1.0)]).unwrap();
    let refused = Store::restore(&ground.place, &stick, at(10)).unwrap_err();
    assert!(matches!(refused, StoreError::InUse { .. }), "{refused}");
    drop(store);

    let restored = Store::restore(&ground.place, &stick, at(10)).unwrap();
    assert_eq!(restored.checked.entries, 50);
    let store = ground.open();
    assert_eq!(store.words(WordsKey(1)).unwrap(), None);
    assert!(store.words(WordsKey(2)).unwrap().is_some());
    let aside = restored.set_aside.unwrap();
    let listed: Vec<_> = store.backups().unwrap().into_iter().map(|b| b.path).collect();
    assert_eq!(listed, [backup, aside.clone()]);
    drop(store);
    // What was set aside is whole too.
    let again = Store::restore(&ground.place, &aside, at(11)).unwrap();
    assert_eq!(again.checked.entries, 51);
}

#[test]
fn what_is_no_sound_backup_is_not_restored() {
    let ground = Ground::folder();
    let folder = TempDir::new().unwrap();
    let backup = folder.path().join("monday.sqlite");
    let store = ground.open();
    let id = fill(&store);
    for number in 0..200 {
        store.save_plan(id, &format!("{number} {}", "x".repeat(500)), at(number)).unwrap();
    }
    store.backup_to(&backup, at(9)).unwrap();
    let again = store.backup_to(&backup, at(9)).unwrap_err();
    assert!(matches!(again, StoreError::AlreadyThere { .. }), "{again}");
    drop(store);
    let mut bytes = fs::read(&backup).unwrap();
    let middle = bytes.len() / 2 / 4096 * 4096;
    bytes[middle..middle + 4096].fill(0xa5);
    fs::write(&backup, &bytes).unwrap();
    let refused = Store::restore(&ground.place, &backup, at(10)).unwrap_err();
    assert!(matches!(refused, StoreError::Damaged { .. }), "{refused}");
    fs::write(&backup, "Dear diary").unwrap();
    let refused = Store::restore(&ground.place, &backup, at(10)).unwrap_err();
    assert!(matches!(refused, StoreError::NotARecord { .. }), "{refused}");
    assert_eq!(ground.open().entries(id, 0).unwrap().len(), 50);
}

#[test]
fn a_damaged_record_can_be_replaced() {
    let ground = Ground::folder();
    let folder = TempDir::new().unwrap();
    let backup = folder.path().join("monday.sqlite");
    let store = ground.open();
    let id = fill(&store);
    store.backup_to(&backup, at(9)).unwrap();
    drop(store);
    let Place::Folder(record) = &ground.place else { panic!("a folder") };
    fs::write(record.join("record.sqlite"), [0xa5; 9000]).unwrap();
    assert!(Store::open(&ground.place).is_err());
    let restored = Store::restore(&ground.place, &backup, at(10)).unwrap();
    assert_eq!(fs::read(restored.set_aside.unwrap()).unwrap(), [0xa5; 9000]);
    assert_eq!(ground.open().entries(id, 0).unwrap().len(), 50);
}

#[test]
fn a_full_check_notices_a_row_that_was_taken_out() {
    let ground = Ground::folder();
    let store = ground.open();
    fill(&store);
    let Place::Folder(record) = &ground.place else { panic!("a folder") };
    let file = rusqlite::Connection::open(record.join("record.sqlite")).unwrap();
    file.execute_batch("drop trigger entry_is_kept; delete from entry where seq = 17").unwrap();
    let refused = store.full_check().unwrap_err();
    assert!(refused.to_string().contains("should hold 50 entries and holds 49"), "{refused}");
    assert!(store.backup_to(&record.join("b.sqlite"), at(1)).is_err());
}

#[test]
fn everything_can_be_taken_out_as_plain_files() {
    tell(|ground| {
        let folder = TempDir::new().unwrap();
        let store = ground.open();
        fill(&store);
        let out = folder.path().join("out");
        let written = store.export(&out).unwrap();
        let names: Vec<_> = written
            .iter()
            .map(|path| path.strip_prefix(&out).unwrap().display().to_string())
            .collect();
        assert_eq!(
            names,
            [
                "README.txt",
                "investigations.jsonl",
                "investigation-1/plan-1.toml",
                "investigation-1/plan-2.toml",
                "investigation-1/plan-3.toml",
                "investigation-1/plan-3.pilot.toml",
                "investigation-1/plan-3.pilot.csv",
                "investigation-1/entries.jsonl",
                "investigation-1/words.jsonl",
            ]
        );
        let read =
            |name: &str| fs::read_to_string(out.join("investigation-1").join(name)).unwrap();
        assert_eq!(read("plan-2.toml"), "title = \"two\"\n");
        assert_eq!(read("plan-3.pilot.toml"), "format = 1\n");
        let lines = read("entries.jsonl");
        assert_eq!(lines.lines().count(), 50);
        let line: serde_json::Value =
            serde_json::from_str(lines.lines().nth(3).unwrap()).unwrap();
        assert_eq!(line["seq"], 4);
        assert_eq!(line["kind"], "reading");
        assert_eq!(line["measured"], at(4).to_string());
        assert_eq!(line["body"]["height_mm"], 4.0);
        assert_eq!(line["about"]["bag"], crate::made::bag(1).to_string());
        assert!(read("words.jsonl").contains("because it is sweet"));
        let again = store.export(&out).unwrap_err();
        assert!(matches!(again, StoreError::AlreadyThere { .. }), "{again}");
    });
}

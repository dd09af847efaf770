//! How fast the record is written, beside a bare loop over the same table.
//!
//! Both put the same rows into the same tables with the same durability, as many to a commit, in
//! turns in one run. The bare loop knows each row beforehand; the record takes entries, writes
//! them down, hands them to its thread, looks for known keys, and answers with receipts.
//!
//! ```text
//! cargo run --release -p barm-store --example write_speed
//! ```

#![allow(clippy::print_stdout, reason = "an example that shows what it measured")]

use barm_domain::code::BagCode;
use barm_domain::record::{Entry, Key, Subject, What, Who};
use barm_store::{Kind, Place, Store};
use jiff::Timestamp;
use rusqlite::{Connection, params};
use std::error::Error;
use std::path::Path;
use std::time::{Duration, Instant};

type Outcome<T> = Result<T, Box<dyn Error>>;

/// Runs of each, in turns; the median counts.
const TURNS: usize = 5;

fn main() -> Outcome<()> {
    println!("rows per commit   bare rows/s   record rows/s   ratio");
    for (rows, commits) in [(1_u32, 400_u32), (10, 200), (100, 60)] {
        let (mut bare, mut record) = (Vec::new(), Vec::new());
        for _ in 0..TURNS {
            bare.push(in_new_folder(|folder| bare_loop(folder, rows, commits))?);
            record.push(in_new_folder(|folder| whole_record(folder, rows, commits))?);
        }
        let speed = |times: &mut Vec<Duration>| {
            times.sort();
            f64::from(rows * commits) / times[TURNS / 2].as_secs_f64()
        };
        let (bare, record) = (speed(&mut bare), speed(&mut record));
        println!("{rows:15} {bare:13.0} {record:15.0} {:7.2}", record / bare);
    }
    Ok(())
}

fn in_new_folder(measure: impl FnOnce(&Path) -> Outcome<Duration>) -> Outcome<Duration> {
    // Beside the build, not in the system's temporary folder, which may be memory.
    let folder = tempfile::tempdir_in(std::env::current_dir()?)?;
    measure(folder.path())
}

fn whole_record(folder: &Path, rows: u32, commits: u32) -> Outcome<Duration> {
    let store = Store::open(&Place::Folder(folder.to_owned()))?;
    let id = store.add_investigation("Speed", Kind::Invented, Timestamp::UNIX_EPOCH)?.id;
    let calls: Vec<Vec<Entry>> = (0..commits)
        .map(|call| (call * rows..(call + 1) * rows).map(entry).collect::<Outcome<_>>())
        .collect::<Outcome<_>>()?;
    let start = Instant::now();
    for call in &calls {
        store.append(id, call)?;
    }
    Ok(start.elapsed())
}

fn bare_loop(folder: &Path, rows: u32, commits: u32) -> Outcome<Duration> {
    // The record makes the tables, then is closed.
    let store = Store::open(&Place::Folder(folder.to_owned()))?;
    store.add_investigation("Speed", Kind::Invented, Timestamp::UNIX_EPOCH)?;
    drop(store);
    let file = Connection::open(folder.join("record.sqlite"))?;
    file.execute_batch(
        "pragma journal_mode = wal; pragma synchronous = full; pragma foreign_keys = on;
         pragma secure_delete = on",
    )?;
    let mut insert = file.prepare(
        "insert into entry values (?1, 1, ?2, 'bag', null, null, ?3, 'reading', ?4, ?4, 'group', \
         '1', 1, 1, ?5)",
    )?;
    let written: Vec<(String, i64)> = (0..rows * commits)
        .map(|number| entry(number).map(|e| (e.key.to_string(), e.measured.as_microsecond())))
        .collect::<Outcome<_>>()?;
    let body = r#"{"height_mm":12.5,"planned":4}"#;
    let start = Instant::now();
    for (call, written) in (0_i64..).zip(written.chunks(rows as usize)) {
        file.execute_batch("begin immediate")?;
        for (at, (key, measured)) in (1_i64..).zip(written) {
            let seq = call * i64::from(rows) + at;
            insert.execute(params![seq, key, "P1-01A-C", measured, body])?;
        }
        file.execute_batch("commit")?;
    }
    Ok(start.elapsed())
}

fn entry(number: u32) -> Outcome<Entry> {
    let bag = BagCode::all_of(1, 1).next().ok_or("a group without a bag")?;
    let measured = Timestamp::from_second(1_790_000_000 + i64::from(number))?;
    Ok(Entry {
        key: Key::new(1_790_000_000_000 + u64::from(number), u128::from(number)),
        subject: Subject::Bag(bag),
        what: What::Reading { planned: Some(4), height_mm: 12.5 },
        measured,
        arrived: measured,
        who: Who::Group { period: "1".into(), group: 1 },
    })
}

//! On Linux, the server seen from outside: before each answer that acknowledges an entry, a sync of
//! the file that holds it was finished, also where several benches share one commit.

use crate::bench::Bench;
use crate::program::{barm, skip};
use crate::school::{School, Serving, count};
use barm_domain::record::Key;
use barm_domain::rehearsal::{Rates, script};
use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;
use std::process::Command;
use std::thread;
use std::time::Duration;

const NAME: &str = "syncs before the server's answers";
/// Everything that writes, and everything that syncs.
const CALLS: &str =
    "trace=write,writev,pwrite64,pwritev,pwritev2,sendto,sendmsg,fsync,fdatasync";

#[test]
fn before_each_answer_the_file_with_its_entry_was_synced() {
    let try_it = Command::new("strace").args(["-o", "/dev/null", "true"]).output();
    match try_it {
        Err(_) => return skip(NAME, "strace is not installed"),
        Ok(tried) if !tried.status.success() => {
            return skip(NAME, "strace may not look into a program here");
        }
        Ok(_) => {}
    }
    let school = School::new();
    let folder = tempfile::tempdir().expect("a folder");
    let log = folder.path().join("calls");
    // The tracer goes beside (-D), so that the program itself is our child.
    let mut strace = Command::new("strace");
    strace.args(["-D", "-f", "-y", "-s", "9000", "-e", CALLS, "-o"]).arg(&log);
    strace.arg(barm().get_program());
    let serving = Serving::by(strace, school.folder.path());

    let script = script(&school.plan, &school.plan.periods[0], 1, &Rates::NONE);
    let script = script.expect("a script");
    let groups = script.devices.iter().filter(|device| device.group > 0);
    let mut benches: Vec<Bench> =
        groups.map(|device| Bench::holding(&school.plan, 0, school.bell(0), device)).collect();
    let most = count(8, 20, 60) as usize;
    let whose: BTreeMap<Key, usize> = (0..)
        .zip(&benches)
        .flat_map(|(bench, of)| of.waiting.iter().map(move |(key, _)| (*key, bench)))
        .collect();
    let port = serving.port;
    thread::scope(|scope| {
        for bench in &mut benches {
            scope.spawn(move || {
                for _ in 0..most {
                    assert!(bench.waiting.is_empty() || bench.send(port), "it answers");
                }
            });
        }
    });
    serving.kill();
    let told: BTreeSet<Key> =
        benches.iter().flat_map(|bench| bench.saved.keys().copied()).collect();
    let seen = follow(&whole(&log), &whose);
    assert_eq!(seen.acknowledged, told, "every acknowledgement was seen, and no other");
    assert!(told.len() > 60, "only {} acknowledgements", told.len());
    assert!(seen.shared > 0, "no commit was shared by several benches");
}

/// The trace, once the tracer has seen the program's end.
fn whole(log: &Path) -> String {
    for _ in 0..600 {
        let calls = String::from_utf8_lossy(&std::fs::read(log).expect("a trace")).into_owned();
        let last = calls.lines().last().unwrap_or_default();
        if last.contains("+++ killed by") && calls.ends_with('\n') {
            return calls;
        }
        thread::sleep(Duration::from_millis(100));
    }
    panic!("the tracer does not end");
}

struct Seen {
    acknowledged: BTreeSet<Key>,
    /// Syncs that put entries of more than one bench on disk.
    shared: usize,
}

/// Goes through the system calls in their order. A call of a thread that is interrupted by those
/// of others stands there twice: where it begins, and where it ends.
fn follow(calls: &str, whose: &BTreeMap<Key, usize>) -> Seen {
    let mut seen = Seen { acknowledged: BTreeSet::new(), shared: 0 };
    // Written to the record's log; of them those that a finished sync covers.
    let (mut written, mut on_disk) = (BTreeSet::new(), BTreeSet::new());
    // By thread: a write to that log, and a sync of it, that have begun. A sync covers what had
    // been written to the end when it began.
    let mut writing: BTreeMap<&str, Vec<Key>> = BTreeMap::new();
    let mut syncing: BTreeMap<&str, BTreeSet<Key>> = BTreeMap::new();
    for line in calls.lines() {
        let Some((thread, call)) = line.split_once(' ') else { continue };
        let call = call.trim_start();
        let of_log = call.contains("record.sqlite-wal>");
        let begins = !call.starts_with("<...");
        let ends = !call.ends_with("<unfinished ...>");
        let is_sync = call.contains("fsync") || call.contains("fdatasync");
        if begins && of_log {
            if is_sync {
                syncing.insert(thread, written.clone());
            } else {
                writing.insert(thread, keys(call));
            }
        } else if begins && !is_sync && call.contains("\\\"saved\\\":[") {
            let (_, saved) = call.split_once("\\\"saved\\\":[").expect("it is there");
            let saved = saved.split(']').next().unwrap_or_default();
            for key in keys(saved) {
                assert!(on_disk.contains(&key), "{key} was acknowledged before it was on disk");
                seen.acknowledged.insert(key);
            }
        }
        if !ends {
            continue;
        }
        if let Some(put) = is_sync.then(|| syncing.remove(thread)).flatten() {
            assert!(call.ends_with("= 0"), "{call}");
            let new = put.difference(&on_disk).filter_map(|key| whose.get(key));
            let benches: BTreeSet<&usize> = new.collect();
            seen.shared += usize::from(benches.len() > 1);
            on_disk.extend(put);
        } else if let Some(keys) = (!is_sync).then(|| writing.remove(thread)).flatten() {
            written.extend(keys);
        }
    }
    seen
}

/// Every key that stands in a text.
fn keys(text: &str) -> Vec<Key> {
    let starts = text.match_indices('-').filter_map(|(dash, _)| dash.checked_sub(8));
    starts.filter_map(|at| text.get(at..at + 36)?.parse().ok()).collect()
}

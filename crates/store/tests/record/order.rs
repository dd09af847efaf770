//! On Linux, seen from outside: before each acknowledgement, its entry was written to the log and
//! the log was put on disk.

use crate::killed::{acknowledged, child};
use crate::made::at;
use crate::places::Ground;
use crate::size::{count, skip};
use barm_store::Kind;
use std::collections::HashMap;
use std::fs;
use std::process::{Command, Stdio};

#[test]
fn what_is_acknowledged_was_put_on_disk_before() {
    let name = "the order of writing and acknowledging";
    let mut strace = Command::new("strace");
    strace.arg("-V").stdout(Stdio::null()).stderr(Stdio::null());
    if !strace.status().is_ok_and(|status| status.success()) {
        return skip(name, "strace is not installed");
    }
    let ground = Ground::folder();
    ground.open().add_investigation("Syrup or oats", Kind::Real, at(0)).unwrap();
    let folder = tempfile::TempDir::new().unwrap();
    let log = folder.path().join("calls");
    let log_name = log.to_str().unwrap();
    let through = [
        "strace",
        "-f",
        "-y",
        "-s",
        "9000",
        "-o",
        log_name,
        "-e",
        "trace=write,writev,pwrite64,pwritev,fsync,fdatasync",
    ];
    let done = child(&ground.place, Some(&through), 1_000_000, 1, count(20, 60, 300))
        .output()
        .unwrap();
    let errors = String::from_utf8_lossy(&done.stderr);
    if errors.contains("ptrace") && errors.contains("not permitted") {
        return skip(name, "strace may not look into a program here");
    }
    assert!(done.status.success(), "{errors}");
    let said = String::from_utf8_lossy(&done.stdout);
    let said = said.lines().filter_map(acknowledged).count();

    let calls = fs::read(&log).unwrap();
    let seen = follow(&String::from_utf8_lossy(&calls));
    assert_eq!(seen, said, "an acknowledgement was not seen");
    assert!(said > 20, "only {said} acknowledgements");
}

/// Goes through the system calls in their order and gives the number of acknowledgements.
fn follow(calls: &str) -> usize {
    let mut seen = 0;
    // What was written to the log, and whether all of it is on disk.
    let mut written = String::new();
    let mut on_disk = String::new();
    // By process: a sync under way, with how much was written when it began.
    let mut under_way: HashMap<&str, usize> = HashMap::new();
    for line in calls.lines() {
        let (process, call) = line.split_once(' ').unwrap();
        let call = call.trim_start();
        let of_log = call.contains("record.sqlite-wal>");
        let is_sync = call.starts_with("fsync(") || call.starts_with("fdatasync(");
        if is_sync && of_log {
            under_way.insert(process, written.len());
        }
        let resumed = call.starts_with("<... fsync") || call.starts_with("<... fdatasync");
        if ((is_sync && of_log) || resumed) && call.ends_with("= 0") {
            if let Some(length) = under_way.remove(process) {
                on_disk = written[..length].to_owned();
            }
        } else if call.contains("write") && of_log && !call.starts_with("<...") {
            written.push_str(call);
        } else if call.starts_with("write(1<") && call.contains("\"ack ") {
            assert_eq!(written.len(), on_disk.len(), "written but not on disk: {call}");
            for part in call.split("ack ").skip(1) {
                let key = &part[..36];
                assert!(on_disk.contains(key), "acknowledged before it was on disk: {key}");
                seen += 1;
            }
        }
    }
    seen
}

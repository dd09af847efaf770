//! The disk of the teacher's computer fills up in the middle of a class.

use crate::bench::Bench;
use crate::program;
use crate::school::{School, Serving};
use barm_domain::record::Key;
use barm_domain::rehearsal::{Rates, script};
use serde_json::json;
use std::collections::BTreeSet;
use std::fs;
use std::io::Write;
use std::path::PathBuf;
use std::process::{Command, Stdio};
use tempfile::TempDir;

/// A small disk of its own, which only root can make.
struct Disk(TempDir);

impl Disk {
    fn new() -> Option<Self> {
        let folder = tempfile::tempdir().expect("a folder");
        let mut mount = Command::new("mount");
        mount.args(["-t", "tmpfs", "-o", "size=6m", "tmpfs"]).arg(folder.path());
        let made = mount.stderr(Stdio::null()).status().is_ok_and(|status| status.success());
        made.then_some(Self(folder))
    }

    /// Fills it to the last byte; gives the file that does.
    fn fill(&self) -> PathBuf {
        let ballast = self.0.path().join("ballast");
        let mut file = fs::File::create(&ballast).expect("a file");
        while file.write_all(&[7; 512]).is_ok() {}
        ballast
    }
}

impl Drop for Disk {
    fn drop(&mut self) {
        let _ = Command::new("umount").arg(self.0.path()).status();
    }
}

#[test]
fn a_full_disk_is_said_so_and_devices_keep_what_they_have_until_there_is_room() {
    let Some(disk) = Disk::new() else {
        return program::skip("a class on a full disk", "a small disk cannot be mounted here");
    };
    let school = School::below(disk.0.path());
    let plan = &school.plan;
    let script = script(plan, &plan.periods[0], 5, &Rates::NONE).expect("a script");
    let bell = school.bell(0);
    let groups = script.devices.iter().filter(|device| device.group > 0);
    let mut benches: Vec<Bench> =
        groups.map(|device| Bench::holding(plan, 0, bell, device)).collect();
    let serving = Serving::start(school.folder.path());
    // Each group is in and has sent something.
    for bench in &mut benches {
        assert!(bench.send(serving.port), "there is room");
    }
    let ballast = disk.fill();
    let mut refused = 0;
    for turn in 0..400 {
        let at = turn % benches.len();
        let bench = &mut benches[at];
        let Some((key, entry)) = bench.waiting.front().cloned() else { continue };
        let body = json!({ "entries": [entry] }).to_string();
        let answer = bench.joined(serving.port).script("/bench/entries", &body);
        let answer = answer.expect("the server answers");
        if answer.status == 200 {
            // There was a page left in the files that were there already.
            assert!(answer.body.contains(&key.to_string()));
            bench.acknowledged();
        } else {
            assert_eq!(answer.status, 507, "{}", answer.body);
            assert!(answer.body.contains("is full"), "{}", answer.body);
            assert!(!answer.body.contains(&key.to_string()), "nothing is acknowledged");
            refused += 1;
        }
    }
    assert!(refused > 0, "the disk was full");
    fs::remove_file(ballast).expect("there is room again");
    for bench in &mut benches {
        while !bench.waiting.is_empty() {
            assert!(bench.send(serving.port), "the server answers");
        }
    }
    drop(serving);
    let told: BTreeSet<Key> =
        benches.iter().flat_map(|bench| bench.saved.keys().copied()).collect();
    let entries = school.entries();
    let keys: BTreeSet<Key> = entries.iter().map(|entry| entry.key).collect();
    assert_eq!(keys.len(), entries.len(), "an entry is there twice");
    assert_eq!(keys, told, "on record is what was acknowledged");
}

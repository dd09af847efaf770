//! The invented school with a record of its own, and the program that serves it.

use crate::program;
use barm_domain::plan::Plan;
use barm_domain::record::Entry;
use barm_store::{Code, Kind, Place, Store};
use jiff::{SignedDuration, Timestamp};
use std::io::{BufRead, BufReader};
use std::path::Path;
use std::process::{Child, ChildStdout, Command, Stdio};
use tempfile::TempDir;

/// How much the tests do: `BARM_TEST_SIZE` is `quick`, `ci` (also when unset) or `long`.
pub(crate) fn count(quick: u32, ci: u32, long: u32) -> u32 {
    match std::env::var("BARM_TEST_SIZE").as_deref() {
        Ok("quick") => quick,
        Ok("long") => long,
        _ => ci,
    }
}

/// Numbers that look random and are the same in every run (xorshift, Marsaglia 2003).
pub(crate) struct Dice(pub(crate) u64);

impl Dice {
    /// A number below `end`.
    pub(crate) fn below(&mut self, end: u64) -> u64 {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        self.0 % end
    }
}

/// Codes of periods by their place in the plan; with it and the label of a bag a group comes in.
const CODES: [&str; 4] = ["ACDEA", "FHJKF", "MNPRM", "TUWXT"];

/// A record of the invented plan, and when its day was.
pub(crate) struct School {
    pub(crate) folder: TempDir,
    pub(crate) plan: Plan,
    first_bell: Timestamp,
}

impl School {
    pub(crate) fn new() -> Self {
        Self::below(&std::env::temp_dir())
    }

    /// With its record somewhere below a folder.
    pub(crate) fn below(place: &Path) -> Self {
        let folder = tempfile::tempdir_in(place).expect("a folder");
        let text = std::fs::read_to_string(program::invented().join("plan.toml"));
        let text = text.expect("the plan");
        let plan = barm_documents::plan_text::read(text.as_bytes()).plan.expect("a sound plan");
        // Yesterday: a device that was cut off brings what it holds the next day.
        let now = Timestamp::now();
        let first_bell = now - SignedDuration::from_hours(20);
        let school = Self { folder, plan, first_bell };
        let store = school.open();
        let made = store.add_investigation("A day", Kind::Rehearsal, now).expect("begun");
        assert_eq!(made.id, 1, "the only one");
        store.save_plan(1, &text, now).expect("saved");
        for (period, code) in school.plan.periods.iter().zip(CODES) {
            let code = Code {
                code: code.to_owned(),
                role: "period".to_owned(),
                investigation: 1,
                period: Some(period.name.clone()),
                group: None,
                made: now,
                ends: None,
            };
            assert!(store.keep_code(&code).expect("kept"), "the code is free");
        }
        school
    }

    /// The record, while no program has it open.
    pub(crate) fn open(&self) -> Store {
        Store::open(&Place::Folder(self.folder.path().to_owned())).expect("a sound record")
    }

    /// Everything on record, checked to the last byte first.
    pub(crate) fn entries(&self) -> Vec<Entry> {
        let store = self.open();
        let checked = store.full_check().expect("a sound record");
        let entries = store.entries(1, 0).expect("entries");
        assert_eq!(checked.entries, entries.len());
        entries.into_iter().map(|(_, entry)| entry).collect()
    }

    /// When the bell of a period rang: they follow one another within the hour.
    pub(crate) fn bell(&self, period: usize) -> Timestamp {
        self.first_bell + SignedDuration::from_mins(60 * i64::try_from(period).expect("few"))
    }

    /// The code of a period.
    pub(crate) fn code(period: usize) -> &'static str {
        CODES[period]
    }
}

/// The program, serving; killed when it is dropped.
pub(crate) struct Serving {
    child: Child,
    _out: BufReader<ChildStdout>,
    pub(crate) port: u16,
}

impl Serving {
    pub(crate) fn start(folder: &Path) -> Self {
        Self::by(program::barm(), folder)
    }

    /// Started by another program, which is given the words of its command line.
    pub(crate) fn by(mut starts: Command, folder: &Path) -> Self {
        let mut child = starts
            .args(["serve", "--port", "0", "--data"])
            .arg(folder)
            .stdout(Stdio::piped())
            .stderr(Stdio::null())
            .spawn()
            .expect("barm starts");
        let mut out = BufReader::new(child.stdout.take().expect("its answer"));
        let mut said = String::new();
        let port = loop {
            let mut line = String::new();
            assert!(out.read_line(&mut line).expect("text") > 0, "it ended; it said:\n{said}");
            if let Some(at) = line.strip_prefix("Barm answers at ") {
                let port = at.trim().rsplit_once(':').and_then(|(_, port)| port.parse().ok());
                break port.expect("a port");
            }
            said.push_str(&line);
        };
        Self { child, _out: out, port }
    }

    /// Kills it as the system does when memory runs out: nothing in it hears of that.
    pub(crate) fn kill(mut self) {
        self.child.kill().expect("it runs");
        self.child.wait().expect("it is gone");
    }
}

impl Drop for Serving {
    fn drop(&mut self) {
        // It may be gone already.
        let _ = self.child.kill();
        let _ = self.child.wait();
    }
}

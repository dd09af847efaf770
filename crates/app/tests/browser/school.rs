//! A data folder with the invented school in it, and the program serving it.

use crate::browser::wait;
use barm_domain::code::{BagCode, check_character};
use barm_domain::plan::Plan;
use barm_domain::record::{Entry, Key, Subject, What, Who};
use barm_store::{Code, Kind, Place, Store};
use jiff::{SignedDuration, Timestamp};
use std::io::{BufRead, BufReader, Read};
use std::path::Path;
use std::process::{Child, ChildStdout, Command, Stdio};
use tempfile::TempDir;

/// The period that the tests join.
pub(crate) const PERIOD: &str = "4";
/// The group that they are.
pub(crate) const GROUP: u32 = 2;

/// A data folder.
pub(crate) struct School {
    folder: TempDir,
    pub(crate) investigation: i64,
    /// Codes of the group's bags.
    pub(crate) bags: Vec<BagCode>,
    pub(crate) period_code: String,
    pub(crate) group_code: String,
}

/// The program, serving.
pub(crate) struct Served {
    program: Child,
    pub(crate) port: u16,
    scheme: &'static str,
    /// What it goes on saying.
    _out: BufReader<ChildStdout>,
}

impl School {
    /// A data folder with nothing in it.
    pub(crate) fn bare() -> Self {
        let folder = tempfile::tempdir().expect("a folder");
        let codes = ["CAFE", "DART"].map(checked);
        let [period_code, group_code] = codes;
        Self { folder, investigation: 0, bags: Vec::new(), period_code, group_code }
    }

    /// The invented school, on the shelf, with codes.
    pub(crate) fn new() -> Self {
        let mut school = Self::bare();
        school.investigation = school.begin("Invented");
        let own = plan().bags.into_iter();
        let own = own.filter(|bag| bag.period == PERIOD && bag.group == GROUP);
        school.bags = own.map(|bag| bag.code.parse().expect("a code")).collect();
        school.keep_code(school.investigation, &school.period_code, "period", None);
        school.keep_code(school.investigation, &school.group_code, "group", Some(GROUP));
        school
    }

    /// Another group of the period comes in with a code of its own; gives that code and its bags.
    pub(crate) fn and_group(&self, group: u32, code: &str) -> (String, Vec<BagCode>) {
        let code = checked(code);
        self.keep_code(self.investigation, &code, "group", Some(group));
        let own = plan().bags.into_iter();
        let own = own.filter(|bag| bag.period == PERIOD && bag.group == group);
        (code, own.map(|bag| bag.code.parse().expect("a code")).collect())
    }

    /// Where it lies.
    pub(crate) fn folder(&self) -> &Path {
        self.folder.path()
    }

    /// Begins an investigation with the invented plan.
    pub(crate) fn begin(&self, title: &str) -> i64 {
        let store = open(self.folder.path());
        let now = Timestamp::now();
        let made = store.add_investigation(title, Kind::Invented, now).expect("kept");
        store.save_plan(made.id, &plan_text(), now).expect("kept");
        made.id
    }

    /// Saves another version of the investigation's plan. Nobody may be serving it.
    pub(crate) fn save(&self, text: &str) {
        let now = Timestamp::now();
        open(self.folder.path()).save_plan(self.investigation, text, now).expect("kept");
    }

    /// Keeps what pilots found. Nobody may be serving it.
    pub(crate) fn keep_lots(&self, of: i64, lots: &str, now: Timestamp) {
        open(self.folder.path()).save_pilot(of, lots, "", now).expect("kept");
    }

    /// The newest plan of an investigation. Nobody may be serving it.
    pub(crate) fn plan_of(&self, investigation: i64) -> Plan {
        let plans = open(self.folder.path()).plans(investigation).expect("plans");
        let (_, text) = plans.last().expect("a version");
        barm_documents::plan_text::read(text.as_bytes()).plan.expect("a plan")
    }

    /// Puts entries on record. Nobody may be serving it.
    pub(crate) fn enter(&self, investigation: i64, entries: &[Entry]) {
        open(self.folder.path()).append(investigation, entries).expect("kept");
    }

    /// Makes a code of period 4 work; gives it back with its check character.
    pub(crate) fn code(&self, of: i64, four: &str, role: &str, group: Option<u32>) -> String {
        let code = checked(four);
        assert!(code.bytes().all(|byte| byte.is_ascii_alphanumeric()), "{code} can be typed");
        self.keep_code(of, &code, role, group);
        code
    }

    fn keep_code(&self, investigation: i64, code: &str, role: &str, group: Option<u32>) {
        let code = Code {
            code: code.to_owned(),
            role: role.to_owned(),
            investigation,
            period: (role != "aide").then(|| PERIOD.to_owned()),
            group,
            made: Timestamp::now(),
            ends: None,
        };
        assert!(open(self.folder.path()).keep_code(&code).expect("kept"));
    }

    /// The bell rang some minutes ago and the group has read its bags: minutes after zero with a
    /// height for all of them; the last minute was `ago` seconds ago.
    pub(crate) fn has_read(&self, heights: &[(u32, f64)], ago: i64) {
        let now = Timestamp::now();
        let last = heights.last().map_or(0, |(minute, _)| *minute);
        let zero = now - SignedDuration::from_secs(i64::from(last) * 60 + ago);
        let mut chance = 0;
        let mut entries = Vec::new();
        let mut add = |subject: Subject, what: What, at: Timestamp, who: Who| {
            chance += 1;
            let ms = u64::try_from(at.as_millisecond()).expect("after 1970");
            let key = Key::new(ms, chance);
            entries.push(Entry { key, subject, what, measured: at, arrived: at, who });
        };
        let bell = zero - SignedDuration::from_mins(14);
        add(Subject::Period(PERIOD.into()), What::Began, bell, Who::Teacher);
        let group = Who::Group { period: PERIOD.into(), group: GROUP };
        for code in &self.bags {
            let bag = Subject::Bag(*code);
            let before = zero - SignedDuration::from_secs(1);
            add(bag.clone(), What::Sealed { plan: 1 }, before, group.clone());
            for (minute, height_mm) in heights {
                let at = zero + SignedDuration::from_mins(i64::from(*minute));
                let what = if *minute == 0 {
                    What::Zero { height_mm: *height_mm }
                } else {
                    What::Reading { planned: Some(*minute), height_mm: *height_mm }
                };
                add(bag.clone(), what, at, group.clone());
            }
        }
        self.enter(self.investigation, &entries);
    }

    /// Everything on record, in the order in which it came. Nobody may be serving it.
    pub(crate) fn record(&self) -> Vec<Entry> {
        self.entries(self.investigation)
    }

    /// The same of another investigation.
    pub(crate) fn entries(&self, investigation: i64) -> Vec<Entry> {
        let store = open(self.folder.path());
        let all = store.entries(investigation, 0).expect("entries");
        all.into_iter().map(|(_, entry)| entry).collect()
    }

    /// Starts the program on a port; 0 for any that is free.
    pub(crate) fn serve(&self, port: u16) -> Served {
        self.serve_with(port, &[])
    }

    /// The same with more on its command line.
    pub(crate) fn serve_with(&self, port: u16, more: &[String]) -> Served {
        let more: Vec<&str> = more.iter().map(String::as_str).collect();
        Served::with(self.folder.path(), port, &more)
    }
}

impl Served {
    /// Starts the program on a data folder, which may be empty, and a port; 0 for any that is
    /// free.
    pub(crate) fn on(folder: &Path, port: u16) -> Self {
        Self::with(folder, port, &[])
    }

    /// The same with more arguments; `--tls` encrypts.
    pub(crate) fn with(folder: &Path, port: u16, more: &[&str]) -> Self {
        let scheme = if more.contains(&"--tls") { "https" } else { "http" };
        let mut program = Command::new(env!("CARGO_BIN_EXE_barm"))
            .args(["serve", "--port", &port.to_string(), "--data"])
            .arg(folder)
            .args(more)
            .stdout(Stdio::piped())
            .stderr(Stdio::null())
            .spawn()
            .expect("barm starts");
        let out = program.stdout.take().expect("its output");
        let mut out = BufReader::new(out);
        let mut lines = out.by_ref().lines();
        let port = lines.by_ref().find_map(|line| {
            let line = line.ok()?;
            let (_, rest) = line.split_once("://localhost:")?;
            let digits: String = rest.chars().take_while(char::is_ascii_digit).collect();
            digits.parse().ok()
        });
        let port = port.expect("it says where it answers");
        Self { program, port, scheme, _out: out }
    }

    /// The address of a page.
    pub(crate) fn at(&self, path: &str) -> String {
        format!("{}://localhost:{}{path}", self.scheme, self.port)
    }

    /// Stops it, as when somebody pulls the plug.
    pub(crate) fn stop(mut self) {
        let _ = self.program.kill();
        let _ = self.program.wait();
    }
}

impl Drop for Served {
    fn drop(&mut self) {
        let _ = self.program.kill();
        let _ = self.program.wait();
    }
}

/// The text of the invented plan.
pub(crate) fn plan_text() -> String {
    let plan = Path::new(env!("CARGO_MANIFEST_DIR")).join("src/demo/plan.toml");
    std::fs::read_to_string(plan).expect("the invented plan")
}

/// The invented plan.
pub(crate) fn plan() -> Plan {
    barm_documents::plan_text::read(plan_text().as_bytes()).plan.expect("a plan")
}

fn open(folder: &Path) -> Store {
    // Whoever had it open before may still be closing it.
    wait("the data folder", || Store::open(&Place::Folder(folder.to_owned())).ok())
}

/// A code with its check character.
fn checked(code: &str) -> String {
    format!("{code}{}", check_character(code).expect("letters and digits"))
}

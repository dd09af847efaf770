//! A school of five periods with a whole day on record, the program that serves it, and the
//! devices that come in.

use crate::Fallible;
use crate::line::Line;
use barm_domain::code::{BagCode, check_character};
use barm_domain::plan::Plan;
use barm_domain::record::{Entry, Key, Subject, What, Who};
use barm_store::{Code, Kind, Place, Store};
use jiff::{SignedDuration, Timestamp};
use std::io::{BufRead, BufReader};
use std::path::Path;
use std::process::{Child, Command, Stdio};
use std::time::Instant;
use tempfile::TempDir;

/// The codes of the periods, without their check letters.
const CODES: [&str; 5] = ["ACDE", "FHJK", "MNPR", "TUWX", "CDEF"];
/// Groups in a period.
const GROUPS: u32 = 10;
/// Devices of a group.
const DEVICES: u32 = 6;
/// Chosen by the teacher at the first start.
pub(crate) const PASSPHRASE: &str = "three bags rise by the window";

/// A record of an invented plan.
pub(crate) struct School {
    folder: TempDir,
    plan: Plan,
    codes: Vec<String>,
}

/// The program, serving; killed when it is dropped.
pub(crate) struct Server {
    child: Child,
    /// Where it answers.
    pub(crate) port: u16,
}

/// A device that is joined.
pub(crate) struct Device {
    /// Its line to the server.
    pub(crate) line: Line,
    /// A bag of its group.
    pub(crate) bag: BagCode,
    /// Entries that it sent.
    pub(crate) sent: u64,
    /// The last height that it sent.
    pub(crate) last: Option<Key>,
}

impl School {
    /// Plans it and puts a day on record.
    pub(crate) fn new(program: &str) -> Fallible<Self> {
        // Beside the program, not in the system's temporary folder, which may be memory.
        let beside = Path::new(program).parent().ok_or("a program in a folder")?;
        let folder = tempfile::tempdir_in(beside)?;
        let file = folder.path().join("plan.toml");
        let made = Command::new(program)
            .args(["new", "--ready", "which-food", "--date", "2027-03-09", "--students", "30"])
            .args(["--periods", &CODES.len().to_string(), "--groups", &GROUPS.to_string()])
            .arg(&file)
            .stdout(Stdio::null())
            .status()?;
        if !made.success() {
            return Err("no plan was written".into());
        }
        let text = std::fs::read_to_string(&file)?;
        let plan = barm_documents::plan_text::read(text.as_bytes()).plan.ok_or("no plan")?;
        let now = Timestamp::now();
        let store = Store::open(&Place::Folder(folder.path().join("record")))?;
        let id = store.add_investigation("Load", Kind::Rehearsal, now)?.id;
        store.save_plan(id, &text, now)?;
        let mut codes = Vec::new();
        for (period, code) in plan.periods.iter().zip(CODES) {
            let check = check_character(code).ok_or("no check letter")?;
            let code = format!("{code}{check}");
            codes.push(code.clone());
            store.keep_code(&Code {
                code,
                role: "period".to_owned(),
                investigation: id,
                period: Some(period.name.clone()),
                group: None,
                made: now,
                ends: None,
            })?;
        }
        store.append(id, day(&plan, now))?;
        println!("{} periods, {} bags on record", plan.periods.len(), plan.bags.len());
        Ok(Self { folder, plan, codes })
    }

    /// Starts the program on it.
    pub(crate) fn serve(&self, program: &str) -> Fallible<Server> {
        let started = Instant::now();
        let mut child = Command::new(program)
            .args(["serve", "--port", "0", "--data"])
            .arg(self.folder.path().join("record"))
            .stdout(Stdio::piped())
            .spawn()?;
        let mut out = BufReader::new(child.stdout.take().ok_or("no answer")?);
        let mut line = String::new();
        while !line.starts_with("Barm answers at ") {
            line.clear();
            if out.read_line(&mut line)? == 0 {
                return Err("the program ended".into());
            }
        }
        let port = line.trim().rsplit_once(':').ok_or("no port")?.1.parse()?;
        // What it says later is read by nobody, and must not fill a pipe.
        std::thread::spawn(move || std::io::copy(&mut out, &mut std::io::sink()));
        let server = Server { child, port };
        Line::to(port).get("/join")?;
        println!("start to first page: {:.0} ms", started.elapsed().as_secs_f64() * 1e3);
        Ok(server)
    }

    /// Lets the devices in.
    pub(crate) fn join(&self, port: u16) -> Fallible<Vec<Device>> {
        let mut devices = Vec::new();
        for (period, code) in self.plan.periods.iter().zip(&self.codes) {
            for group in 1..=period.groups {
                let own = self.plan.bags.iter();
                let bag = own
                    .clone()
                    .find(|bag| bag.period == period.name && bag.group == group)
                    .ok_or("a group without a bag")?;
                for _ in 0..DEVICES {
                    let mut line = Line::to(port);
                    line.get("/join")?;
                    let fields = [("period", code.as_str()), ("group", &bag.code)];
                    let answer = line.form("/join", &fields)?;
                    if answer.status != 303 {
                        return Err(format!("not let in: {}", answer.status).into());
                    }
                    let bag = bag.code.parse()?;
                    devices.push(Device { line, bag, sent: 0, last: None });
                }
            }
        }
        Ok(devices)
    }
}

/// Every bag sealed and read at every planned time, some hours ago.
fn day(plan: &Plan, now: Timestamp) -> Vec<Entry> {
    let mut entries = Vec::new();
    let mut chance = 0;
    for bag in &plan.bags {
        let Ok(code) = bag.code.parse::<BagCode>() else { continue };
        let zero = now - SignedDuration::from_hours(6);
        let who = Who::Group { period: bag.period.as_str().into(), group: bag.group };
        let mut add = |minute: i64, what: What| {
            chance += 1;
            let at = zero + SignedDuration::from_mins(minute);
            let key = Key::new(u64::try_from(at.as_millisecond()).unwrap_or_default(), chance);
            let subject = Subject::Bag(code);
            entries.push(Entry {
                key,
                subject,
                what,
                measured: at,
                arrived: at,
                who: who.clone(),
            });
        };
        add(-1, What::Sealed { plan: 1 });
        add(0, What::Zero { height_mm: 4.0 });
        for minute in (5..=30_u32).step_by(5) {
            let height_mm = 4.0 + f64::from(minute) / 2.0;
            add(i64::from(minute), What::Reading { planned: Some(minute), height_mm });
        }
    }
    entries
}

impl Server {
    /// Lets the teacher in.
    pub(crate) fn teacher(&self) -> Fallible<Line> {
        let mut line = Line::to(self.port);
        line.get("/teacher")?;
        let chosen = [("passphrase", PASSPHRASE), ("again", PASSPHRASE)];
        if line.form("/teacher/first", &chosen)?.status != 303 {
            return Err("the teacher was not let in".into());
        }
        Ok(line)
    }

    /// Says how much memory it takes (Linux).
    pub(crate) fn memory(&self, when: &str) -> Fallible<()> {
        let status = std::fs::read_to_string(format!("/proc/{}/status", self.child.id()))?;
        let of = |name: &str| {
            let line = status.lines().find_map(|line| line.strip_prefix(name));
            let kb = line?.trim_start_matches(':').trim().trim_end_matches(" kB");
            Some(kb.parse::<f64>().ok()? / 1024.0)
        };
        let (now, most) = (of("VmRSS").unwrap_or_default(), of("VmHWM").unwrap_or_default());
        println!("memory, {when}: {now:.0} MiB, at most {most:.0} MiB so far");
        Ok(())
    }
}

impl Drop for Server {
    fn drop(&mut self) {
        // It may be gone already.
        let _ = self.child.kill();
        let _ = self.child.wait();
    }
}

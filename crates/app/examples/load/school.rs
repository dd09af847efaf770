//! A school of five periods with a whole day on record, and the devices that come in.

use crate::Fallible;
use crate::line::Line;
use crate::server::Server;
use barm_domain::code::{BagCode, check_character};
use barm_domain::plan::Plan;
use barm_domain::record::{Entry, Key, Subject, What, Who};
use barm_store::{Code, Kind, Place, Store};
use jiff::{SignedDuration, Timestamp};
use std::path::Path;
use std::process::{Command, Stdio};
use tempfile::TempDir;

/// The codes of the periods, without their check letters.
const CODES: [&str; 5] = ["ACDE", "FHJK", "MNPR", "TUWX", "CDEF"];
/// Groups in a period.
const GROUPS: u32 = 10;
/// Devices of a group.
const DEVICES: u32 = 6;

/// A record of an invented plan.
pub(crate) struct School {
    folder: TempDir,
    plan: Plan,
    codes: Vec<String>,
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
        Server::on(program, &self.folder.path().join("record"))
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

//! Ten years of classes on one shelf, and a made-up one whose groups can still come in.

use crate::Fallible;
use barm_domain::code::{BagCode, check_character};
use barm_domain::plan::Plan;
use barm_domain::record::{Entry, Key, Subject, What, Who};
use barm_store::{Code, Kind, Place, Store};
use jiff::{SignedDuration, Timestamp};
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};
use tempfile::TempDir;

const YEARS: std::ops::Range<i16> = 2017..2027;
const CLASSES: u32 = 6;
/// Codes of the periods of the made-up class, without their check letters.
const CODES: [&str; 4] = ["ACDE", "FHJK", "MNPR", "TUWX"];

/// The shelf.
pub(crate) struct Shelf {
    folder: TempDir,
    /// Number of the made-up class.
    pub(crate) open: i64,
    /// Its plan.
    pub(crate) plan: Plan,
    /// Codes of its periods.
    pub(crate) codes: Vec<String>,
    /// Number of a class of twelve treatments in which nothing but chance makes a difference.
    pub(crate) flat: i64,
}

impl Shelf {
    /// Puts everything on it, without the program's help but for the plan.
    pub(crate) fn new(program: &str) -> Fallible<Self> {
        // Beside the program, not in the system's temporary folder, which may be memory.
        let beside = Path::new(program).parent().ok_or("a program in a folder")?;
        let folder = tempfile::tempdir_in(beside)?;
        let store = Store::open(&Place::Folder(folder.path().join("record")))?;
        let now = Timestamp::now();
        let mut bags = 0;
        for year in YEARS {
            let text = planned(program, folder.path(), year)?;
            for class in 1..=CLASSES {
                let title = format!("Which food feeds yeast best? Class {class} of {year}");
                let text = titled(&text, &title)?;
                let plan = read(&text)?;
                bags += plan.bags.len();
                let id = store.add_investigation(&title, Kind::Real, now)?.id;
                store.save_plan(id, &text, now)?;
                store.append(id, day(&plan, (year, class), &Day::USUAL)?)?;
            }
        }
        let text = planned(program, folder.path(), 2027)?;
        let plan = read(&text)?;
        let open = store.add_investigation("The made-up class", Kind::Invented, now)?.id;
        store.save_plan(open, &text, now)?;
        store.append(open, day(&plan, (2027, 1), &Day { over: false, ..Day::USUAL })?)?;
        let mut codes = Vec::new();
        for (period, code) in plan.periods.iter().zip(CODES) {
            let check = check_character(code).ok_or("no check letter")?;
            let code = format!("{code}{check}");
            codes.push(code.clone());
            store.keep_code(&Code {
                code,
                role: "period".to_owned(),
                investigation: open,
                period: Some(period.name.clone()),
                group: None,
                made: now,
                ends: None,
            })?;
        }
        let text = include_str!("../../src/demo/plan.toml");
        let flat = store.add_investigation("Nothing differs", Kind::Invented, now)?.id;
        store.save_plan(flat, text, now)?;
        let alike = Day { of_kind_mm: 0.0, of_class_mm: 0.0, ..Day::USUAL };
        store.append(flat, day(&read(text)?, (2027, 2), &alike)?)?;
        println!(
            "{} investigations with {bags} bags on the shelf",
            YEARS.len() as u32 * CLASSES
        );
        Ok(Self { folder, open, plan, codes, flat })
    }

    /// Where the record lies.
    pub(crate) fn record(&self) -> PathBuf {
        self.folder.path().join("record")
    }
}

/// The plan of a day of a year: four periods with ten groups.
fn planned(program: &str, folder: &Path, year: i16) -> Fallible<String> {
    let file = folder.join(format!("{year}.toml"));
    let made = Command::new(program)
        .args(["new", "--ready", "which-food", "--students", "30", "--groups", "10"])
        .args(["--periods", &CODES.len().to_string(), "--date", &format!("{year}-03-09")])
        .arg(&file)
        .stdout(Stdio::null())
        .status()?;
    if !made.success() {
        return Err("no plan was written".into());
    }
    Ok(std::fs::read_to_string(&file)?)
}

fn titled(text: &str, title: &str) -> Fallible<String> {
    let line = text.lines().find(|line| line.starts_with("title = ")).ok_or("no title")?;
    Ok(text.replacen(line, &format!("title = {title:?}"), 1))
}

fn read(text: &str) -> Fallible<Plan> {
    Ok(barm_documents::plan_text::read(text.as_bytes()).plan.ok_or("no plan")?)
}

/// A number from 0 to 1 that hangs on what it is of alone (FNV-1a, from memory).
fn chance(of: &str) -> f64 {
    let mix = |hash: u64, byte: u8| (hash ^ u64::from(byte)).wrapping_mul(0x0100_0000_01b3);
    let hash = of.bytes().fold(0xcbf2_9ce4_8422_2325, mix);
    let hash = (hash ^ (hash >> 33)).wrapping_mul(0xff51_afd7_ed55_8ccd);
    (hash >> 11) as f64 / (1_u64 << 53) as f64
}

/// What makes bags of a day differ (most, mm), and whether its periods are over.
struct Day {
    over: bool,
    of_kind_mm: f64,
    of_class_mm: f64,
    of_bag_mm: f64,
}

impl Day {
    const USUAL: Self = Self { over: true, of_kind_mm: 20.0, of_class_mm: 4.0, of_bag_mm: 6.0 };
}

/// Every bag sealed and read at every planned time: a rise of its treatment, more or less by class and by bag.
fn day(plan: &Plan, (year, class): (i16, u32), of: &Day) -> Fallible<Vec<Entry>> {
    let mut entries = Vec::new();
    let bell: Timestamp = format!("{year}-03-09T15:00:00Z").parse()?;
    let mut add = |at: Timestamp, subject: Subject, who: Who, what: What| {
        let number = (u128::from(class) << 32) + entries.len() as u128;
        let key = Key::new(u64::try_from(at.as_millisecond()).unwrap_or_default(), number);
        entries.push(Entry { key, subject, what, measured: at, arrived: at, who });
    };
    for period in &plan.periods {
        let subject = || Subject::Period(period.name.clone());
        add(bell, subject(), Who::Teacher, What::Began);
        if of.over {
            add(bell + SignedDuration::from_mins(50), subject(), Who::Teacher, What::Ended);
        }
    }
    for bag in &plan.bags {
        let Ok(code) = bag.code.parse::<BagCode>() else { continue };
        let zero = bell + SignedDuration::from_mins(14);
        let who = Who::Group { period: bag.period.as_str().into(), group: bag.group };
        let of_kind = of.of_kind_mm * chance(&bag.treatment);
        let of_class = of.of_class_mm * chance(&format!("{year} {class} {}", bag.treatment));
        let of_bag = of.of_bag_mm * chance(&format!("{year} {class} {}", bag.code));
        let subject = || Subject::Bag(code);
        add(
            zero - SignedDuration::from_mins(1),
            subject(),
            who.clone(),
            What::Sealed { plan: 1 },
        );
        add(zero, subject(), who.clone(), What::Zero { height_mm: 4.0 });
        for minute in (4..=24_u32).step_by(4) {
            let rise = (of_kind + of_class + of_bag) * f64::from(minute) / 24.0;
            let height_mm = 4.0 + (2.0 * rise).round() / 2.0;
            let at = zero + SignedDuration::from_mins(i64::from(minute));
            add(at, subject(), who.clone(), What::Reading { planned: Some(minute), height_mm });
        }
    }
    Ok(entries)
}

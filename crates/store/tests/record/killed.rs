//! A program that is killed in the middle of writing loses nothing that it acknowledged.

use crate::made::{at, key, reading};
use crate::places::Ground;
use crate::size::{Dice, count};
use barm_domain::record::Key;
use barm_store::{Kind, Place, Store};
use std::collections::BTreeSet;
use std::io::{BufRead as _, BufReader, Write as _};
use std::process::{Command, Stdio};
use std::thread;
use std::time::Duration;

/// Set for the child: the folder, the first number, and how many threads write.
const FOLDER: &str = "BARM_TEST_FOLDER";
const FIRST: &str = "BARM_TEST_FIRST";
const THREADS: &str = "BARM_TEST_THREADS";
const MOST: &str = "BARM_TEST_MOST";

/// The child: appends until it is killed, and says what was acknowledged. Does nothing when it
/// runs as one of the tests.
#[test]
fn writes_until_it_is_killed() {
    let Ok(folder) = std::env::var(FOLDER) else { return };
    let number = |name| std::env::var(name).unwrap().parse::<u32>().unwrap();
    let (first, threads, most) = (number(FIRST), number(THREADS), number(MOST));
    let store = Store::open(&Place::Folder(folder.into())).unwrap();
    // What the test program has said of itself has no end of line yet.
    std::io::stdout().write_all(b"\n").unwrap();
    let work = |thread: u32| {
        for round in 0..most {
            // One, two or three entries in a call.
            let from = first + thread * 100_000 + round * 3;
            let entries: Vec<_> = (from..=from + round % 3).map(|n| reading(n, 1.5)).collect();
            let receipts = store.append(1, entries).unwrap();
            let said: String = receipts.iter().map(|r| format!("ack {}\n", r.key)).collect();
            std::io::stdout().write_all(said.as_bytes()).unwrap();
        }
    };
    thread::scope(|scope| {
        for thread in 0..threads {
            scope.spawn(move || work(thread));
        }
    });
}

/// The child, ready to start.
pub(crate) fn child(
    place: &Place,
    through: Option<&[&str]>,
    first: u32,
    threads: u32,
    most: u32,
) -> Command {
    let Place::Folder(folder) = place else { panic!("a folder") };
    let own = std::env::current_exe().unwrap();
    let mut command = match through {
        Some([program, arguments @ ..]) => {
            let mut command = Command::new(program);
            command.args(arguments).arg(own);
            command
        }
        _ => Command::new(own),
    };
    command
        .args(["--exact", "killed::writes_until_it_is_killed", "--nocapture"])
        .args(["--test-threads", "1"])
        .env(FOLDER, folder)
        .env(FIRST, first.to_string())
        .env(THREADS, threads.to_string())
        .env(MOST, most.to_string())
        .stdin(Stdio::null())
        .stdout(Stdio::piped());
    command
}

/// The key in an acknowledgement; `None` for what the test program says of itself.
pub(crate) fn acknowledged(line: &str) -> Option<Key> {
    line.strip_prefix("ack ").map(|key| key.parse().unwrap())
}

#[test]
fn nothing_acknowledged_is_lost_or_doubled_when_the_program_is_killed() {
    let ground = Ground::folder();
    ground.open().add_investigation("Syrup or oats", Kind::Real, at(0)).unwrap();
    let mut dice = Dice(0x5eed);
    let mut told: BTreeSet<Key> = BTreeSet::new();
    for round in 0..count(10, 40, 200) {
        let mut running = child(&ground.place, None, (round + 1) * 1_000_000, 3, 30_000)
            .stderr(Stdio::null())
            .spawn()
            .unwrap();
        let mut lines = BufReader::new(running.stdout.take().unwrap());
        let wait_for = told.len() + 1 + usize::try_from(dice.below(60)).unwrap();
        let mut line = String::new();
        // Also a moment while it opens the record, before anything is acknowledged.
        while round % 5 != 4 && told.len() < wait_for {
            line.clear();
            assert!(lines.read_line(&mut line).unwrap() > 0, "the child ended by itself");
            told.extend(acknowledged(line.trim_end()));
        }
        thread::sleep(Duration::from_micros(dice.below(30_000)));
        running.kill().unwrap();
        running.wait().unwrap();
        // What it said before it died counts too; half a line is none.
        loop {
            line.clear();
            if lines.read_line(&mut line).unwrap() == 0 || !line.ends_with('\n') {
                break;
            }
            told.extend(acknowledged(line.trim_end()));
        }

        let store = ground.open();
        let checked = store.full_check().unwrap();
        let found = store.entries(1, 0).unwrap();
        assert_eq!(checked.entries, found.len());
        let keys: BTreeSet<Key> = found.iter().map(|(_, entry)| entry.key).collect();
        assert_eq!(keys.len(), found.len(), "round {round}: an entry is there twice");
        let lost: Vec<&Key> = told.difference(&keys).collect();
        assert!(lost.is_empty(), "round {round}: {} entries were lost", lost.len());
        // Calls of several entries are there whole or not at all.
        for (_, entry) in &found {
            let number = u32::try_from(entry.measured.as_second() - at(0).as_second()).unwrap();
            let within = number % 1_000_000 % 100_000;
            let first = number - within % 3;
            let size = within / 3 % 3 + 1;
            let whole = (first..first + size).all(|n| keys.contains(&key(n)));
            assert!(whole, "round {round}: half of a call is there");
        }
    }
}

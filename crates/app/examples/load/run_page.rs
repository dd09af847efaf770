//! How soon the teacher's run page shows an entry: from the moment at which a device sends it until
//! the page, asked for anew because its event stream said so, has come whole.

use crate::Fallible;
use crate::line::Line;
use crate::school::Device;
use crate::sending::{send, share};
use crate::server::Server;
use crate::streams::listen;
use serde_json::Value;
use std::io::{BufRead, BufReader};
use std::sync::Mutex;
use std::sync::atomic::{AtomicBool, Ordering};
use std::thread;
use std::time::{Duration, Instant};

/// It is watched for so long: a fifth of all entries are of the period that the page shows.
const PART: Duration = Duration::from_secs(200);
/// Entries a second of 300 devices in class: two bags each, read every four minutes.
const PACE: f64 = 2.5;
/// From a device to the next that writes; no divisor of their number.
const STEP: usize = 67;

/// Measures it.
pub(crate) fn measure(
    server: &Server,
    teacher: &mut Line,
    devices: &mut [Device],
) -> Fallible<()> {
    let mut asking = teacher.another();
    let stream = listen(server.port, "/i/1/events", &teacher.cookies())?;
    // The number that the stream named, which rises with each entry, and when the page that was
    // asked for then had come.
    let shown: Mutex<Vec<(u64, Instant)>> = Mutex::default();
    let over = AtomicBool::new(false);
    let mut sent = Vec::new();
    thread::scope(|scope| -> Fallible<()> {
        let watching = stream.try_clone()?;
        let (shown, over) = (&shown, &over);
        scope.spawn(move || {
            let mut lines = BufReader::new(watching).lines();
            while let Some(Ok(said)) = lines.next() {
                if over.load(Ordering::Relaxed) {
                    return;
                }
                let number = said.strip_prefix("data:").and_then(|n| n.trim().parse().ok());
                if let Some(number) = number {
                    let page = teacher.get("/i/1/run/1");
                    if page.is_ok_and(|page| page.status == 200)
                        && let Ok(mut shown) = shown.lock()
                    {
                        shown.push((number, Instant::now()));
                    }
                }
            }
        });
        let start = Instant::now();
        let mut dice = 1_u64;
        let mut next = start;
        let many = devices.len();
        for turn in 0.. {
            // Waits of random length, as of people who know nothing of one another (xorshift,
            // Marsaglia 2003).
            dice ^= dice << 13;
            dice ^= dice >> 7;
            dice ^= dice << 17;
            let chance = (dice >> 11) as f64 / (1_u64 << 53) as f64;
            next += Duration::from_secs_f64(-(1.0 - chance).ln() / PACE);
            thread::sleep(next.saturating_duration_since(Instant::now()));
            if start.elapsed() >= PART {
                break;
            }
            // All of them write; the page is of the first period, whose devices are the first fifth.
            // Another step than one, so that no period writes all at once.
            let place = (turn * STEP) % many;
            let before = Instant::now();
            send(&mut devices[place])?;
            if place < many / 5 {
                sent.push((before, number(&mut asking)?));
            }
        }
        thread::sleep(Duration::from_secs(1));
        over.store(true, Ordering::Relaxed);
        stream.shutdown(std::net::Shutdown::Both)?;
        Ok(())
    })?;
    let shown = shown.into_inner().unwrap_or_default();
    let took: Vec<Duration> = sent
        .iter()
        .filter_map(|(before, own)| {
            let first = shown.iter().find(|(number, _)| number >= own)?;
            Some(first.1.duration_since(*before))
        })
        .collect();
    println!(
        "run page after an entry, {} entries, {} not shown: half within {:.0} ms, 99 of 100 within {:.0} ms",
        took.len(),
        sent.len() - took.len(),
        share(&took, 0.5),
        share(&took, 0.99)
    );
    Ok(())
}

/// The number of what the teacher's pages show now.
fn number(line: &mut Line) -> Fallible<u64> {
    let version: Value = serde_json::from_str(&line.get("/i/1/version")?.body)?;
    Ok(version["version"].as_u64().ok_or("no number")?)
}

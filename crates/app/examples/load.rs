//! How many entries a second the server acknowledges, and how long one takes at 200 a second.
//!
//! `cargo build --release && cargo run --release -p barm --example load -- target/release/barm`
//!
//! Everything stays on this computer: a folder that is deleted at the end, a port of its own, 32
//! groups of the invented plan, each with one device that sends and two event streams that listen.

#![allow(clippy::print_stdout)]

#[path = "../src/desk/rehearse/line.rs"]
#[allow(dead_code)]
mod line;

use barm_domain::code::BagCode;
use barm_domain::plan::Plan;
use barm_domain::record::Key;
use barm_store::{Code, Kind, Place, Store};
use jiff::Timestamp;
use line::Line;
use serde_json::json;
use std::error::Error;
use std::io::{BufRead, BufReader, Read, Write};
use std::net::{Ipv4Addr, TcpStream};
use std::process::{Child, Command, Stdio};
use std::sync::Mutex;
use std::sync::atomic::{AtomicBool, AtomicU64, Ordering};
use std::thread;
use std::time::{Duration, Instant};

/// Codes of the four periods.
const CODES: [&str; 4] = ["ACDEA", "FHJKF", "MNPRM", "TUWXT"];
/// Each part takes so long.
const PART: Duration = Duration::from_secs(10);
/// Entries a second of the second part: thirty classes at their busiest.
const PACE: u64 = 200;
/// Event streams of each group.
const STREAMS: usize = 2;

type Fallible<T> = Result<T, Box<dyn Error + Send + Sync>>;

fn main() -> Fallible<()> {
    let program =
        std::env::args().nth(1).ok_or("name the program, such as target/release/barm")?;
    let folder = tempfile::tempdir()?;
    let plan = record(folder.path())?;
    let (mut child, port) = serve(&program, folder.path())?;
    let result = measure(&plan, port, child.id());
    child.kill()?;
    child.wait()?;
    result
}

/// A record of the invented plan with codes.
fn record(folder: &std::path::Path) -> Fallible<Plan> {
    let text = include_str!("../src/demo/plan.toml");
    let plan = barm_documents::plan_text::read(text.as_bytes()).plan.ok_or("no plan")?;
    let now = Timestamp::now();
    let store = Store::open(&Place::Folder(folder.to_owned()))?;
    let id = store.add_investigation("Load", Kind::Rehearsal, now)?.id;
    store.save_plan(id, text, now)?;
    for (period, code) in plan.periods.iter().zip(CODES) {
        store.keep_code(&Code {
            code: code.to_owned(),
            role: "period".to_owned(),
            investigation: id,
            period: Some(period.name.clone()),
            group: None,
            made: now,
            ends: None,
        })?;
    }
    Ok(plan)
}

fn serve(program: &str, folder: &std::path::Path) -> Fallible<(Child, u16)> {
    let mut child = Command::new(program)
        .args(["serve", "--port", "0", "--data"])
        .arg(folder)
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
    thread::spawn(move || std::io::copy(&mut out, &mut std::io::sink()));
    Ok((child, port))
}

fn measure(plan: &Plan, port: u16, pid: u32) -> Fallible<()> {
    let mut benches = Vec::new();
    for (period, code) in plan.periods.iter().zip(CODES) {
        for group in 1..=period.groups {
            let own = |bag: &&barm_domain::plan::PlannedBag| {
                bag.period == period.name && bag.group == group
            };
            let Some(bag) = plan.bags.iter().find(own) else { continue };
            let mut line = Line::to(port);
            line.get("/join")?;
            let answer = line.form("/join", &[("period", code), ("group", &bag.code)])?;
            if answer.status != 303 {
                return Err(format!("group {group} was not let in: {}", answer.status).into());
            }
            benches.push((line, bag.code.parse::<BagCode>()?));
        }
    }
    let heard = AtomicU64::new(0);
    let number = AtomicU64::new(1);
    let streams: Vec<TcpStream> = benches
        .iter()
        .flat_map(|(line, _)| std::iter::repeat_n(line.cookies(), STREAMS))
        .map(|cookies| listen(port, &cookies))
        .collect::<Fallible<_>>()?;
    println!("{} devices send, {} event streams listen", benches.len(), streams.len());
    let all: Fallible<()> = thread::scope(|scope| {
        for stream in &streams {
            let heard = &heard;
            scope.spawn(move || {
                let mut lines = BufReader::new(stream).lines();
                while let Some(Ok(line)) = lines.next() {
                    heard.fetch_add(u64::from(line.starts_with("event:")), Ordering::Relaxed);
                }
            });
        }
        let flat_out = send_all(&mut benches, &number, None)?;
        println!(
            "as fast as they can: {:.0} entries acknowledged a second",
            flat_out.len() as f64 / PART.as_secs_f64()
        );
        let mut paced = send_all(&mut benches, &number, Some(PACE))?;
        paced.sort_unstable();
        let at = |share: f64| {
            let place = (share * paced.len() as f64) as usize;
            paced.get(place.min(paced.len() - 1)).map_or(0.0, |took| took.as_secs_f64() * 1e3)
        };
        println!(
            "at {:.0} a second: half within {:.1} ms, 99 of 100 within {:.1} ms",
            paced.len() as f64 / PART.as_secs_f64(),
            at(0.5),
            at(0.99)
        );
        println!("changes heard on the streams: {}", heard.load(Ordering::Relaxed));
        for line in std::fs::read_to_string(format!("/proc/{pid}/status"))?.lines() {
            if line.starts_with("VmHWM") || line.starts_with("VmRSS") {
                println!("memory of the server: {line}");
            }
        }
        for stream in &streams {
            // The thread that listens ends with it.
            let _ = stream.shutdown(std::net::Shutdown::Both);
        }
        Ok(())
    });
    all
}

/// Lets every device send for a while; gives how long each acknowledgement took.
fn send_all(
    benches: &mut [(Line, BagCode)],
    number: &AtomicU64,
    pace: Option<u64>,
) -> Fallible<Vec<Duration>> {
    let took = Mutex::new(Vec::new());
    let failed = AtomicBool::new(false);
    let start = Instant::now();
    let many = benches.len() as u64;
    thread::scope(|scope| {
        for (place, (line, bag)) in (0..).zip(benches.iter_mut()) {
            let (took, failed) = (&took, &failed);
            scope.spawn(move || {
                let mut own = Vec::new();
                for turn in 0.. {
                    if let Some(pace) = pace {
                        // Each device has its own moments, spread evenly over the second.
                        let at = (turn * many + place) as f64 / pace as f64;
                        let left = Duration::from_secs_f64(at).saturating_sub(start.elapsed());
                        thread::sleep(left);
                    }
                    if start.elapsed() >= PART {
                        break;
                    }
                    let before = Instant::now();
                    if send(line, *bag, number).is_err() {
                        failed.store(true, Ordering::Relaxed);
                        break;
                    }
                    own.push(before.elapsed());
                }
                if let Ok(mut took) = took.lock() {
                    took.extend(own);
                }
            });
        }
    });
    if failed.into_inner() {
        return Err("an entry was not acknowledged".into());
    }
    Ok(took.into_inner().unwrap_or_default())
}

fn send(line: &mut Line, bag: BagCode, number: &AtomicU64) -> Fallible<()> {
    let number = number.fetch_add(1, Ordering::Relaxed);
    let at = Timestamp::now().as_millisecond();
    let key = Key::new(u64::try_from(at)?, u128::from(number)).to_string();
    let entry = json!({
        "key": key, "bag": bag.to_string(), "what": "odd", "odd": "bumped",
        "at": at, "offset": 0,
    });
    let answer = line.script("/bench/entries", &json!({ "entries": [entry] }).to_string())?;
    let saved = answer.status == 200 && answer.body.contains(&key);
    if saved { Ok(()) } else { Err(answer.body.into()) }
}

/// Opens an event stream.
fn listen(port: u16, cookies: &str) -> Fallible<TcpStream> {
    let mut stream = TcpStream::connect((Ipv4Addr::LOCALHOST, port))?;
    write!(
        stream,
        "GET /bench/events HTTP/1.1\r\nHost: localhost:{port}\r\nAccept: text/event-stream\r\n\
         Cookie: {cookies}\r\n\r\n"
    )?;
    let mut first = [0; 12];
    stream.read_exact(&mut first)?;
    if &first != b"HTTP/1.1 200" {
        return Err("the stream was refused".into());
    }
    Ok(stream)
}

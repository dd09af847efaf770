//! How ten years of classes on one shelf bear being looked through and compared, how soon the next marking page is
//! there, and how long second rounds take to be weighed.
//!
//! `cargo build --release && cargo run --release -p barm --example library -- target/release/barm`
//!
//! Words behind the program leave out the rest: `search`, `years`, `marks`, `rounds`.
//!
//! Everything stays on this computer, in a folder beside the program that is deleted at the end. Sixty investigations of
//! 128 bags, six a year, hold a whole invented day each; one more is a made-up class whose
//! groups hand in claims, and one a class in which nothing is clear.

#![allow(clippy::print_stdout)]

#[path = "../../src/desk/rehearse/line.rs"]
#[allow(dead_code)]
mod line;
mod marking;
mod rounds;
#[path = "../load/server.rs"]
#[allow(dead_code)]
mod server;
mod shelf;

use line::Line;
use server::Server;
use std::error::Error;
use std::time::{Duration, Instant};

/// What can be measured by itself.
const PARTS: [&str; 4] = ["search", "years", "marks", "rounds"];

/// What may fail here: files, the program, its answers.
type Fallible<T> = Result<T, Box<dyn Error + Send + Sync>>;

fn main() -> Fallible<()> {
    let program =
        std::env::args().nth(1).ok_or("name the program, such as target/release/barm")?;
    let parts: Vec<String> = std::env::args().skip(2).collect();
    if let Some(odd) = parts.iter().find(|part| !PARTS.contains(&part.as_str())) {
        return Err(format!("there is no part {odd}; parts are {}", PARTS.join(", ")).into());
    }
    let wanted = |part: &str| parts.is_empty() || parts.iter().any(|one| one == part);
    let shelf = shelf::Shelf::new(&program)?;
    let server = Server::on(&program, &shelf.record())?;
    let mut teacher = server.teacher()?;
    until_counted(&mut teacher)?;
    server.memory("with the shelf counted")?;
    if wanted("search") {
        timed(&mut teacher, "the whole shelf", 20, |_| "/shelf".to_owned())?;
        for (says, words) in [
            ("a word of every plan", "yeast"),
            ("a year", "2019"),
            ("three words", "maple+syrup+2021"),
            ("a word of no plan", "Zibbeldorn"),
        ] {
            timed(&mut teacher, &format!("search for {says}"), 20, |_| {
                format!("/shelf?find={words}")
            })?;
        }
    }
    if wanted("years") {
        timed(&mut teacher, "years, first time", 1, |_| "/years".to_owned())?;
        timed(&mut teacher, "years, again", 10, |_| "/years".to_owned())?;
        server.memory("after comparing years")?;
    }
    if wanted("marks") {
        marking::measure(&shelf, &server, &mut teacher)?;
    }
    if wanted("rounds") {
        rounds::measure(&shelf, &mut teacher)?;
    }
    drop(server);
    if wanted("years") {
        // Started anew, nothing is in memory.
        let server = Server::on(&program, &shelf.record())?;
        let mut teacher = server.teacher_again()?;
        timed(&mut teacher, "years, first time after a new start", 1, |_| "/years".to_owned())?;
        server.memory("after that")?;
    }
    Ok(())
}

/// Waits until the shelf has worked out all its lines; the program does that once after each of its versions.
fn until_counted(teacher: &mut Line) -> Fallible<()> {
    let started = Instant::now();
    loop {
        let page = teacher.get("/shelf")?.body;
        if !page.contains("data-counting") {
            println!("shelf counted after {:.1} s", started.elapsed().as_secs_f64());
            return Ok(());
        }
        std::thread::sleep(Duration::from_millis(200));
    }
}

/// Asks for pages one after the other and says how long each took until it was there whole.
fn timed(
    line: &mut Line,
    what: &str,
    times: usize,
    mut path: impl FnMut(usize) -> String,
) -> Fallible<()> {
    let mut took = Vec::new();
    let mut size = 0;
    for turn in 0..times {
        let path = path(turn);
        let before = Instant::now();
        let page = line.get(&path)?;
        took.push(before.elapsed());
        if page.status != 200 {
            return Err(format!("{path}: {}", page.status).into());
        }
        size = page.body.len();
    }
    said(what, &mut took, size);
    Ok(())
}

fn said(what: &str, took: &mut [Duration], size: usize) {
    took.sort();
    let ms = |at: usize| took.get(at).map_or(0.0, |one| one.as_secs_f64() * 1e3);
    println!(
        "{what}: half within {:.1} ms, all {} within {:.1} ms, {} kB",
        ms(took.len() / 2),
        took.len(),
        ms(took.len().saturating_sub(1)),
        size / 1000
    );
}

//! How the server bears a whole school: entries acknowledged a second, how long one takes at 200 a
//! second, how soon the teacher's run page shows one, how much memory all of it takes, how soon the
//! first page is there, and how soon the plan page's forecast follows the keys.
//!
//! `cargo build --release && cargo run --release -p barm --example load -- target/release/barm`
//!
//! Words behind the program leave out the rest: `page`, `drawn`, `entries`, `editing`.
//!
//! Everything stays on this computer: a folder beside the program, so that the record lies on a
//! disk and not in memory, which is deleted at the end, and a port of its own. Devices send heights
//! and corrections. With `chromedriver` and `chromium` at hand the run page is timed in a browser,
//! too, until it is drawn; without, that part is left out and says so.
//! Five periods with ten groups each have a whole day on record; 300 devices are joined and hold
//! 500 event streams.

#![allow(clippy::print_stdout)]

#[path = "../../tests/browser/browser.rs"]
#[allow(dead_code)]
mod browser;
mod drawn;
mod editing;
#[path = "../../src/desk/rehearse/line.rs"]
#[allow(dead_code)]
mod line;
mod run_page;
mod school;
mod sending;
#[allow(dead_code)]
mod server;
mod streams;
#[path = "../../tests/browser/wire.rs"]
mod wire;

use school::School;
use std::error::Error;

/// What can be measured by itself.
const PARTS: [&str; 4] = ["page", "drawn", "entries", "editing"];

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
    let school = School::new(&program)?;
    let server = school.serve(&program)?;
    let mut devices = school.join(server.port)?;
    let streams = streams::Streams::open(server.port, &devices)?;
    println!("{} devices send, {} event streams listen", devices.len(), streams.many());
    server.memory("300 devices, five periods on record")?;
    let mut teacher = server.teacher()?;
    if wanted("page") {
        run_page::measure(&server, &mut teacher, &mut devices)?;
    }
    if wanted("drawn") {
        drawn::measure(&server, &mut devices)?;
        server.memory("the same after a busy while with the run page open")?;
    }
    if wanted("entries") {
        sending::as_fast_as_they_can(&mut devices)?;
        sending::at_a_pace(&mut devices)?;
        println!("changes heard on the streams: {}", streams.heard());
        server.memory("after all of that, as many entries as many days bring")?;
    }
    if wanted("editing") {
        editing::measure(&mut teacher)?;
    }
    Ok(())
}

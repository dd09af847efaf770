//! `barm schedule`: its page, its calendar as another parser reads it, and what it says to bad input.

#[path = "browser/fetched.rs"]
mod fetched;
mod program;

use fetched::fetched;
use program::{invented, run, skip};
use std::collections::BTreeSet;
use std::path::Path;
use std::process::Command;

fn page(arguments: &[&str]) -> String {
    let (out, err) =
        run(&invented(), &[&["schedule", "plan.toml"][..], arguments].concat()).ended(0);
    assert_eq!(err, "");
    assert!(!out.contains("NaN") && !out.contains("inf"), "{out}");
    out
}

/// A page as one line.
fn unwrapped(out: &str) -> String {
    out.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// Period 1 begins at 8:10, its last reading lies at minute 39 and two meters have 2:40 for a run of a minute.
#[test]
fn the_page_tells_who_does_what_when() {
    let out = page(&["--period", "1"]);
    let said = unwrapped(&out);
    for wanted in [
        "Period 1, 08:10 to 08:55",
        "up to 3 benches at once",
        "14 08:24 you, 1, 2 seal, card on, zero reading: 10 bags",
        "14:30 08:24:30 Otters, 4, 5 seal",
        "39 08:49 6, 7, 8 reading at minute 24: 9 bags",
        "39 08:49 all open the bags that are done with",
        "45 08:55 all bell",
        "at most 19, in minute 14; sealed all at once, it would be 28",
        "Not at the meter: 22 bags of 28",
        "Bring 6 bags to the meter",
        "5 min until period 2.",
    ] {
        assert!(said.contains(wanted), "{wanted} in\n{out}");
    }
    assert!(!said.contains("Period 2"), "one period was asked for");
    assert!(page(&[]).matches("Period ").count() >= 4, "all of them");
}

#[test]
fn a_short_day_and_a_drill_are_said() {
    let short = unwrapped(&page(&["--short", "35", "--period", "2"]));
    for wanted in [
        "A short day: 35 min in place of 45.",
        "No reading at minute 16: all bags; the period is too short.",
        "No reading at minute 24: all bags; the period is too short.",
        "Take the first zero reading",
        // Over at 9:35; the next bell is at 10:40.
        "65 min until period 4.",
    ] {
        assert!(short.contains(wanted), "{wanted} in\n{short}");
    }
    let drill = unwrapped(&page(&["--from", "10:52", "--stop", "8 min"]));
    for wanted in [
        "Period 4, 10:40 to 11:25",
        "Out of the room from 10:52 for 8 min.",
        "12 10:52 all out of the room for 8 min",
        "22 11:02 you, 1, 2 seal",
        "No reading at minute 20: all bags; the stop moved it past the start of clearing.",
    ] {
        assert!(drill.contains(wanted), "{wanted} in\n{drill}");
    }
    assert!(!drill.contains("Period 1,"), "only the class that is there");
}

#[test]
fn wrong_use_is_2_and_says_what_to_do() {
    for (arguments, wanted) in [
        (&["--period", "9"][..], "the plan has no period “9”"),
        (&["--from", "12:10", "--stop", "5"], "at 12:10 no period of the plan is going on"),
        (&["--from", "8:20", "--stop", "5", "--period", "6"], "period “6” is not going on"),
        (&["--from", "8:20"], "--stop"),
        (&["--from", "noonish", "--stop", "5"], "write it like 10:52"),
        (&["--short", "0"], "write minutes from 0.5 to 600"),
        (&["--short", "NaN"], "write minutes from 0.5 to 600"),
        (&["--short", "1e308"], "write minutes from 0.5 to 600"),
    ] {
        let all = [&["schedule", "plan.toml"][..], arguments].concat();
        let (out, err) = run(&invented(), &all).ended(2);
        assert!(out.is_empty() && unwrapped(&err).contains(wanted), "{arguments:?}: {err}");
    }
}

/// A plan whose periods have no time, no groups or no bags still has an answer in words.
#[test]
fn plans_at_the_edge_have_an_answer() {
    let plan = std::fs::read_to_string(invented().join("plan.toml")).expect("the plan");
    let (head, _) = plan.split_once("[bag_list]").expect("a bag list");
    let home = tempfile::tempdir().expect("a folder");
    std::fs::write(home.path().join("plan.toml"), head).expect("written");
    let (out, _) = run(home.path(), &["schedule", "plan.toml"]).ended(0);
    assert!(out.contains("No bag is on the list"), "{out}");
    let tight = plan.replace("mixing = \"14 min\"", "mixing = \"44 min\"");
    std::fs::write(home.path().join("plan.toml"), tight).expect("written");
    let (out, _) = run(home.path(), &["schedule", "plan.toml"]).ended(0);
    assert!(unwrapped(&out).contains("Not sealed: all bags"), "{out}");
}

/// An event as ical.js (MPL 2.0), a parser that others wrote, finds it, by the clocks of Denver.
type Event = [String; 5];

fn events(file: &Path) -> Result<Vec<Event>, String> {
    let parser = fetched("ical.js", "2.2.1", "dist/ical.es5.cjs")?;
    let script = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/paper/calendar.cjs");
    let output =
        Command::new("node").arg(script).arg(parser).arg(file).arg("America/Denver").output();
    let output = output.map_err(|_| "node is not installed".to_owned())?;
    assert!(output.status.success(), "{}", String::from_utf8_lossy(&output.stderr));
    let said = String::from_utf8(output.stdout).expect("UTF-8");
    let event = |line: &str| -> Event {
        let parts: Vec<String> = line.splitn(5, '|').map(str::to_owned).collect();
        parts.try_into().expect("five")
    };
    Ok(said.lines().map(event).collect())
}

/// The demo's day is 9 March 2027; its last period begins at 13:05.
#[test]
fn another_parser_finds_every_round_in_the_calendar() {
    let home = tempfile::tempdir().expect("a folder");
    let plain = home.path().join("plain.ics");
    let moved = home.path().join("moved.ics");
    let name = |file: &Path| file.to_str().expect("a name").to_owned();
    page(&["--ics", &name(&plain)]);
    page(&["--period", "6", "--from", "13:25", "--stop", "4", "--ics", &name(&moved)]);
    let (_, err) =
        run(&invented(), &["schedule", "plan.toml", "--ics", &name(&plain)]).ended(2);
    assert!(err.contains("is there already"), "{err}");
    let (plain, moved) = match (events(&plain), events(&moved)) {
        (Ok(plain), Ok(moved)) => (plain, moved),
        (Err(why), _) | (_, Err(why)) => {
            return skip("another_parser_finds_every_round", &why);
        }
    };
    let keys: BTreeSet<&String> = plain.iter().map(|event| &event[2]).collect();
    assert_eq!(keys.len(), plain.len(), "each event is known by its own key");
    assert!(plain.iter().all(|event| event[4] == "UTC"));
    let of = |events: &[Event], title: &str| -> Vec<String> {
        let own = events.iter().filter(|event| event[3].starts_with(title));
        own.filter(|event| event[3].ends_with("(period 6)"))
            .map(|event| event[0].clone())
            .collect()
    };
    // Waves at 14, 14½ and 15 minutes; the clock of the test shows whole minutes.
    assert_eq!(
        of(&plain, "Seal, zero reading"),
        ["2027-03-09 13:19", "2027-03-09 13:19", "2027-03-09 13:20"]
    );
    assert_eq!(of(&plain, "Read, minute 24")[2], "2027-03-09 13:44");
    assert_eq!(of(&plain, "Open the bags"), ["2027-03-09 13:44"]);
    assert_eq!(of(&plain, "Empty"), ["2027-03-09 13:46"]);
    // The zero readings and the reading at minute 4 were done before 13:25; minute 8 was due at 13:27, and 24
    // would now lie at 13:47.
    assert!(of(&moved, "Seal").is_empty() && of(&moved, "Read, minute 4").is_empty());
    assert_eq!(of(&moved, "Read, minute 8")[0], "2027-03-09 13:31");
    assert!(of(&moved, "Read, minute 24").is_empty());
    let known = |event: &&Event| keys.contains(&event[2]);
    assert_eq!(moved.iter().filter(known).count(), moved.len(), "a newer file moves events");
}

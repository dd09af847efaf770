//! The calendar, read by ical.js (MPL 2.0), a parser that others wrote, with the time zones of Node.

use crate::fetched::fetched;
use crate::prints::{Class, plan_of, print_of};
use crate::program::{run, skip};
use crate::tools::name;
use std::fs;
use std::path::Path;
use std::process::Command;

/// An event as the other parser finds it.
#[derive(Debug)]
struct Event {
    starts: String,
    minutes: String,
    key: String,
    title: String,
    zone: String,
}

/// The events of a file in the time of Denver; none without the parser.
fn events(file: &Path) -> Result<Vec<Event>, String> {
    let parser = fetched("ical.js", "2.2.1", "dist/ical.es5.cjs")?;
    let script = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/paper/calendar.cjs");
    let arguments = [name(&script), name(&parser), name(file), "America/Denver"];
    let output = Command::new("node").args(arguments).output();
    let output = output.map_err(|_| "node is not installed".to_owned())?;
    assert!(output.status.success(), "{}", String::from_utf8_lossy(&output.stderr));
    let said = String::from_utf8(output.stdout).expect("UTF-8");
    let event = |line: &str| {
        let [starts, minutes, key, title, zone] = line
            .splitn(5, '|')
            .map(str::to_owned)
            .collect::<Vec<_>>()
            .try_into()
            .expect("five");
        Event { starts, minutes, key, title, zone }
    };
    Ok(said.lines().map(event).collect())
}

/// The demo's own hours, as its plan file has them: four periods of 45 minutes on 9 March 2027.
#[test]
fn another_parser_finds_every_period_at_its_bell() {
    let file = print_of(Class::Demo, "en", "letter").file("calendar.ics").expect("a calendar");
    let found = match events(&file) {
        Ok(found) => found,
        Err(why) => return skip("another_parser_finds_every_period", &why),
    };
    let periods: Vec<(&str, &str)> = found
        .iter()
        .filter(|event| event.title.starts_with("Period"))
        .map(|event| (event.starts.as_str(), event.minutes.as_str()))
        .collect();
    let bells = ["08:10", "09:00", "10:40", "13:05"].map(|bell| format!("2027-03-09 {bell}"));
    assert_eq!(periods, bells.iter().map(|bell| (bell.as_str(), "45")).collect::<Vec<_>>());
    let day = |event: &&Event| event.minutes == "day";
    let first = found.iter().find(day).expect("something lasts a day");
    assert_eq!(first.starts, "2027-02-16", "three weeks before");
    // The last bell is at 13:50; half an hour to count, empty and wash.
    let clear = found.iter().find(|event| event.title.starts_with("Clear away"));
    let clear = clear.expect("clearing away");
    assert_eq!((clear.starts.as_str(), clear.minutes.as_str()), ("2027-03-09 13:50", "30"));
    let keys: std::collections::BTreeSet<&str> =
        found.iter().map(|one| one.key.as_str()).collect();
    assert_eq!(keys.len(), found.len(), "each event is known by its own key");
}

/// The clocks of the US go forward on the second Sunday of March, in 2027 the 14th (Energy Policy Act
/// of 2005, from memory): the Friday before and the Monday after both begin at 8:10 by the wall.
#[test]
fn bells_ring_at_their_local_time_on_both_sides_of_a_clock_change() {
    let home = tempfile::tempdir().expect("a folder");
    let plan = fs::read_to_string(plan_of(Class::Demo)).expect("the plan");
    let (before, last) =
        plan.split_once("name = \"6\"\nday = \"Tuesday\"").expect("a last period");
    let second = "[[day]]\nname = \"Monday\"\ndate = 2027-03-15\nzone = \"America/Denver\"\n\
                  room = \"21 °C\"\naltitude = \"1400 m\"\n\n# Periods, in order.";
    let plan = format!("{before}name = \"6\"\nday = \"Monday\"{last}")
        .replacen("date = 2027-03-09", "date = 2027-03-12", 1)
        .replacen("# Periods, in order.", second, 1);
    fs::write(home.path().join("plan.toml"), plan).expect("written");
    let arguments = ["print", "plan.toml", "--what", "calendar", "--out", "paper"];
    run(home.path(), &arguments).ended(0);
    let found = match events(&home.path().join("paper/calendar.ics")) {
        Ok(found) => found,
        Err(why) => return skip("bells_ring_at_their_local_time", &why),
    };
    let starts = |title: &str| {
        let event = found.iter().find(|event| event.title.starts_with(title));
        event.unwrap_or_else(|| panic!("{title} in {found:?}")).starts.clone()
    };
    assert_eq!(starts("Period 1"), "2027-03-12 08:10");
    assert_eq!(starts("Period 6"), "2027-03-15 13:05");
    let timed = found.iter().filter(|event| event.minutes != "day");
    for event in timed {
        assert_eq!(event.zone, "UTC", "{event:?}");
    }
}

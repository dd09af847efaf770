//! What RFC 5545 asks of a file, and local times on both sides of a clock change.

use super::{Calendar, Event, Moment, ics};
use jiff::Timestamp;
use jiff::civil::{Date, date};
use proptest::prelude::*;

fn of(events: Vec<Event>) -> String {
    let made: Timestamp = "2027-02-01T12:00:00Z".parse().expect("a time");
    let calendar = Calendar { title: "Yeast; bags, and \\ more".into(), made, events };
    String::from_utf8(ics(&calendar)).expect("UTF-8")
}

fn event(title: &str, when: Moment) -> Event {
    Event { key: "one".into(), title: title.into(), details: String::new(), when }
}

fn at_ten(day: Date, zone: &str) -> Event {
    let when =
        Moment::Span { from: day.at(10, 0, 0, 0), to: day.at(10, 45, 0, 0), zone: zone.into() };
    event("Period 3", when)
}

/// RFC 5545, 3.1: lines end in CR LF and have 75 octets at most; 3.6: VERSION and PRODID; 3.6.1: UID
/// and DTSTAMP in every event.
#[test]
fn a_file_keeps_to_the_form() {
    let long = "Ñandú ".repeat(40);
    let text = of(vec![event(&long, Moment::Day(date(2027, 3, 9)))]);
    assert!(text.starts_with("BEGIN:VCALENDAR\r\n") && text.ends_with("END:VCALENDAR\r\n"));
    assert_eq!(text.matches('\n').count(), text.matches("\r\n").count());
    for line in text.split("\r\n") {
        assert!(line.len() <= 75, "{} octets: {line}", line.len());
    }
    for needed in ["VERSION:2.0", "PRODID:", "UID:one", "DTSTAMP:20270201T120000Z"] {
        assert_eq!(text.matches(needed).count(), 1, "{needed} in {text}");
    }
    assert!(text.contains("DTSTART;VALUE=DATE:20270309"), "{text}");
}

/// Denver is 7 h behind UTC in winter and 6 h in summer; the clocks of the US go forward on
/// 14 March 2027, the second Sunday of March (Energy Policy Act of 2005, from memory).
#[test]
fn a_class_at_ten_is_at_ten_before_and_after_the_clocks_change() {
    let zone = "America/Denver";
    let text = of(vec![at_ten(date(2027, 3, 12), zone), at_ten(date(2027, 3, 15), zone)]);
    assert!(text.contains("DTSTART:20270312T170000Z"), "{text}");
    assert!(text.contains("DTSTART:20270315T160000Z"), "{text}");
    assert!(text.contains("DTEND:20270315T164500Z"), "{text}");
    let text = of(vec![at_ten(date(2027, 3, 15), "Nowhere/Never")]);
    assert!(text.contains("DTSTART:20270315T100000\r\n"), "a time of no place: {text}");
}

proptest! {
    /// RFC 5545, 3.3.11: what has a meaning in a text is written behind a backslash.
    #[test]
    fn no_text_can_end_its_own_line_or_field(title in "[a-z;,\\\\\n:\"]{0,90}") {
        let text = of(vec![event(&title, Moment::Day(date(2027, 3, 9)))]);
        let unfolded = text.replace("\r\n ", "");
        let lines: Vec<&str> = unfolded.split("\r\n").collect();
        let summary = lines.iter().find_map(|line| line.strip_prefix("SUMMARY:"));
        let back = summary.unwrap_or_default().replace("\\\\", "\u{1}").replace("\\n", "\n")
            .replace("\\;", ";").replace("\\,", ",").replace('\u{1}', "\\");
        prop_assert_eq!(back, title);
        prop_assert_eq!(lines.iter().filter(|line| line.starts_with("BEGIN:")).count(), 2);
    }
}

//! Dates for a calendar program, as iCalendar text (RFC 5545).
//!
//! Times are written in UTC: every calendar shows them in the time of its own place, and no clock
//! change between writing and the day can shift them. What lasts a day has a date and no time.

use icalendar::{Calendar as Written, Component as _, Property};
use jiff::Timestamp;
use jiff::civil::{Date, DateTime};

/// A calendar of things to do.
#[derive(Debug, Clone, PartialEq)]
pub struct Calendar {
    /// Its name.
    pub title: String,
    /// When this file was made.
    pub made: Timestamp,
    /// What there is to do, in order.
    pub events: Vec<Event>,
}

/// One thing to do.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Event {
    /// What it is known by, the same in every file that holds it: a calendar program that reads a
    /// newer file moves it and does not show it twice.
    pub key: String,
    /// What is to be done, in a few words.
    pub title: String,
    /// More about it; may be empty.
    pub details: String,
    /// When.
    pub when: Moment,
}

/// When something is to be done.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Moment {
    /// Some time on that day.
    Day(Date),
    /// From one time to another, by the clocks of a place.
    Span {
        /// When it begins.
        from: DateTime,
        /// When it ends.
        to: DateTime,
        /// IANA name of the time zone of those clocks.
        zone: String,
    },
}

/// The calendar as the bytes of an `.ics` file.
///
/// A time in a zone that nobody knows is written as it is, for the clocks of whoever reads it.
#[must_use]
pub fn ics(calendar: &Calendar) -> Vec<u8> {
    let mut written = Written::empty();
    written.append_property(Property::new("VERSION", "2.0"));
    written.append_property(Property::new("PRODID", "-//Barm//Barm//EN"));
    written.name(&calendar.title);
    for event in &calendar.events {
        written.push(one(event, calendar.made));
    }
    written.to_string().into_bytes()
}

fn one(event: &Event, made: Timestamp) -> icalendar::Event {
    let mut written = icalendar::Event::new();
    written.add_property("UID", &event.key).add_property("DTSTAMP", utc(made));
    written.summary(&event.title);
    if !event.details.is_empty() {
        written.description(&event.details);
    }
    match &event.when {
        Moment::Day(date) => {
            let mut starts = Property::new("DTSTART", date.strftime("%Y%m%d").to_string());
            starts.add_parameter("VALUE", "DATE");
            written.append_property(starts);
            // A day of things to do leaves the teacher free for everything else on it.
            written.add_property("TRANSP", "TRANSPARENT");
        }
        Moment::Span { from, to, zone } => {
            written.add_property("DTSTART", moment(*from, zone));
            written.add_property("DTEND", moment(*to, zone));
        }
    }
    written.done()
}

/// A local time as UTC; in the hour that a clock change leaves out, the time after it.
fn moment(local: DateTime, zone: &str) -> String {
    match local.in_tz(zone) {
        Ok(zoned) => utc(zoned.timestamp()),
        Err(_) => local.strftime("%Y%m%dT%H%M%S").to_string(),
    }
}

fn utc(at: Timestamp) -> String {
    at.strftime("%Y%m%dT%H%M%SZ").to_string()
}

#[cfg(test)]
mod tests;

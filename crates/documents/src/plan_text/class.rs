//! Reads days, periods, groups and what is agreed with them.

use super::clock::clock;
use super::mistake::Wrong;
use super::notes::Notes;
use super::section::{Section, short};
use super::words::{choose, inquiry, within};
use barm_domain::amount::{altitude_meters, celsius, minutes, pascals};
use barm_domain::nearest::nearest;
use barm_domain::plan::{
    Answered, Circumstance, Day, GroupSetting, Period, Place, SetAsideRule, Standard,
};
use jiff::civil::{Date, Time};

/// Two digits of a bag code.
pub(super) const MOST_GROUPS: u32 = 99;

pub(super) fn standards(top: &mut Section<'_>, notes: &mut Notes<'_>) -> Vec<Standard> {
    let mut standards = Vec::new();
    for mut section in top.tables(notes, "standard", "standard") {
        standards.push(Standard {
            code: section.need_name(notes, "code", "\"MS-LS1-7\""),
            wording: section.need_text(notes, "wording", "\"…\""),
            shown_by: section.text(notes, "shown_by"),
        });
        section.finish(notes);
    }
    standards
}

pub(super) fn days(top: &mut Section<'_>, notes: &mut Notes<'_>) -> Vec<Day> {
    let mut days = Vec::new();
    for mut section in top.tables(notes, "day", "day") {
        days.push(Day {
            name: section.need_name(notes, "name", "\"Tuesday\""),
            date: section.need(notes, "date", "2027-03-09", date).unwrap_or_default(),
            zone: section.need(notes, "zone", "\"America/Denver\"", zone).unwrap_or_default(),
            room_celsius: section
                .need(notes, "room", "\"21 °C\"", |text| {
                    within(celsius(text)?, 0.0..=50.0, "°C", text)
                })
                .unwrap_or_default(),
            place: place(&mut section, notes),
        });
        section.finish(notes);
    }
    days
}

fn place(section: &mut Section<'_>, notes: &mut Notes<'_>) -> Place {
    let altitude = section.read(notes, "altitude", "\"1400 m\"", |text| {
        within(altitude_meters(text)?, -500.0..=6000.0, "m", text)
    });
    let pressure = section.read(notes, "pressure", "\"85.6 kPa\"", |text| {
        within(pascals(text)?, 45_000.0..=110_000.0, "Pa", text)
    });
    match (section.has("altitude"), section.has("pressure")) {
        (true, true) => section.wrong(
            notes,
            "pressure",
            Wrong::new(
                "altitude and pressure are both written, and one of them is enough",
                "keep pressure if it was read in the room (not reduced to sea level), else altitude",
            ),
        ),
        (false, false) => section.missing(notes, "altitude", "\"1400 m\""),
        _ => {}
    }
    altitude
        .map(Place::Altitude)
        .or(pressure.map(Place::Pressure))
        .unwrap_or(Place::Altitude(0.0))
}

fn date(text: &str) -> Result<Date, Wrong> {
    text.parse().map_err(|_| {
        Wrong::new(
            format!("“{}” is not a date that exists", short(text)),
            "write year-month-day, such as 2027-03-09",
        )
    })
}

fn zone(text: &str) -> Result<String, Wrong> {
    let known = jiff::tz::TimeZone::get(text).ok();
    // Lookup takes any letter case; the plan keeps the usual spelling.
    if let Some(name) = known.as_ref().and_then(|zone| zone.iana_name()) {
        return Ok(name.to_owned());
    }
    let names: Vec<String> = jiff::tz::db().available().map(|name| name.to_string()).collect();
    let names = || names.iter().map(String::as_str);
    let city = || {
        names()
            .find(|name| name.rsplit('/').next().is_some_and(|c| nearest(text, [c]).is_some()))
    };
    let fix = match nearest(text, names()).or_else(city) {
        Some(meant) => format!("did you mean {meant}?"),
        None => "write the IANA name, such as America/Denver or America/New_York".into(),
    };
    Err(Wrong::new(format!("“{}” is not an IANA time zone", short(text)), fix))
}

/// A time of day: `08:10`, `8:10`, `8:10 am`, `1:05 pm`.
fn time(text: &str) -> Result<Time, Wrong> {
    clock(text).ok_or_else(|| {
        Wrong::new(
            format!("“{}” is not a time of day", short(text)),
            "write it like 08:10, or 13:05 for five past one in the afternoon",
        )
    })
}

pub(super) fn periods(top: &mut Section<'_>, notes: &mut Notes<'_>) -> Vec<Period> {
    let mut periods = Vec::new();
    for mut section in top.tables(notes, "period", "period") {
        periods.push(Period {
            name: section.need_name(notes, "name", "\"1\""),
            day: section.need_name(notes, "day", "\"Tuesday\""),
            start: section.need(notes, "start", "\"08:10\"", time).unwrap_or_default(),
            length_min: section
                .need(notes, "length", "\"45 min\"", |text| {
                    within(minutes(text)?, 1.0..=400.0, "min", text)
                })
                .unwrap_or(1.0),
            students: section.need_count(notes, "students", 1..=999),
            groups: section.need_count(notes, "groups", 1..=MOST_GROUPS),
            grade: grade(&mut section, notes),
            inquiry: section.read(notes, "inquiry", "\"guided\"", inquiry),
        });
        section.finish(notes);
    }
    periods
}

/// A US grade; middle school is 6 to 8, and neighbors are taken.
pub(super) fn grade(section: &mut Section<'_>, notes: &mut Notes<'_>) -> Option<u8> {
    section.count(notes, "grade", 5..=12).and_then(|grade| u8::try_from(grade).ok())
}

pub(super) fn groups(top: &mut Section<'_>, notes: &mut Notes<'_>) -> Vec<GroupSetting> {
    let mut groups = Vec::new();
    for mut section in top.tables(notes, "group", "group") {
        groups.push(GroupSetting {
            period: section.need_name(notes, "period", "\"1\""),
            group: section.need_count(notes, "number", 1..=MOST_GROUPS),
            label: section.name(notes, "label"),
            grade: grade(&mut section, notes),
            inquiry: section.read(notes, "inquiry", "\"guided\"", inquiry),
        });
        section.finish(notes);
    }
    groups
}

pub(super) fn set_aside_rules(
    top: &mut Section<'_>,
    notes: &mut Notes<'_>,
) -> Vec<SetAsideRule> {
    let mut rules = Vec::new();
    for mut section in top.tables(notes, "set_aside", "set_aside") {
        rules.push(SetAsideRule {
            id: section.need_name(notes, "rule", "\"leak\""),
            says: section.need_text(notes, "says", "\"…\""),
        });
        section.finish(notes);
    }
    rules
}

/// What else is true of the day, such as `circumstances = ["substitute"]`.
pub(super) fn circumstances(top: &mut Section<'_>, notes: &mut Notes<'_>) -> Vec<Circumstance> {
    let known = Circumstance::ALL.map(|circumstance| (circumstance.words(), circumstance));
    let mut circumstances = Vec::new();
    for (index, text) in
        top.texts(notes, "circumstances").unwrap_or_default().iter().enumerate()
    {
        match choose(text, &known) {
            Ok(circumstance) => circumstances.push(circumstance),
            Err(wrong) => notes.wrong(format!("circumstances[{index}]"), wrong),
        }
    }
    circumstances
}

pub(super) fn answered(top: &mut Section<'_>, notes: &mut Notes<'_>) -> Vec<Answered> {
    let mut answered = Vec::new();
    for mut section in top.tables(notes, "answered", "answered") {
        answered.push(Answered {
            caution: section.need_name(notes, "caution", "\"S10\""),
            answer: section.need_text(notes, "answer", "\"…\""),
        });
        section.finish(notes);
    }
    answered
}

//! Before and after, as rows of a picture and in figures.

use super::Lesson;
use crate::desk::editing::Chart;
use crate::desk::{Wording, say};
use barm_documents::chart::{
    BagBeforeAfterChart, BeforeAfterChart, BeforeAfterRow, Estimate, Frame, Moment, Reading,
    Terminal,
};
use barm_documents::sheet::PilotBagPicture;
use barm_domain::outlook::Curve;
use barm_domain::pilot::{Change, Unit};

/// From a best guess to the end of the middle 80 % of a normal distribution (standard deviations).
const TO_TENTH: f64 = 1.2816;

/// What changed, in letters.
pub(crate) fn changes_chart(terminal: Terminal, lesson: &Lesson) -> String {
    terminal.before_after(&changes(lesson))
}

/// The plan's bags at the last reading, in letters; nothing where there is no forecast.
pub(crate) fn treatments_chart(terminal: Terminal, lesson: &Lesson) -> Option<String> {
    let rows = treatments(lesson);
    (!rows.is_empty()).then(|| terminal.before_after(&rows))
}

/// Rows before and after, for pages; nothing without rows.
pub(crate) fn range_chart(w: Wording, title: &str, rows: &[BeforeAfterRow]) -> Option<Chart> {
    let (before, now) = (say!(w, "pilot-before"), say!(w, "pilot-now"));
    let chart = BeforeAfterChart { title, words: (&before, &now), rows };
    (!rows.is_empty()).then(|| Chart {
        wide: chart.svg(&Frame::screen(WIDE)),
        narrow: chart.svg(&Frame::screen(NARROW)),
        says: chart.description(),
        asks: title.to_owned(),
    })
}

/// Each bag with yeast before and after, for pages.
pub(crate) fn bag_charts(w: Wording, lesson: &Lesson) -> Vec<Chart> {
    let (before, now) = (say!(w, "pilot-before"), say!(w, "pilot-now"));
    let one = |bag: PilotBagPicture| {
        let chart = BagBeforeAfterChart {
            title: &bag.name,
            words: (&before, &now),
            before: &bag.before,
            after: &bag.after,
            readings: &bag.readings,
        };
        Chart {
            wide: chart.svg(&Frame::screen(WIDE)),
            narrow: chart.svg(&Frame::screen(NARROW)),
            says: chart.description(&Frame::screen(WIDE)),
            asks: bag.name.clone(),
        }
    };
    bags(lesson).into_iter().map(one).collect()
}

/// How wide a picture is on a wide page and on a phone (px).
const WIDE: f64 = 660.0;
const NARROW: f64 = 330.0;

/// A row a number.
pub(crate) fn changes(lesson: &Lesson) -> Vec<BeforeAfterRow> {
    change_rows(&lesson.taught.changes)
}

/// The same of any changes.
pub(crate) fn change_rows(changes: &[Change]) -> Vec<BeforeAfterRow> {
    let row = |change: &Change| {
        let is_factor = change.unit == Unit::Times;
        let scale = |value: f64| if is_factor { value.ln() } else { value };
        let (before, after) = (change.before.map(scale), change.after.map(scale));
        ranges(
            change.title.clone(),
            (before, after),
            doubt(before),
            (figures(change.unit, change.before), figures(change.unit, change.after)),
        )
    };
    changes.iter().map(row).collect()
}

/// A row a treatment: its rise at the last reading.
pub(crate) fn treatments(lesson: &Lesson) -> Vec<BeforeAfterRow> {
    let Some((before, after)) = &lesson.outlooks else { return Vec::new() };
    let ends = |curve: &Curve| {
        let (mid, low, high) = curve.last();
        [mid, low, high]
    };
    // Rises are all in millimeters, so one scale holds for all rows.
    let widest = before.entries.iter().map(|entry| doubt(ends(&entry.rise_mm)));
    let widest = widest.fold(f64::MIN_POSITIVE, f64::max);
    let mut rows: Vec<BeforeAfterRow> = Vec::new();
    for (was, is) in before.entries.iter().zip(&after.entries) {
        if rows.iter().any(|row| row.name == was.treatment) {
            continue;
        }
        let (was_mm, is_mm) = (ends(&was.rise_mm), ends(&is.rise_mm));
        let says = (millimeters(was_mm), millimeters(is_mm));
        rows.push(ranges(was.treatment.clone(), (was_mm, is_mm), widest, says));
    }
    rows
}

/// Half of what lies between the ends of the middle 80 %, as a standard deviation.
fn doubt([_, low, high]: [f64; 3]) -> f64 {
    ((high - low) / (2.0 * TO_TENTH)).max(f64::MIN_POSITIVE)
}

/// Both ranges, counted from the middle of the first in units of a doubt.
fn ranges(
    name: String,
    (before, after): ([f64; 3], [f64; 3]),
    doubt: f64,
    (was, is): (String, String),
) -> BeforeAfterRow {
    let scaled = |[value, low, high]: [f64; 3]| {
        let at = |place: f64| (place - before[0]) / doubt;
        Estimate { value: at(value), low: at(low), high: at(high) }
    };
    BeforeAfterRow { name, before: scaled(before), after: scaled(after), was, is }
}

/// A number with the middle 80 %, such as `0.65 (0.55 to 0.77) × usual`.
fn figures(unit: Unit, [value, low, high]: [f64; 3]) -> String {
    let digits = match unit {
        Unit::Milliliters => 0,
        Unit::Kelvin => 1,
        Unit::Times | Unit::Grams | Unit::Plain => 2,
        Unit::Percent => 3,
    };
    let sign = match unit {
        Unit::Times => "× ",
        Unit::Grams | Unit::Milliliters | Unit::Kelvin | Unit::Percent | Unit::Plain => "",
    };
    let after = match unit {
        Unit::Times | Unit::Plain => String::new(),
        Unit::Grams | Unit::Milliliters | Unit::Kelvin | Unit::Percent => {
            format!(" {}", unit.sign())
        }
    };
    // A number below zero is written with the sign of print.
    let text = format!("{sign}{value:.digits$}{after} ({low:.digits$} to {high:.digits$})");
    text.replace('-', "−")
}

fn millimeters([value, low, high]: [f64; 3]) -> String {
    let whole = |value: f64| value.round() + 0.0;
    let (value, low, high) = (whole(value), whole(low), whole(high));
    format!("{value:.0} mm ({low:.0} to {high:.0})").replace('-', "−")
}

/// Bags with yeast before and after, as they are drawn.
pub(crate) fn bags(lesson: &Lesson) -> Vec<PilotBagPicture> {
    let moments = |curve: &Curve| {
        let each = curve.median.iter().zip(&curve.low).zip(&curve.high).enumerate();
        each.map(|(minute, ((&median, &low), &high))| Moment {
            minute: minute as f64,
            median,
            low,
            high,
        })
        .collect()
    };
    let one = |bag: &barm_domain::pilot::BagBeforeAfter| PilotBagPicture {
        name: format!("Bag {}", bag.letter),
        before: moments(&bag.before),
        after: moments(&bag.after),
        readings: bag
            .seen
            .iter()
            .map(|(minute, rise)| Reading { minute: *minute, rise: *rise, doubtful: false })
            .collect(),
    };
    lesson.taught.bags.iter().map(one).collect()
}

//! One bag: what was expected before, what is expected now, and what was read.

use super::field::{Extent, Field};
use super::frame::Frame;
use super::labels::Tag;
use super::lettering::figure;
use super::look::{INK_SOFT, Look};
use super::series::{Moment, Reading};
use super::svg::{Stroke, at};

/// A bag's band before and after a measurement, with its readings.
#[derive(Debug, Clone, Copy)]
pub struct BagBeforeAfterChart<'a> {
    /// What it shows, in a sentence, for those who cannot see it.
    pub title: &'a str,
    /// The words for then and now.
    pub words: (&'a str, &'a str),
    /// What was expected before, in order of time.
    pub before: &'a [Moment],
    /// What is expected now, in order of time.
    pub after: &'a [Moment],
    /// What was read, in order of time.
    pub readings: &'a [Reading],
}

impl BagBeforeAfterChart<'_> {
    /// Draws the chart as SVG.
    pub fn svg(&self, frame: &Frame) -> String {
        let bands = || self.before.iter().chain(self.after);
        let edges = bands().flat_map(|moment| [moment.low, moment.high]);
        let rises = edges.chain(self.readings.iter().map(|reading| reading.rise));
        let last = bands().map(|moment| moment.minute).fold(0.0, f64::max);
        let extent = Extent::of_rises(rises, last);
        let tags = [(self.before, self.words.0, Look(0)), (self.after, self.words.1, Look(1))];
        let tag = |(band, word, look): &(&[Moment], &str, Look)| {
            let end = band.last()?;
            Some(Tag {
                look: *look,
                name: (*word).to_owned(),
                end: end.median,
                low: end.low,
                high: end.high,
                digits: 0,
            })
        };
        let mut field = Field::rule(frame, &extent, tags.iter().filter_map(tag).collect());
        band(&mut field, frame, self.before, (INK_SOFT, 0.12, "5 3"));
        band(&mut field, frame, self.after, (Look(1).hue(), 0.22, ""));
        field.last_reading(last);
        for (band, _, look) in tags {
            if let Some(end) = band.last() {
                let place = field.at(end.minute, end.median);
                field.drawing.mark(frame, look, place, frame.unit(4.2));
            }
        }
        for reading in self.readings {
            let place = field.at(reading.minute, reading.rise);
            field.drawing.mark(frame, Look(7), place, frame.unit(4.2));
        }
        field.finish(self.title, &self.description(frame))
    }

    /// The chart in words.
    pub fn description(&self, frame: &Frame) -> String {
        let words = &frame.words;
        let ends = [(self.before, self.words.0), (self.after, self.words.1)];
        let band = ends.iter().filter_map(|(band, word)| {
            let end = band.last()?;
            let (low, high) = (figure(end.low, 0), figure(end.high, 0));
            Some(format!("{word}: {low} {} {high} {}", words.to, words.millimeters))
        });
        let read = self.readings.last().map(|reading| {
            let (minute, rise) = (figure(reading.minute, 0), figure(reading.rise, 0));
            format!("{minute} {}: {rise} {}", words.minutes, words.millimeters)
        });
        band.chain(read).collect::<Vec<_>>().join("; ") + "."
    }
}

/// A band with its line.
fn band(
    field: &mut Field<'_>,
    frame: &Frame,
    moments: &[Moment],
    (hue, tint, dash): (&'static str, f64, &str),
) {
    let up = moments.iter().map(|m| field.at(m.minute, m.high));
    let down = moments.iter().rev().map(|m| field.at(m.minute, m.low));
    let edge: Vec<_> = up.chain(down).map(|(x, y)| format!("{} {}", at(x), at(y))).collect();
    if edge.is_empty() {
        return;
    }
    let line = Stroke::new(hue, frame.unit(0.8)).opacity(0.6);
    field.drawing.shape(&format!("M{}Z", edge.join("L")), hue, tint, Some(line));
    let middle: Vec<_> = moments.iter().map(|m| field.at(m.minute, m.median)).collect();
    field.drawing.polyline(&middle, Stroke::new(hue, frame.unit(1.8)).dash(dash));
}

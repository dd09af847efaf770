//! One bag: every reading on the band of what was expected of it.

use super::field::{Extent, Field};
use super::frame::Frame;
use super::labels::Tag;
use super::lettering::figure;
use super::look::Look;
use super::series::Reading;
use super::svg::{Stroke, at};

/// A bag's readings, large enough to be read off.
#[derive(Debug, Clone, Copy)]
pub struct BagChart<'a> {
    /// What it shows, in a sentence, for those who cannot see it.
    pub title: &'a str,
    /// What people call the bag, such as `5A`.
    pub name: &'a str,
    /// The treatment's hue, mark and dash.
    pub look: Look,
    /// Its readings in order of time.
    pub readings: &'a [Reading],
    /// Minute, low edge and high edge (mm) of what is expected; empty where nothing may be shown.
    pub band: &'a [(f64, f64, f64)],
    /// The minute of the last reading of the plan.
    pub last_reading: f64,
}

impl BagChart<'_> {
    /// Draws the chart as SVG.
    pub fn svg(&self, frame: &Frame) -> String {
        let edges = self.band.iter().flat_map(|(_, low, high)| [*low, *high]);
        let rises = self.readings.iter().map(|reading| reading.rise).chain(edges);
        let extent = Extent::of_rises(rises, self.last_reading);
        let tag = |last: &Reading| Tag {
            look: self.look,
            name: self.name.to_owned(),
            end: last.rise,
            low: last.rise,
            high: last.rise,
            digits: 0,
        };
        let mut field =
            Field::rule(frame, &extent, self.readings.last().map(tag).into_iter().collect());
        self.band_on(&mut field, frame);
        field.last_reading(self.last_reading);
        let line: Vec<_> = self.readings.iter().map(|r| field.at(r.minute, r.rise)).collect();
        field.drawing.polyline(&line, Stroke::new(self.look.hue(), frame.unit(2.0)));
        for (reading, at) in self.readings.iter().zip(&line) {
            field.drawing.mark(frame, self.look, *at, frame.unit(4.5));
            if reading.doubtful {
                field.drawing.broken_ring(*at, frame.unit(8.0));
            }
        }
        field.finish(self.title, &self.description(frame))
    }

    /// The chart in words.
    pub fn description(&self, frame: &Frame) -> String {
        let words = &frame.words;
        let one = |r: &Reading| {
            let (minute, rise) = (figure(r.minute, 0), figure(r.rise, 0));
            format!("{minute} {}: {rise} {}", words.minutes, words.millimeters)
        };
        let all: Vec<String> = self.readings.iter().map(one).collect();
        if all.is_empty() { words.nothing.to_owned() } else { all.join("; ") + "." }
    }

    fn band_on(&self, field: &mut Field<'_>, frame: &Frame) {
        let up = self.band.iter().map(|(minute, _, high)| field.at(*minute, *high));
        let down = self.band.iter().rev().map(|(minute, low, _)| field.at(*minute, *low));
        let edge: Vec<_> =
            up.chain(down).map(|(x, y)| format!("{} {}", at(x), at(y))).collect();
        if !edge.is_empty() {
            let hue = self.look.hue();
            let line = Stroke::new(hue, frame.unit(0.8)).opacity(0.45);
            field.drawing.shape(&format!("M{}Z", edge.join("L")), hue, 0.17, Some(line));
        }
    }
}

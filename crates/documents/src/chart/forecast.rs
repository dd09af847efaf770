//! What is likely to happen: a line, a band around it, the last reading and the bell.

use super::field::{Extent, Field};
use super::frame::Frame;
use super::labels::Tag;
use super::lettering::figure;
use super::series::Strand;
use super::svg::{Stroke, at};

/// A forecast of several treatments.
#[derive(Debug, Clone, Copy)]
pub struct ForecastChart<'a> {
    /// What it shows, in a few words, for those who cannot see it.
    pub title: &'a str,
    /// One strand a treatment.
    pub strands: &'a [Strand],
    /// The minute of the last reading.
    pub last_reading: f64,
    /// The minute of the bell.
    pub bell: Option<f64>,
}

impl ForecastChart<'_> {
    /// Draws the chart as SVG.
    pub fn svg(&self, frame: &Frame) -> String {
        let end = self.bell.unwrap_or(self.last_reading).max(self.last_reading);
        // The bell is a double rule; a little air keeps it off the edge.
        let extent = Extent::of_strands(self.strands, self.last_reading, end * 1.01);
        let mut field =
            Field::rule(frame, &extent, self.strands.iter().filter_map(tag).collect());
        for strand in self.strands {
            // Many bands over each other turn to mud; the edges still tell where each one ends.
            let tint = if self.strands.len() > 4 { 0.09 } else { 0.17 };
            band(&mut field, frame, strand, tint);
        }
        for strand in self.strands {
            let line: Vec<_> =
                strand.moments.iter().map(|m| field.at(m.minute, m.median)).collect();
            let width = if strand.look.0 == 0 { 1.8 } else { 2.2 };
            let dash = scaled(strand.look.dash(), frame.unit(1.0));
            let stroke = Stroke::new(strand.look.hue(), frame.unit(width)).dash(&dash);
            field.drawing.polyline(&line, stroke);
        }
        field.last_reading(self.last_reading);
        if let Some(bell) = self.bell {
            field.bell(bell);
        }
        // Labels stand beyond the bell; the same mark at the end of the line leads to its own.
        for strand in self.strands {
            if let Some(end) = strand.moments.last() {
                let at = field.at(end.minute, end.median);
                field.drawing.mark(frame, strand.look, at, frame.unit(4.2));
            }
        }
        field.finish(self.title, &self.description(frame))
    }

    /// The chart in words.
    pub fn description(&self, frame: &Frame) -> String {
        let words = &frame.words;
        let lines = self.strands.iter().filter_map(|strand| {
            let end = strand.moments.last()?;
            Some(format!(
                "{}: {} {} ({} {} {})",
                strand.name,
                figure(end.median, 0),
                words.millimeters,
                figure(end.low, 0),
                words.to,
                figure(end.high, 0)
            ))
        });
        let minute = figure(self.last_reading, 0);
        let lines: Vec<_> = lines.collect();
        format!("{} {} {}. {}.", words.last_reading, minute, words.minutes, lines.join("; "))
    }
}

fn tag(strand: &Strand) -> Option<Tag> {
    let end = strand.moments.last()?;
    Some(Tag {
        look: strand.look,
        name: strand.name.clone(),
        end: end.median,
        low: end.low,
        high: end.high,
        digits: 0,
    })
}

fn band(field: &mut Field<'_>, frame: &Frame, strand: &Strand, tint: f64) {
    let up = strand.moments.iter().map(|m| field.at(m.minute, m.high));
    let down = strand.moments.iter().rev().map(|m| field.at(m.minute, m.low));
    let edge: Vec<_> = up.chain(down).map(|(x, y)| format!("{} {}", at(x), at(y))).collect();
    if edge.is_empty() {
        return;
    }
    let hue = strand.look.hue();
    let line = Stroke::new(hue, frame.unit(0.8)).opacity(0.45);
    field.drawing.shape(&format!("M{}Z", edge.join("L")), hue, tint, Some(line));
}

/// A dash pattern for another size of drawing.
pub(super) fn scaled(dash: &str, by: f64) -> String {
    let parts = dash.split_whitespace().filter_map(|part| part.parse::<f64>().ok());
    parts.map(|part| at(part * by)).collect::<Vec<_>>().join(" ")
}

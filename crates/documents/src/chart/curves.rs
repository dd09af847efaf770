//! What the class read: every bag a thin line, the mean of each treatment a thick one.

use super::field::{Extent, Field, Label};
use super::forecast::scaled;
use super::frame::Frame;
use super::lettering::figure;
use super::series::{Reading, Sheaf};
use super::svg::Stroke;

/// The readings of several treatments over time.
#[derive(Debug, Clone, Copy)]
pub struct CurvesChart<'a> {
    /// What it shows, in a few words, for those who cannot see it.
    pub title: &'a str,
    /// One sheaf a treatment.
    pub sheaves: &'a [Sheaf],
}

impl CurvesChart<'_> {
    /// Draws the chart as SVG.
    pub fn svg(&self, frame: &Frame) -> String {
        let extent = Extent::of_sheaves(self.sheaves);
        let texts: Vec<_> = self
            .sheaves
            .iter()
            .map(|sheaf| (sheaf.name.clone(), end_of(sheaf, frame)))
            .collect();
        let mut field = Field::rule(frame, &extent, &texts);
        for sheaf in self.sheaves {
            for bag in &sheaf.bags {
                thin(&mut field, frame, sheaf, bag);
            }
        }
        for (sheaf, (name, range)) in self.sheaves.iter().zip(texts) {
            let mean: Vec<_> = sheaf.mean.iter().map(|(t, rise)| field.at(*t, *rise)).collect();
            let width = if sheaf.look.0 == 0 { 1.9 } else { 2.6 };
            let dash = scaled(sheaf.look.dash(), frame.unit(1.0));
            let stroke = Stroke::new(sheaf.look.hue(), frame.unit(width)).dash(&dash);
            field.drawing.polyline(&mean, stroke);
            if let Some(&at) = mean.last() {
                field.drawing.mark(frame, sheaf.look, at, frame.unit(5.0));
                field.label(Label { look: sheaf.look, name, range, at });
            }
        }
        field.finish(self.title, &self.description(frame))
    }

    /// The chart in words.
    pub fn description(&self, frame: &Frame) -> String {
        let lines: Vec<_> = self
            .sheaves
            .iter()
            .map(|sheaf| format!("{}: {}", sheaf.name, end_of(sheaf, frame)))
            .collect();
        if lines.is_empty() { frame.words.nothing.to_owned() } else { lines.join("; ") + "." }
    }
}

fn end_of(sheaf: &Sheaf, frame: &Frame) -> String {
    sheaf.mean.last().map_or_else(String::new, |(_, rise)| {
        format!("{} {}", figure(*rise, 1), frame.words.millimeters)
    })
}

fn thin(field: &mut Field<'_>, frame: &Frame, sheaf: &Sheaf, bag: &[Reading]) {
    let line: Vec<_> = bag.iter().map(|r| field.at(r.minute, r.rise)).collect();
    let stroke = Stroke::new(sheaf.look.hue(), frame.unit(0.9)).opacity(0.42);
    field.drawing.polyline(&line, stroke);
    for reading in bag.iter().filter(|reading| reading.doubtful) {
        let at = field.at(reading.minute, reading.rise);
        field.drawing.mark(frame, sheaf.look, at, frame.unit(3.0));
        field.drawing.broken_ring(at, frame.unit(3.6));
    }
}

//! What the class read: every bag a thin line, the mean of each treatment a thick one on a tint as wide as the
//! mean absolute deviation.

use super::field::{Extent, Field};
use super::forecast::scaled;
use super::frame::Frame;
use super::labels::Tag;
use super::lettering::figure;
use super::series::{Reading, Sheaf};
use super::svg::{Stroke, at};

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
        let mut field =
            Field::rule(frame, &extent, self.sheaves.iter().filter_map(tag).collect());
        // Many tints over each other turn to mud.
        let tint = if self.sheaves.len() > 4 { 0.1 } else { 0.16 };
        for sheaf in self.sheaves {
            spread(&mut field, sheaf, tint);
        }
        for sheaf in self.sheaves {
            for bag in &sheaf.bags {
                thin(&mut field, frame, sheaf, bag);
            }
        }
        for sheaf in self.sheaves {
            let mean: Vec<_> = sheaf.mean.iter().map(|(t, rise)| field.at(*t, *rise)).collect();
            let width = if sheaf.look.0 == 0 { 1.9 } else { 2.6 };
            let dash = scaled(sheaf.look.dash(), frame.unit(1.0));
            let stroke = Stroke::new(sheaf.look.hue(), frame.unit(width)).dash(&dash);
            field.drawing.polyline(&mean, stroke);
            if let Some(&at) = mean.last() {
                field.drawing.mark(frame, sheaf.look, at, frame.unit(5.0));
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

fn tag(sheaf: &Sheaf) -> Option<Tag> {
    let (_, end) = *sheaf.mean.last()?;
    let (look, name) = (sheaf.look, sheaf.name.clone());
    Some(Tag { look, name, end, low: end, high: end, digits: 1 })
}

/// The tint around a mean: a mean absolute deviation each way.
fn spread(field: &mut Field<'_>, sheaf: &Sheaf, tint: f64) {
    let spread = sheaf.spread();
    let up = spread.iter().map(|(minute, _, high)| field.at(*minute, *high));
    let down = spread.iter().rev().map(|(minute, low, _)| field.at(*minute, *low));
    let edge: Vec<_> = up.chain(down).map(|(x, y)| format!("{} {}", at(x), at(y))).collect();
    if edge.len() > 2 {
        field.drawing.shape(&format!("M{}Z", edge.join("L")), sheaf.look.hue(), tint, None);
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

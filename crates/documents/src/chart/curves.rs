//! What the class read: every bag a thin line, the mean of each treatment a thick one on a tint as wide as the
//! mean absolute deviation; behind them, where it was foretold, a pale band with a broken edge.

use super::field::{Extent, Field};
use super::forecast::scaled;
use super::frame::Frame;
use super::labels::Tag;
use super::lettering::figure;
use super::series::{Moment, Reading, Sheaf, Strand};
use super::svg::{Stroke, at};

/// The readings of several treatments over time.
#[derive(Debug, Clone, Copy)]
pub struct CurvesChart<'a> {
    /// What it shows, in a few words, for those who cannot see it.
    pub title: &'a str,
    /// One sheaf a treatment.
    pub sheaves: &'a [Sheaf],
    /// What was foretold of them, by the same names; none where nothing is to be shown of it.
    pub bands: &'a [Strand],
}

impl CurvesChart<'_> {
    /// Draws the chart as SVG.
    pub fn svg(&self, frame: &Frame) -> String {
        let extent = Extent::of_sheaves(self.sheaves);
        let bands: Vec<Strand> =
            self.bands.iter().map(|band| until(band, extent.last_minute)).collect();
        let extent = extent.with_bands(&bands);
        let mut field =
            Field::rule(frame, &extent, self.sheaves.iter().filter_map(tag).collect());
        for strand in &bands {
            foretold(&mut field, frame, strand, bands.len());
        }
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
            .map(|sheaf| {
                format!("{}: {}{}", sheaf.name, end_of(sheaf, frame), self.told(sheaf, frame))
            })
            .collect();
        if lines.is_empty() { frame.words.nothing.to_owned() } else { lines.join("; ") + "." }
    }
}

impl CurvesChart<'_> {
    /// What was foretold for the minute at which a mean ends, in words.
    fn told(&self, sheaf: &Sheaf, frame: &Frame) -> String {
        let at = |end: f64| {
            let band = self.bands.iter().find(|band| band.name == sheaf.name)?;
            let off = |moment: &&Moment| (moment.minute - end).abs();
            let near = band.moments.iter().min_by(|a, b| off(a).total_cmp(&off(b)))?;
            (off(&near) <= 0.5).then_some(near)
        };
        let near = sheaf.mean.last().and_then(|(end, _)| at(*end));
        near.map_or_else(String::new, |near| {
            let (low, high) = (figure(near.low, 0), figure(near.high, 0));
            format!(" ({} {low} {} {high})", frame.words.foretold, frame.words.to)
        })
    }
}

/// A forecast up to the last reading: what comes after it was not held against anything.
fn until(band: &Strand, last: f64) -> Strand {
    let moments = band.moments.iter().filter(|moment| moment.minute <= last + 0.5);
    Strand { moments: moments.copied().collect(), ..band.clone() }
}

/// The band of a forecast, paler than the tint around a mean and with an edge of its own, so that the two are told
/// apart in grey as well.
fn foretold(field: &mut Field<'_>, frame: &Frame, strand: &Strand, bands: usize) {
    let side = |edge: fn(&Moment) -> f64| -> Vec<(f64, f64)> {
        strand.moments.iter().map(|moment| field.at(moment.minute, edge(moment))).collect()
    };
    let (low, high) = (side(|moment| moment.low), side(|moment| moment.high));
    if low.len() < 2 {
        return;
    }
    let around = high.iter().chain(low.iter().rev());
    let around: Vec<_> = around.map(|(x, y)| format!("{} {}", at(*x), at(*y))).collect();
    let hue = strand.look.hue();
    let tint = if bands > 4 { 0.05 } else { 0.09 };
    field.drawing.shape(&format!("M{}Z", around.join("L")), hue, tint, None);
    let dash = scaled("1.5 3", frame.unit(1.0));
    for edge in [low, high] {
        let line = Stroke::new(hue, frame.unit(1.0)).opacity(0.6).dash(&dash);
        field.drawing.polyline(&edge, line);
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

//! A law of nature over its range, beside what was measured of it.

use super::forecast::scaled;
use super::frame::Frame;
use super::lettering::{Weight, figure, width};
use super::look::{INK_SOFT, Look, RULE, RULE_STRONG};
use super::scale::Scale;
use super::spacing::apart;
use super::svg::{Anchor, Drawing, Stroke, Style};

/// What is told along one side of the chart.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Axis<'a> {
    /// What it is, in a few words.
    pub name: &'a str,
    /// Its unit; "1" for a share or a ratio.
    pub unit: &'a str,
    /// Where it begins and ends; the ends are moved out to round figures.
    pub from: f64,
    /// The other end.
    pub to: f64,
}

/// One line of a law: computed, measured, or both.
#[derive(Debug, Clone, PartialEq)]
pub struct LawLine {
    /// How it looks.
    pub look: Look,
    /// What stands at its end.
    pub name: String,
    /// What the program computes.
    pub computed: Vec<(f64, f64)>,
    /// What others measured or list, drawn as marks.
    pub measured: Vec<(f64, f64)>,
}

/// Lines of one law over one quantity.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LawChart<'a> {
    /// What it shows, in a few words, for those who cannot see it.
    pub title: &'a str,
    /// From left to right.
    pub across: Axis<'a>,
    /// From the foot up.
    pub up: Axis<'a>,
    /// The lines.
    pub lines: &'a [LawLine],
}

impl LawChart<'_> {
    /// Draws the chart as SVG on a ground of its own, so that it can stand on any page.
    pub fn svg(&self, frame: &Frame) -> String {
        let size = frame.type_size;
        let (top, bottom, left) = (frame.unit(34.0), frame.unit(56.0), frame.unit(52.0));
        let names = self.lines.iter().map(|line| width(&line.name, size, Weight::Semibold));
        // Where the house's type is not at hand, another one is wider.
        let right = 1.3 * names.fold(frame.unit(20.0), f64::max) + frame.unit(38.0);
        let height = frame.width * 0.56;
        let (start, end, foot) = (left, frame.width - right, height - bottom);
        let x = Scale::round(self.across.from, self.across.to, 6, start, end);
        let y = Scale::round(self.up.from, self.up.to, 6, foot, top);
        let mut drawing = Drawing::new();
        let whole = format!("M0 0H{}V{height}H0Z", frame.width);
        drawing.shape(&whole, frame.ground_hue(), 1.0, None);
        self.rule(frame, &mut drawing, (&x, &y), (start, end, top, foot));
        for line in self.lines {
            let place = |(across, up): &(f64, f64)| (x.at(*across), y.at(*up));
            let points: Vec<_> = line.computed.iter().map(place).collect();
            let dash = scaled(line.look.dash(), frame.unit(1.0));
            let stroke = Stroke::new(line.look.hue(), frame.unit(2.2)).dash(&dash);
            drawing.polyline(&points, stroke);
            for at in line.measured.iter().map(place) {
                drawing.mark(frame, line.look, at, frame.unit(4.4));
            }
        }
        self.name_lines(frame, &mut drawing, (&x, &y), (end, top, foot));
        drawing.finish(frame, height, self.title, &self.description())
    }

    /// The chart in words: where each line begins and ends.
    pub fn description(&self) -> String {
        let (across, up) = (unit(self.across.unit), unit(self.up.unit));
        let told = self.lines.iter().filter_map(|line| {
            let points = if line.computed.is_empty() { &line.measured } else { &line.computed };
            let ((x0, y0), (x1, y1)) = (points.first()?, points.last()?);
            let [x0, y0, x1, y1] = [x0, y0, x1, y1].map(|value| plain(*value));
            Some(format!("{}: {y0}{up} at {x0}{across}, {y1}{up} at {x1}{across}", line.name))
        });
        let told: Vec<String> = told.collect();
        format!("{} against {}. {}.", self.up.name, self.across.name, told.join("; "))
    }

    fn rule(
        &self,
        frame: &Frame,
        drawing: &mut Drawing,
        (x, y): (&Scale, &Scale),
        (start, end, top, foot): (f64, f64, f64, f64),
    ) {
        let size = frame.type_size;
        let quiet = Style::new(size).fill(INK_SOFT);
        for &value in &y.ticks {
            let place = y.at(value);
            drawing.line((start, place), (end, place), Stroke::new(RULE, frame.unit(1.0)));
            let at = (start - frame.unit(8.0), place + size * 0.35);
            drawing.text(at, &figure(value, y.digits), quiet.anchor(Anchor::End));
        }
        let axis = Stroke::new(RULE_STRONG, frame.unit(1.0));
        drawing.line((start, foot), (end, foot), axis);
        for &value in &x.ticks {
            let place = x.at(value);
            drawing.line((place, foot), (place, foot + frame.unit(5.0)), axis);
            let below = (place, foot + frame.unit(7.0) + size);
            drawing.text(below, &figure(value, x.digits), quiet.anchor(Anchor::Middle));
        }
        let small = Style::new(frame.small_type()).fill(INK_SOFT);
        let said = |axis: &Axis<'_>| format!("{}{}", axis.name, bracketed(axis.unit));
        drawing.text((frame.unit(8.0), top - frame.unit(14.0)), &said(&self.up), small);
        let under = (end, foot + frame.unit(14.0) + 2.0 * size);
        drawing.text(under, &said(&self.across), small.anchor(Anchor::End));
    }

    /// Each name where its line ends: within the field, or beside it, apart from the others and
    /// behind a piece of the line.
    fn name_lines(
        &self,
        frame: &Frame,
        drawing: &mut Drawing,
        (x, y): (&Scale, &Scale),
        (edge, top, foot): (f64, f64, f64),
    ) {
        let size = frame.type_size;
        let name = |drawing: &mut Drawing, line: &LawLine, (across, up): (f64, f64)| {
            let style = Style::new(size).fill(line.look.hue()).bold();
            drawing.text((across, up + size * 0.35), &line.name, style);
        };
        let mut beside: Vec<(f64, f64, &LawLine)> = Vec::new();
        for line in self.lines {
            let points = if line.computed.is_empty() { &line.measured } else { &line.computed };
            let Some((across, up)) = points.last() else { continue };
            let (across, up) = (x.at(*across), y.at(*up));
            if across < edge - frame.unit(4.0) {
                name(drawing, line, (across + frame.unit(6.0), up - size * 0.6));
            } else {
                // Lines that end together stand in the order in which they came there.
                let mean = points.iter().map(|(_, up)| up).sum::<f64>() / points.len() as f64;
                beside.push((up, -mean, line));
            }
        }
        beside.sort_by(|a, b| a.0.total_cmp(&b.0).then(a.1.total_cmp(&b.1)));
        let wanted: Vec<f64> = beside.iter().map(|(up, ..)| *up).collect();
        let needs = vec![size * 1.3; wanted.len()];
        let places = apart(&wanted, &needs, top - size, foot + size);
        for ((up, _, line), place) in beside.into_iter().zip(places) {
            let dash = scaled(line.look.dash(), frame.unit(1.0));
            let stroke = Stroke::new(line.look.hue(), frame.unit(2.2)).dash(&dash);
            let (from, to) = (edge + frame.unit(6.0), edge + frame.unit(26.0));
            let thin = Stroke::new(line.look.hue(), frame.unit(0.8));
            drawing.line((edge, up), (from, place), thin);
            drawing.line((from, place), (to, place), stroke);
            name(drawing, line, (to + frame.unit(5.0), place));
        }
    }
}

/// A unit behind a figure.
fn unit(unit: &str) -> String {
    if unit == "1" { String::new() } else { format!(" {unit}") }
}

/// A unit behind a name.
fn bracketed(unit: &str) -> String {
    if unit == "1" { String::new() } else { format!(" ({unit})") }
}

/// Three figures that count.
fn plain(value: f64) -> String {
    let size = if value == 0.0 { 0.0 } else { value.abs().log10().floor() };
    figure(value, (2.0 - size).clamp(0.0, 4.0) as usize)
}

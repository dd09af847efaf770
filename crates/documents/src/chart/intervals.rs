//! Differences from the reference: a capped bar, a mark at the estimate, figures and the verdict.

use super::frame::Frame;
use super::lettering::{Weight, clipped, figure, signed, width};
use super::look::INK_SOFT;
use super::rows::{Columns, hairline, upright_figures, upright_lines};
use super::scale::Scale;
use super::series::{Estimate, IntervalRow};
use super::svg::{Anchor, Drawing, Stroke, Style};

/// Differences of several treatments from one reference.
#[derive(Debug, Clone, Copy)]
pub struct IntervalChart<'a> {
    /// What it shows, in a few words, for those who cannot see it.
    pub title: &'a str,
    /// The name of the reference.
    pub reference: &'a str,
    /// One row a treatment.
    pub rows: &'a [IntervalRow],
}

impl IntervalChart<'_> {
    /// Draws the chart as SVG.
    pub fn svg(&self, frame: &Frame) -> String {
        let size = frame.type_size;
        let range = |row: &IntervalRow| row.difference.map(|d| span(frame, &d));
        let widest = |texts: &mut dyn Iterator<Item = String>, factor: f64| {
            texts.map(|text| width(&text, size * factor, Weight::Regular)).fold(0.0, f64::max)
        };
        let ranges =
            widest(&mut self.rows.iter().filter_map(range), 0.95).max(frame.unit(60.0));
        let verdicts = widest(&mut self.rows.iter().map(|row| row.verdict.clone()), 1.1)
            .clamp(frame.unit(40.0), frame.width * 0.2);
        let gap = frame.unit(12.0);
        let estimate = frame.unit(44.0);
        let figures = estimate + gap * 0.7 + ranges + gap + verdicts;
        let names = || self.rows.iter().map(|row| row.name.as_str());
        let beside = Columns::new(frame, names(), figures);
        // Where the strip would be too short to be read, the figures stand on a line below it.
        let below = beside.right - beside.left < frame.unit(150.0);
        let columns = if below { Columns::new(frame, names(), 0.0) } else { beside };
        let right = columns.right - frame.unit(if below { 40.0 } else { 30.0 });
        let (low, high) = self.reach();
        let steps = if frame.width > frame.unit(560.0) { 5 } else { 4 };
        let x = Scale::loose(low, high, steps, columns.left, right);
        let names_on_two_lines = names().any(|name| columns.is_long(frame, name));
        let line = frame.unit(if below { 20.0 } else { 0.0 });
        let tall = frame.unit(if names_on_two_lines { 36.0 } else { 30.0 }) + line;
        let top = frame.unit(26.0);
        let foot = top + tall * self.rows.len().max(1) as f64;
        let mut drawing = Drawing::new();
        // Lines of the grid do not run through figures.
        let strips = if below { self.rows.len() } else { 1 };
        for strip in 0..strips {
            let from = top + tall * strip as f64;
            let to = if below { from + tall - line } else { foot };
            upright_lines(&mut drawing, frame, &x, from, to);
        }
        upright_figures(&mut drawing, frame, &x, foot);
        self.zero_word(frame, &mut drawing, &x, top);
        for (at, row) in self.rows.iter().enumerate() {
            let y = top + tall * at as f64 + (tall - line) / 2.0;
            if at > 0 {
                hairline(&mut drawing, frame, top + tall * at as f64);
            }
            columns.name(frame, &mut drawing, row.look, &row.name, y);
            if let Some(difference) = &row.difference {
                bar(frame, &mut drawing, &x, row, difference, y);
            }
            let (from, baseline, room) = if below {
                let words = frame.width - columns.name - (figures - verdicts);
                (columns.name, top + tall * (at as f64 + 1.0) - frame.unit(9.0), words)
            } else {
                (columns.right, y + size * 0.34, verdicts)
            };
            if let Some(difference) = &row.difference {
                let bold = Style::new(size).bold();
                let value = signed(difference.value, 1);
                // Figures of all rows end in one place, unless they begin a line.
                if below {
                    drawing.text((from, baseline), &value, bold);
                } else {
                    drawing.text((from + estimate, baseline), &value, bold.anchor(Anchor::End));
                }
                let quiet = Style::new(frame.small_type()).fill(INK_SOFT);
                let text = span(frame, difference);
                drawing.text((from + estimate + gap * 0.7, baseline), &text, quiet);
            }
            let verdict = clipped(&row.verdict, room + 1.0, size * 1.1, Weight::Regular);
            let style = Style::new(size * 1.1).quiet().anchor(Anchor::End);
            drawing.text((frame.width, baseline), &verdict, style);
        }
        let title = self.title;
        drawing.finish(frame, foot + frame.unit(26.0), title, &self.description(frame))
    }

    fn reach(&self) -> (f64, f64) {
        let ends = self.rows.iter().filter_map(|row| row.difference);
        let ends = ends.flat_map(|d| [d.low, d.high, d.value]).filter(|end| end.is_finite());
        let (low, high) =
            ends.fold((0.0_f64, 0.0_f64), |(low, high), end| (low.min(end), high.max(end)));
        if high - low > 0.0 { (low, high) } else { (0.0, 5.0) }
    }

    fn zero_word(&self, frame: &Frame, drawing: &mut Drawing, x: &Scale, top: f64) {
        let size = frame.small_type();
        let text = format!("{} {}", frame.words.same_as, self.reference);
        let text = clipped(&text, frame.width * 0.6, size, Weight::Regular);
        let half = width(&text, size, Weight::Regular) / 2.0;
        let middle = x.at(0.0).clamp(half, (frame.width - half).max(half));
        let style = Style::new(size).fill(INK_SOFT).anchor(Anchor::Middle);
        drawing.text((middle, top - frame.unit(8.0)), &text, style);
    }

    /// The chart in words.
    pub fn description(&self, frame: &Frame) -> String {
        let lines = self.rows.iter().map(|row| match &row.difference {
            Some(difference) => format!(
                "{}: {} {} ({}), {}",
                row.name,
                signed(difference.value, 1),
                frame.words.millimeters,
                span(frame, difference),
                row.verdict
            ),
            None => format!("{}: {}", row.name, row.verdict),
        });
        let lines: Vec<_> = lines.collect();
        format!("{} {}: {}.", frame.words.same_as, self.reference, lines.join("; "))
    }
}

fn span(frame: &Frame, difference: &Estimate) -> String {
    format!("{} {} {}", figure(difference.low, 1), frame.words.to, figure(difference.high, 1))
}

fn bar(
    frame: &Frame,
    drawing: &mut Drawing,
    x: &Scale,
    row: &IntervalRow,
    difference: &Estimate,
    y: f64,
) {
    let (low, high) = (x.at(difference.low), x.at(difference.high));
    let hue = row.look.hue();
    drawing.line((low, y), (high, y), Stroke::new(hue, frame.unit(1.8)));
    for end in [low, high] {
        let (up, down) = (y - frame.unit(5.0), y + frame.unit(5.0));
        drawing.line((end, up), (end, down), Stroke::new(hue, frame.unit(1.8)));
    }
    drawing.mark(frame, row.look, (x.at(difference.value), y), frame.unit(4.8));
}

//! What is known of numbers before and after a measurement: two bars a row, on the scale of the first.

use super::frame::Frame;
use super::lettering::{Weight, two_lines, width};
use super::look::{INK, INK_SOFT, RULE, RULE_STRONG};
use super::rows::hairline;
use super::scale::Scale;
use super::series::Estimate;
use super::svg::{Anchor, Drawing, Stroke, Style};

/// One number before and after.
#[derive(Debug, Clone, PartialEq, serde::Serialize)]
pub struct BeforeAfterRow {
    /// What it is.
    pub name: String,
    /// What was known, counted from the best guess of then, in units of its doubt, or of the widest of
    /// all rows.
    pub before: Estimate,
    /// What is known now, on the same scale.
    pub after: Estimate,
    /// What was known, in figures with their unit.
    pub was: String,
    /// What is known now, in figures with their unit.
    pub is: String,
}

/// Numbers before and after, each counted from what was known before.
#[derive(Debug, Clone, Copy)]
pub struct BeforeAfterChart<'a> {
    /// What it shows, in a few words, for those who cannot see it.
    pub title: &'a str,
    /// The words for then and now.
    pub words: (&'a str, &'a str),
    /// One row a number.
    pub rows: &'a [BeforeAfterRow],
}

/// The hue of what is known now; with its thickness and its place it is told apart three times.
const NOW: &str = "#9F4731";

impl BeforeAfterChart<'_> {
    /// Draws the chart as SVG.
    pub fn svg(&self, frame: &Frame) -> String {
        let size = frame.type_size;
        let gap = frame.unit(14.0);
        let most = frame.width * 0.3;
        let lines = |name: &str| two_lines(name, most, size, Weight::Semibold);
        let names = self.rows.iter().flat_map(|row| lines(&row.name));
        let left = names.map(|line| width(&line, size, Weight::Semibold)).fold(0.0, f64::max);
        let left = left.min(most) + gap;
        let figures = self.rows.iter().flat_map(|row| [&row.was, &row.is]);
        let figures =
            figures.map(|text| width(text, size, Weight::Semibold)).fold(0.0, f64::max);
        let right = (frame.width - figures - gap).max(left + frame.unit(80.0));
        let (low, high) = reach(self.rows);
        let x = Scale::loose(low, high, 4, left, right);
        let tall = frame.unit(40.0);
        let top = frame.unit(30.0);
        let foot = top + tall * self.rows.len().max(1) as f64;
        let mut drawing = Drawing::new();
        self.legend(frame, &mut drawing, left, top);
        let zero = x.at(0.0);
        drawing.line((zero, top), (zero, foot), Stroke::new(RULE_STRONG, frame.unit(1.0)));
        for (at, row) in self.rows.iter().enumerate() {
            let y = top + tall * (at as f64 + 0.5);
            if at > 0 {
                hairline(&mut drawing, frame, y - tall / 2.0);
            }
            let words = lines(&row.name);
            let first = y + size * 0.34 - (words.len() - 1) as f64 * size * 0.56;
            for (line, word) in words.iter().enumerate() {
                let place = (0.0, first + line as f64 * size * 1.12);
                drawing.text(place, word, Style::new(size).bold());
            }
            let apart = frame.unit(8.0);
            bar(&mut drawing, frame, &x, &row.before, y - apart, (INK_SOFT, 1.4, 2.6));
            bar(&mut drawing, frame, &x, &row.after, y + apart, (NOW, 3.2, 4.6));
            let above = (right + gap, y - apart + size * 0.34);
            drawing.text(above, &row.was, Style::new(size).fill(INK_SOFT));
            let below = (right + gap, y + apart + size * 0.34);
            drawing.text(below, &row.is, Style::new(size).bold());
        }
        drawing.line((left, foot), (right, foot), Stroke::new(RULE, frame.unit(1.0)));
        drawing.finish(frame, foot + frame.unit(8.0), self.title, &self.description())
    }

    /// Both bars with their words, over the strip.
    fn legend(&self, frame: &Frame, drawing: &mut Drawing, left: f64, top: f64) {
        let size = frame.small_type();
        let y = top - frame.unit(16.0);
        let long = frame.unit(22.0);
        let mut x = left;
        for (word, (hue, thick)) in
            [(self.words.0, (INK_SOFT, 1.4)), (self.words.1, (NOW, 3.2))]
        {
            drawing.line((x, y), (x + long, y), Stroke::new(hue, frame.unit(thick)));
            x += long + frame.unit(6.0);
            let style = Style::new(size).fill(INK).anchor(Anchor::Start);
            drawing.text((x, y + size * 0.34), word, style);
            x += width(word, size, Weight::Regular) + frame.unit(18.0);
        }
    }

    /// The chart in words.
    pub fn description(&self) -> String {
        let (before, now) = self.words;
        let one = |row: &BeforeAfterRow| {
            format!("{}: {before} {}, {now} {}", row.name, row.was, row.is)
        };
        let all: Vec<String> = self.rows.iter().map(one).collect();
        if all.is_empty() { String::new() } else { all.join("; ") + "." }
    }
}

/// From the lowest to the highest end of any bar, and what was known before in full.
pub(super) fn reach(rows: &[BeforeAfterRow]) -> (f64, f64) {
    let ends = rows
        .iter()
        .flat_map(|row| [row.before.low, row.before.high, row.after.low, row.after.high]);
    let ends = ends.filter(|end| end.is_finite());
    ends.fold((-1.4_f64, 1.4_f64), |(low, high), end| (low.min(end), high.max(end)))
}

fn bar(
    drawing: &mut Drawing,
    frame: &Frame,
    x: &Scale,
    range: &Estimate,
    y: f64,
    (hue, thick, dot): (&'static str, f64, f64),
) {
    let stroke = Stroke::new(hue, frame.unit(thick));
    drawing.line((x.at(range.low), y), (x.at(range.high), y), stroke);
    drawing.circle((x.at(range.value), y), frame.unit(dot), hue, None);
}

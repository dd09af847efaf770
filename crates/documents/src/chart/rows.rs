//! The ledger form of a chart: a name at the left, a strip in the middle, figures at the right.

use super::frame::Frame;
use super::lettering::{Weight, figure, two_lines, width};
use super::look::{INK, INK_SOFT, Look, RULE, RULE_STRONG};
use super::scale::Scale;
use super::svg::{Anchor, Drawing, Stroke, Style};

/// Where the three columns of a chart in rows lie.
pub(super) struct Columns {
    /// Where names begin, right of the mark.
    pub(super) name: f64,
    /// Where the strip begins.
    pub(super) left: f64,
    /// Where the strip ends and the figures begin.
    pub(super) right: f64,
}

impl Columns {
    /// Room for the longest of `names`, up to a third of the width, and for `figures` at the right.
    pub(super) fn new<'a>(
        frame: &Frame,
        names: impl Iterator<Item = &'a str>,
        figures: f64,
    ) -> Self {
        let size = frame.type_size;
        let name = frame.unit(23.0);
        let most = frame.width * 0.3 - name;
        let widest = names
            .flat_map(|text| two_lines(text, most, size, Weight::Semibold))
            .map(|line| width(&line, size, Weight::Semibold))
            .fold(0.0, f64::max);
        Self {
            name,
            left: name + widest.min(most) + frame.unit(18.0),
            right: frame.width - figures,
        }
    }

    fn lines(&self, frame: &Frame, name: &str) -> Vec<String> {
        let room = self.left - self.name - frame.unit(10.0);
        two_lines(name, room, frame.type_size, Weight::Semibold)
    }

    /// Whether `name` takes two lines.
    pub(super) fn is_long(&self, frame: &Frame, name: &str) -> bool {
        self.lines(frame, name).len() > 1
    }

    /// The mark and the name, centered on `middle`.
    pub(super) fn name(
        &self,
        frame: &Frame,
        drawing: &mut Drawing,
        look: Look,
        name: &str,
        middle: f64,
    ) {
        let size = frame.type_size;
        drawing.mark(frame, look, (frame.unit(8.0), middle), frame.unit(4.8));
        let lines = self.lines(frame, name);
        let first = middle + size * 0.34 - (lines.len() - 1) as f64 * size * 0.56;
        for (at, line) in lines.iter().enumerate() {
            let style = Style::new(size);
            // The second line is what was added; the quiet weight says so.
            let style = if at == 0 { style.bold() } else { style };
            drawing.text((self.name, first + at as f64 * size * 1.12), line, style);
        }
    }
}

/// A hairline under a row, from edge to edge.
pub(super) fn hairline(drawing: &mut Drawing, frame: &Frame, y: f64) {
    drawing.line((0.0, y), (frame.width, y), Stroke::new(RULE, frame.unit(1.0)));
}

/// Upright grid lines with the zero in ink, and the figures below them.
pub(super) fn uprights(drawing: &mut Drawing, frame: &Frame, x: &Scale, top: f64, foot: f64) {
    upright_lines(drawing, frame, x, top, foot);
    upright_figures(drawing, frame, x, foot);
}

/// Upright grid lines with the zero in ink.
pub(super) fn upright_lines(
    drawing: &mut Drawing,
    frame: &Frame,
    x: &Scale,
    top: f64,
    foot: f64,
) {
    for &tick in x.ticks.iter().filter(|tick| tick.abs() > 1e-9) {
        let place = x.at(tick);
        drawing.line((place, top), (place, foot), Stroke::new(RULE, frame.unit(1.0)));
    }
    let zero = x.at(0.0);
    drawing.line((zero, top), (zero, foot), Stroke::new(INK, frame.unit(1.5)));
}

/// The figures below upright grid lines that end at `foot`.
pub(super) fn upright_figures(drawing: &mut Drawing, frame: &Frame, x: &Scale, foot: f64) {
    let size = frame.type_size;
    for &tick in &x.ticks {
        let place = x.at(tick);
        let below = foot + frame.unit(5.0);
        drawing.line((place, foot), (place, below), Stroke::new(RULE_STRONG, frame.unit(1.0)));
        let text = figure(tick, x.digits);
        let quiet = Style::new(size).fill(INK_SOFT);
        let at = (place, below + size);
        drawing.text(at, &text, quiet.anchor(Anchor::Middle));
        if tick >= x.last() {
            let beside = place + width(&text, size, Weight::Regular) / 2.0 + size * 0.25;
            drawing.text((beside, at.1), frame.words.millimeters, quiet);
        }
    }
}

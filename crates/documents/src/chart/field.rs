//! The ruled field on which curves are drawn: grid, axes, zero line, bell, and labels at the end of lines.

use super::frame::Frame;
use super::lettering::{Weight, clipped, figure, width};
use super::look::{INK, INK_SOFT, Look, RULE, RULE_STRONG};
use super::scale::Scale;
use super::series::{Moment, Reading, Sheaf, Strand};
use super::svg::{Anchor, Drawing, Stroke, Style};

/// A label at the end of a line.
pub(super) struct Label {
    pub(super) look: Look,
    pub(super) name: String,
    /// The quiet second part, such as "11 to 19 mm".
    pub(super) range: String,
    /// Where the line ends.
    pub(super) at: (f64, f64),
}

/// A chart of rise against time while it is being drawn.
pub(super) struct Field<'a> {
    frame: &'a Frame,
    pub(super) drawing: Drawing,
    height: f64,
    top: f64,
    right: f64,
    bottom: f64,
    left: f64,
    x: Scale,
    y: Scale,
    labels: Vec<Label>,
    two: bool,
}

/// What a field must have room for.
pub(super) struct Extent {
    pub(super) last_tick: f64,
    pub(super) last_minute: f64,
    pub(super) lowest: f64,
    pub(super) highest: f64,
}

impl Extent {
    fn over(rises: impl Iterator<Item = f64>) -> (f64, f64) {
        rises
            .filter(|rise| rise.is_finite())
            .fold((0.0_f64, 1.0_f64), |(low, high), rise| (low.min(rise), high.max(rise)))
    }

    /// Room for forecasts with their bands.
    pub(super) fn of_strands(strands: &[Strand], last_tick: f64, last_minute: f64) -> Self {
        let moments = || strands.iter().flat_map(|strand| &strand.moments);
        let edges = moments().flat_map(|m: &Moment| [m.low, m.high, m.median]);
        let (lowest, highest) = Self::over(edges);
        Self { last_tick, last_minute, lowest, highest }
    }

    /// Room for these rises until the last reading.
    pub(super) fn of_rises(rises: impl Iterator<Item = f64>, last: f64) -> Self {
        let (lowest, highest) = Self::over(rises);
        Self { last_tick: last, last_minute: last * 1.01, lowest, highest }
    }

    /// Room for readings and their means.
    pub(super) fn of_sheaves(sheaves: &[Sheaf]) -> Self {
        let readings = || sheaves.iter().flat_map(|sheaf| sheaf.bags.iter().flatten());
        let means = || sheaves.iter().flat_map(|sheaf| &sheaf.mean);
        let rises = readings().map(|r: &Reading| r.rise).chain(means().map(|(_, rise)| *rise));
        let (lowest, highest) = Self::over(rises);
        let minutes = readings().map(|r| r.minute).chain(means().map(|(minute, _)| *minute));
        let last = minutes.filter(|minute| minute.is_finite()).fold(0.0, f64::max);
        Self { last_tick: last, last_minute: last, lowest, highest }
    }
}

impl<'a> Field<'a> {
    /// Rules a field with room for `extent` and, at its right, for `labels`.
    pub(super) fn rule(frame: &'a Frame, extent: &Extent, labels: &[(String, String)]) -> Self {
        let size = frame.type_size;
        let line = size * 1.25;
        // Two lines a label if there is room, one otherwise; the field grows before a label is dropped.
        let base = (frame.width * 0.4).clamp(frame.unit(240.0), frame.unit(400.0));
        let pads = frame.unit(22.0 + 34.0);
        let needed = labels.len() as f64 * line * 1.02 + pads;
        let needed_by_two = labels.len() as f64 * line * 2.0 + pads;
        let two = needed_by_two <= base.max(frame.width * 0.62);
        let height = base.max(if two { needed_by_two } else { needed });
        let room = frame.width * 0.34;
        let widest = labels
            .iter()
            .map(|(name, range)| {
                let range = width(range, frame.small_type(), Weight::Regular);
                width(name, size, Weight::Semibold).max(range)
            })
            .fold(0.0, f64::max);
        // Words over the field stand clear of every line and band.
        let (top, bottom, left) = (frame.unit(22.0), frame.unit(34.0), frame.unit(34.0));
        let right = frame.unit(60.0) + widest.min(room);
        let x_room = (left, frame.width - right);
        let wanted = ((x_room.1 - x_room.0) / frame.unit(52.0)).clamp(2.0, 7.0) as usize;
        let x =
            Scale::minutes(extent.last_tick, extent.last_minute, wanted, x_room.0, x_room.1);
        let y = Scale::loose(extent.lowest, extent.highest, 5, height - bottom, top);
        let drawing = Drawing::new();
        let mut field = Self {
            frame,
            drawing,
            height,
            top,
            right,
            bottom,
            left,
            x,
            y,
            labels: Vec::new(),
            two,
        };
        field.grid();
        field
    }

    /// The place of a rise at a minute.
    pub(super) fn at(&self, minute: f64, rise: f64) -> (f64, f64) {
        (self.x.at(minute), self.y.at(rise))
    }

    fn grid(&mut self) {
        let frame = self.frame;
        let size = frame.type_size;
        let (start, end) = (self.left, frame.width - self.right);
        let (x, y) = (self.x.clone(), self.y.clone());
        let quiet = Style::new(size).fill(INK_SOFT);
        for &rise in &y.ticks {
            let place = y.at(rise);
            self.drawing.line((start, place), (end, place), Stroke::new(RULE, frame.unit(1.0)));
            let figure = figure(rise, y.digits);
            let to_the_left = quiet.anchor(Anchor::End);
            self.drawing.text(
                (start - frame.unit(8.0), place + size * 0.35),
                &figure,
                to_the_left,
            );
        }
        let unit = Style::new(frame.small_type()).fill(INK_SOFT).anchor(Anchor::End);
        let under_top = (start - frame.unit(8.0), y.at(y.last()) + size * 1.3);
        self.drawing.text(under_top, frame.words.millimeters, unit);
        let foot = self.height - self.bottom;
        for &minute in &x.ticks {
            let place = x.at(minute);
            let tick = Stroke::new(RULE_STRONG, frame.unit(1.0));
            self.drawing.line((place, foot), (place, foot + frame.unit(5.0)), tick);
            let last = minute >= x.last();
            let text = figure(minute, x.digits);
            let below = (place, foot + frame.unit(6.0) + size);
            self.drawing.text(below, &text, quiet.anchor(Anchor::Middle));
            if last {
                let beside = below.0 + width(&text, size, Weight::Regular) / 2.0 + size * 0.25;
                self.drawing.text((beside, below.1), frame.words.minutes, quiet);
            }
        }
        let zero = y.at(0.0);
        self.drawing.line((start, zero), (end, zero), Stroke::new(INK, frame.unit(1.5)));
    }

    /// A single upright rule with a word, at the last reading.
    pub(super) fn last_reading(&mut self, minute: f64) {
        let place = self.x.at(minute);
        let stroke = Stroke::new(RULE_STRONG, self.frame.unit(1.0));
        self.drawing.line((place, self.top), (place, self.height - self.bottom), stroke);
        self.word_at(place, self.frame.words.last_reading, INK_SOFT);
    }

    /// The double rule: here the period ends.
    pub(super) fn bell(&mut self, minute: f64) {
        let place = self.x.at(minute);
        for side in [-1.8, 1.8] {
            let at = place + self.frame.unit(side);
            let stroke = Stroke::new(INK, self.frame.unit(1.2));
            self.drawing.line((at, self.top), (at, self.height - self.bottom), stroke);
        }
        self.word_at(place + self.frame.unit(2.4), self.frame.words.bell, INK);
    }

    fn word_at(&mut self, x: f64, word: &str, fill: &'static str) {
        let size = self.frame.small_type();
        let style = Style::new(size).fill(fill).anchor(Anchor::End);
        self.drawing.text((x, self.top - self.frame.unit(6.0)), word, style);
    }

    /// Notes a label; labels are placed together when the chart is finished.
    pub(super) fn label(&mut self, label: Label) {
        self.labels.push(label);
    }

    /// Places the labels and ends the picture.
    pub(super) fn finish(mut self, title: &str, desc: &str) -> String {
        let labels = std::mem::take(&mut self.labels);
        let size = self.frame.type_size;
        let line = size * 1.25;
        let (first, last) = (self.top + size * 0.6, self.height - self.bottom - size * 0.2);
        let two = self.two;
        let need = if two { 2.0 * line } else { line };
        let wanted: Vec<f64> = labels.iter().map(|label| label.at.1).collect();
        let edge = if two { line * 0.5 } else { 0.0 };
        let places = apart(&wanted, need, first + edge, last - edge);
        let mark_at = self.frame.width - self.right + self.frame.unit(38.0);
        for (label, place) in labels.iter().zip(places) {
            self.lettered(label, place, mark_at, two);
        }
        self.drawing.finish(self.frame, self.height, title, desc)
    }

    fn lettered(&mut self, label: &Label, place: f64, mark_at: f64, two: bool) {
        let frame = self.frame;
        let size = frame.type_size;
        let leader = Stroke::new(RULE_STRONG, frame.unit(1.0)).dash("0.8 2.2");
        let start = (label.at.0 + frame.unit(7.0), label.at.1);
        self.drawing.polyline(&[start, (mark_at - frame.unit(9.0), place)], leader);
        self.drawing.mark(frame, label.look, (mark_at, place), frame.unit(4.8));
        let x = mark_at + frame.unit(11.0);
        let room = frame.width - x;
        let quiet = Style::new(frame.small_type()).fill(INK_SOFT);
        if two && !label.range.is_empty() {
            let name = clipped(&label.name, room, size, Weight::Semibold);
            self.drawing.text((x, place - size * 0.22), &name, Style::new(size).bold());
            self.drawing.text((x, place + size * 0.93), &label.range, quiet);
        } else {
            let name = clipped(&label.name, room, size, Weight::Semibold);
            self.drawing.text((x, place + size * 0.34), &name, Style::new(size).bold());
        }
    }
}

/// Moves `wanted` places apart until each has `need` around it, keeping their order, none above `first`; below
/// `last` only if there is no room otherwise.
pub(super) fn apart(wanted: &[f64], need: f64, first: f64, last: f64) -> Vec<f64> {
    let mut order: Vec<usize> = (0..wanted.len()).collect();
    order.sort_by(|a, b| wanted[*a].total_cmp(&wanted[*b]));
    // Blocks of labels that touch sit where their members would like to be on average.
    let mut blocks: Vec<(f64, usize)> = Vec::new();
    let top = |(sum, count): (f64, usize)| {
        let span = need * (count - 1) as f64;
        let middle = sum / count as f64;
        (middle - span / 2.0).min(last - span).max(first)
    };
    for &label in &order {
        let mut block = (wanted[label], 1);
        while let Some(&above) = blocks.last() {
            if top(above) + need * above.1 as f64 <= top(block) + 1e-9 {
                break;
            }
            blocks.pop();
            block = (above.0 + block.0, above.1 + block.1);
        }
        blocks.push(block);
    }
    let mut places = vec![0.0; wanted.len()];
    let mut labels = order.into_iter();
    for block in blocks {
        for step in 0..block.1 {
            if let Some(label) = labels.next() {
                places[label] = top(block) + need * step as f64;
            }
        }
    }
    places
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn labels_keep_apart_and_in_order(wanted in prop::collection::vec(0.0..200.0, 1..14)) {
            let places = apart(&wanted, 12.0, 10.0, 190.0);
            let mut pairs: Vec<_> = wanted.iter().zip(&places).collect();
            pairs.sort_by(|a, b| a.0.total_cmp(b.0).then(a.1.total_cmp(b.1)));
            prop_assert!(places.iter().all(|place| *place >= 10.0 - 1e-6 && *place <= 190.0 + 1e-6));
            prop_assert!(pairs.windows(2).all(|two| two[1].1 - two[0].1 >= 12.0 - 1e-6), "{:?}", pairs);
        }
    }
}

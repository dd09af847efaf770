//! The ruled field on which curves are drawn: grid, axes, zero line, bell, and labels at the end of lines.

use super::frame::Frame;
use super::labels::{Labels, Room, Tag};
use super::lettering::{Weight, figure, width};
use super::look::{INK, INK_SOFT, RULE, RULE_STRONG};
use super::scale::Scale;
use super::series::{Moment, Reading, Sheaf, Strand};
use super::svg::{Anchor, Drawing, Stroke, Style};

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
    labels: Labels,
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
        let edges =
            sheaves.iter().flat_map(Sheaf::spread).flat_map(|(_, low, high)| [low, high]);
        let rises = readings().map(|r: &Reading| r.rise).chain(means().map(|(_, rise)| *rise));
        let rises = rises.chain(edges);
        let (lowest, highest) = Self::over(rises);
        let minutes = readings().map(|r| r.minute).chain(means().map(|(minute, _)| *minute));
        let last = minutes.filter(|minute| minute.is_finite()).fold(0.0, f64::max);
        Self { last_tick: last, last_minute: last, lowest, highest }
    }

    /// The same with room for bands behind the readings.
    pub(super) fn with_bands(self, bands: &[Strand]) -> Self {
        let moments = bands.iter().flat_map(|band| &band.moments);
        let (lowest, highest) = Self::over(moments.flat_map(|m: &Moment| [m.low, m.high]));
        Self { lowest: self.lowest.min(lowest), highest: self.highest.max(highest), ..self }
    }
}

impl<'a> Field<'a> {
    /// Rules a field with room for `extent` and, at its right, for labels at the ends of its lines.
    pub(super) fn rule(frame: &'a Frame, extent: &Extent, tags: Vec<Tag>) -> Self {
        // Words over the field stand clear of every line and band.
        let (top, bottom, left) = (frame.unit(22.0), frame.unit(34.0), frame.unit(34.0));
        let rises =
            |height: f64| Scale::loose(extent.lowest, extent.highest, 5, height - bottom, top);
        // Two lines a label if there is room, one otherwise; the field grows before a label is dropped.
        let base = (frame.width * 0.4).clamp(frame.unit(240.0), frame.unit(400.0));
        let least = rises(base);
        let sure = |y: f64| if y.is_finite() { y } else { base };
        let ends: Vec<f64> = tags.iter().map(|tag| sure(least.at(tag.end))).collect();
        let labels = Labels::new(frame, tags, &ends, base, top + bottom);
        let height = base.max(labels.needed(frame) + top + bottom);
        let right = frame.unit(60.0) + labels.widest(frame).min(frame.width * 0.34);
        let x_room = (left, frame.width - right);
        let wanted = ((x_room.1 - x_room.0) / frame.unit(52.0)).clamp(2.0, 7.0) as usize;
        let x =
            Scale::minutes(extent.last_tick, extent.last_minute, wanted, x_room.0, x_room.1);
        let y = rises(height);
        let drawing = Drawing::new();
        let mut field = Self { frame, drawing, height, top, right, bottom, left, x, y, labels };
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

    /// Draws the labels and ends the picture.
    pub(super) fn finish(mut self, title: &str, desc: &str) -> String {
        let room = Room {
            edge: self.frame.width - self.right,
            top: self.top,
            foot: self.height - self.bottom + self.frame.type_size * 0.4,
        };
        let y = &self.y;
        self.labels.draw(self.frame, &mut self.drawing, &room, |rise| y.at(rise));
        self.drawing.finish(self.frame, self.height, title, desc)
    }
}

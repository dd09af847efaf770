//! Labels at the ends of lines: apart from each other, and under one head where many lines end together.

use super::frame::Frame;
use super::lettering::{Weight, clipped, figure, width};
use super::look::{INK_SOFT, Look, RULE_STRONG};
use super::spacing::{apart, together};
use super::svg::{Drawing, Stroke, Style};

/// What is said of a line where it ends.
#[derive(Debug, Clone)]
pub(super) struct Tag {
    pub(super) look: Look,
    pub(super) name: String,
    /// Where the line ends (mm).
    pub(super) end: f64,
    /// The quiet second part, such as "11 to 19 mm": its two numbers, alike if it is one.
    pub(super) low: f64,
    pub(super) high: f64,
    /// Decimals of the two.
    pub(super) digits: usize,
}

/// Where labels may stand: right of `edge`, where the field ends, between `top` and `foot`.
pub(super) struct Room {
    pub(super) edge: f64,
    pub(super) top: f64,
    pub(super) foot: f64,
}

/// All labels of a field.
pub(super) struct Labels {
    tags: Vec<Tag>,
    /// From the top: one line's label, or those of many that end together.
    blocks: Vec<Vec<usize>>,
    /// Whether a label has a second line for its range.
    two: bool,
}

/// Lines of names that are told together stand closer than others, as part of a line.
const TIGHT: f64 = 0.92;
/// From the edge of the field to the marks of the labels, in units.
const TO_MARKS: f64 = 38.0;
/// From a mark to its name, in units.
const TO_NAME: f64 = 11.0;

fn line_of(frame: &Frame) -> f64 {
    frame.type_size * 1.25
}

impl Labels {
    /// Labels for lines that would end at `ends` in a field that is `base` high, of which `pads` is taken up. A
    /// second line each is given if the field is then not much higher: less so where many are told together, whose
    /// names are many lines anyway.
    pub(super) fn new(
        frame: &Frame,
        tags: Vec<Tag>,
        ends: &[f64],
        base: f64,
        pads: f64,
    ) -> Self {
        let blocks = together(ends, line_of(frame));
        let all_alone = blocks.len() == tags.len();
        let most = if all_alone { base.max(frame.width * 0.62) } else { base * 1.1 };
        let mut labels = Self { tags, blocks, two: true };
        labels.two = labels.needed(frame) + pads <= most;
        labels
    }

    /// The height that all of them take.
    pub(super) fn needed(&self, frame: &Frame) -> f64 {
        self.blocks.iter().map(|block| self.lines(block)).sum::<f64>() * line_of(frame)
    }

    fn lines(&self, block: &[usize]) -> f64 {
        let head = if self.two { 2.0 } else { 1.0 };
        if block.len() == 1 { head } else { head + TIGHT * block.len() as f64 }
    }

    /// The width of the widest name or range.
    pub(super) fn widest(&self, frame: &Frame) -> f64 {
        let size = frame.type_size;
        let names = self.tags.iter().map(|tag| width(&tag.name, size, Weight::Semibold));
        let ranges = self.blocks.iter().map(|block| {
            let (head, range) = self.head(frame, block);
            let range = width(&range, frame.small_type(), Weight::Regular);
            // The head of many begins left of their marks.
            let out = if block.len() > 1 { frame.unit(TO_NAME + 5.0) } else { 0.0 };
            width(&head, size, Weight::Semibold).max(range) - out
        });
        names.chain(ranges).fold(0.0, f64::max)
    }

    /// Name and range of a block; the range stands in the name where there is one line for both.
    fn head(&self, frame: &Frame, block: &[usize]) -> (String, String) {
        let own = || block.iter().map(|at| &self.tags[*at]);
        let low = own().map(|tag| tag.low).fold(f64::INFINITY, f64::min);
        let high = own().map(|tag| tag.high).fold(f64::NEG_INFINITY, f64::max);
        let digits = own().map(|tag| tag.digits).max().unwrap_or(0);
        let (low, high) = (figure(low, digits), figure(high, digits));
        let words = &frame.words;
        let range = if low == high {
            format!("{low} {}", words.millimeters)
        } else {
            format!("{low} {} {high} {}", words.to, words.millimeters)
        };
        match block {
            [only] => (self.tags[*only].name.clone(), range),
            _ if self.two => (format!("{} {}", block.len(), words.kinds), range),
            _ => (format!("{} {}: {range}", block.len(), words.kinds), String::new()),
        }
    }

    /// Draws them beside a field whose lines end at the heights that `place` gives for millimeters.
    pub(super) fn draw(
        &self,
        frame: &Frame,
        drawing: &mut Drawing,
        room: &Room,
        place: impl Fn(f64) -> f64,
    ) {
        let line = line_of(frame);
        let sure = |y: f64| if y.is_finite() { y } else { room.foot };
        let ends: Vec<f64> = self.tags.iter().map(|tag| sure(place(tag.end))).collect();
        let middle = |block: &Vec<usize>| {
            block.iter().map(|at| ends[*at]).sum::<f64>() / block.len() as f64
        };
        let wanted: Vec<f64> = self.blocks.iter().map(middle).collect();
        let needs: Vec<f64> =
            self.blocks.iter().map(|block| self.lines(block) * line).collect();
        let places = apart(&wanted, &needs, room.top, room.foot);
        for ((block, place), need) in self.blocks.iter().zip(places).zip(needs) {
            match block.as_slice() {
                [only] => {
                    leader(frame, drawing, room.edge, ends[*only], place);
                    self.one(frame, drawing, *only, (room.edge, place));
                }
                _ => {
                    let own: Vec<f64> = block.iter().map(|at| ends[*at]).collect();
                    let span = (place - need / 2.0, place + need / 2.0);
                    bracket(frame, drawing, room.edge, &own, span);
                    self.many(frame, drawing, block, (room.edge, span.0));
                }
            }
        }
    }

    fn one(&self, frame: &Frame, drawing: &mut Drawing, at: usize, (edge, place): (f64, f64)) {
        let (size, mark_at) = (frame.type_size, edge + frame.unit(TO_MARKS));
        let (head, range) = self.head(frame, &[at]);
        drawing.mark(frame, self.tags[at].look, (mark_at, place), frame.unit(4.8));
        let x = mark_at + frame.unit(TO_NAME);
        let name = clipped(&head, frame.width - x, size, Weight::Semibold);
        let style = Style::new(size).bold();
        if self.two {
            drawing.text((x, place - size * 0.22), &name, style);
            let quiet = Style::new(frame.small_type()).fill(INK_SOFT);
            drawing.text((x, place + size * 0.93), &range, quiet);
        } else {
            drawing.text((x, place + size * 0.34), &name, style);
        }
    }

    /// A head over the names of lines that end together, each with its mark.
    fn many(
        &self,
        frame: &Frame,
        drawing: &mut Drawing,
        block: &[usize],
        (edge, top): (f64, f64),
    ) {
        let (size, line) = (frame.type_size, line_of(frame));
        let mark_at = edge + frame.unit(TO_MARKS);
        let x = mark_at - frame.unit(5.0);
        let (head, range) = self.head(frame, block);
        let head = clipped(&head, frame.width - x, size, Weight::Semibold);
        let mut middle = top + line / 2.0;
        drawing.text((x, middle + size * 0.34), &head, Style::new(size).bold());
        if !range.is_empty() {
            middle += line;
            let quiet = Style::new(frame.small_type()).fill(INK_SOFT);
            drawing.text((x, middle + size * 0.24), &range, quiet);
        }
        let x = mark_at + frame.unit(TO_NAME);
        middle += line * (0.5 + TIGHT / 2.0);
        for at in block {
            let tag = &self.tags[*at];
            drawing.mark(frame, tag.look, (mark_at, middle), frame.unit(4.2));
            let name = clipped(&tag.name, frame.width - x, size, Weight::Regular);
            drawing.text((x, middle + size * 0.34), &name, Style::new(size));
            middle += line * TIGHT;
        }
    }
}

/// A hairline in the margin from the end of a line to its label, where that had to move. It is whole, grey and
/// never in the field, so that nobody reads it as data.
fn leader(frame: &Frame, drawing: &mut Drawing, edge: f64, end: f64, place: f64) {
    if (place - end).abs() > line_of(frame) * 0.3 {
        let (from, to) = (edge + frame.unit(9.0), edge + frame.unit(TO_MARKS - 11.0));
        drawing.polyline(&[(from, end), (to, place)], hair(frame));
    }
}

fn hair(frame: &Frame) -> Stroke<'static> {
    Stroke::new(RULE_STRONG, frame.unit(0.9))
}

/// A bracket around the ends of lines, and one along their names.
fn bracket(frame: &Frame, drawing: &mut Drawing, edge: f64, ends: &[f64], span: (f64, f64)) {
    let (low, high) =
        ends.iter().fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), end| {
            (low.min(*end), high.max(*end))
        });
    let (low, high) = (low - frame.unit(5.0), high + frame.unit(5.0));
    let (out, arm) = (edge + frame.unit(13.0), frame.unit(3.0));
    drawing
        .polyline(&[(out - arm, low), (out, low), (out, high), (out - arm, high)], hair(frame));
    let names = edge + frame.unit(TO_MARKS - 12.0);
    let (top, foot) = (span.0 + frame.unit(3.0), span.1 - frame.unit(3.0));
    drawing.polyline(
        &[(names + arm, top), (names, top), (names, foot), (names + arm, foot)],
        hair(frame),
    );
    let middle = f64::midpoint(low, high);
    drawing.polyline(&[(out, middle), (names, middle.clamp(top, foot.max(top)))], hair(frame));
}

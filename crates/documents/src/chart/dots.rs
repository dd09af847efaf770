//! Every bag a mark, the mean upright, the mean absolute deviation a bar beneath.

use super::frame::Frame;
use super::lettering::{Weight, figure, width};
use super::look::{INK, INK_SOFT, RULE_STRONG};
use super::piles::{PILES, Piled, dot_radius, pile};
use super::rows::{Columns, hairline, uprights};
use super::scale::Scale;
use super::series::DotRow;
use super::svg::{Anchor, Drawing, Stroke, Style};

/// Bags of several treatments at one time.
#[derive(Debug, Clone, Copy)]
pub struct DotPlot<'a> {
    /// What it shows, in a few words, for those who cannot see it.
    pub title: &'a str,
    /// One row a treatment.
    pub rows: &'a [DotRow],
    /// A gap to be measured between the means of two rows, in millimeters and in deviations.
    pub gap: Option<MeasuredGap>,
    /// The rows of all plots that are looked at together: scale, columns and marks fit them all. Empty for a plot
    /// that stands alone.
    pub set: &'a [DotRow],
    /// For readers who have no word for the mean absolute deviation: its figures are left out, its bar stays.
    pub brief: bool,
}

/// The span between the means of two rows of a plot.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct MeasuredGap {
    /// The row of the treatment.
    pub row: usize,
    /// The row of the reference.
    pub reference: usize,
    /// The gap over the larger mean absolute deviation.
    pub in_mads: Option<f64>,
}

/// The highest plot, in its widths, so that it fits on a page.
const TALLEST: f64 = 0.95;

/// A plot with its places.
struct Laid<'a> {
    columns: Columns,
    x: Scale,
    rows: Vec<Piled<'a>>,
    top: f64,
    foot: f64,
}

impl DotPlot<'_> {
    /// Draws the chart as SVG.
    pub fn svg(&self, frame: &Frame) -> String {
        if self.rows.is_empty() {
            return empty(frame, self.title);
        }
        let Laid { columns, x, rows, top, foot } = self.laid(frame);
        let mut drawing = Drawing::new();
        uprights(&mut drawing, frame, &x, top, foot);
        let mut y = top;
        let mut baselines = Vec::new();
        for (at, piled) in rows.iter().enumerate() {
            let base = y + piled.height - frame.unit(12.0);
            if at > 0 {
                hairline(&mut drawing, frame, y);
            }
            self.row(frame, &mut drawing, &columns, &x, piled, base);
            baselines.push(base);
            y += piled.height;
        }
        if let Some(gap) = self.gap {
            self.span(frame, &mut drawing, &x, gap, &baselines);
        }
        drawing.finish(frame, foot + below(frame), self.title, &self.description(frame))
    }

    /// How high it is drawn, in the unit of the frame.
    pub fn height(&self, frame: &Frame) -> f64 {
        self.laid(frame).foot + below(frame)
    }

    fn laid(&self, frame: &Frame) -> Laid<'_> {
        let names = self.all().map(|row| row.name.as_str());
        let figures = frame.unit(if self.brief { 78.0 } else { 142.0 });
        let columns = Columns::new(frame, names, figures);
        let (low, high) = self.reach();
        let right = columns.right - frame.unit(24.0);
        let x = Scale::loose(low, high, 5, columns.left, right);
        let rows = self.piled(frame, &x);
        let top = if self.gap.is_some() { frame.unit(34.0) } else { frame.unit(6.0) };
        let foot = top + rows.iter().map(|row| row.height).sum::<f64>();
        Laid { columns, x, rows, top, foot }
    }

    /// Its own rows, and those of the plots beside it.
    fn all(&self) -> impl Iterator<Item = &DotRow> {
        self.rows.iter().chain(self.set)
    }

    fn piled(&self, frame: &Frame, x: &Scale) -> Vec<Piled<'_>> {
        let radius = dot_radius(frame, self.all(), x);
        let mut rows = Vec::new();
        for most in PILES {
            rows = self.rows.iter().map(|row| pile(row, x, radius, frame, most)).collect();
            let height: f64 = rows.iter().map(|row| row.height).sum();
            if height <= frame.width * TALLEST {
                break;
            }
        }
        rows
    }

    fn reach(&self) -> (f64, f64) {
        let rises = self.all().flat_map(|row| row.dots.iter().map(|dot| dot.rise));
        let means = self.all().filter_map(|row| {
            let (mean, mad) = (row.mean?, row.mad.unwrap_or(0.0));
            Some([mean - mad, mean + mad])
        });
        let all = rises.chain(means.flatten()).filter(|rise| rise.is_finite());
        all.fold((0.0, 1.0), |(low, high), rise| (low.min(rise), high.max(rise)))
    }

    fn row(
        &self,
        frame: &Frame,
        drawing: &mut Drawing,
        columns: &Columns,
        x: &Scale,
        piled: &Piled<'_>,
        base: f64,
    ) {
        let (size, row) = (frame.type_size, piled.row);
        let middle = base + frame.unit(12.0) - piled.height / 2.0;
        columns.name(frame, drawing, row.look, &row.name, middle);
        let r = piled.radius;
        for (place, level, dot) in &piled.dots {
            let at = (*place, base - frame.unit(6.0) - *level as f64 * piled.step);
            drawing.mark(frame, row.look, at, r);
            if dot.set_aside {
                drawing.broken_ring(at, r);
            }
        }
        let style = Style::new(size);
        let end = frame.width;
        if let Some(mean) = row.mean {
            let spread = row.mad.unwrap_or(0.0);
            let bar = Stroke::new(INK, frame.unit(2.0));
            let y = base + frame.unit(3.0);
            drawing.line((x.at(mean - spread), y), (x.at(mean + spread), y), bar);
            let upright = Stroke::new(INK, frame.unit(1.6));
            let (up, down) = (y - frame.unit(5.0), y + frame.unit(5.0));
            drawing.line((x.at(mean), up), (x.at(mean), down), upright);
            let value = format!("{} {}", figure(mean, 1), frame.words.millimeters);
            let at =
                (end - frame.unit(if self.brief { 4.0 } else { 68.0 }), middle + size * 0.34);
            drawing.text(at, &value, style.bold().anchor(Anchor::End));
        }
        if let Some(mad) = row.mad.filter(|_| !self.brief) {
            let value = format!("{} {}", frame.words.mad, figure(mad, 1));
            let at = (end, middle + size * 0.34);
            drawing.text(
                at,
                &value,
                Style::new(frame.small_type()).fill(INK_SOFT).anchor(Anchor::End),
            );
        }
    }

    fn span(
        &self,
        frame: &Frame,
        drawing: &mut Drawing,
        x: &Scale,
        gap: MeasuredGap,
        baselines: &[f64],
    ) {
        let end = |row: usize| Some((x.at(self.rows.get(row)?.mean?), *baselines.get(row)?));
        let mean = |row: usize| self.rows.get(row).and_then(|row| row.mean);
        let (Some(a), Some(b)) = (end(gap.row), end(gap.reference)) else { return };
        let (Some(high), Some(low)) = (mean(gap.row), mean(gap.reference)) else { return };
        let y = frame.unit(26.0);
        for (place, base) in [a, b] {
            // Whole and thin: a dotted line could be a treatment's.
            let down = Stroke::new(RULE_STRONG, frame.unit(0.9));
            drawing.line((place, y), (place, base), down);
            let (up, down) = (y - frame.unit(4.0), y + frame.unit(4.0));
            drawing.line((place, up), (place, down), Stroke::new(INK, frame.unit(1.4)));
        }
        drawing.line((a.0, y), (b.0, y), Stroke::new(INK, frame.unit(1.4)));
        let words = &frame.words;
        let mut text =
            format!("{} {} {}", words.gap, figure((high - low).abs(), 1), words.millimeters);
        if let Some(mads) = gap.in_mads {
            text = format!("{text} = {} {}", figure(mads, 1), words.mads);
        }
        let size = frame.type_size;
        let half = width(&text, size, Weight::Semibold) / 2.0;
        let middle = f64::midpoint(a.0, b.0).clamp(half, frame.width - half);
        let style = Style::new(size).bold().anchor(Anchor::Middle);
        drawing.text((middle, y - frame.unit(9.0)), &text, style);
    }

    /// The chart in words.
    pub fn description(&self, frame: &Frame) -> String {
        let words = &frame.words;
        let lines = self.rows.iter().map(|row| {
            // A row of a mean alone, whose bags are not told, does not say that there were none.
            let named = match row.dots.len() {
                0 if row.mean.is_some() => row.name.clone(),
                bags => format!("{} ({bags})", row.name),
            };
            match (row.mean, row.mad.filter(|_| !self.brief)) {
                (Some(mean), Some(mad)) => format!(
                    "{named}: {} {}, {} {}",
                    figure(mean, 1),
                    words.millimeters,
                    words.mad,
                    figure(mad, 1)
                ),
                (Some(mean), None) => {
                    format!("{named}: {} {}", figure(mean, 1), words.millimeters)
                }
                _ => format!("{named}: {}", words.nothing),
            }
        });
        let lines: Vec<_> = lines.collect();
        if lines.is_empty() { words.nothing.to_owned() } else { lines.join("; ") + "." }
    }
}

/// Room for the figures of the scale.
fn below(frame: &Frame) -> f64 {
    frame.unit(26.0)
}

/// A chart that says that there is nothing to draw.
pub(super) fn empty(frame: &Frame, title: &str) -> String {
    let mut drawing = Drawing::new();
    let style = Style::new(frame.type_size).quiet().fill(INK_SOFT);
    drawing.text((0.0, frame.type_size * 1.2), frame.words.nothing, style);
    drawing.finish(frame, frame.type_size * 1.8, title, frame.words.nothing)
}

//! A number over dates with what it leaves open: one mark for each of several series.

use super::forecast::scaled;
use super::frame::Frame;
use super::lettering::{Weight, clipped, figure, width};
use super::look::{INK_SOFT, Look, RULE, RULE_STRONG};
use super::scale::Scale;
use super::series::Estimate;
use super::spacing::apart;
use super::svg::{Anchor, Drawing, Stroke, Style};
use jiff::civil::Date;

/// Numbers of one thing, each with its date, in order.
#[derive(Debug, Clone, PartialEq)]
pub struct Dated {
    /// What it is.
    pub name: String,
    /// How it looks.
    pub look: Look,
    /// Its numbers.
    pub dots: Vec<(Date, Estimate)>,
}

/// Several things over dates, as many times what is usual.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct DatesChart<'a> {
    /// What it shows, in a few words, for those who cannot see it.
    pub title: &'a str,
    /// What stands at the line that is usual.
    pub usual: &'a str,
    /// One mark a thing.
    pub series: &'a [Dated],
}

impl DatesChart<'_> {
    /// Draws the chart as SVG.
    pub fn svg(&self, frame: &Frame) -> String {
        let size = frame.type_size;
        let (top, bottom, left) = (frame.unit(24.0), frame.unit(30.0), frame.unit(40.0));
        let room = frame.width * 0.3;
        let names = self.series.iter().map(|one| width(&one.name, size, Weight::Semibold));
        let right = names.fold(frame.unit(20.0), f64::max).min(room) + frame.unit(34.0);
        let height = (frame.width * 0.36).clamp(frame.unit(190.0), frame.unit(300.0));
        let (start, end, foot) = (left, frame.width - right, height - bottom);
        let dots = || self.series.iter().flat_map(|one| &one.dots);
        let Some(first) = dots().map(|(date, _)| *date).min() else {
            return super::dots::empty(frame, self.title);
        };
        let days = |date: Date| f64::from(date.duration_since(first).as_hours() as i32) / 24.0;
        let last = dots().map(|(date, _)| days(*date)).fold(0.0, f64::max);
        // A lone date stands in the middle; marks at the ends keep off the axis.
        let air = frame.unit(20.0);
        let across = |date: Date| match last {
            0.0 => f64::midpoint(start, end),
            last => start + air + days(date) / last * (end - start - 2.0 * air),
        };
        let most = dots().map(|(_, one)| one.high).filter(|high| high.is_finite());
        let y = Scale::round(0.0, most.fold(1.2, f64::max), 5, foot, top);
        let mut drawing = Drawing::new();
        let quiet = Style::new(size).fill(INK_SOFT);
        for &value in &y.ticks {
            let place = y.at(value);
            drawing.line((start, place), (end, place), Stroke::new(RULE, frame.unit(1.0)));
            let at = (start - frame.unit(8.0), place + size * 0.35);
            drawing.text(at, &figure(value, y.digits), quiet.anchor(Anchor::End));
        }
        let usual = Stroke::new(RULE_STRONG, frame.unit(1.4));
        drawing.line((start, y.at(1.0)), (end, y.at(1.0)), usual);
        let small = Style::new(frame.small_type()).fill(INK_SOFT);
        drawing.text((start, top - frame.unit(9.0)), self.usual, small);
        self.date_ticks(frame, &mut drawing, across, (start, end, foot));
        let mut ends = Vec::new();
        // Marks of one date stand beside each other.
        let step = (2.0 * air / self.series.len().max(1) as f64).min(frame.unit(9.0));
        let middle = (self.series.len().max(1) - 1) as f64 / 2.0;
        for (place, one) in self.series.iter().enumerate() {
            let across = |date: Date| across(date) + step * (place as f64 - middle);
            let hue = one.look.hue();
            let line: Vec<_> =
                one.dots.iter().map(|(date, at)| (across(*date), y.at(at.value))).collect();
            let dash = scaled(one.look.dash(), frame.unit(1.0));
            drawing.polyline(&line, Stroke::new(hue, frame.unit(1.4)).dash(&dash));
            for (date, at) in &one.dots {
                let x = across(*date);
                let stroke = Stroke::new(hue, frame.unit(1.6));
                drawing.line((x, y.at(at.low)), (x, y.at(at.high)), stroke);
                for edge in [at.low, at.high] {
                    let cap = frame.unit(4.0);
                    drawing.line((x - cap, y.at(edge)), (x + cap, y.at(edge)), stroke);
                }
                drawing.mark(frame, one.look, (x, y.at(at.value)), frame.unit(5.0));
            }
            ends.extend(line.last().map(|(x, up)| (*x, *up, one)));
        }
        ends.sort_by(|a, b| a.1.total_cmp(&b.1));
        let wanted: Vec<f64> = ends.iter().map(|(_, up, _)| *up).collect();
        let places = apart(&wanted, &vec![size * 1.3; wanted.len()], top, foot);
        for ((x, up, one), place) in ends.into_iter().zip(places) {
            let mark = end + frame.unit(12.0);
            let leader = Stroke::new(RULE_STRONG, frame.unit(0.9)).dash("1 3");
            drawing.line((x + frame.unit(8.0), up), (mark - frame.unit(7.0), place), leader);
            drawing.mark(frame, one.look, (mark, place), frame.unit(4.2));
            let at = (mark + frame.unit(10.0), place + size * 0.35);
            let name = clipped(&one.name, room, size, Weight::Semibold);
            drawing.text(at, &name, Style::new(size).bold());
        }
        drawing.finish(frame, height, self.title, &self.description(frame))
    }

    /// A tick for each date, and its name where there is room for it.
    fn date_ticks(
        &self,
        frame: &Frame,
        drawing: &mut Drawing,
        across: impl Fn(Date) -> f64,
        (start, end, foot): (f64, f64, f64),
    ) {
        let axis = Stroke::new(RULE_STRONG, frame.unit(1.0));
        drawing.line((start, foot), (end, foot), axis);
        let dots = self.series.iter().flat_map(|one| one.dots.iter().map(|(date, _)| *date));
        let dates: std::collections::BTreeSet<Date> = dots.collect();
        let half = width("2027-03-09", frame.small_type(), Weight::Regular) / 2.0;
        let style = Style::new(frame.small_type()).fill(INK_SOFT).anchor(Anchor::Middle);
        let mut free = f64::NEG_INFINITY;
        for date in dates {
            let x = across(date);
            drawing.line((x, foot), (x, foot + frame.unit(5.0)), axis);
            let middle = x.clamp(half, frame.width - half);
            if middle - half >= free {
                let at = (middle, foot + frame.unit(7.0) + frame.small_type());
                drawing.text(at, &date.to_string(), style);
                free = middle + half + frame.unit(8.0);
            }
        }
    }

    /// The chart in words.
    pub fn description(&self, frame: &Frame) -> String {
        let to = frame.words.to;
        let said = self.series.iter().map(|one| {
            let dots = one.dots.iter().map(|(date, at)| {
                let [value, low, high] = [at.value, at.low, at.high].map(|one| figure(one, 2));
                format!("{date}: {value} ({low} {to} {high})")
            });
            format!("{}: {}", one.name, dots.collect::<Vec<_>>().join(", "))
        });
        let said: Vec<String> = said.collect();
        if said.is_empty() { frame.words.nothing.to_owned() } else { said.join("; ") + "." }
    }
}

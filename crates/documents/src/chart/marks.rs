//! Draws the marks of treatments.

use super::frame::Frame;
use super::look::{INK, Look, Mark};
use super::svg::{Drawing, Stroke, at};

fn polygon(points: &[(f64, f64)]) -> String {
    let corners: Vec<_> =
        points.iter().map(|(x, y)| format!("{} {}", at(*x), at(*y))).collect();
    format!("M{}Z", corners.join("L"))
}

/// A cross with arms `long` by half-width `half`, turned by `turn` radians.
fn cross((x, y): (f64, f64), long: f64, half: f64, turn: f64) -> String {
    let (l, h) = (long, half);
    let corners = [
        (-h, -l),
        (h, -l),
        (h, -h),
        (l, -h),
        (l, h),
        (h, h),
        (h, l),
        (-h, l),
        (-h, h),
        (-l, h),
        (-l, -h),
        (-h, -h),
    ];
    let (sin, cos) = turn.sin_cos();
    let turned: Vec<_> =
        corners.iter().map(|(a, b)| (x + a * cos - b * sin, y + a * sin + b * cos)).collect();
    polygon(&turned)
}

impl Drawing {
    /// The mark of `look` with its center at `place`; `r` is the radius of the disc.
    ///
    /// The other marks are scaled so that all nine look equally heavy.
    pub(super) fn mark(&mut self, frame: &Frame, look: Look, (x, y): (f64, f64), r: f64) {
        let hue = look.hue();
        // A ringed mark is drawn smaller, so that mark and ring take the room of one mark.
        let ringed = look.ringed();
        let s = if ringed { r * 0.72 } else { r };
        match look.mark() {
            Mark::Ring => {
                let edge = Stroke::new(hue, (s * 0.36).max(0.9));
                self.circle((x, y), s * 0.86, frame.ground_hue(), Some(edge));
            }
            Mark::Disc => self.circle((x, y), s, hue, None),
            Mark::Square => {
                let a = s * 0.9;
                self.fill(
                    &[(x - a, y - a), (x + a, y - a), (x + a, y + a), (x - a, y + a)],
                    hue,
                );
            }
            Mark::Triangle => {
                let (w, up, down) = (s * 1.12, s * 1.15, s * 0.85);
                self.fill(&[(x, y - up), (x + w, y + down), (x - w, y + down)], hue);
            }
            Mark::Diamond => {
                let a = s * 1.22;
                self.fill(&[(x, y - a), (x + a, y), (x, y + a), (x - a, y)], hue);
            }
            Mark::TriangleDown => {
                let (w, up, down) = (s * 1.12, s * 0.85, s * 1.15);
                self.fill(&[(x - w, y - up), (x + w, y - up), (x, y + down)], hue);
            }
            Mark::Plus => self.shape(&cross((x, y), s * 1.15, s * 0.42, 0.0), hue, 1.0, None),
            Mark::Cross => {
                let quarter = std::f64::consts::FRAC_PI_4;
                self.shape(&cross((x, y), s * 1.28, s * 0.36, quarter), hue, 1.0, None);
            }
            Mark::Hourglass => {
                let b = s * 1.1;
                self.fill(
                    &[(x - s, y - b), (x + s, y - b), (x - s, y + b), (x + s, y + b)],
                    hue,
                );
            }
        }
        if ringed {
            self.circle((x, y), r * 1.42, "none", Some(Stroke::new(hue, (r * 0.2).max(0.7))));
        }
    }

    fn fill(&mut self, points: &[(f64, f64)], hue: &str) {
        self.shape(&polygon(points), hue, 1.0, None);
    }

    /// The broken ring around what is doubted or set aside.
    pub(super) fn broken_ring(&mut self, place: (f64, f64), r: f64) {
        let dash = format!("{} {}", at(r * 0.5), at(r * 0.4));
        self.circle(place, r * 2.0, "none", Some(Stroke::new(INK, r * 0.24).dash(&dash)));
    }
}

/// The mark of `look` alone, `size` wide, for tables and lists; it has no name because words stand beside it.
pub fn mark(look: Look, size: f64, frame: &Frame) -> String {
    let mut drawing = Drawing::new();
    let r = if look.ringed() { 4.8 } else { 5.6 };
    drawing.mark(frame, look, (9.0, 9.0), r);
    drawing.loose(size)
}

//! A bag's curve in the size of a word, on what was expected of it.

use super::look::{INK, RULE_STRONG};
use super::svg::{Drawing, Stroke, at};

/// One bag's readings beside its figures in a list.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Spark<'a> {
    /// Minutes since the zero reading and rise above it (mm), in order of time.
    pub rises: &'a [(f64, f64)],
    /// Minute, low edge and high edge (mm) of what is expected; empty where nothing may be shown.
    pub band: &'a [(f64, f64, f64)],
    /// Whether the newest reading is doubted.
    pub doubtful: bool,
    /// The minute at the right edge.
    pub to_min: f64,
    /// The rise at the upper edge (mm), the same for all that stand in one list.
    pub top_mm: f64,
}

/// Height of the picture for a width of one.
const SHAPE: f64 = 0.31;

impl Spark<'_> {
    /// Draws it `width` wide. It repeats what `title` says, and nothing in it can be read alone.
    pub fn svg(&self, width: f64, title: &str) -> String {
        let height = (width * SHAPE).round();
        let (left, right, base) = (3.0, width - 3.0, height - 3.5);
        let to_min = self.to_min.max(1.0);
        let top = self.top_mm.max(1.0);
        let x = |minute: f64| left + (right - left) * (minute / to_min).clamp(0.0, 1.0);
        let y = |mm: f64| base - (base - 3.0) * (mm / top).clamp(-0.1, 1.0);
        let mut drawing = Drawing::new();
        let up = self.band.iter().map(|(minute, _, high)| (x(*minute), y(*high)));
        let down = self.band.iter().rev().map(|(minute, low, _)| (x(*minute), y(*low)));
        let edge: Vec<_> =
            up.chain(down).map(|(x, y)| format!("{} {}", at(x), at(y))).collect();
        if !edge.is_empty() {
            drawing.shape(&format!("M{}Z", edge.join("L")), INK, 0.2, None);
        }
        drawing.line((0.0, height - 0.6), (width, height - 0.6), Stroke::new(RULE_STRONG, 1.2));
        let line: Vec<_> = self.rises.iter().map(|(minute, mm)| (x(*minute), y(*mm))).collect();
        drawing.polyline(&line, Stroke::new(INK, 1.5));
        for point in &line {
            drawing.circle(*point, 1.9, INK, None);
        }
        if let Some(point) = line.last().filter(|_| self.doubtful) {
            drawing.broken_ring(*point, 2.9);
        }
        drawing.small((width, height), title)
    }
}

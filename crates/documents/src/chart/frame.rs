//! The size and the ground of a chart.

use super::look::PAPER;
use super::words::Words;

/// What a chart is drawn on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Ground {
    /// The tinted paper of the screen.
    Screen,
    /// White paper.
    Print,
}

/// The size, type and ground of a chart.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Frame {
    /// The width in points (print) or CSS pixels (screen).
    pub width: f64,
    /// The size of the type in the same unit; everything else is measured by it.
    pub type_size: f64,
    /// What it is drawn on.
    pub ground: Ground,
    /// The words it may use.
    pub words: Words,
}

impl Frame {
    /// A chart for a page, `width` points wide, in 9.5 pt type.
    pub const fn print(width: f64) -> Self {
        Self { width, type_size: 9.5, ground: Ground::Print, words: Words::ENGLISH }
    }

    /// A chart for a screen, `width` pixels wide, in 14 px type; draw it again for a narrow screen.
    pub const fn screen(width: f64) -> Self {
        Self { width, type_size: 14.0, ground: Ground::Screen, words: Words::ENGLISH }
    }

    /// A chart for a phone, in the words of a page.
    pub const fn phone(words: Words) -> Self {
        Self { words, ..Self::screen(330.0) }
    }

    /// The smallest type of a chart; on paper no less than the 9 pt that all else has at least.
    pub(super) fn small_type(&self) -> f64 {
        self.type_size * 0.95
    }

    /// The color inside hollow marks.
    pub(super) const fn ground_hue(&self) -> &'static str {
        match self.ground {
            Ground::Screen => PAPER,
            Ground::Print => "#FFFFFF",
        }
    }

    /// `units` on the grid on which type is 14 high.
    pub(super) fn unit(&self, units: f64) -> f64 {
        units * self.type_size / 14.0
    }
}

//! The size and the ground of a chart, and the few words it draws itself.

use super::look::PAPER;

/// What a chart is drawn on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Ground {
    /// The tinted paper of the screen.
    Screen,
    /// White paper.
    Print,
}

/// The words that charts write beside the names they are given.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Words {
    /// The unit of time.
    pub minutes: &'static str,
    /// The unit of rise.
    pub millimeters: &'static str,
    /// At the last reading.
    pub last_reading: &'static str,
    /// At the end of the period.
    pub bell: &'static str,
    /// Between the ends of a range.
    pub to: &'static str,
    /// Before a mean absolute deviation.
    pub mad: &'static str,
    /// Before the name of the reference, at the zero line of differences.
    pub same_as: &'static str,
    /// Before the measured gap of two means.
    pub gap: &'static str,
    /// The plural of the mean absolute deviation.
    pub mads: &'static str,
    /// In place of rows when there are none.
    pub nothing: &'static str,
}

impl Words {
    /// The words in English.
    pub const ENGLISH: Self = Self {
        minutes: "min",
        millimeters: "mm",
        last_reading: "last reading",
        bell: "bell",
        to: "to",
        mad: "MAD",
        same_as: "same as",
        gap: "gap",
        mads: "MADs",
        nothing: "no readings",
    };

    /// The words in Spanish.
    pub const SPANISH: Self = Self {
        minutes: "min",
        millimeters: "mm",
        last_reading: "última lectura",
        bell: "timbre",
        to: "a",
        mad: "DMA",
        same_as: "igual que",
        gap: "diferencia",
        mads: "DMA",
        nothing: "sin lecturas",
    };
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

//! One strip of letters on a scale.

use crate::chart::lettering::figure;
use crate::chart::scale::Scale;
use crate::chart::series::{Dot, Estimate};

/// A row of letters, each a place on the scale.
pub(super) struct Strip {
    letters: Vec<char>,
    scale: Scale,
    unicode: bool,
}

impl Strip {
    /// An empty strip of so many `columns` that holds `low` to `high`.
    pub(super) fn new(columns: usize, low: f64, high: f64, unicode: bool) -> Self {
        let last = columns.saturating_sub(1) as f64;
        let steps = (columns / 9).clamp(2, 5);
        let scale = Scale::loose(low, high, steps, 0.0, last);
        Self { letters: vec![' '; columns], scale, unicode }
    }

    fn column(&self, value: f64) -> Option<usize> {
        let place = self.scale.at(value).round();
        if !place.is_finite() || self.letters.is_empty() {
            return None;
        }
        Some((place.max(0.0) as usize).min(self.letters.len() - 1))
    }

    fn pick(&self, unicode: char, ascii: char) -> char {
        if self.unicode { unicode } else { ascii }
    }

    fn put(&mut self, value: f64, letter: char) {
        if let Some(letters) = self.column(value).and_then(|at| self.letters.get_mut(at)) {
            *letters = letter;
        }
    }

    /// The zero line.
    pub(super) fn zero(&mut self) {
        self.put(0.0, self.pick('│', '|'));
    }

    /// A bar from low to high with a mark at the value.
    pub(super) fn bar(&mut self, estimate: &Estimate) {
        let (line, left, right, mark) = (
            self.pick('─', '-'),
            self.pick('├', '['),
            self.pick('┤', ']'),
            self.pick('●', 'o'),
        );
        if let (Some(low), Some(high)) = (self.column(estimate.low), self.column(estimate.high))
        {
            let (zero, crossing) = (self.pick('│', '|'), self.pick('┼', '+'));
            // Ends the wrong way round draw no bar rather than a false one.
            for letter in self.letters.get_mut(low..=high).unwrap_or_default() {
                *letter = if *letter == zero { crossing } else { line };
            }
            self.put(estimate.low, left);
            self.put(estimate.high, right);
        }
        self.put(estimate.value, mark);
    }

    /// Dots from low to high.
    pub(super) fn dotted(&mut self, estimate: &Estimate) {
        let dot = self.pick('·', '.');
        if let (Some(low), Some(high)) = (self.column(estimate.low), self.column(estimate.high))
        {
            for letter in self.letters.get_mut(low..=high).unwrap_or_default() {
                if *letter == ' ' {
                    *letter = dot;
                }
            }
        }
    }

    /// One dot a bag; where several meet, their number.
    pub(super) fn dots(&mut self, dots: &[Dot]) {
        let mut counts = vec![0_usize; self.letters.len()];
        for column in dots.iter().filter_map(|dot| self.column(dot.rise)) {
            counts[column] += 1;
        }
        let one = self.pick('●', 'o');
        for (letter, count) in self.letters.iter_mut().zip(counts) {
            match count {
                0 => {}
                1 => *letter = one,
                2..=9 => *letter = char::from(b'0' + count as u8),
                _ => *letter = '+',
            }
        }
    }

    /// The figures under the strips, with the unit after the last.
    pub(super) fn axis(self) -> String {
        let mut line = String::new();
        let mut end = 0;
        for &tick in &self.scale.ticks {
            let text = figure(tick, self.scale.digits);
            let text = if self.unicode { text } else { text.replace('−', "-") };
            let Some(column) = self.column(tick) else { continue };
            let start = column.saturating_sub(text.chars().count() / 2);
            if start >= end {
                line.push_str(&" ".repeat(start - end + usize::from(end > 0)));
                line.push_str(&text);
                end = start + text.chars().count() + 1;
            }
        }
        line + " mm"
    }

    /// The finished letters.
    pub(super) fn finish(self) -> String {
        self.letters.into_iter().collect()
    }
}

//! Charts in plain letters, for the command line.
//!
//! Every row is a name, a strip drawn on one scale for all rows, and figures. A terminal without Unicode gets
//! the same rows in ASCII.

mod strip;

use unicode_width::{UnicodeWidthChar, UnicodeWidthStr};

use super::before_after::{BeforeAfterRow, reach as reach_of};
use super::lettering::{figure, signed};
use super::series::{DotRow, Estimate, IntervalRow, Strand};
use strip::Strip;

/// What the terminal can show.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Terminal {
    /// Columns; at least 40 are used.
    pub width: usize,
    /// Whether it shows more than ASCII.
    pub unicode: bool,
}

/// Figures and names of one row; the strip stands between them.
struct Row {
    name: String,
    figures: String,
}

impl Terminal {
    /// Rises over time as small curves, and the band at the last reading as a bar on one scale.
    pub fn forecast(&self, strands: &[Strand]) -> String {
        let ends = strands.iter().filter_map(|strand| strand.moments.last());
        let top = ends.map(|end| end.high.max(end.median)).fold(1.0, f64::max);
        let columns = if self.width >= 72 { 9 } else { 6 };
        let longest = strands.iter().map(|strand| self.plain(&strand.name).width()).max();
        let room = longest.unwrap_or(0).min((self.width() / 2).saturating_sub(columns + 1));
        let rows: Vec<Row> = strands
            .iter()
            .map(|strand| {
                let end = strand.moments.last();
                let figures = end.map_or_else(String::new, |end| {
                    let range = format!("{} to {}", figure(end.low, 0), figure(end.high, 0));
                    format!("{:>3} mm  {range}", figure(end.median, 0))
                });
                let curve: Vec<f64> = strand.moments.iter().map(|m| m.median).collect();
                let name = self.padded(&strand.name, room);
                Row { name: format!("{name} {}", self.curve(&curve, top, columns)), figures }
            })
            .collect();
        self.rows(&rows, (0.0, top), |strip, at| {
            if let Some(end) = strands[at].moments.last() {
                strip.bar(&Estimate { value: end.median, low: end.low, high: end.high });
            }
        })
    }

    /// Differences from the reference as bars around a zero line, with the verdict.
    pub fn intervals(&self, reference: &str, rows: &[IntervalRow]) -> String {
        let ends = rows.iter().filter_map(|row| row.difference).flat_map(|d| [d.low, d.high]);
        let (low, high) = reach(ends.chain([0.0, 1.0]));
        let texts: Vec<Row> = rows
            .iter()
            .map(|row| {
                let figures = match &row.difference {
                    Some(d) => format!(
                        "{:>5}  {:<13} {}",
                        signed(d.value, 1),
                        format!("{} to {}", figure(d.low, 1), figure(d.high, 1)),
                        row.verdict
                    ),
                    None => format!("{:>5}  {:<13} {}", "–", "", row.verdict),
                };
                Row { name: row.name.clone(), figures }
            })
            .collect();
        let chart = self.rows(&texts, (low, high), |strip, at| {
            strip.zero();
            if let Some(difference) = &rows[at].difference {
                strip.bar(difference);
            }
        });
        let zero = self.padded(&format!("0: same as {reference}"), self.width());
        format!("{}\n{chart}", zero.trim_end())
    }

    /// Numbers before and after a measurement: dots where each was thought to lie, a bar where it is known to lie now.
    pub fn before_after(&self, rows: &[BeforeAfterRow]) -> String {
        let row =
            |row: &BeforeAfterRow| Row { name: row.name.clone(), figures: row.is.clone() };
        let texts: Vec<Row> = rows.iter().map(row).collect();
        self.rows_with(&texts, reach_of(rows), false, |strip, at| {
            strip.zero();
            strip.dotted(&rows[at].before);
            strip.bar(&rows[at].after);
        })
    }

    /// Every bag as a dot, several in one place as their number.
    pub fn dots(&self, rows: &[DotRow]) -> String {
        let rises = rows.iter().flat_map(|row| row.dots.iter().map(|dot| dot.rise));
        let (low, high) = reach(rises.chain([0.0, 1.0]));
        let texts: Vec<Row> = rows
            .iter()
            .map(|row| {
                let mean = row
                    .mean
                    .map_or_else(String::new, |mean| format!("{:>4} mm", figure(mean, 1)));
                let mad =
                    row.mad.map_or_else(String::new, |mad| format!("  MAD {}", figure(mad, 1)));
                Row { name: row.name.clone(), figures: mean + &mad }
            })
            .collect();
        self.rows(&texts, (low, high), |strip, at| {
            strip.zero();
            strip.dots(&rows[at].dots);
        })
    }

    /// A curve as one line of small columns.
    pub fn curve(&self, rises: &[f64], top: f64, columns: usize) -> String {
        let levels: &[char] = if self.unicode {
            &['▁', '▂', '▃', '▄', '▅', '▆', '▇', '█']
        } else {
            &['_', '.', ':', '-', '=', '+', '*', '#']
        };
        if rises.is_empty() {
            return " ".repeat(columns);
        }
        let column = |at: usize| {
            let from = at as f64 / (columns.max(2) - 1) as f64 * (rises.len() - 1) as f64;
            let rise = rises[(from.round() as usize).min(rises.len() - 1)];
            let share = if top > 0.0 && rise.is_finite() { rise / top } else { 0.0 };
            levels[((share * levels.len() as f64) as usize).min(levels.len() - 1)]
        };
        (0..columns).map(column).collect()
    }

    fn width(&self) -> usize {
        self.width.max(40)
    }

    /// Text that the terminal can show.
    fn plain(&self, text: &str) -> String {
        if self.unicode {
            return text.chars().filter(|letter| !letter.is_control()).collect();
        }
        let ascii = |letter: char| match letter {
            '−' | '–' => '-',
            '…' => '.',
            '’' | '‘' => '\'',
            '×' => 'x',
            ' '..='~' => letter,
            _ => '?',
        };
        text.chars().filter(|letter| !letter.is_control()).map(ascii).collect()
    }

    /// `text` in exactly `room` columns.
    fn padded(&self, text: &str, room: usize) -> String {
        let text = self.plain(text);
        if text.width() <= room {
            return format!("{text}{}", " ".repeat(room - text.width()));
        }
        let more = if self.unicode { '…' } else { '.' };
        let (mut kept, mut used) = (String::new(), 0);
        for letter in text.chars() {
            let wide = letter.width().unwrap_or(0);
            if used + wide + 1 > room {
                break;
            }
            kept.push(letter);
            used += wide;
        }
        kept.push(more);
        format!("{kept}{}", " ".repeat(room.saturating_sub(used + 1)))
    }

    fn rows(
        &self,
        rows: &[Row],
        reach: (f64, f64),
        draw: impl Fn(&mut Strip, usize),
    ) -> String {
        self.rows_with(rows, reach, true, draw)
    }

    /// Rows with or without an axis in millimeters under them.
    fn rows_with(
        &self,
        rows: &[Row],
        (low, high): (f64, f64),
        axis: bool,
        draw: impl Fn(&mut Strip, usize),
    ) -> String {
        let widest = |text: fn(&Row) -> &str| {
            rows.iter().map(|row| self.plain(text(row)).width()).max().unwrap_or(0)
        };
        // Figures are never cut if a terminal of 40 columns can hold them; names are; a strip narrower than 10
        // columns would say nothing and is left out.
        let figures = widest(|row| &row.figures).min(self.width() - 12);
        let left = self.width() - figures - 4;
        let names = widest(|row| &row.name).min(left.min((self.width() / 2).max(left / 2)));
        let room = self.width().saturating_sub(names + figures + 4);
        let columns = if room >= 10 { room.min(60) } else { 0 };
        let mut out = String::new();
        for (at, row) in rows.iter().enumerate() {
            let mut strip = Strip::new(columns, low, high, self.unicode);
            draw(&mut strip, at);
            let strip = strip.finish();
            let (name, figures) =
                (self.padded(&row.name, names), self.padded(&row.figures, figures));
            let line = format!("{name}  {strip}  {figures}");
            out.push_str(line.trim_end());
            out.push('\n');
        }
        if axis && columns > 0 && !rows.is_empty() {
            let axis = Strip::new(columns, low, high, self.unicode).axis();
            out.push_str(&format!("{}  {axis}", " ".repeat(names)));
            out.push('\n');
        }
        out
    }
}

fn reach(values: impl Iterator<Item = f64>) -> (f64, f64) {
    values
        .filter(|value| value.is_finite())
        .fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), value| {
            (low.min(value), high.max(value))
        })
}

#[cfg(test)]
mod tests;

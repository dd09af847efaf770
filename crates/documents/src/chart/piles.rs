//! Dots of one row, piled up where they would touch.

use super::frame::Frame;
use super::scale::Scale;
use super::series::{Dot, DotRow};

/// How high dots may be piled before they begin to overlap, in dots: as high as the plot has room for.
pub(super) const PILES: [usize; 5] = [8, 6, 5, 4, 3];
/// A row with its dots piled up.
pub(super) struct Piled<'a> {
    pub(super) row: &'a DotRow,
    /// Place along the strip and level in the pile, with the dot.
    pub(super) dots: Vec<(f64, usize, Dot)>,
    pub(super) height: f64,
    pub(super) step: f64,
    pub(super) radius: f64,
}

/// The radius of a mark: small enough that readings a step apart do not touch, if that is not too small to see.
pub(super) fn dot_radius<'a>(
    frame: &Frame,
    rows: impl Iterator<Item = &'a DotRow>,
    x: &Scale,
) -> f64 {
    let mut places: Vec<f64> = rows
        .flat_map(|row| row.dots.iter().map(|dot| x.at(dot.rise)))
        .filter(|place| place.is_finite())
        .collect();
    places.sort_by(f64::total_cmp);
    let steps = places.windows(2).map(|two| two[1] - two[0]).filter(|step| *step > 1e-6);
    let least = steps.fold(f64::INFINITY, f64::min);
    (least / 2.0 / WIDE).clamp(frame.unit(3.2), frame.unit(4.1))
}

/// Room of a mark in its diameters.
const WIDE: f64 = 1.06;

/// Piles dots up that would touch: each pile stands over the middle of its dots, so that no dot moves by more than
/// half its width (Wilkinson 1999, "Dot Plots", *The American Statistician* 53, 276-281; from memory).
pub(super) fn pile<'a>(
    row: &'a DotRow,
    x: &Scale,
    radius: f64,
    frame: &Frame,
    most: usize,
) -> Piled<'a> {
    let wide = radius * 2.0 * if row.look.ringed() { 1.45 } else { WIDE };
    let mut sorted: Vec<Dot> =
        row.dots.iter().copied().filter(|dot| dot.rise.is_finite()).collect();
    sorted.sort_by(|a, b| a.rise.total_cmp(&b.rise));
    let mut dots: Vec<(f64, usize, Dot)> = Vec::new();
    let mut rest = &sorted[..];
    while let Some(first) = rest.first() {
        let reach = x.at(first.rise) + wide * 0.999;
        let count = rest.partition_point(|dot| x.at(dot.rise) < reach).max(1);
        let (together, after) = rest.split_at(count);
        let last = together.last().map_or(first.rise, |dot| dot.rise);
        let place = f64::midpoint(x.at(first.rise), x.at(last));
        dots.extend(together.iter().enumerate().map(|(level, dot)| (place, level, *dot)));
        rest = after;
    }
    let levels = dots.iter().map(|(_, level, _)| level + 1).max().unwrap_or(1);
    // A pile that is too high is pressed: smaller marks, closer together, never at another place.
    let press = if levels > most { most as f64 / levels as f64 } else { 1.0 };
    let (step, radius) = (wide * 0.97 * press, radius * press.max(0.6));
    let pile = step * (levels - 1) as f64;
    let height = (pile + frame.unit(25.0)).max(frame.unit(34.0));
    Piled { row, dots, height, step, radius }
}

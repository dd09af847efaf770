//! How fast a curve rises along its straight part, and how long it waited before.

use super::slope::{Line, LineError, line, steepest};

/// Readings in the stretch that is looked for first, where the curve has so many.
const STRETCH: usize = 5;
/// Share of the steepest stretch's slope from which a stretch beside it is straight too (1).
const ALIKE: f64 = 0.95;

/// The straight part of a rising curve.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Straight {
    /// First reading of it, from 0, in the order of x.
    pub from: usize,
    /// Last reading of it.
    pub to: usize,
    /// The line through these readings; its slope is the rate (unit of y per unit of x).
    pub line: Line,
    /// Where the line leaves the height at which the curve began: the lag (unit of x). Negative where
    /// the curve was on its way before x = 0.
    pub lag: f64,
}

/// Finds the straight part of a curve that rises from `start` (unit of y, such as 0 for rises above a
/// bag's own zero); `None` where it has fewer than three readings or nowhere rises.
///
/// The rule: of all stretches of five readings in a row (of three, where there are fewer than seven)
/// the steepest, and every stretch as long that adjoins it without a gap and rises at least 0.95 times
/// as fast; one line through all their readings.
///
/// # Source
/// Hall, Acar, Nandipati & Barlow (2014), *Mol. Biol. Evol.* 31, 232–238 (from memory), for the
/// steepest stretch of five and the 0.95. That stretches must adjoin and that three readings do for
/// short curves is ours.
/// # Errors
/// [`LineError`] for uneven lists and numbers that are not finite.
pub fn straight(x: &[f64], y: &[f64], start: f64) -> Result<Option<Straight>, LineError> {
    let points = if x.len() < STRETCH + 2 { 3 } else { STRETCH };
    let Some(first) = steepest(x, y, points)? else { return Ok(None) };
    if first.line.slope <= 0.0 {
        return Ok(None);
    }
    let mut order: Vec<usize> = (0..x.len()).collect();
    order.sort_by(|&a, &b| x[a].total_cmp(&x[b]));
    let x: Vec<f64> = order.iter().map(|&at| x[at]).collect();
    let y: Vec<f64> = order.iter().map(|&at| y[at]).collect();
    let through = |from: usize, to: usize| line(&x[from..to], &y[from..to]).ok();
    let alike = |from: usize| {
        through(from, from + points).is_some_and(|l| l.slope >= ALIKE * first.line.slope)
    };
    let earliest = (0..first.from).rev().take_while(|&from| alike(from)).last();
    let latest = (first.from + 1..=x.len() - points).take_while(|&from| alike(from)).last();
    let from = earliest.unwrap_or(first.from);
    let end = latest.unwrap_or(first.from) + points;
    let whole = through(from, end).filter(|line| line.slope > 0.0);
    Ok(whole.map(|line| {
        let lag = (start - line.intercept) / line.slope;
        Straight { from, to: end - 1, line, lag }
    }))
}

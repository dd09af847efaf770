//! What the meter shows of clean air, and how that drifts.

use super::standards::MeterPosterior;
use crate::fact::Fact;
use crate::statistics::distribution::normal;

/// Standard deviation of one push about the meter's own mean (%).
pub const PUSH_SD: Fact = Fact::memory(
    "meter.push_sd",
    0.004,
    "%",
    "handheld meters repeat to about 0.005 % near zero, from memory",
)
.within((0.002, 0.01));

/// Step of the display (%).
pub const STEP: Fact =
    Fact::memory("meter.step", 0.01, "%", "two decimals on many handheld meters, from memory")
        .within((0.001, 0.01));

/// Standard deviation of the drift of the zero from push to push (%).
pub const DRIFT_SD: Fact = Fact::memory(
    "meter.drift_sd",
    0.001,
    "%",
    "a sensor that warms up and keeps some ethanol: 0.02 % in a period of twenty pushes; judgement",
)
.within((0.0005, 0.002));

/// Facts of this file.
pub const DRIFT_FACTS: &[Fact] = &[PUSH_SD, STEP, DRIFT_SD];

/// Standard deviation of what one push shows (%), with a display of that step.
pub(super) fn shown_sd(step_percent: f64) -> f64 {
    libm::hypot(PUSH_SD.value, step_percent / 12.0_f64.sqrt())
}

/// A push of clean air.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Blank {
    /// Its place in the meter's order of the period, from 1.
    pub turn: u32,
    /// What the display showed (%).
    pub percent: f64,
}

/// What the meter shows of clean air, turn by turn: a straight line.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Zero {
    line: Line,
    /// Mean turn of the blanks.
    middle: f64,
    /// Half of the stretch that they cover.
    half: f64,
}

impl Zero {
    /// The line after these blanks, beginning with what is known of the meter.
    ///
    /// ```text
    /// shown = a + b turn + e      a ~ N(zero, sd²)      b ~ N(0, 0.001 %)      e ~ N(0, push² + step²/12)
    /// ```
    ///
    /// Without blanks all stays as it was known; one fixes the height and little of the slope. A display
    /// shows nothing under 0.00, so a blank of 0.00 says only that the zero is no higher: it may well lie
    /// below, and small readings then stand for more.
    ///
    /// # Source
    /// Linear regression with a normal prior, in closed form; blanks of 0.00 as censored values
    /// (J. Tobin, Econometrica 26, 24–36 (1958), from memory), mean and covariance summed up over a grid.
    pub fn of(meter: &MeterPosterior, blanks: &[Blank], step_percent: f64) -> Self {
        let half_step = 0.5 * step_percent;
        let (hidden, seen): (Vec<Blank>, Vec<Blank>) =
            blanks.iter().partition(|blank| blank.percent < half_step);
        let line =
            Line::through(meter, &seen, shown_sd(step_percent)).under(&hidden, half_step);
        let turns = || blanks.iter().map(|blank| f64::from(blank.turn));
        let middle = turns().sum::<f64>() / blanks.len().max(1) as f64;
        let last = turns().fold(0.0, f64::max);
        let half = 0.5 * (last - turns().fold(last, f64::min));
        Self { line, middle, half }
    }

    /// The zero at a turn and its standard deviation (%). A turn that nobody wrote down may be any about
    /// the blanks.
    pub fn at(&self, turn: Option<u32>) -> (f64, f64) {
        let at = turn.map_or(self.middle, f64::from);
        let Line { line, covariance } = self.line;
        let [[a, b], [_, d]] = covariance;
        let variance = a + 2.0 * b * at + d * at * at;
        let unknown = if turn.is_none() { line[1].abs() * self.half } else { 0.0 };
        (line[0] + line[1] * at, libm::hypot(libm::sqrt(variance.max(0.0)), unknown))
    }
}

/// A straight line that is not known for sure.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Line {
    /// At turn 0 (%), and by how much it grows each turn (%).
    line: [f64; 2],
    covariance: [[f64; 2]; 2],
}

impl Line {
    /// Through blanks that show something.
    fn through(meter: &MeterPosterior, blanks: &[Blank], shown_sd: f64) -> Self {
        let weight = 1.0 / square(shown_sd);
        let (first, drift) = (1.0 / square(meter.zero_sd), 1.0 / square(DRIFT_SD.value));
        let mut normal = [[first, 0.0], [0.0, drift]];
        let mut right = [first * meter.zero, 0.0];
        for blank in blanks {
            let row = [1.0, f64::from(blank.turn)];
            for i in 0..2 {
                right[i] += weight * row[i] * blank.percent;
                (0..2).for_each(|j| normal[i][j] += weight * row[i] * row[j]);
            }
        }
        let [[a, b], [_, d]] = normal;
        let det = a * d - b * b;
        let covariance = [[d / det, -b / det], [-b / det, a / det]];
        let line = covariance.map(|row| row[0] * right[0] + row[1] * right[1]);
        Self { line, covariance }
    }

    /// The same where pushes of clean air showed nothing: less than half a step.
    fn under(self, hidden: &[Blank], half_step: f64) -> Self {
        if hidden.is_empty() {
            return self;
        }
        let [[a, b], [_, d]] = self.covariance;
        let first = libm::sqrt(a);
        let root = [[first, 0.0], [b / first, libm::sqrt((d - b * b / a).max(0.0))]];
        let chance = |line: [f64; 2]| -> f64 {
            let each = hidden.iter().map(|blank| {
                let zero = line[0] + line[1] * f64::from(blank.turn);
                log_below((half_step - zero) / PUSH_SD.value)
            });
            each.sum()
        };
        let steps = || (-12..=12).map(|step| 0.4 * f64::from(step));
        let mut nodes = Vec::new();
        for u in steps() {
            for v in steps() {
                let line = [
                    self.line[0] + root[0][0] * u,
                    self.line[1] + root[1][0] * u + root[1][1] * v,
                ];
                nodes.push((line, chance(line) - 0.5 * (u * u + v * v)));
            }
        }
        let most = nodes.iter().fold(f64::NEG_INFINITY, |most, node| most.max(node.1));
        nodes.iter_mut().for_each(|node| node.1 = libm::exp(node.1 - most));
        let all: f64 = nodes.iter().map(|node| node.1).sum();
        let mean = |value: &dyn Fn([f64; 2]) -> f64| -> f64 {
            nodes.iter().map(|(line, weight)| weight * value(*line)).sum::<f64>() / all
        };
        let line = [mean(&|line| line[0]), mean(&|line| line[1])];
        let product = |i: usize, j: usize| mean(&|at| (at[i] - line[i]) * (at[j] - line[j]));
        let covariance = [[product(0, 0), product(0, 1)], [product(1, 0), product(1, 1)]];
        Self { line, covariance }
    }
}

/// Logarithm of the standard normal distribution function (1).
fn log_below(z: f64) -> f64 {
    if z > -30.0 {
        libm::log(normal::cdf(z))
    } else {
        // Its first term far out (Abramowitz & Stegun 26.2.12, from memory).
        -0.5 * z * z - libm::log(-z * libm::sqrt(core::f64::consts::TAU))
    }
}

fn square(value: f64) -> f64 {
    value * value
}

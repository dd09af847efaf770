//! A bag as it would be read if nothing had gone wrong.

use super::matrix::{self, Matrix};
use super::student::Student;
use super::written::millimeters;
use super::{Course, Followed, grid, scale};

/// What a bag would show if nothing had gone wrong: its mean heights and how they scatter.
#[derive(Debug, Clone)]
pub(super) struct Sound {
    /// Minutes of its heights (min).
    pub(super) minutes: Vec<f64>,
    /// What was written (mm).
    pub(super) written: Vec<f64>,
    /// Mean rise at each (mm).
    pub(super) rise: Vec<f64>,
    /// The scatter of the heights, row by row (mm²).
    pub(super) scatter: Vec<Vec<f64>>,
    student: Student,
    /// What the ruler leaves open of each height (variance, mm²).
    ruler: f64,
    /// L⁻¹ of what was written less the mean.
    white: Vec<f64>,
    /// ln probability of writing such numbers in millimeters, number by number.
    pub(super) format: Vec<f64>,
    /// ln probability of the whole bag.
    pub(super) log: f64,
}

/// What is expected of a treatment: its mean rise, and how far it may be off.
#[derive(Debug, Clone)]
pub(super) struct Expectation {
    /// At each minute (mm).
    pub(super) rise: Vec<f64>,
    /// Row by row (mm²).
    pub(super) scatter: Matrix,
}

impl Expectation {
    /// Of a treatment that has these probabilities on the grid.
    pub(super) fn on_grid(course: &Course, minutes: &[f64], probabilities: &[f64]) -> Self {
        let shapes = grid::shapes(course, minutes);
        let moments = grid::moments(probabilities);
        let mut rise = vec![0.0; minutes.len()];
        for (shape, (first, _)) in shapes.iter().zip(&moments) {
            rise.iter_mut().zip(shape).for_each(|(sum, mm)| *sum += first * mm);
        }
        let scatter = matrix::of(minutes.len(), |a, b| {
            let both = shapes.iter().zip(&moments);
            let square: f64 =
                both.map(|(shape, (_, second))| second * shape[a] * shape[b]).sum();
            square - rise[a] * rise[b]
        });
        Self { rise, scatter }
    }
}

impl Sound {
    /// A bag of which so much is expected, in hands whose ruler leaves a variance open (mm²); nothing for fewer
    /// than two heights.
    pub(super) fn of(bag: &Followed, expected: Expectation, ruler: f64) -> Option<Self> {
        let minutes = bag.minutes();
        if minutes.len() < 2 {
            return None;
        }
        let count = minutes.len();
        let Expectation { rise, scatter: of_class } = expected;
        let places: Vec<(f64, f64, f64)> =
            (0..count).map(|at| (minutes[at], rise[at], pace(&minutes, &rise, at))).collect();
        let scatter = matrix::with_ruler(count, ruler, |a, b| {
            scale::ZERO_MM.1 * scale::ZERO_MM.1
                + of_class[a][b]
                + scale::of_one_bag(places[a], places[b])
        });
        let student = Student::new(count, |a, b| scatter[a][b])?;
        let written = bag.written();
        let off: Vec<f64> =
            written.iter().zip(&rise).map(|(mm, rise)| mm - scale::ZERO_MM.0 - rise).collect();
        let white = student.whitened(&off);
        let format: Vec<f64> = written.iter().map(|mm| libm::log(millimeters(*mm))).collect();
        let mut sound =
            Self { minutes, written, rise, scatter, student, ruler, white, format, log: 0.0 };
        sound.log = sound.log_with(&vec![0.0; count]);
        Some(sound)
    }

    /// How far off it is: |L⁻¹ x|² (1), about as much as it has heights.
    pub(super) fn square(&self) -> f64 {
        self.white.iter().map(|value| value * value).sum()
    }

    /// Number of heights.
    pub(super) fn count(&self) -> usize {
        self.written.len()
    }

    /// ln probability of what was written if every height was changed by so much (mm).
    pub(super) fn log_with(&self, change: &[f64]) -> f64 {
        let white = self.student.whitened(change);
        let square = self.white.iter().zip(&white).map(|(a, b)| (a - b) * (a - b)).sum();
        self.student.at_square(square) + self.format.iter().sum::<f64>()
    }

    /// ln probability of what was written if the rises had been these (mm).
    pub(super) fn log_with_rises(&self, rises: &[f64]) -> f64 {
        let change: Vec<f64> = rises.iter().zip(&self.rise).map(|(a, b)| a - b).collect();
        self.log_with(&change)
    }

    /// ln density of heights if each may be off by that much more variance (mm²), for those that
    /// are kept.
    pub(super) fn log_density(&self, heights: &[f64], more: &[f64], kept: &[usize]) -> f64 {
        let scale = |a: usize, b: usize| {
            let (row, column) = (kept[a], kept[b]);
            self.scatter[row][column] + if row == column { more[row] } else { 0.0 }
        };
        let off: Vec<f64> =
            kept.iter().map(|at| heights[*at] - scale::ZERO_MM.0 - self.rise[*at]).collect();
        Student::new(kept.len(), scale)
            .map_or(f64::NEG_INFINITY, |student| student.log_density(&off))
    }

    /// ln density of what was written if rises scatter so many times as far; zero reading and
    /// ruler as ever.
    pub(super) fn widened(&self, times: f64) -> f64 {
        let zero = scale::ZERO_MM.1 * scale::ZERO_MM.1;
        let scale = |row: usize, column: usize| {
            let ruler = if row == column { self.ruler } else { 0.0 };
            zero + ruler + times * times * (self.scatter[row][column] - zero - ruler)
        };
        let off: Vec<f64> = self
            .written
            .iter()
            .zip(&self.rise)
            .map(|(mm, rise)| mm - scale::ZERO_MM.0 - rise)
            .collect();
        Student::new(self.count(), scale)
            .map_or(f64::NEG_INFINITY, |student| student.log_density(&off))
    }

    /// All places of its heights.
    pub(super) fn all(&self) -> Vec<usize> {
        (0..self.count()).collect()
    }
}

/// How fast a curve rises at one of its minutes (mm/min).
pub(super) fn pace(minutes: &[f64], rise: &[f64], at: usize) -> f64 {
    let (from, to) = (at.saturating_sub(1), (at + 1).min(minutes.len() - 1));
    let span = minutes[to] - minutes[from];
    if span > 0.0 { (rise[to] - rise[from]) / span } else { 0.0 }
}

/// How fast it rises at each of them (mm/min).
pub(super) fn paces(minutes: &[f64], rise: &[f64]) -> Vec<f64> {
    (0..minutes.len()).map(|at| pace(minutes, rise, at)).collect()
}

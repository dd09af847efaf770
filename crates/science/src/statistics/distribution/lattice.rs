//! Points that fill a cube evenly, shifted at random so that their error can be told.

use crate::statistics::chance::Chance;

/// Independent shifts of the lattice, from whose disagreement the error is judged.
pub(super) const SHIFTS: usize = 12;
/// Student's t quantile for two-sided 99 % with 11 degrees of freedom (1), for those shifts.
pub(super) const T_99: f64 = 3.105_806_515_539_281;
/// Points times values in one shift beyond which no more points are tried, so that a question with
/// very many comparisons still ends; its error is stated all the same.
const MOST_WORK: usize = 200_000;
/// Points of the lattice in one shift, tried in turn until the error is small enough, each with
/// the number whose powers are the lattice's steps (Korobov).
///
/// Derived: of all such numbers (up to 4,093 points; of 2,500 random ones beyond) the one with the
/// smallest P₂ in 12 dimensions with weights 1/j² (Sloan & Joe 1994, *Lattice Methods for Multiple
/// Integration*, from memory).
pub(super) const SIZES: [(u32, u32); 7] =
    [(251, 37), (509, 146), (1021, 481), (2039, 469), (4093, 450), (8191, 1163), (16381, 8098)];

/// The sizes that so many dimensions can afford, at least the first.
pub(super) fn sizes(dimensions: usize) -> &'static [(u32, u32)] {
    let affordable = SIZES.iter().take_while(|size| size.0 as usize * dimensions <= MOST_WORK);
    &SIZES[..affordable.count().max(1)]
}

/// One shifted lattice.
pub(super) struct Lattice {
    steps: Vec<f64>,
    start: Vec<f64>,
    size: u32,
}

/// A lattice with a random shift from `chance`.
pub(super) fn points(
    dimensions: usize,
    size: u32,
    korobov: u32,
    chance: &mut Chance,
) -> Lattice {
    let start = (0..dimensions).map(|_| chance.uniform()).collect();
    Lattice { steps: steps(dimensions, size, korobov), start, size }
}

impl Lattice {
    /// Mean over the points, folded by the tent map, of a function that may use the second slice
    /// as it likes.
    pub(super) fn mean(&self, mut f: impl FnMut(&[f64], &mut [f64]) -> f64) -> f64 {
        let mut sum = 0.0;
        self.each(|point, room| sum += f(point, room));
        sum / f64::from(self.size)
    }

    /// Hands over each point, folded by the tent map, with a slice to use as one likes.
    pub(super) fn each(&self, mut f: impl FnMut(&[f64], &mut [f64])) {
        let mut point = vec![0.0; self.start.len()];
        let mut room = vec![0.0; self.start.len()];
        for k in 0..self.size {
            for ((x, step), start) in point.iter_mut().zip(&self.steps).zip(&self.start) {
                let raw = f64::from(k) * step + start;
                // Never negative, so that cutting is rounding down.
                *x = (2.0 * (raw - f64::from(raw as u32)) - 1.0).abs();
            }
            f(&point, &mut room);
        }
    }

    /// Number of points.
    pub(super) fn size(&self) -> f64 {
        f64::from(self.size)
    }
}

/// Steps of Korobov's lattice: powers of one number over the number of points.
fn steps(dimensions: usize, size: u32, korobov: u32) -> Vec<f64> {
    let (size, korobov) = (u64::from(size), u64::from(korobov));
    let mut power = 1;
    (0..dimensions)
        .map(|_| {
            let step = power as f64 / size as f64;
            power = power * korobov % size;
            step
        })
        .collect()
}

/// Weights with which values at Chebyshev's points `places` make the value at `x`; beyond the
/// points, the nearest point's value.
pub(super) fn chebyshev(places: &[f64], x: f64) -> Vec<f64> {
    let count = places.len();
    let mut weights = vec![0.0; count];
    let (first, last) = (0, count - 1);
    let nearest = if x <= places[first] {
        Some(first)
    } else if x >= places[last] {
        Some(last)
    } else {
        places.iter().position(|p| (x - p).abs() < 1e-12)
    };
    if let Some(nearest) = nearest {
        weights[nearest] = 1.0;
        return weights;
    }
    let mut sum = 0.0;
    for (i, (weight, place)) in weights.iter_mut().zip(places).enumerate() {
        let angle = std::f64::consts::PI * (i as f64 + 0.5) / count as f64;
        let sign = if i % 2 == 0 { 1.0 } else { -1.0 };
        *weight = sign * libm::sin(angle) / (x - place);
        sum += *weight;
    }
    for weight in &mut weights {
        *weight /= sum;
    }
    weights
}

//! Laws of temperature, read from a table of their own values.
//!
//! The rates of a bag ask the same laws hundreds of times for each draw, and each law is an exponential
//! or two. Here several are read at once, by one polynomial for each half kelvin, as near to the laws
//! as their own rounding (tested). Values come from the laws themselves, which stand where they stood.

use crate::units::Celsius;
use core::f64::consts::PI;

/// Pieces in a kelvin.
const PIECES_PER_KELVIN: f64 = 2.0;
/// Pieces from 0 to 100 °C.
const PIECES: usize = 200;
/// Terms of a polynomial, and points that it goes through.
const TERMS: usize = 8;

/// Several laws that are smooth from 0 to 100 °C.
#[derive(Debug)]
pub(crate) struct TemperatureTable<const LAWS: usize> {
    /// For each piece the factors of 1, s, s², … of each law, s from −1 to 1 along the piece.
    pieces: Vec<[[f64; LAWS]; TERMS]>,
}

impl<const LAWS: usize> TemperatureTable<LAWS> {
    /// The table of some laws.
    ///
    /// # Source
    /// Interpolation in Chebyshev points: L. N. Trefethen, *Approximation Theory and Approximation
    /// Practice* (2013), chapters 3 and 8, from memory.
    pub(crate) fn of(laws: impl Fn(Celsius) -> [f64; LAWS]) -> Self {
        let (cosines, polynomials) = (cosines(), polynomials());
        let piece = |below: usize| {
            let middle = below as f64 + 0.5;
            let values: [[f64; LAWS]; TERMS] = core::array::from_fn(|k| {
                laws(Celsius((middle + 0.5 * cosines[1][k]) / PIECES_PER_KELVIN))
            });
            let mut factors = [[0.0; LAWS]; TERMS];
            for (degree, chebyshev) in polynomials.iter().enumerate() {
                let share = if degree == 0 { 1.0 } else { 2.0 } / TERMS as f64;
                for law in 0..LAWS {
                    let sum: f64 =
                        (0..TERMS).map(|k| values[k][law] * cosines[degree][k]).sum();
                    for (factor, term) in factors.iter_mut().zip(chebyshev) {
                        factor[law] += share * sum * term;
                    }
                }
            }
            factors
        };
        Self { pieces: (0..PIECES).map(piece).collect() }
    }

    /// All of them at a temperature, which is held to 0 and 100 °C.
    pub(crate) fn at(&self, temperature: Celsius) -> [f64; LAWS] {
        let place = temperature.liquid().0 * PIECES_PER_KELVIN;
        // Not-a-number lands on the first piece and comes out as not-a-number again.
        let below = (place as usize).min(PIECES - 1);
        let s = 2.0 * (place - below as f64) - 1.0;
        let (s2, s4) = (s * s, s * s * (s * s));
        let c = &self.pieces[below];
        core::array::from_fn(|i| {
            let low = (c[0][i] + s * c[1][i]) + s2 * (c[2][i] + s * c[3][i]);
            let high = (c[4][i] + s * c[5][i]) + s2 * (c[6][i] + s * c[7][i]);
            low + s4 * high
        })
    }
}

/// Chebyshev's polynomials, a row a degree, in the points where that of degree [`TERMS`] is zero.
fn cosines() -> [[f64; TERMS]; TERMS] {
    let at = |degree: usize, k: usize| degree as f64 * (k as f64 + 0.5) * PI / TERMS as f64;
    core::array::from_fn(|degree| core::array::from_fn(|k| libm::cos(at(degree, k))))
}

/// Chebyshev's polynomials by the factors of their powers: T₀ = 1, T₁ = s, Tₙ₊₁ = 2 s Tₙ − Tₙ₋₁.
fn polynomials() -> [[f64; TERMS]; TERMS] {
    let mut all = [[0.0; TERMS]; TERMS];
    all[0][0] = 1.0;
    all[1][1] = 1.0;
    for n in 1..TERMS - 1 {
        for power in 0..TERMS {
            let up = if power > 0 { all[n][power - 1] } else { 0.0 };
            all[n + 1][power] = 2.0 * up - all[n - 1][power];
        }
    }
    all
}

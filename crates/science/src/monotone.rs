//! A smooth curve through given points that goes up and down only where the points do.

/// Piecewise cubic through `N` points, with a continuous slope and no overshoot.
///
/// # Source
/// F. N. Fritsch, R. E. Carlson (1980), "Monotone piecewise cubic interpolation", *SIAM J. Numer.
/// Anal.* 17, 238-246, with the slopes of F. N. Fritsch, J. Butland (1984), *SIAM J. Sci. Stat.
/// Comput.* 5, 300-304.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct MonotoneCurve<const N: usize> {
    x: [f64; N],
    y: [f64; N],
    slope: [f64; N],
}

impl<const N: usize> MonotoneCurve<N> {
    /// The curve through the points (`x`, `y`), whose `x` must rise.
    pub const fn new(x: [f64; N], y: [f64; N]) -> Self {
        let mut slope = [0.0; N];
        let mut i = 1;
        while i + 1 < N {
            let (before, after) = (x[i] - x[i - 1], x[i + 1] - x[i]);
            let (left, right) = ((y[i] - y[i - 1]) / before, (y[i + 1] - y[i]) / after);
            // Weighted harmonic mean; zero at a turn.
            slope[i] = if left * right > 0.0 {
                let share = (before + 2.0 * after) / (3.0 * (before + after));
                left * right / (share * right + (1.0 - share) * left)
            } else {
                0.0
            };
            i += 1;
        }
        if N > 1 {
            slope[0] = (y[1] - y[0]) / (x[1] - x[0]);
            slope[N - 1] = (y[N - 1] - y[N - 2]) / (x[N - 1] - x[N - 2]);
        }
        Self { x, y, slope }
    }

    /// Height of the curve at `x`; the first or last height outside the points.
    pub fn at(&self, x: f64) -> f64 {
        let last = N - 1;
        if x <= self.x[0] {
            return self.y[0];
        }
        if x >= self.x[last] {
            return self.y[last];
        }
        let mut i = 0;
        while i + 1 < last && x >= self.x[i + 1] {
            i += 1;
        }
        let width = self.x[i + 1] - self.x[i];
        let s = (x - self.x[i]) / width;
        let r = 1.0 - s;
        let (low, high) = (self.y[i], self.y[i + 1]);
        let (rise, fall) = (width * self.slope[i], width * self.slope[i + 1]);
        r * r * (low * (1.0 + 2.0 * s) + rise * s) + s * s * (high * (1.0 + 2.0 * r) - fall * r)
    }
}

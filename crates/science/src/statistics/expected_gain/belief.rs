//! What is believed of a true difference after round one.

/// What is believed of a true difference.
#[derive(Debug, Clone, PartialEq)]
pub enum Belief {
    /// A normal distribution (unit of the values).
    Normal {
        /// Its mean.
        mean: f64,
        /// Its standard deviation; 0 where the difference is taken as known.
        sd: f64,
    },
    /// Draws, each as likely as the next (unit of the values).
    Draws(Vec<f64>),
}

/// A mixture of normal distributions of one width, by their middles in order: what the difference in
/// the bags of round two is expected to be.
#[derive(Debug)]
pub(super) struct Foreseen {
    /// Middles, in order.
    pub(super) middles: Vec<f64>,
    /// Standard deviation of each.
    pub(super) width: f64,
}

impl Foreseen {
    /// What is believed, `origin` taken off and in units of `unit`, with a measurement of variance
    /// `variance` (in units of its square) on top.
    pub(super) fn of(belief: &Belief, origin: f64, unit: f64, variance: f64) -> Self {
        match belief {
            Belief::Normal { mean, sd } => {
                let own = sd / unit;
                let middles = vec![(mean - origin) / unit];
                Self { middles, width: libm::sqrt(own * own + variance) }
            }
            Belief::Draws(draws) => {
                let mut middles: Vec<f64> = draws.iter().map(|d| (d - origin) / unit).collect();
                middles.sort_by(f64::total_cmp);
                Self { middles, width: libm::sqrt(variance) }
            }
        }
    }

    /// Mean of the square.
    pub(super) fn mean_square(&self) -> f64 {
        let squares: f64 = self.middles.iter().map(|m| m * m).sum();
        squares / self.middles.len() as f64 + self.width * self.width
    }

    /// Stretches outside of which nothing is expected, each with the middles that reach into it.
    pub(super) fn stretches(&self) -> Vec<(f64, f64)> {
        let reach = REACH * self.width;
        let mut stretches: Vec<(f64, f64)> = Vec::new();
        for &middle in &self.middles {
            let (low, high) = (middle - reach, middle + reach);
            match stretches.last_mut() {
                Some(last) if low <= last.1 => last.1 = high,
                _ => stretches.push((low, high)),
            }
        }
        stretches
    }

    /// Density at `x`.
    pub(super) fn density(&self, x: f64) -> f64 {
        use crate::statistics::distribution::normal;
        let reach = REACH * self.width;
        let from = self.middles.partition_point(|&m| m < x - reach);
        let near = self.middles[from..].iter().take_while(|&&m| m <= x + reach);
        let sum: f64 = near.map(|m| normal::density((x - m) / self.width)).sum();
        sum / (self.width * self.middles.len() as f64)
    }
}

/// Standard deviations beyond which a normal value is not looked for: 2 in 10¹⁷ lie there.
const REACH: f64 = 8.5;

//! How the readings of one period scatter together, and how they are made independent.

/// Readings that belong together, with the Cholesky factor L of their covariance V = L Lᵀ.
pub(super) struct Block {
    /// Place of the first of them among all readings.
    first: usize,
    /// Rows of L, each up to its diagonal.
    rows: Vec<Vec<f64>>,
}

impl Block {
    /// The block of readings from `first` on: `own` is the variance of each alone (mm²), `joint` are
    /// columns b of which b bᵀ adds to the covariance (mm).
    pub(super) fn new(first: usize, own: &[f64], joint: &[Vec<f64>]) -> Self {
        let count = own.len();
        let mut rows: Vec<Vec<f64>> = Vec::with_capacity(count);
        // Each column moves only some of the readings: those of its bag or group.
        let spans: Vec<(usize, usize)> = joint.iter().map(|column| span(column)).collect();
        for i in 0..count {
            let mut row = vec![0.0; i + 1];
            for (column, (from, to)) in joint.iter().zip(&spans) {
                if (*from..*to).contains(&i) {
                    for (j, value) in row.iter_mut().enumerate().take(*to).skip(*from) {
                        *value += column[i] * column[j];
                    }
                }
            }
            row[i] += own[i];
            for j in 0..=i {
                let known: f64 = if j < i {
                    row[..j].iter().zip(&rows[j][..j]).map(|(a, b)| a * b).sum()
                } else {
                    row[..j].iter().map(|a| a * a).sum()
                };
                row[j] =
                    if j < i { (row[j] - known) / rows[j][j] } else { (row[i] - known).sqrt() };
            }
            rows.push(row);
        }
        Self { first, rows }
    }

    /// Half the logarithm of the determinant of V.
    pub(super) fn half_log(&self) -> f64 {
        self.rows.iter().enumerate().map(|(at, row)| libm::log(row[at])).sum()
    }

    /// Turns values of all readings into L⁻¹ times those of this block, in place.
    pub(super) fn whiten(&self, values: &mut [f64]) {
        let own = &mut values[self.first..self.first + self.rows.len()];
        for (i, row) in self.rows.iter().enumerate() {
            let known: f64 = row[..i].iter().zip(&own[..i]).map(|(l, x)| l * x).sum();
            own[i] = (own[i] - known) / row[i];
        }
    }
}

/// From the first value that is not 0 to behind the last.
fn span(column: &[f64]) -> (usize, usize) {
    let first = column.iter().position(|value| *value != 0.0).unwrap_or(column.len());
    let last = column.iter().rposition(|value| *value != 0.0).map_or(first, |last| last + 1);
    (first, last)
}

#[cfg(test)]
mod tests {
    use super::Block;

    /// V = I + b bᵀ with b = (1, 1, 0): worked by hand, L = [√2; 1/√2, √1.5; 0, 0, 1] and |V| = 3.
    #[test]
    fn whitening_undoes_the_covariance() {
        let block = Block::new(1, &[1.0, 1.0, 1.0], &[vec![1.0, 1.0, 0.0]]);
        let mut values = [9.0, 2.0_f64.sqrt(), 0.5_f64.sqrt() + 1.5_f64.sqrt(), 3.0];
        block.whiten(&mut values);
        assert!((block.half_log() - 0.5 * libm::log(3.0)).abs() < 1e-14);
        for (value, expected) in values.iter().zip([9.0, 1.0, 1.0, 3.0]) {
            assert!((value - expected).abs() < 1e-14, "{value} {expected}");
        }
    }
}

//! Small dense linear systems.

/// A square matrix factored as P A = L U.
#[derive(Debug, Clone)]
pub struct Factored<const N: usize> {
    rows: [[f64; N]; N],
    order: [usize; N],
}

impl<const N: usize> Factored<N> {
    /// Factors `rows` by Gaussian elimination with row pivoting; nothing when it is singular.
    pub fn new(mut rows: [[f64; N]; N]) -> Option<Self> {
        let mut order: [usize; N] = core::array::from_fn(|i| i);
        for k in 0..N {
            let mut best = k;
            for i in k + 1..N {
                if rows[i][k].abs() > rows[best][k].abs() {
                    best = i;
                }
            }
            let pivot = rows[best][k];
            if !pivot.is_finite() || pivot.abs() < f64::MIN_POSITIVE {
                return None;
            }
            rows.swap(k, best);
            order.swap(k, best);
            let upper = rows[k];
            for row in rows.iter_mut().skip(k + 1) {
                // Most entries of a bag's Jacobian are zero.
                if row[k].abs() > 0.0 {
                    let share = row[k] / pivot;
                    row[k] = share;
                    for j in k + 1..N {
                        row[j] -= share * upper[j];
                    }
                }
            }
        }
        Some(Self { rows, order })
    }

    /// Solves A x = `right`.
    pub fn solve(&self, right: &[f64; N]) -> [f64; N] {
        let mut x: [f64; N] = core::array::from_fn(|i| right[self.order[i]]);
        for i in 1..N {
            x[i] -= dot(&self.rows[i][..i], &x[..i]);
        }
        for i in (0..N).rev() {
            x[i] = (x[i] - dot(&self.rows[i][i + 1..], &x[i + 1..])) / self.rows[i][i];
        }
        x
    }
}

fn dot(a: &[f64], b: &[f64]) -> f64 {
    a.iter().zip(b).map(|(a, b)| a * b).sum()
}

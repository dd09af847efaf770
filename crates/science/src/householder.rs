//! Reflections that turn a column onto its first entry: the one step of every factorization here.

/// A reflection I − s m mᵀ.
pub(crate) struct Mirror {
    vector: Vec<f64>,
    scale: f64,
}

impl Mirror {
    /// The reflection that turns `column` into (d, 0, 0, …), and d. `None` for a column of zeros, which
    /// needs no turning.
    ///
    /// # Source
    /// Householder (1958), *J. ACM* 5, 339–342; Golub & Van Loan, *Matrix Computations*, section 5.1.
    pub(crate) fn of(column: &[f64]) -> Option<(Self, f64)> {
        let length = length(column);
        if length <= 0.0 {
            return None;
        }
        let mut vector = column.to_vec();
        let diagonal = -length.copysign(vector[0]);
        vector[0] -= diagonal;
        let scale = 2.0 / vector.iter().map(|v| v * v).sum::<f64>();
        Some((Self { vector, scale }, diagonal))
    }

    /// Turns another column along.
    pub(crate) fn turn(&self, column: &mut [f64]) {
        let along: f64 =
            column.iter().zip(&self.vector).map(|(c, m)| c * m).sum::<f64>() * self.scale;
        for (c, m) in column.iter_mut().zip(&self.vector) {
            *c -= along * m;
        }
    }
}

/// The length √Σ c², without overflow on the way.
pub(crate) fn length(column: &[f64]) -> f64 {
    let largest = column.iter().fold(0.0_f64, |most, v| most.max(v.abs()));
    if largest <= 0.0 {
        return 0.0;
    }
    largest * libm::sqrt(column.iter().map(|v| (v / largest) * (v / largest)).sum())
}

//! A small square matrix, as large as the number of treatments.

/// A square matrix of numbers, row by row.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Square {
    size: usize,
    cells: Vec<f64>,
}

impl Square {
    /// All cells 0.
    pub(super) fn zero(size: usize) -> Self {
        Self { size, cells: vec![0.0; size * size] }
    }

    pub(super) fn size(&self) -> usize {
        self.size
    }

    pub(super) fn at(&self, row: usize, column: usize) -> f64 {
        self.cells[row * self.size + column]
    }

    pub(super) fn row(&self, row: usize) -> &[f64] {
        &self.cells[row * self.size..(row + 1) * self.size]
    }

    pub(super) fn add(&mut self, row: usize, column: usize, more: f64) {
        self.cells[row * self.size + column] += more;
    }

    /// Adds `times` the product of a vector with itself, below and on the diagonal only.
    pub(super) fn add_outer_below(&mut self, times: f64, vector: &[f64]) {
        for (i, &a) in vector.iter().enumerate() {
            // A group has bags of a few treatments only, but its block's mean has more.
            if a.abs() > 0.0 {
                let a = times * a;
                let row = &mut self.cells[i * self.size..i * self.size + i + 1];
                for (cell, &b) in row.iter_mut().zip(vector) {
                    *cell += a * b;
                }
            }
        }
    }

    /// Copies what lies below the diagonal above it.
    pub(super) fn mirror(&mut self) {
        for i in 0..self.size {
            for j in 0..i {
                self.cells[j * self.size + i] = self.cells[i * self.size + j];
            }
        }
    }

    /// The upper left corner of so many rows and columns.
    pub(super) fn corner(&self, size: usize) -> Self {
        let cells = (0..size).flat_map(|i| self.row(i)[..size].to_vec()).collect();
        Self { size, cells }
    }

    pub(super) fn plus(&self, times: f64, other: &Self) -> Self {
        let cells = self.cells.iter().zip(&other.cells).map(|(a, b)| a + times * b).collect();
        Self { size: self.size, cells }
    }

    pub(super) fn times(&self, other: &Self) -> Self {
        let mut product = Self::zero(self.size);
        for i in 0..self.size {
            let row = &mut product.cells[i * self.size..(i + 1) * self.size];
            for (k, &a) in self.row(i).iter().enumerate() {
                for (cell, b) in row.iter_mut().zip(other.row(k)) {
                    *cell += a * b;
                }
            }
        }
        product
    }

    pub(super) fn on(&self, vector: &[f64]) -> Vec<f64> {
        (0..self.size).map(|i| dot(self.row(i), vector)).collect()
    }

    /// aᵀ M b.
    pub(super) fn between(&self, a: &[f64], b: &[f64]) -> f64 {
        dot(a, &self.on(b))
    }

    /// Trace of the product with another matrix whose transpose is itself.
    pub(super) fn trace_with(&self, other: &Self) -> f64 {
        dot(&self.cells, &other.cells)
    }
}

pub(super) fn dot(a: &[f64], b: &[f64]) -> f64 {
    a.iter().zip(b).map(|(a, b)| a * b).sum()
}

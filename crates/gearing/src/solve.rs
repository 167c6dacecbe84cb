//! Small dense linear algebra for the learning: symmetric positive definite matrices.

/// A square matrix, row after row.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Square {
    size: usize,
    cells: Vec<f64>,
}

impl Square {
    /// Filled with zeros.
    pub fn zeros(size: usize) -> Square {
        Square { size, cells: vec![0.0; size * size] }
    }

    /// A cell; 0 outside.
    pub fn get(&self, row: usize, column: usize) -> f64 {
        self.cells.get(row * self.size + column).copied().unwrap_or(0.0)
    }

    /// Adds to a cell; nothing outside.
    pub fn add(&mut self, row: usize, column: usize, value: f64) {
        if let Some(cell) = self.cells.get_mut(row * self.size + column) {
            *cell += value;
        }
    }

    /// The product with a vector.
    pub fn times(&self, vector: &[f64]) -> Vec<f64> {
        let dot = |row: &[f64]| row.iter().zip(vector).map(|(cell, value)| cell * value).sum();
        self.cells.chunks(self.size.max(1)).map(dot).collect()
    }

    /// The inverse of a symmetric positive definite matrix, by Cholesky; `None` if it is not one.
    pub fn inverse(&self) -> Option<Square> {
        let lower = self.cholesky()?;
        let mut inverse = Square::zeros(self.size);
        for column in 0..self.size {
            let solved = lower.solve_unit(column);
            for (row, value) in solved.into_iter().enumerate() {
                inverse.add(row, column, value);
            }
        }
        Some(inverse)
    }

    /// The lower triangle L with L Lᵀ = self.
    fn cholesky(&self) -> Option<Square> {
        let mut lower = Square::zeros(self.size);
        for row in 0..self.size {
            for column in 0..=row {
                let known: f64 =
                    (0..column).map(|k| lower.get(row, k) * lower.get(column, k)).sum();
                let rest = self.get(row, column) - known;
                let value = if row == column {
                    if rest.is_nan() || rest <= 0.0 {
                        return None;
                    }
                    rest.sqrt()
                } else {
                    rest / lower.get(column, column)
                };
                lower.add(row, column, value);
            }
        }
        Some(lower)
    }

    /// Solves L Lᵀ x = the unit vector of a column.
    fn solve_unit(&self, column: usize) -> Vec<f64> {
        let mut forward: Vec<f64> = Vec::with_capacity(self.size);
        for row in 0..self.size {
            let known: f64 = forward.iter().enumerate().map(|(k, y)| self.get(row, k) * y).sum();
            let unit = if row == column { 1.0 } else { 0.0 };
            forward.push((unit - known) / self.get(row, row));
        }
        let mut backward: Vec<f64> = Vec::with_capacity(self.size);
        for (row, y) in forward.iter().enumerate().rev() {
            let known: f64 = backward
                .iter()
                .enumerate()
                .map(|(k, x)| self.get(self.size - 1 - k, row) * x)
                .sum();
            backward.push((y - known) / self.get(row, row));
        }
        backward.reverse();
        backward
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_inverse_by_hand() {
        // [4 2; 2 3] has the inverse [3 −2; −2 4] / 8.
        let mut matrix = Square::zeros(2);
        for (row, column, value) in [(0, 0, 4.0), (0, 1, 2.0), (1, 0, 2.0), (1, 1, 3.0)] {
            matrix.add(row, column, value);
        }
        let inverse = matrix.inverse().unwrap();
        for (row, column, value) in [(0, 0, 0.375), (0, 1, -0.25), (1, 0, -0.25), (1, 1, 0.5)] {
            assert!((inverse.get(row, column) - value).abs() < 1e-15);
        }
        assert_eq!(matrix.times(&[1.0, 1.0]), [6.0, 5.0]);
    }

    #[test]
    fn what_is_not_positive_definite_has_none() {
        let mut matrix = Square::zeros(2);
        matrix.add(0, 0, 1.0);
        assert_eq!(matrix.inverse(), None);
    }
}

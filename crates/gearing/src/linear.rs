//! The least total by which readings must miss their bands: a small linear programme.

use crate::solve::Square;

/// One reading as a linear function of the pack totals, with its limits.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Row {
    /// Change of the reading for each unit of each total.
    pub slopes: Vec<f64>,
    /// The reading at totals of 0.
    pub constant: f64,
    /// Low limit; minus infinity for none.
    pub low: f64,
    /// High limit; infinity for none.
    pub high: f64,
    /// The cost of each unit by which it misses.
    pub cost: f64,
}

/// The least total cost of missing the limits over all totals ≥ 0.
///
/// The simplex method on a dense tableau. Each limit has a miss and a slack of opposite sign, so
/// one of them is a first basis; Bland's rule keeps it from going in circles.
pub(crate) fn least_miss(rows: &[Row]) -> f64 {
    let totals = rows.iter().map(|row| row.slopes.len()).max().unwrap_or(0);
    let mut limits: Vec<Limit> = Vec::with_capacity(2 * rows.len());
    for row in rows {
        let negated = || row.slopes.iter().map(|slope| -slope).collect();
        if row.low.is_finite() {
            let slopes = row.slopes.clone();
            limits.push(Limit { slopes, least: row.low - row.constant, cost: row.cost });
        }
        if row.high.is_finite() {
            limits.push(Limit {
                slopes: negated(),
                least: row.constant - row.high,
                cost: row.cost,
            });
        }
    }
    Tableau::of(&limits, totals).minimum()
}

/// slopes · totals + miss ≥ least.
struct Limit {
    slopes: Vec<f64>,
    least: f64,
    cost: f64,
}

/// Columns: the totals, then the miss and the slack of each limit, then the right side. The last
/// row holds the reduced costs and minus the cost so far.
struct Tableau {
    cells: Square,
    limits: usize,
    columns: usize,
    basis: Vec<usize>,
}

/// Smaller than any meaningful slope or cost.
const TINY: f64 = 1e-11;
/// More turns than these small programmes take.
const TURNS: usize = 2000;

impl Tableau {
    fn of(limits: &[Limit], totals: usize) -> Tableau {
        let columns = totals + 2 * limits.len();
        let mut cells = Square::zeros(columns.max(limits.len()) + 1);
        let mut basis = Vec::with_capacity(limits.len());
        for (row, limit) in limits.iter().enumerate() {
            let (miss, slack) = (totals + 2 * row, totals + 2 * row + 1);
            let missed = limit.least > 0.0;
            let sign = if missed { 1.0 } else { -1.0 };
            for (column, slope) in limit.slopes.iter().enumerate() {
                cells.add(row, column, sign * slope);
            }
            cells.add(row, miss, sign);
            cells.add(row, slack, -sign);
            cells.add(row, columns, sign * limit.least);
            basis.push(if missed { miss } else { slack });
            cells.add(limits.len(), miss, limit.cost);
        }
        let mut tableau = Tableau { cells, limits: limits.len(), columns, basis };
        for (row, limit) in limits.iter().enumerate() {
            if limit.least > 0.0 {
                tableau.subtract(tableau.limits, row, limit.cost);
            }
        }
        tableau
    }

    /// Takes a multiple of one row from another.
    fn subtract(&mut self, from: usize, row: usize, factor: f64) {
        for column in 0..=self.columns {
            let value = self.cells.get(row, column);
            self.cells.add(from, column, -factor * value);
        }
    }

    fn minimum(mut self) -> f64 {
        for _ in 0..TURNS {
            let cheaper = |&column: &usize| self.cells.get(self.limits, column) < -TINY;
            let Some(entering) = (0..self.columns).find(cheaper) else { break };
            let ratio = |row: usize| {
                let slope = self.cells.get(row, entering);
                (slope > TINY).then(|| self.cells.get(row, self.columns) / slope)
            };
            let leaving = (0..self.limits)
                .filter_map(|row| Some((ratio(row)?, *self.basis.get(row)?, row)))
                .min_by(|a, b| a.0.total_cmp(&b.0).then(a.1.cmp(&b.1)));
            let Some((_, _, row)) = leaving else { break };
            self.pivot(row, entering);
        }
        -self.cells.get(self.limits, self.columns)
    }

    fn pivot(&mut self, row: usize, entering: usize) {
        let pivot = self.cells.get(row, entering);
        for column in 0..=self.columns {
            let value = self.cells.get(row, column);
            self.cells.add(row, column, value / pivot - value);
        }
        for other in (0..=self.limits).filter(|&other| other != row) {
            let factor = self.cells.get(other, entering);
            if factor != 0.0 {
                self.subtract(other, row, factor);
            }
        }
        if let Some(basis) = self.basis.get_mut(row) {
            *basis = entering;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn row(slopes: &[f64], constant: f64, low: f64, high: f64) -> Row {
        Row { slopes: slopes.to_vec(), constant, low, high, cost: 1.0 }
    }

    fn assert_miss(rows: &[Row], expected: f64) {
        let found = least_miss(rows);
        assert!((found - expected).abs() < 1e-9, "found {found}, expected {expected}");
    }

    // All by hand.
    #[test]
    fn least_misses_by_hand() {
        // One total, one band: reachable, and not.
        assert_miss(&[row(&[-1.0], 1.0, 0.4, 0.5)], 0.0);
        assert_miss(&[row(&[1.0], 1.0, 0.4, 0.5)], 0.5);
        // Two readings of one total: 0.4…0.5 and 0.7…0.8 are 0.2 apart.
        assert_miss(&[row(&[1.0], 0.0, 0.4, 0.5), row(&[1.0], 0.0, 0.7, 0.8)], 0.2);
        // A second total frees the second reading.
        assert_miss(&[row(&[1.0, 0.0], 0.0, 0.4, 0.5), row(&[1.0, 1.0], 0.0, 0.7, 0.8)], 0.0);
        // Half as steep: missing on the steep side costs less.
        assert_miss(&[row(&[1.0], 0.0, 0.4, 0.5), row(&[0.5], 0.0, 0.5, 0.6)], 0.25);
        // No limits, no rows.
        assert_miss(&[row(&[1.0], 0.0, f64::NEG_INFINITY, f64::INFINITY)], 0.0);
        assert_miss(&[], 0.0);
    }
}

//! Least squares for one or two waves round a turn.

/// How often a wave must pass its own scatter to stand out of pure noise 19 times in 20: the 95 %
/// point of a Rayleigh distribution, √(−2 ln 0.05).
const STANDS_OUT: f64 = 2.447_746_830_680_816;

/// A wave a·cos kθ + b·sin kθ with the covariance of a and b, mm and mm².
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Wave {
    pub a: f64,
    pub b: f64,
    pub var_a: f64,
    pub var_b: f64,
    pub cov: f64,
}

/// The fitted circle and what it leaves.
#[derive(Clone, Debug, PartialEq)]
pub struct Fit {
    pub mean: f64,
    pub mean_standard: f64,
    pub once: Wave,
    pub twice: Option<Wave>,
    pub left: Vec<f64>,
}

impl Wave {
    pub fn height(&self) -> f64 {
        self.a.hypot(self.b)
    }

    /// Radians.
    pub fn angle(&self) -> f64 {
        self.b.atan2(self.a)
    }

    /// Standard uncertainty along the wave's own direction.
    pub fn standard_height(&self) -> f64 {
        let (sine, cosine) = self.angle().sin_cos();
        self.along(cosine, sine)
    }

    /// Standard uncertainty of its direction, radians.
    pub fn standard_angle(&self) -> f64 {
        let (sine, cosine) = self.angle().sin_cos();
        self.along(-sine, cosine) / self.height()
    }

    /// Whether it is more than noise makes.
    pub fn stands_out(&self) -> bool {
        // Below a nanometre only the last bits of a float are left.
        let noise = ((self.var_a + self.var_b) / 2.0).sqrt().max(1e-6);
        self.height() > STANDS_OUT * noise
    }

    /// This wave less another, both read apart.
    pub fn less(&self, other: &Wave) -> Wave {
        Wave {
            a: self.a - other.a,
            b: self.b - other.b,
            var_a: self.var_a + other.var_a,
            var_b: self.var_b + other.var_b,
            cov: self.cov + other.cov,
        }
    }

    fn along(&self, x: f64, y: f64) -> f64 {
        (self.var_a * x * x + 2.0 * self.cov * x * y + self.var_b * y * y).max(0.0).sqrt()
    }
}

/// Fits r₀ and `count` waves. `None` where the angles do not allow it.
pub fn waves(angles: &[f64], heights: &[f64], step: f64, count: u8) -> Option<Fit> {
    let columns: Vec<Vec<f64>> = std::iter::once(vec![1.0; angles.len()])
        .chain((1..=count).flat_map(|k| {
            let turned = move |angle: &f64| f64::from(k) * angle;
            [
                angles.iter().map(|angle| turned(angle).cos()).collect(),
                angles.iter().map(|angle| turned(angle).sin()).collect::<Vec<f64>>(),
            ]
        }))
        .collect();
    let dot = |left: &[f64], right: &[f64]| left.iter().zip(right).map(|(l, r)| l * r).sum::<f64>();
    let normal: Vec<Vec<f64>> =
        columns.iter().map(|left| columns.iter().map(|right| dot(left, right)).collect()).collect();
    let inverse = inverse(normal)?;
    let sums: Vec<f64> = columns.iter().map(|column| dot(column, heights)).collect();
    let found: Vec<f64> = inverse.iter().map(|row| dot(row, &sums)).collect();
    let left: Vec<f64> = heights
        .iter()
        .enumerate()
        .map(|(row, height)| {
            let fitted: f64 = columns
                .iter()
                .zip(&found)
                .filter_map(|(column, factor)| Some(column.get(row)? * factor))
                .sum();
            height - fitted
        })
        .collect();
    let free = angles.len().checked_sub(columns.len())?;
    let scatter = if free == 0 { 0.0 } else { (dot(&left, &left) / free as f64).sqrt() };
    let variance = scatter.max(step).powi(2);
    let at = |row: usize, column: usize| Some(variance * inverse.get(row)?.get(column)?);
    let wave = |first: usize| {
        Some(Wave {
            a: *found.get(first)?,
            b: *found.get(first + 1)?,
            var_a: at(first, first)?,
            var_b: at(first + 1, first + 1)?,
            cov: at(first, first + 1)?,
        })
    };
    Some(Fit {
        mean: *found.first()?,
        mean_standard: at(0, 0)?.sqrt(),
        once: wave(1)?,
        twice: wave(3),
        left,
    })
}

/// Gauss-Jordan with the largest pivot; `None` for a singular matrix.
fn inverse(mut matrix: Vec<Vec<f64>>) -> Option<Vec<Vec<f64>>> {
    let size = matrix.len();
    for (index, row) in matrix.iter_mut().enumerate() {
        row.extend((0..size).map(|column| if column == index { 1.0 } else { 0.0 }));
    }
    for column in 0..size {
        let largest = (column..size).max_by(|left, right| {
            let at = |row: usize| {
                matrix.get(row).and_then(|row| row.get(column)).map_or(0.0, |x| x.abs())
            };
            at(*left).total_cmp(&at(*right))
        })?;
        matrix.swap(column, largest);
        let pivot = *matrix.get(column)?.get(column)?;
        if pivot.abs() < 1e-9 {
            return None;
        }
        let line: Vec<f64> = matrix.get(column)?.iter().map(|x| x / pivot).collect();
        for (index, row) in matrix.iter_mut().enumerate() {
            let factor = *row.get(column)?;
            for (x, over) in row.iter_mut().zip(&line) {
                *x = if index == column { *over } else { *x - factor * over };
            }
        }
    }
    Some(matrix.into_iter().map(|row| row.into_iter().skip(size).collect()).collect())
}

//! Linear equations with a symmetric, positive matrix.

use alloc::vec::Vec;

use libm::{log, sqrt};

/// The root of a symmetric, positive matrix: a lower triangle L with `L Lᵀ` equal to it.
///
/// # Example
/// ```
/// use biteband_steel::temper::Cholesky;
/// let root = Cholesky::new(&[vec![4.0, 2.0], vec![2.0, 3.0]]).ok_or("not positive")?;
/// let x = root.solve(&[8.0, 7.0]);
/// // 4 · 1.25 + 2 · 1.5 = 8 and 2 · 1.25 + 3 · 1.5 = 7
/// assert!((x[0] - 1.25).abs() < 1e-12 && (x[1] - 1.5).abs() < 1e-12);
/// # Ok::<(), &str>(())
/// ```
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Cholesky {
    /// Row by row, each up to its diagonal.
    rows: Vec<Vec<f64>>,
}

/// What remains of `value` after the products of what is known already, divided by the diagonal.
fn remainder(value: f64, known: &[f64], row: &[f64]) -> f64 {
    let sum: f64 = known.iter().zip(row).map(|(x, factor)| x * factor).sum();
    (value - sum) / row.last().copied().unwrap_or(f64::NAN)
}

impl Cholesky {
    /// Takes the lower half of a matrix, row by row; `None` unless it is positive.
    #[must_use]
    pub fn new(matrix: &[Vec<f64>]) -> Option<Self> {
        let mut rows: Vec<Vec<f64>> = Vec::with_capacity(matrix.len());
        for given in matrix {
            let mut row = Vec::with_capacity(rows.len() + 1);
            for (value, above) in given.iter().zip(&rows) {
                row.push(remainder(*value, &row, above));
            }
            let square: f64 = row.iter().map(|x| x * x).sum();
            let left = given.get(row.len())? - square;
            if !(left > 0.0 && left.is_finite()) {
                return None;
            }
            row.push(sqrt(left));
            rows.push(row);
        }
        Some(Self { rows })
    }

    /// Solves `L x = right`: what was correlated becomes independent and of unit variance.
    #[must_use]
    pub fn whiten(&self, right: &[f64]) -> Vec<f64> {
        let mut x = Vec::with_capacity(right.len());
        for (value, row) in right.iter().zip(&self.rows) {
            x.push(remainder(*value, &x, row));
        }
        x
    }

    /// Solves `L Lᵀ x = right`.
    #[must_use]
    pub fn solve(&self, right: &[f64]) -> Vec<f64> {
        let mut left = self.whiten(right);
        let mut x = Vec::with_capacity(left.len());
        for row in self.rows.iter().rev() {
            let (Some(value), Some(diagonal)) = (left.pop(), row.last()) else { break };
            let found = value / diagonal;
            for (rest, factor) in left.iter_mut().zip(row) {
                *rest -= factor * found;
            }
            x.push(found);
        }
        x.reverse();
        x
    }

    /// Natural logarithm of the determinant.
    #[must_use]
    pub fn log_determinant(&self) -> f64 {
        self.rows.iter().filter_map(|row| row.last()).map(|diagonal| 2.0 * log(*diagonal)).sum()
    }
}

//! Few amounts that explain much: least squares with a price on every amount and bounds,
//! `min ½‖A x − b‖² + λ Σ x, 0 ≤ x ≤ u`, by cyclic coordinate descent with covariance updates
//! (Friedman, Hastie and Tibshirani 2010).

/// Rounds through all columns at most.
const ROUNDS: usize = 2000;

/// What is asked: columns of `A`, each as long as `b`.
pub struct Sparse<'a> {
    /// Columns.
    pub columns: &'a [Vec<f64>],
    /// What they should add up to.
    pub b: &'a [f64],
    /// Price of an amount of each, `λ`.
    pub price: &'a [f64],
    /// Greatest amounts, `u`.
    pub most: &'a [f64],
}

impl Sparse<'_> {
    /// The amounts; a change below `1e-10` of the greatest ends the search.
    pub fn solve(&self) -> Vec<f64> {
        let n = self.columns.len();
        let mut x = vec![0.0; n];
        // products of the columns are taken once: there are few columns, and they are long
        let with = |j: usize| -> Vec<f64> { self.columns.iter().map(|c| dot(c, &self.columns[j])).collect() };
        let products: Vec<Vec<f64>> = (0..n).map(with).collect();
        let mut gain: Vec<f64> = self.columns.iter().zip(self.price).map(|(c, price)| dot(c, self.b) - price).collect();
        for _ in 0..ROUNDS {
            let (mut change, mut greatest) = (0.0f64, 0.0f64);
            for j in 0..n {
                let square = products[j][j];
                if square <= 0.0 {
                    continue;
                }
                let next = (x[j] + gain[j] / square).clamp(0.0, self.most[j]);
                let by = next - x[j];
                if by != 0.0 {
                    gain.iter_mut().zip(&products[j]).for_each(|(g, p)| *g -= by * p);
                    x[j] = next;
                }
                change = change.max(by.abs());
                greatest = greatest.max(next);
            }
            if change <= 1e-10 * greatest {
                break;
            }
        }
        x
    }
}

/// Sum of products.
pub fn dot(a: &[f64], b: &[f64]) -> f64 {
    a.iter().zip(b).map(|(a, b)| a * b).sum()
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde::Deserialize;

    #[derive(Deserialize)]
    struct Known {
        a: Vec<Vec<f64>>,
        b: Vec<f64>,
        most: Vec<f64>,
        price: f64,
        bounded: Vec<f64>,
        unbounded: Vec<f64>,
        priced: Vec<f64>,
    }

    /// SciPy's `lsq_linear` (bounded), `nnls` (no upper bound) and `minimize` by L-BFGS-B (priced) on the same numbers:
    /// `tests/scipy/sparse.py` makes the file.
    #[test]
    fn amounts_equal_those_of_a_general_solver() {
        let known: Vec<Known> = serde_json::from_str(include_str!("../tests/scipy/sparse.json")).expect("the file");
        for k in known {
            let n = k.most.len();
            let columns: Vec<Vec<f64>> = (0..n).map(|j| k.a.iter().map(|row| row[j]).collect()).collect();
            let solve =
                |price: f64, most: &[f64]| Sparse { columns: &columns, b: &k.b, price: &vec![price; n], most }.solve();
            let near = |a: &[f64], b: &[f64]| a.iter().zip(b).all(|(a, b)| (a - b).abs() < 1e-5);
            assert!(near(&solve(0.0, &k.most), &k.bounded));
            assert!(near(&solve(0.0, &vec![f64::INFINITY; n]), &k.unbounded));
            assert!(near(&solve(k.price, &k.most), &k.priced));
            let few = solve(k.price, &k.most).iter().filter(|v| **v > 0.0).count();
            assert!(few < n, "the price leaves some out");
        }
    }
}

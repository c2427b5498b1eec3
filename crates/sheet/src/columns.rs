//! The innermost loops of the factor over columns of `L`, written so that vector instructions take them.

use pulp::{Simd, WithSimd};

/// Columns taken together.
const FOUR: usize = 4;

/// Some neighbouring columns of a front, `n` numbers each, turned into `L` among themselves; what was left of them by
/// the columns before is already taken off.
pub(crate) struct Panel<'a> {
    /// The columns, one after the other.
    pub columns: &'a mut [f64],
    /// Rows.
    pub n: usize,
    /// Row in which the first column has its pivot.
    pub start: usize,
    /// Smaller pivots are directions without stiffness: they become this one, so that nothing is divided by zero.
    pub least: f64,
    /// `D`, to be carried on.
    pub diagonal: &'a mut Vec<f64>,
}

impl WithSimd for Panel<'_> {
    type Output = ();

    #[inline(always)]
    fn with_simd<S: Simd>(self, _: S) {
        let Self { columns, n, start, least, diagonal } = self;
        for c in 0..columns.len() / n {
            let (before, column) = columns.split_at_mut(c * n);
            let (row, column) = (start + c, &mut column[start + c..n]);
            let share = |j: usize| before[j * n + row] * diagonal[start + j];
            let mut j = 0;
            while j + FOUR <= c {
                let f: [f64; FOUR] = std::array::from_fn(|q| share(j + q));
                let x: [&[f64]; FOUR] =
                    std::array::from_fn(|q| &before[(j + q) * n + row..(j + q + 1) * n][..column.len()]);
                for (i, value) in column.iter_mut().enumerate() {
                    *value -= f[0] * x[0][i] + f[1] * x[1][i] + f[2] * x[2][i] + f[3] * x[3][i];
                }
                j += FOUR;
            }
            for j in j..c {
                let f = share(j);
                take_off(column, f, &before[j * n + row..(j + 1) * n]);
            }
            let d = if column[0].abs() < least { least } else { column[0] };
            diagonal.push(d);
            column[0] = 1.0;
            column[1..].iter_mut().for_each(|value| *value *= 1.0 / d);
        }
    }
}

/// `x ← L⁻¹ x` for the pivots of a front, and what that leaves on its other rows.
pub(crate) struct Down<'a> {
    /// Columns of `L`, as long as `x` each.
    pub lower: &'a [f64],
    /// Numbers of the front's rows.
    pub x: &'a mut [f64],
}

impl WithSimd for Down<'_> {
    type Output = ();

    #[inline(always)]
    fn with_simd<S: Simd>(self, _: S) {
        for (j, column) in self.lower.chunks_exact(self.x.len().max(1)).enumerate() {
            let value = self.x[j];
            if value != 0.0 {
                take_off(&mut self.x[j + 1..], value, &column[j + 1..]);
            }
        }
    }
}

/// `x ← L⁻ᵀ D⁻¹ x` for the pivots of a front, its other rows known.
pub(crate) struct Up<'a> {
    /// Columns of `L`, as long as `x` each.
    pub lower: &'a [f64],
    /// `D`.
    pub diagonal: &'a [f64],
    /// Numbers of the front's rows.
    pub x: &'a mut [f64],
}

impl WithSimd for Up<'_> {
    type Output = ();

    #[inline(always)]
    fn with_simd<S: Simd>(self, _: S) {
        for (j, column) in self.lower.chunks_exact(self.x.len().max(1)).enumerate().rev() {
            self.x[j] = self.x[j] / self.diagonal[j] - dot(&column[j + 1..], &self.x[j + 1..]);
        }
    }
}

/// `to −= f · x`.
#[inline(always)]
fn take_off(to: &mut [f64], f: f64, x: &[f64]) {
    for (to, x) in to.iter_mut().zip(x) {
        *to -= f * x;
    }
}

/// Sum of products, in eight sums side by side.
#[inline(always)]
fn dot(a: &[f64], b: &[f64]) -> f64 {
    let mut sums = [0.0; 8];
    let (a8, b8) = (a.chunks_exact(8), b.chunks_exact(8));
    let rest: f64 = a8.remainder().iter().zip(b8.remainder()).map(|(a, b)| a * b).sum();
    for (a, b) in a8.zip(b8) {
        for q in 0..8 {
            sums[q] += a[q] * b[q];
        }
    }
    rest + sums.iter().sum::<f64>()
}

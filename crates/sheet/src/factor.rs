//! `L D Lᵀ` of the patch's stiffness without exchange of rows, piece by piece (multifrontal, Duff and Reid 1983).
//!
//! The signs of `D` count the directions in which the sheet gives way (Sylvester's law of inertia), which
//! is how a loss of stability is seen.

use crate::dissect::Front;
use crate::stencil::Stencil;
use nalgebra::{DMatrix, DVector};

/// Columns eliminated before the rest is brought up to date.
const PANEL: usize = 24;
/// Columns of the remainder updated together; only what lies on or below them is touched.
const STRIPE: usize = 96;

/// A factored stiffness.
pub struct Factor<'a> {
    front: &'a Front,
    /// Columns of `L` below the unit diagonal, rows as the front's numbers (three a node).
    lower: DMatrix<f64>,
    diagonal: Vec<f64>,
    halves: Vec<Factor<'a>>,
}

impl<'a> Factor<'a> {
    /// Factors the stiffness; nodes that are not in the order of elimination are held.
    pub fn new(front: &'a Front, stencil: &Stencil) -> Self {
        eliminate(front, stencil).0
    }

    /// Number of directions in which the stiffness is negative.
    pub fn negative(&self) -> usize {
        let here = self.diagonal.iter().filter(|d| **d < 0.0).count();
        here + self.halves.iter().map(Factor::negative).sum::<usize>()
    }

    /// Turns forces into movements, in place: three numbers a node, untouched where nothing is eliminated.
    pub fn solve(&self, x: &mut [f64]) {
        self.down(x);
        self.up(x);
    }

    fn down(&self, x: &mut [f64]) {
        for half in &self.halves {
            half.down(x);
        }
        let mut local = gather(self.front, x);
        for j in 0..self.diagonal.len() {
            let value = local[j];
            if value != 0.0 {
                let column = self.lower.column(j);
                for i in j + 1..local.len() {
                    local[i] -= column[i] * value;
                }
            }
        }
        scatter(self.front, &local, x);
    }

    fn up(&self, x: &mut [f64]) {
        let mut local = gather(self.front, x);
        for j in (0..self.diagonal.len()).rev() {
            let column = self.lower.column(j);
            let known = column.rows_range(j + 1..).dot(&local.rows_range(j + 1..));
            local[j] = local[j] / self.diagonal[j] - known;
        }
        scatter(self.front, &local, x);
        for half in &self.halves {
            half.up(x);
        }
    }
}

fn gather(front: &Front, x: &[f64]) -> DVector<f64> {
    DVector::from_iterator(3 * front.nodes.len(), front.nodes.iter().flat_map(|n| (0..3).map(move |c| x[3 * n + c])))
}

fn scatter(front: &Front, local: &DVector<f64>, x: &mut [f64]) {
    for (i, n) in front.nodes.iter().enumerate() {
        for c in 0..3 {
            x[3 * n + c] = local[3 * i + c];
        }
    }
}

/// Factor of a piece and what it leaves on the nodes around it (lower triangle).
fn eliminate<'a>(front: &'a Front, stencil: &Stencil) -> (Factor<'a>, DMatrix<f64>) {
    let halves: Vec<_> = match front.halves.as_slice() {
        [(a, _), (b, _)] => {
            let (a, b) = rayon::join(|| eliminate(a, stencil), || eliminate(b, stencil));
            vec![a, b]
        }
        _ => Vec::new(),
    };
    let (n, k) = (3 * front.nodes.len(), 3 * front.pivots);
    let mut columns = DMatrix::zeros(n, k);
    let mut rest = DMatrix::zeros(n - k, n - k);
    for [row, column, index] in &front.entries {
        let block = &stencil.blocks[*index as usize];
        for c in 0..3 {
            for r in 0..3 {
                columns[(3 * *row as usize + r, 3 * *column as usize + c)] += block[3 * c + r];
            }
        }
    }
    for ((_, left), (_, places)) in halves.iter().zip(&front.halves) {
        extend(&mut columns, &mut rest, left, places);
    }
    let diagonal = factor_columns(&mut columns);
    let tail = block(&columns, k, 0, k);
    let scaled = turned(&tail, &diagonal, n - k);
    subtract(&mut rest.view_mut((0, 0), (n - k, n - k)), &tail, &scaled, n - k);
    let halves = halves.into_iter().map(|(factor, _)| factor).collect();
    (Factor { front, lower: columns, diagonal, halves }, rest)
}

/// Adds what a half left to the front of its parent, three by three numbers a pair of nodes.
fn extend(columns: &mut DMatrix<f64>, rest: &mut DMatrix<f64>, left: &DMatrix<f64>, places: &[u32]) {
    let (k, n, m) = (columns.ncols(), columns.nrows(), left.nrows());
    let (columns, rest, left) = (columns.as_mut_slice(), rest.as_mut_slice(), left.as_slice());
    let mut add = |row: usize, column: usize, value: f64| {
        if column < k {
            columns[column * n + row] += value;
        } else {
            rest[(column - k) * (n - k) + row - k] += value;
        }
    };
    for (j, to_j) in places.iter().enumerate() {
        for (i, to_i) in places.iter().enumerate().skip(j) {
            let (from, row, column) = (3 * j * m + 3 * i, 3 * *to_i as usize, 3 * *to_j as usize);
            for c in 0..3 {
                let three: [f64; 3] = left[from + c * m..][..3].try_into().expect("three rows");
                for r in if i == j { c } else { 0 }..3 {
                    // below the diagonal stays below, or is mirrored there
                    if row >= column {
                        add(row + r, column + c, three[r]);
                    } else {
                        add(column + c, row + r, three[r]);
                    }
                }
            }
        }
    }
}

/// A copy of the columns from `first` to `last`, rows from `start` on.
fn block(a: &DMatrix<f64>, start: usize, first: usize, last: usize) -> DMatrix<f64> {
    let n = a.nrows();
    let mut values = Vec::with_capacity((n - start) * (last - first));
    for column in a.as_slice()[first * n..last * n].chunks_exact(n.max(1)) {
        values.extend_from_slice(&column[start..]);
    }
    DMatrix::from_vec(n - start, last - first, values)
}

/// Turns the columns into `L` in place and returns `D`.
fn factor_columns(a: &mut DMatrix<f64>) -> Vec<f64> {
    let (n, k) = a.shape();
    let mut diagonal = Vec::with_capacity(k);
    let scale = (0..k).map(|j| a[(j, j)].abs()).fold(1e-300, f64::max);
    for start in (0..k).step_by(PANEL) {
        let end = (start + PANEL).min(k);
        for j in start..end {
            // a pivot of nothing is a direction without stiffness: kept from dividing by zero
            let d = if a[(j, j)].abs() < 1e-14 * scale { 1e-14 * scale } else { a[(j, j)] };
            diagonal.push(d);
            a[(j, j)] = 1.0;
            a.column_mut(j).rows_range_mut(j + 1..).scale_mut(1.0 / d);
            for c in j + 1..end {
                let factor = a[(c, j)] * d;
                if factor != 0.0 {
                    let (from, mut to) = a.columns_range_pair_mut(j..j + 1, c..c + 1);
                    to.column_mut(0).rows_range_mut(c..).axpy(-factor, &from.column(0).rows_range(c..), 1.0);
                }
            }
        }
        if end < k {
            let tail = block(a, end, start, end);
            let scaled = turned(&tail, &diagonal[start..], k - end);
            subtract(&mut a.view_mut((end, end), (n - end, k - end)), &tail, &scaled, k - end);
        }
    }
    diagonal
}

/// `D tailᵀ` of the first `rows` rows of `tail`.
fn turned(tail: &DMatrix<f64>, diagonal: &[f64], rows: usize) -> DMatrix<f64> {
    let k = tail.ncols();
    let mut scaled = DMatrix::zeros(k, rows);
    for (r, column) in scaled.as_mut_slice().chunks_exact_mut(k.max(1)).enumerate() {
        for (c, value) in column.iter_mut().enumerate() {
            *value = tail[(r, c)] * diagonal[c];
        }
    }
    scaled
}

/// `a −= tail · scaled` on and below the diagonal of the first `columns` columns.
fn subtract(a: &mut nalgebra::DMatrixViewMut<'_, f64>, tail: &DMatrix<f64>, scaled: &DMatrix<f64>, columns: usize) {
    let n = a.nrows();
    for start in (0..columns).step_by(STRIPE) {
        let wide = STRIPE.min(columns - start);
        a.view_mut((start, start), (n - start, wide)).gemm(
            -1.0,
            &tail.rows(start, n - start),
            &scaled.columns(start, wide),
            1.0,
        );
    }
}

//! `L D Lᵀ` of the patch's stiffness without exchange of rows, piece by piece (multifrontal, Duff and Reid 1983).
//!
//! The signs of `D` count the directions in which the sheet gives way (Sylvester's law of inertia), which
//! is how a loss of stability is seen.

use crate::columns::{Down, Panel, Up};
use crate::dissect::Front;
use crate::room::{Lent, Room};
use crate::stencil::{Stencil, turned};
use nalgebra::{DMatrix, DMatrixView, DMatrixViewMut, Dyn, U1};
use pulp::Arch;
use std::ops::Range;

/// Columns eliminated before the rest is brought up to date.
const PANEL: usize = 32;
/// Columns of the remainder updated together; only what lies on or below them is touched.
const STRIPE: usize = 96;

/// A factored stiffness.
pub struct Factor<'a> {
    whole: Piece<'a>,
    room: Room,
}

impl<'a> Factor<'a> {
    /// Factors the stiffness; nodes that are not in the order of elimination are held.
    pub fn new(front: &'a Front, stencil: &Stencil) -> Self {
        let mut factor = Self { whole: Piece::empty(front), room: Room::default() };
        factor.renew(stencil);
        factor
    }

    /// Factors another stiffness of the same patch in the same room.
    pub fn renew(&mut self, stencil: &Stencil) {
        let rest = self.whole.factor(stencil, &self.room);
        self.room.give(rest.values);
    }

    /// Number of directions in which the stiffness is negative.
    pub fn negative(&self) -> usize {
        self.whole.negative()
    }

    /// Turns forces into movements, in place: three numbers a node, untouched where nothing is eliminated.
    pub fn solve(&self, x: &mut [f64]) {
        self.whole.down(x);
        self.whole.up(x);
    }
}

/// The factor of one front.
struct Piece<'a> {
    front: &'a Front,
    /// Columns of `L` below the unit diagonal, rows as the front's numbers (three a node).
    lower: DMatrix<f64>,
    diagonal: Vec<f64>,
    halves: Vec<Piece<'a>>,
}

impl<'a> Piece<'a> {
    fn empty(front: &'a Front) -> Self {
        let (n, k) = (3 * front.nodes.len(), 3 * front.pivots);
        let halves = front.halves.iter().map(|(half, _)| Self::empty(half)).collect();
        Self { front, lower: DMatrix::zeros(n, k), diagonal: Vec::with_capacity(k), halves }
    }

    /// Factors it, and says what it leaves on the nodes around it (lower triangle).
    fn factor(&mut self, stencil: &Stencil, room: &Room) -> Lent {
        let left = match self.halves.as_mut_slice() {
            [a, b] => {
                let (a, b) = rayon::join(|| a.factor(stencil, room), || b.factor(stencil, room));
                vec![a, b]
            }
            _ => Vec::new(),
        };
        let Self { front, lower, diagonal, .. } = self;
        let (n, k) = lower.shape();
        clear(lower.as_mut_slice(), n);
        for entry in &front.entries {
            let kept = &stencil.blocks[entry.index as usize];
            let block = if entry.turned { turned(kept) } else { *kept };
            let (row, column) = (3 * entry.row as usize, 3 * entry.column as usize);
            for (c, three) in block.chunks_exact(3).enumerate() {
                let at = (column + c) * n + row;
                lower.as_mut_slice()[at..at + 3].copy_from_slice(three);
            }
        }
        let mut rest = room.take(n - k, n - k);
        clear(rest.slice_mut(), n - k);
        for (left, (_, places)) in left.into_iter().zip(&front.halves) {
            extend(lower, rest.slice_mut(), &left, places);
            room.give(left.values);
        }
        factor_columns(lower, diagonal, room);
        let mut view = DMatrixViewMut::from_slice(rest.slice_mut(), n - k, n - k);
        take_off(&mut view, &lower.rows(k, n - k), diagonal, room);
        rest
    }

    fn negative(&self) -> usize {
        let here = self.diagonal.iter().filter(|d| **d < 0.0).count();
        here + self.halves.iter().map(Piece::negative).sum::<usize>()
    }

    fn down(&self, x: &mut [f64]) {
        for half in &self.halves {
            half.down(x);
        }
        let mut local = gather(self.front, x);
        Arch::new().dispatch(Down { lower: self.lower.as_slice(), x: &mut local });
        scatter(self.front, &local, x);
    }

    fn up(&self, x: &mut [f64]) {
        let mut local = gather(self.front, x);
        Arch::new().dispatch(Up { lower: self.lower.as_slice(), diagonal: &self.diagonal, x: &mut local });
        scatter(self.front, &local, x);
        for half in &self.halves {
            half.up(x);
        }
    }
}

fn gather(front: &Front, x: &[f64]) -> Vec<f64> {
    front.nodes.iter().flat_map(|n| (0..3).map(move |c| x[3 * n + c])).collect()
}

fn scatter(front: &Front, local: &[f64], x: &mut [f64]) {
    for (i, n) in front.nodes.iter().enumerate() {
        for c in 0..3 {
            x[3 * n + c] = local[3 * i + c];
        }
    }
}

/// Nothing on and below the diagonal of columns of `n` rows.
fn clear(a: &mut [f64], n: usize) {
    a.chunks_exact_mut(n.max(1)).enumerate().for_each(|(j, column)| column[j..].fill(0.0));
}

/// Adds what a half left to the front of its parent: neighbours there that are neighbours here all at once.
fn extend(columns: &mut DMatrix<f64>, rest: &mut [f64], left: &Lent, places: &[u32]) {
    let (k, n, m) = (columns.ncols(), columns.nrows(), left.rows);
    let (columns, left) = (columns.as_mut_slice(), left.slice());
    let mut add = |row: usize, column: usize, values: &[f64]| {
        let at = if column < k {
            &mut columns[column * n + row..][..values.len()]
        } else {
            &mut rest[(column - k) * (n - k) + row - k..][..values.len()]
        };
        at.iter_mut().zip(values).for_each(|(to, from)| *to += from);
    };
    let runs = runs(places);
    for (j, to_j) in places.iter().enumerate() {
        let column = 3 * *to_j as usize;
        for run in runs.iter().filter(|run| run.end > j) {
            let first = run.start.max(j);
            let row = 3 * places[first] as usize;
            for c in 0..3 {
                let from = (3 * j + c) * m;
                if row >= column {
                    let upper = if first == j { c } else { 0 };
                    add(row + upper, column + c, &left[from + 3 * first + upper..from + 3 * run.end]);
                } else {
                    // above the diagonal there: mirrored
                    let values = &left[from + 3 * first..from + 3 * run.end];
                    values.iter().enumerate().for_each(|(r, v)| add(column + c, row + r, &[*v]));
                }
            }
        }
    }
}

/// Stretches of places that follow each other.
fn runs(places: &[u32]) -> Vec<Range<usize>> {
    let mut runs: Vec<Range<usize>> = Vec::new();
    for i in 0..places.len() {
        match runs.last_mut().filter(|_| i > 0 && places[i] == places[i - 1] + 1) {
            Some(run) => run.end = i + 1,
            None => runs.push(i..i + 1),
        }
    }
    runs
}

/// Turns the columns into `L` in place and writes `D`.
fn factor_columns(a: &mut DMatrix<f64>, diagonal: &mut Vec<f64>, room: &Room) {
    let (n, k) = a.shape();
    diagonal.clear();
    let scale = (0..k).map(|j| a[(j, j)].abs()).fold(1e-300, f64::max);
    for start in (0..k).step_by(PANEL) {
        let end = (start + PANEL).min(k);
        let columns = &mut a.as_mut_slice()[start * n..end * n];
        Arch::new().dispatch(Panel { columns, n, start, least: 1e-14 * scale, diagonal });
        if end < k {
            let (done, mut to_do) = a.columns_range_pair_mut(start..end, end..k);
            take_off(&mut to_do.rows_mut(end, n - end), &done.rows(end, n - end), &diagonal[start..], room);
        }
    }
}

/// `a −= tail D tailᵀ` on and below the diagonal; `a` may have fewer columns than `tail` has rows.
fn take_off(
    a: &mut DMatrixViewMut<'_, f64, U1, Dyn>,
    tail: &DMatrixView<'_, f64, U1, Dyn>,
    diagonal: &[f64],
    room: &Room,
) {
    let (n, columns) = a.shape();
    if tail.is_empty() {
        return;
    }
    let mut scaled = room.take(columns, tail.ncols());
    for ((to, from), d) in scaled.slice_mut().chunks_exact_mut(columns.max(1)).zip(tail.column_iter()).zip(diagonal) {
        to.iter_mut().zip(from.iter()).for_each(|(to, from)| *to = d * from);
    }
    for start in (0..columns).step_by(STRIPE) {
        let wide = STRIPE.min(columns - start);
        let across = DMatrixView::from_slice_with_strides(&scaled.slice()[start..], scaled.columns, wide, columns, 1);
        a.view_mut((start, start), (n - start, wide)).gemm(-1.0, &tail.rows(start, n - start), &across, 1.0);
    }
    room.give(scaled.values);
}

//! Forces and stiffness of some columns of cells, summed cell by cell into those of the whole patch.

use crate::mesh::Shape;
use crate::shell::{Forces, Stiffness};
use crate::stencil::{KEPT, Stencil};
use nalgebra::Vector3;
use pulp::{Arch, Simd, WithSimd};

/// Stiffness of a cell's 16 nodes: column node, the 9 numbers of a block, row node. Rows before the column's own
/// four are left to the mirror image.
type Cell = [[[f64; 16]; 9]; 16];

/// Sums over cells that follow each other along y, then x.
pub struct Part<'a> {
    /// First node.
    first: usize,
    ny: usize,
    force: Vec<Vector3<f64>>,
    /// Stiffness of the nodes in the columns of its cells, its own; none where only forces are asked.
    own: Option<&'a mut [[f64; 9]]>,
    /// Of the three columns of nodes after them, to be added to the next part's.
    over: Vec<[f64; 9]>,
    node: usize,
    cell: Box<Cell>,
    cell_force: [[f64; 3]; 16],
    /// What this processor can do at once.
    arch: Arch,
}

impl<'a> Part<'a> {
    /// For `columns` columns of cells from the first given on, whose nodes' stiffness is to be written into `own`, or for
    /// forces alone.
    pub fn new(first_column: usize, columns: usize, ny: usize, own: Option<&'a mut [[f64; 9]]>) -> Self {
        Self {
            first: first_column * ny,
            ny,
            force: vec![Vector3::zeros(); (columns + 3) * ny],
            over: if own.is_some() { vec![[0.0; 9]; 3 * ny * KEPT] } else { Vec::new() },
            own,
            node: usize::MAX,
            cell: Box::new([[[0.0; 16]; 9]; 16]),
            cell_force: [[0.0; 3]; 16],
            arch: Arch::new(),
        }
    }

    /// Whether stiffness is asked.
    pub fn stiff(&self) -> bool {
        self.own.is_some()
    }

    /// Adds a point's `Σ_k N_k f_k` and `Σ_kl N_k N_l H_kl` to its cell.
    pub fn add(&mut self, node: usize, shape: &Shape, area: f64, force: &Forces, stiffness: Option<&Stiffness>) {
        if node != self.node {
            self.flush();
            self.node = node;
        }
        for (i, to) in self.cell_force.iter_mut().enumerate() {
            for k in 0..5 {
                let scale = area * shape[k + 1][i];
                for c in 0..3 {
                    to[c] += scale * force[3 * k + c];
                }
            }
        }
        if let Some(stiffness) = stiffness {
            self.arch.dispatch(Added { cell: &mut self.cell, shape, area, stiffness });
        }
    }

    /// Moves the cell's sums to the nodes.
    fn flush(&mut self) {
        if self.node == usize::MAX {
            return;
        }
        let nodes: [usize; 16] = std::array::from_fn(|k| self.node - self.first + k / 4 * self.ny + k % 4);
        for (j, column) in nodes.into_iter().enumerate() {
            for c in 0..3 {
                self.force[column][c] += self.cell_force[j][c];
            }
            let Some(own) = &mut self.own else { continue };
            let (at, own_nodes) = (column * KEPT, own.len());
            let blocks = if at < own_nodes { &mut own[at..] } else { &mut self.over[at - own_nodes..] };
            for i in j..16 {
                let to = &mut blocks[Stencil::kept(i / 4 - j / 4, i % 4, j % 4)];
                to.iter_mut().zip(&self.cell[j]).for_each(|(to, from)| *to += from[i]);
            }
        }
        if self.own.is_some() {
            *self.cell = [[[0.0; 16]; 9]; 16];
        }
        self.cell_force = [[0.0; 3]; 16];
    }

    /// First node, forces from there on; stiffness of the three columns of nodes after its own.
    pub fn finish(mut self) -> (usize, Vec<Vector3<f64>>, Vec<[f64; 9]>) {
        self.flush();
        (self.first, self.force, self.over)
    }
}

/// A point's `area Σ_kl N_k N_l H_kl`, added to a cell in rows of four that vector instructions take at once.
struct Added<'a> {
    cell: &'a mut Cell,
    shape: &'a Shape,
    area: f64,
    stiffness: &'a Stiffness,
}

impl WithSimd for Added<'_> {
    type Output = ();

    #[inline(always)]
    fn with_simd<S: Simd>(self, _: S) {
        let Self { cell, shape, area, stiffness } = self;
        let mut h = [[0.0; 16]; 15];
        for (to, from) in h.iter_mut().zip(stiffness.as_slice().chunks_exact(15)) {
            to[..15].copy_from_slice(from);
        }
        for (j, block) in cell.iter_mut().enumerate() {
            let mut t = [[0.0; 16]; 3];
            for l in 0..5 {
                let scale = area * shape[l + 1][j];
                for c in 0..3 {
                    for r in 0..16 {
                        t[c][r] += scale * h[3 * l + c][r];
                    }
                }
            }
            for four in j / 4..4 {
                let s: [[f64; 4]; 5] = std::array::from_fn(|k| std::array::from_fn(|q| shape[k + 1][4 * four + q]));
                for (n, to) in block.iter_mut().enumerate() {
                    let f: [f64; 5] = std::array::from_fn(|k| t[n / 3][3 * k + n % 3]);
                    for q in 0..4 {
                        to[4 * four + q] +=
                            f[0] * s[0][q] + f[1] * s[1][q] + f[2] * s[2][q] + f[3] * s[3][q] + f[4] * s[4][q];
                    }
                }
            }
        }
    }
}

//! Forces and stiffness of some columns of cells, summed cell by cell.

use crate::mesh::Shape;
use crate::shell::{Forces, Stiffness};
use crate::stencil::Stencil;
use nalgebra::Vector3;

/// Stiffness of a cell's 16 nodes: column node, the 9 numbers of a block, row node. Rows before the column's own
/// four are left to the mirror image.
type Cell = [[[f64; 16]; 9]; 16];

/// Sums over cells that follow each other along y, then x.
pub struct Part {
    first: usize,
    force: Vec<Vector3<f64>>,
    stencil: Stencil,
    node: usize,
    cell: Box<Cell>,
    cell_force: [[f64; 3]; 16],
}

impl Part {
    /// For the cells whose nodes lie in `columns` columns of `ny` nodes, the first of them given.
    pub fn new(first_column: usize, columns: usize, ny: usize) -> Self {
        Self {
            first: first_column * ny,
            force: vec![Vector3::zeros(); columns * ny],
            stencil: Stencil::new(columns, ny),
            node: usize::MAX,
            cell: Box::new([[[0.0; 16]; 9]; 16]),
            cell_force: [[0.0; 3]; 16],
        }
    }

    /// Adds a point's `Σ_k N_k f_k` and `Σ_kl N_k N_l H_kl` to its cell.
    pub fn add(&mut self, node: usize, shape: &Shape, area: f64, force: &Forces, stiffness: &Stiffness) {
        if node != self.node {
            self.flush();
            self.node = node;
        }
        let h = stiffness.as_slice();
        for (i, to) in self.cell_force.iter_mut().enumerate() {
            for k in 0..5 {
                let scale = area * shape[k + 1][i];
                for c in 0..3 {
                    to[c] += scale * force[3 * k + c];
                }
            }
        }
        for (j, block) in self.cell.iter_mut().enumerate() {
            let mut t = [[0.0; 15]; 3];
            for l in 0..5 {
                let scale = area * shape[l + 1][j];
                for c in 0..3 {
                    let from: &[f64; 15] = h[15 * (3 * l + c)..][..15].try_into().expect("fifteen rows");
                    for r in 0..15 {
                        t[c][r] += scale * from[r];
                    }
                }
            }
            for c in 0..3 {
                for a in 0..3 {
                    let to = &mut block[3 * c + a];
                    let f: [f64; 5] = std::array::from_fn(|k| t[c][3 * k + a]);
                    for i in 4 * (j / 4)..16 {
                        to[i] += f[0] * shape[1][i]
                            + f[1] * shape[2][i]
                            + f[2] * shape[3][i]
                            + f[3] * shape[4][i]
                            + f[4] * shape[5][i];
                    }
                }
            }
        }
    }

    /// Moves the cell's sums to the nodes.
    fn flush(&mut self) {
        if self.node == usize::MAX {
            return;
        }
        let nodes: [usize; 16] = std::array::from_fn(|k| self.node - self.first + k / 4 * self.stencil.ny + k % 4);
        for (i, row) in nodes.into_iter().enumerate() {
            for c in 0..3 {
                self.force[row][c] += self.cell_force[i][c];
            }
            let centre = self.stencil.index(row, row).expect("a node touches itself");
            for j in 0..16 {
                // seven neighbours a column of nodes
                let at = centre + 7 * (j / 4) + j % 4 - 7 * (i / 4) - i % 4;
                let to = &mut self.stencil.blocks[at];
                if i >= 4 * (j / 4) {
                    to.iter_mut().zip(&self.cell[j]).for_each(|(to, from)| *to += from[i]);
                } else {
                    // the mirror image: what node i does to j is what j does to i
                    (0..9).for_each(|n| to[n] += self.cell[i][3 * (n % 3) + n / 3][j]);
                }
            }
        }
        *self.cell = [[[0.0; 16]; 9]; 16];
        self.cell_force = [[0.0; 3]; 16];
    }

    /// First node, forces from there on, stiffness.
    pub fn finish(mut self) -> (usize, Vec<Vector3<f64>>, Stencil) {
        self.flush();
        (self.first, self.force, self.stencil)
    }
}

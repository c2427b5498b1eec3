//! The stiffness of the whole patch: every node and its neighbours within three, 3×3 numbers a pair. Of each pair one
//! side is kept, the other is its mirror image.

/// Neighbours each way.
const REACH: usize = 3;
/// Neighbours in a row.
const SIDE: usize = 2 * REACH + 1;
/// Neighbours kept with a node: those in its own column of nodes from it on, and those in the columns after.
pub(crate) const KEPT: usize = REACH + 1 + REACH * SIDE;

/// Symmetric stiffness on the regular node grid; node `(ix, iy)` has index `ix * ny + iy`.
#[derive(Debug, Clone)]
pub struct Stencil {
    /// Nodes along x.
    pub nx: usize,
    /// Nodes along y.
    pub ny: usize,
    /// For node `i` and a neighbour that does not come before it: the block `∂force_neighbour/∂place_i` by columns.
    pub blocks: Vec<[f64; 9]>,
}

impl Stencil {
    /// All zero.
    pub fn new(nx: usize, ny: usize) -> Self {
        Self { nx, ny, blocks: vec![[0.0; 9]; nx * ny * KEPT] }
    }

    /// Index of the block of node `row` towards node `column`, which does not come after it; `None` where they do not
    /// touch.
    pub fn index(&self, row: usize, column: usize) -> Option<usize> {
        let (rx, ry) = (row / self.ny, row % self.ny);
        let (cx, cy) = (column / self.ny, column % self.ny);
        let (dx, dy) = (rx.wrapping_sub(cx), (ry + REACH).wrapping_sub(cy));
        let touch = dx <= REACH && dy < SIDE && (dx > 0 || dy >= REACH);
        touch.then(|| column * KEPT + Self::kept(dx, ry, cy))
    }

    /// Which of a node's blocks is that of a neighbour `dx` columns further and at `row_y` where it is at `column_y`.
    pub(crate) fn kept(dx: usize, row_y: usize, column_y: usize) -> usize {
        dx * SIDE + row_y - column_y
    }

    /// The block `∂force_row/∂place_column` by columns; `None` where the nodes do not touch.
    pub fn block(&self, row: usize, column: usize) -> Option<[f64; 9]> {
        if row >= column {
            self.index(row, column).map(|at| self.blocks[at])
        } else {
            self.index(column, row).map(|at| turned(&self.blocks[at]))
        }
    }

    /// Adds a 3×3 block given by columns. The mirror image of what was given, row before column, is not kept.
    pub fn add(&mut self, row: usize, column: usize, block: &[f64; 9]) {
        if row < column {
            return;
        }
        let at = self.index(row, column).expect("nodes of one cell touch");
        for (to, from) in self.blocks[at].iter_mut().zip(block) {
            *to += from;
        }
    }

    /// Adds blocks of the nodes from `first` on.
    pub(crate) fn absorb(&mut self, part: &[[f64; 9]], first: usize) {
        for (to, add) in self.blocks[first * KEPT..].iter_mut().zip(part) {
            for (t, a) in to.iter_mut().zip(add) {
                *t += a;
            }
        }
    }

    /// Neighbours of a node inside the grid.
    pub fn neighbours(&self, node: usize) -> impl Iterator<Item = usize> + '_ {
        let (x, y) = (node / self.ny, node % self.ny);
        let xs = x.saturating_sub(REACH)..(x + REACH + 1).min(self.nx);
        xs.flat_map(move |cx| (y.saturating_sub(REACH)..(y + REACH + 1).min(self.ny)).map(move |cy| cx * self.ny + cy))
    }
}

/// A block's mirror image.
pub(crate) fn turned(block: &[f64; 9]) -> [f64; 9] {
    std::array::from_fn(|n| block[3 * (n % 3) + n / 3])
}

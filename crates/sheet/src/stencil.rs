//! The stiffness of the whole patch: every node and its neighbours within three, 3×3 numbers a pair.

/// Neighbours each way.
const REACH: usize = 3;
/// Neighbours in a row.
const SIDE: usize = 2 * REACH + 1;

/// Symmetric stiffness on the regular node grid; node `(ix, iy)` has index `ix * ny + iy`.
#[derive(Debug, Clone)]
pub struct Stencil {
    /// Nodes along x.
    pub nx: usize,
    /// Nodes along y.
    pub ny: usize,
    /// For node `i` and neighbour `(dx, dy)`: the block `∂force_i/∂place_neighbour` by columns.
    pub blocks: Vec<[f64; 9]>,
}

impl Stencil {
    /// All zero.
    pub fn new(nx: usize, ny: usize) -> Self {
        Self { nx, ny, blocks: vec![[0.0; 9]; nx * ny * SIDE * SIDE] }
    }

    /// Index of the block of node `row` towards node `column`; `None` where they do not touch.
    pub fn index(&self, row: usize, column: usize) -> Option<usize> {
        let (rx, ry) = (row / self.ny, row % self.ny);
        let (cx, cy) = (column / self.ny, column % self.ny);
        let (dx, dy) = ((cx + REACH).wrapping_sub(rx), (cy + REACH).wrapping_sub(ry));
        (dx < SIDE && dy < SIDE).then_some((row * SIDE + dx) * SIDE + dy)
    }

    /// Adds a 3×3 block given by columns.
    pub fn add(&mut self, row: usize, column: usize, block: &[f64; 9]) {
        let at = self.index(row, column).expect("nodes of one cell touch");
        for (to, from) in self.blocks[at].iter_mut().zip(block) {
            *to += from;
        }
    }

    /// Adds another stencil that holds the nodes from `first` on.
    pub fn absorb(&mut self, part: &[[f64; 9]], first: usize) {
        let from = first * SIDE * SIDE;
        for (to, add) in self.blocks[from..from + part.len()].iter_mut().zip(part) {
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

//! The regular grid of the panel frame on which every map lives.

use rayon::prelude::*;
use serde::{Deserialize, Serialize};

/// A regular grid in the panel frame. Cell `(ix, iy)` has its centre at
/// `(x0_mm + ix * step_mm, y0_mm + iy * step_mm)`; row 0 is `y0_mm` and rows go up.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Grid {
    /// Centre of the first cell, panel x, mm.
    pub x0_mm: f64,
    /// Centre of the first cell, panel y, mm.
    pub y0_mm: f64,
    /// Distance between neighbouring centres, mm.
    pub step_mm: f64,
    /// Cells along x.
    pub nx: usize,
    /// Cells along y.
    pub ny: usize,
}

impl Grid {
    /// Number of cells.
    pub fn len(&self) -> usize {
        self.nx * self.ny
    }

    /// True for a grid of no cells.
    pub fn is_empty(&self) -> bool {
        self.len() == 0
    }

    /// Panel position of the centre of cell `(ix, iy)`, mm.
    pub fn at(&self, ix: usize, iy: usize) -> (f64, f64) {
        (self.x0_mm + ix as f64 * self.step_mm, self.y0_mm + iy as f64 * self.step_mm)
    }

    /// Panel position of the centre of the cell with flat index `i = iy * nx + ix`, mm.
    pub fn position(&self, i: usize) -> (f64, f64) {
        self.at(i % self.nx, i / self.nx)
    }

    /// The cells left, right, below and above a cell; `None` past the grid's end.
    pub(crate) fn beside(&self, i: usize) -> [Option<usize>; 4] {
        let (ix, iy) = (i % self.nx, i / self.nx);
        [
            (ix > 0).then(|| i - 1),
            (ix + 1 < self.nx).then_some(i + 1),
            (iy > 0).then(|| i - self.nx),
            (iy + 1 < self.ny).then_some(i + self.nx),
        ]
    }

    /// A grid of twice the step over the same patch.
    pub fn coarser(&self) -> Self {
        let middle = 0.5 * self.step_mm;
        Self {
            x0_mm: self.x0_mm + middle,
            y0_mm: self.y0_mm + middle,
            step_mm: 2.0 * self.step_mm,
            nx: self.nx.div_ceil(2),
            ny: self.ny.div_ceil(2),
        }
    }

    /// Fractional cell coordinates of a panel position.
    pub fn locate(&self, x_mm: f64, y_mm: f64) -> (f64, f64) {
        ((x_mm - self.x0_mm) / self.step_mm, (y_mm - self.y0_mm) / self.step_mm)
    }
}

/// One value per cell of a [`Grid`]; NaN where nothing was read.
#[derive(Debug, Clone, PartialEq)]
pub struct Map {
    /// Where the values stand.
    pub grid: Grid,
    /// Row-major values, `grid.len()` of them.
    pub values: Vec<f32>,
}

impl Map {
    /// A map without a single value read.
    pub fn unread(grid: Grid) -> Self {
        Self { grid, values: vec![f32::NAN; grid.len()] }
    }

    /// A map computed cell by cell from the panel position.
    pub fn from_fn(grid: Grid, f: impl Fn(f64, f64) -> f64) -> Self {
        let values = (0..grid.len()).map(|i| grid.position(i)).map(|(x, y)| f(x, y) as f32);
        Self { grid, values: values.collect() }
    }

    /// Bilinear value at a panel position; `None` outside or next to an unread cell.
    pub fn sample(&self, x_mm: f64, y_mm: f64) -> Option<f64> {
        let (fx, fy) = self.grid.locate(x_mm, y_mm);
        if !(fx >= 0.0 && fy >= 0.0) {
            return None;
        }
        let (ix, iy) = (fx as usize, fy as usize);
        if ix + 1 >= self.grid.nx || iy + 1 >= self.grid.ny {
            return None;
        }
        let (tx, ty) = (fx - ix as f64, fy - iy as f64);
        let i = iy * self.grid.nx + ix;
        let v = |k: usize| f64::from(self.values[k]);
        let below = v(i) * (1.0 - tx) + v(i + 1) * tx;
        let above = v(i + self.grid.nx) * (1.0 - tx) + v(i + self.grid.nx + 1) * tx;
        let value = below * (1.0 - ty) + above * ty;
        value.is_finite().then_some(value)
    }

    /// The map on another grid: bilinear between the cells that were read, NaN where none of the four was.
    pub fn resampled(&self, grid: Grid) -> Self {
        let near = |i: usize| {
            let (x, y) = grid.position(i);
            let (fx, fy) = self.grid.locate(x, y);
            let (mut sum, mut weights) = (0.0, 0.0);
            for (ix, wx) in neighbours(fx, self.grid.nx) {
                for (iy, wy) in neighbours(fy, self.grid.ny) {
                    let value = self.values[iy * self.grid.nx + ix];
                    if value.is_finite() {
                        sum += wx * wy * f64::from(value);
                        weights += wx * wy;
                    }
                }
            }
            (sum / weights) as f32
        };
        Self { grid, values: (0..grid.len()).into_par_iter().with_min_len(4096).map(near).collect() }
    }

    /// This map less another of the same grid, cell by cell; unread where either is.
    pub fn less(&self, other: &Self) -> Self {
        Self { grid: self.grid, values: self.values.iter().zip(&other.values).map(|(a, b)| a - b).collect() }
    }

    /// Share of cells that hold a value.
    pub fn read_fraction(&self) -> f64 {
        let read = self.values.iter().filter(|v| v.is_finite()).count();
        read as f64 / self.values.len().max(1) as f64
    }
}

/// The two cells around a fractional coordinate, held inside `0..n`, with their shares; neither is nothing.
fn neighbours(f: f64, n: usize) -> [(usize, f64); 2] {
    let first = f.floor().clamp(0.0, n.saturating_sub(2) as f64);
    let t = (f - first).clamp(1e-6, 1.0 - 1e-6);
    [(first as usize, 1.0 - t), ((first as usize + 1).min(n - 1), t)]
}

/// Slopes of the surface on a grid; NaN where not read.
#[derive(Debug, Clone)]
pub struct SlopeMap {
    /// Where the values stand.
    pub grid: Grid,
    /// ∂z/∂x, mm per mm.
    pub dzdx: Vec<f32>,
    /// ∂z/∂y, mm per mm.
    pub dzdy: Vec<f32>,
    /// One-sigma noise of each of the two slopes, mm per mm.
    pub sigma: Vec<f32>,
}

impl SlopeMap {
    /// Whether the cell holds slopes.
    pub fn is_read(&self, i: usize) -> bool {
        self.sigma[i].is_finite() && self.dzdx[i].is_finite() && self.dzdy[i].is_finite()
    }
}

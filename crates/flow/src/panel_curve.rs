//! The panel's own curve about a place, from the intended shape.

use dentwright_surface::Map;
use nalgebra::{DMatrix, DVector};

/// Fewer cells than this tell no curve.
const LEAST_CELLS: usize = 12;

/// Quadratic of the intended shape about a place, over a square of half a side: its curvatures along x, across and along
/// y, 1/mm, and how far the shape is off it, root mean square, mm.
pub(crate) fn panel_curve(height: &Map, deviation: &Map, at: [f64; 2], half: f64) -> ([f64; 3], f64) {
    let grid = height.grid;
    // scaled by the square, so that the columns are of one size
    let near: Vec<[f64; 3]> = (0..grid.len())
        .map(|i| (grid.position(i), f64::from(height.values[i] - deviation.values[i])))
        .map(|((x, y), z)| [(x - at[0]) / half, (y - at[1]) / half, z])
        .filter(|[x, y, z]| z.is_finite() && x.abs() <= 1.0 && y.abs() <= 1.0)
        .collect();
    if near.len() < LEAST_CELLS {
        return ([0.0; 3], 0.0);
    }
    let row = |[x, y, _]: [f64; 3]| [1.0, x, y, 0.5 * x * x, x * y, 0.5 * y * y];
    let a = DMatrix::from_fn(near.len(), 6, |i, j| row(near[i])[j]);
    let b = DVector::from_fn(near.len(), |i, _| near[i][2]);
    let Some(c) = (a.transpose() * &a).lu().solve(&(a.transpose() * &b)) else { return ([0.0; 3], 0.0) };
    let off = (&a * &c - b).norm() / (near.len() as f64).sqrt();
    ([3, 4, 5].map(|k| c[k] / (half * half)), off)
}

//! Heights from an NPY file, smooth between its places.

use super::CaseError;
use dentwright_surface::{Grid, read_npy};
use std::path::Path;

/// Heights on a grid, smooth between.
pub struct Heights {
    grid: Grid,
    values: Vec<f64>,
}

impl Heights {
    /// Reads a map whose shape is the grid's, or the grid's cells (one less each way).
    pub fn read(path: &Path, grid: &Grid) -> Result<Self, CaseError> {
        let wrong = |why: &str| CaseError::Map { path: path.into(), why: why.into() };
        let bytes = std::fs::read(path).map_err(|e| wrong(&e.to_string()))?;
        let array = read_npy(&bytes).map_err(|e| wrong(&e.to_string()))?;
        let [rows, columns] = array.shape[..] else { return Err(wrong("not a map of rows and columns")) };
        let grid = if (rows, columns) == (grid.ny, grid.nx) {
            *grid
        } else if (rows + 1, columns + 1) == (grid.ny, grid.nx) {
            let half = 0.5 * grid.step_mm;
            Grid { x0_mm: grid.x0_mm + half, y0_mm: grid.y0_mm + half, nx: columns, ny: rows, ..*grid }
        } else {
            return Err(wrong(&format!("{rows} × {columns} values; the patch has {} × {}", grid.ny, grid.nx)));
        };
        if array.values.iter().any(|v| !v.is_finite()) {
            return Err(wrong("values are missing"));
        }
        Ok(Self { grid, values: array.values })
    }

    /// Height at a place: cubic between the four nearest each way (Catmull and Rom), level outside.
    pub fn at(&self, x: f64, y: f64) -> f64 {
        let (fx, fy) = self.grid.locate(x, y);
        let (wx, wy) = (weights(fx, self.grid.nx), weights(fy, self.grid.ny));
        let row = |iy: usize| wx.iter().map(|(ix, w)| w * self.values[iy * self.grid.nx + ix]).sum::<f64>();
        wy.iter().map(|(iy, w)| w * row(*iy)).sum()
    }
}

/// Four neighbours along an axis and their weights; past the border the map goes on as a parabola.
fn weights(f: f64, n: usize) -> [(usize, f64); 4] {
    let f = f.clamp(0.0, (n - 1) as f64);
    let i = (f.floor() as usize).min(n - 2);
    let t = f - i as f64;
    let w = [
        0.5 * (-t + 2.0 * t * t - t * t * t),
        0.5 * (2.0 - 5.0 * t * t + 3.0 * t * t * t),
        0.5 * (t + 4.0 * t * t - 3.0 * t * t * t),
        0.5 * (t * t * t - t * t),
    ];
    if i == 0 {
        return [(0, w[1] + 3.0 * w[0]), (1, w[2] - 3.0 * w[0]), (2, w[3] + w[0]), (0, 0.0)];
    }
    if i + 2 == n {
        return [(i + 1, w[2] + 3.0 * w[3]), (i, w[1] - 3.0 * w[3]), (i - 1, w[0] + w[3]), (i, 0.0)];
    }
    std::array::from_fn(|k| (i + k - 1, w[k]))
}

#[cfg(test)]
mod tests {
    use super::*;
    use dentwright_surface::npy_f32;

    #[test]
    fn a_parabola_is_read_back_everywhere() {
        let grid = Grid { x0_mm: -10.0, y0_mm: -8.0, step_mm: 4.0, nx: 6, ny: 5 };
        let f = |x: f64, y: f64| 0.01 * x * x - 0.02 * x * y + 0.005 * y * y + 0.3 * x;
        let values: Vec<f32> = (0..grid.len()).map(|i| grid.position(i)).map(|(x, y)| f(x, y) as f32).collect();
        let path = std::env::temp_dir().join(format!("parabola_{}.npy", std::process::id()));
        std::fs::write(&path, npy_f32(&[grid.ny, grid.nx], &values)).expect("a temporary file");
        let heights = Heights::read(&path, &grid).expect("a map");
        for (x, y) in [(-10.0, -8.0), (-9.0, 7.5), (0.3, 0.1), (9.9, 8.0), (10.0, -3.0)] {
            assert!((heights.at(x, y) - f(x, y)).abs() < 1e-5, "{x} {y}: {} against {}", heights.at(x, y), f(x, y));
        }
        let other = Grid { nx: 9, ..grid };
        assert!(matches!(Heights::read(&path, &other), Err(CaseError::Map { why, .. }) if why.contains("5 × 6")));
        std::fs::remove_file(&path).expect("the temporary file");
    }
}

//! Moving means over a square of cells, unread cells left out; running sums, so the size costs nothing.

use crate::grid::Map;

/// Mean over a square of about `size_mm`, on every cell that was read.
pub fn average(map: &Map, size_mm: f64) -> Map {
    let mut mean = local_mean(map, size_mm);
    for (mean, value) in mean.values.iter_mut().zip(&map.values) {
        if !value.is_finite() {
            *mean = f32::NAN;
        }
    }
    mean
}

/// Mean over a square of about `size_mm`, also on cells that hold nothing themselves; NaN where the square
/// holds nothing at all.
pub fn local_mean(map: &Map, size_mm: f64) -> Map {
    let grid = map.grid;
    let by = (0.5 * size_mm / grid.step_mm).round() as usize;
    let start: Vec<(f64, f64)> =
        map.values.iter().map(|&v| if v.is_finite() { (f64::from(v), 1.0) } else { (0.0, 0.0) }).collect();
    let sums = moving_sums(&moving_sums(&start, 1, grid.nx, by), grid.nx, grid.ny, by);
    // Counts are whole numbers; half of one tells none from one.
    let values = sums.iter().map(|(sum, count)| if *count >= 0.5 { (sum / count) as f32 } else { f32::NAN });
    Map { grid, values: values.collect() }
}

/// Sum and count over `by` cells to either side along one direction: `along` cells, `stride` apart.
fn moving_sums(values: &[(f64, f64)], stride: usize, along: usize, by: usize) -> Vec<(f64, f64)> {
    let mut out = vec![(0.0, 0.0); values.len()];
    for first in (0..values.len()).filter(|i| (i / stride) % along == 0) {
        let at = |k: usize| values[first + k * stride];
        let mut running = (0..by.min(along)).map(at).fold((0.0, 0.0), |s, v| (s.0 + v.0, s.1 + v.1));
        for k in 0..along {
            if k + by < along {
                running = (running.0 + at(k + by).0, running.1 + at(k + by).1);
            }
            if k > by {
                running = (running.0 - at(k - by - 1).0, running.1 - at(k - by - 1).1);
            }
            out[first + k * stride] = running;
        }
    }
    out
}

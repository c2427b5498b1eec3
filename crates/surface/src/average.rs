//! Moving means over a square of cells, unread cells left out; running sums, so the size costs nothing.

use crate::grid::{Grid, Map};
use rayon::prelude::*;

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
    let Grid { nx, ny, step_mm, .. } = map.grid;
    let by = (0.5 * size_mm / step_mm).round() as usize;
    let along = along_rows(map, by);
    let row = |y: usize| &along[2 * nx * y..2 * nx * (y + 1)];
    let mut values = vec![f32::NAN; map.values.len()];
    values.par_chunks_mut(BAND * nx).enumerate().for_each(|(band, values)| {
        let first = band * BAND;
        let mut sums = vec![0.0; 2 * nx];
        (first.saturating_sub(by)..(first + by).min(ny)).for_each(|y| add(&mut sums, 1.0, row(y)));
        for (y, values) in (first..).zip(values.chunks_mut(nx)) {
            if y + by < ny {
                add(&mut sums, 1.0, row(y + by));
            }
            if y > first.max(by) {
                add(&mut sums, -1.0, row(y - by - 1));
            }
            // Counts are whole numbers; half of one tells none from one.
            let mean = |s: &[f64]| if s[1] >= 0.5 { (s[0] / s[1]) as f32 } else { f32::NAN };
            values.iter_mut().zip(sums.chunks_exact(2)).for_each(|(v, s)| *v = mean(s));
        }
    });
    Map { grid: map.grid, values }
}

/// Rows whose sums run on from one to the next; fixed, so that they do not depend on the cores.
const BAND: usize = 64;

/// Sum and count over `by` cells to either side along each row, side by side.
fn along_rows(map: &Map, by: usize) -> Vec<f64> {
    let nx = map.grid.nx;
    let mut out = vec![0.0; 2 * map.values.len()];
    out.par_chunks_mut(2 * nx).zip(map.values.par_chunks(nx)).with_min_len(16).for_each(|(out, row)| {
        let one = |v: f32| if v.is_finite() { (f64::from(v), 1.0) } else { (0.0, 0.0) };
        let (mut sum, mut count) = row[..by.min(nx)].iter().fold((0.0, 0.0), |s, v| (s.0 + one(*v).0, s.1 + one(*v).1));
        for (k, out) in out.chunks_exact_mut(2).enumerate() {
            let (more, one_more) = if k + by < nx { one(row[k + by]) } else { (0.0, 0.0) };
            let (less, one_less) = if k > by { one(row[k - by - 1]) } else { (0.0, 0.0) };
            sum += more - less;
            count += one_more - one_less;
            (out[0], out[1]) = (sum, count);
        }
    });
    out
}

fn add(sums: &mut [f64], times: f64, row: &[f64]) {
    sums.iter_mut().zip(row).for_each(|(sum, v)| *sum += times * v);
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn means_are_those_of_the_square_at_rims_and_holes_too() {
        let grid = Grid { x0_mm: 0.0, y0_mm: 0.0, step_mm: 0.5, nx: 23, ny: 2 * BAND + 9 };
        let value = |i: usize| if i % 5 == 2 { f32::NAN } else { (i as f32 * 0.7).sin() };
        let map = Map { grid, values: (0..grid.len()).map(value).collect() };
        for (size_mm, by) in [(1.0, 1), (3.0, 3), (40.0, 40)] {
            let mean = local_mean(&map, size_mm);
            for i in 0..grid.len() {
                let (x, y) = (i % grid.nx, i / grid.nx);
                let inside = |k: &usize| (k % grid.nx).abs_diff(x) <= by && (k / grid.nx).abs_diff(y) <= by;
                let cells = (0..grid.len()).filter(inside).map(|k| f64::from(map.values[k])).filter(|v| v.is_finite());
                let (sum, count) = cells.fold((0.0, 0.0), |s, v| (s.0 + v, s.1 + 1.0));
                assert!((f64::from(mean.values[i]) - sum / count).abs() < 1e-6, "{size_mm} at {i}");
            }
        }
    }
}

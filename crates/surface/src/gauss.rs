//! The Gaussian areal filter (ISO 16610-61): what is longer than a wavelength, and what is shorter.
//!
//! The weighting function is `exp(-π (r / (α λc))²)` with `α = √(ln 2 / π)`, so that half of a wave of length `λc`
//! passes. Beside holes and rims the weights are divided by what of them falls on cells that were read. Both
//! directions are filtered one after the other.

use crate::grid::Map;
use rayon::prelude::*;

/// `√(ln 2 / π)`, ISO 16610-21.
const ALPHA: f64 = 0.469_718_639_349_825_5;
/// Reach of the weights over the wavelength: a ten-millionth of them lies beyond.
const REACH: f64 = 1.0;

/// Part of a map that is longer than `cutoff_mm`, on the cells that were read.
#[must_use]
pub fn longer_than(map: &Map, cutoff_mm: f64) -> Map {
    longer_and_share(map, cutoff_mm).0
}

/// The same, and on every cell the share of the weights that falls on cells that were read, 0 to 1.
pub(crate) fn longer_and_share(map: &Map, cutoff_mm: f64) -> (Map, Map) {
    let grid = map.grid;
    let weights = weights(cutoff_mm / grid.step_mm);
    // Value and share read, side by side.
    let start: Vec<f32> = map.values.iter().flat_map(|&v| if v.is_finite() { [v, 1.0] } else { [0.0; 2] }).collect();
    let sums = along_columns(&along_rows(&start, 2 * grid.nx, &weights), 2 * grid.nx, &weights);
    let mean = |(s, v): (&[f32], &f32)| if v.is_finite() { s[0] / s[1] } else { f32::NAN };
    let longer = sums.chunks(2).zip(&map.values).map(mean).collect();
    (Map { grid, values: longer }, Map { grid, values: sums.chunks(2).map(|s| s[1]).collect() })
}

/// Standard deviation of the weights along one direction, mm.
pub(crate) fn spread_mm(cutoff_mm: f64) -> f64 {
    ALPHA * cutoff_mm / std::f64::consts::TAU.sqrt()
}

/// Part of a map between two wavelengths, mm; without an upper one all that is shorter, without a lower one all
/// that is longer.
#[must_use]
pub fn between(map: &Map, shortest_mm: Option<f64>, longest_mm: Option<f64>) -> Map {
    let part = shortest_mm.map_or_else(|| map.clone(), |cutoff| longer_than(map, cutoff));
    match longest_mm {
        Some(cutoff) => part.less(&longer_than(map, cutoff)),
        None => part,
    }
}

fn weights(cutoff_cells: f64) -> Vec<f32> {
    let reach = (REACH * cutoff_cells).ceil() as i64;
    let weight = |k: i64| (-std::f64::consts::PI * (k as f64 / (ALPHA * cutoff_cells)).powi(2)).exp();
    let total: f64 = (-reach..=reach).map(weight).sum();
    (0..=reach).map(|k| (weight(k) / total) as f32).collect()
}

/// Weighted sums along rows of `length`, two numbers a cell; `weights[k]` counts `k` cells to either side.
fn along_rows(values: &[f32], length: usize, weights: &[f32]) -> Vec<f32> {
    let margin = 2 * (weights.len() - 1);
    let mut out = vec![0.0; values.len()];
    out.par_chunks_mut(length).zip(values.par_chunks(length)).with_min_len(16).for_each(|(out, row)| {
        let mut padded = vec![0.0; length + 2 * margin];
        padded[margin..margin + length].copy_from_slice(row);
        weigh(out, weights, |k| [&padded[margin - 2 * k..], &padded[margin + 2 * k..]]);
    });
    out
}

/// The same along columns, whole rows at a time.
fn along_columns(values: &[f32], length: usize, weights: &[f32]) -> Vec<f32> {
    let mut out = vec![0.0; values.len()];
    let nothing = vec![0.0; length];
    let row = |y: Option<usize>| y.and_then(|y| values.get(y * length..(y + 1) * length)).unwrap_or(&nothing);
    out.par_chunks_mut(length).enumerate().with_min_len(4).for_each(|(y, out)| {
        weigh(out, weights, |k| [row(y.checked_sub(k)), row(Some(y + k))]);
    });
    out
}

/// Numbers that are summed together, so that their sums stay in registers.
const BLOCK: usize = 32;

/// Weighted sums of what stands `k` steps back and ahead, as `beside` gives it.
fn weigh<'a>(out: &mut [f32], weights: &[f32], beside: impl Fn(usize) -> [&'a [f32]; 2]) {
    let steps: Vec<([&[f32]; 2], f32)> =
        weights.iter().enumerate().map(|(k, w)| (beside(k), if k == 0 { 0.5 * w } else { *w })).collect();
    let (blocks, rest) = out.as_chunks_mut::<BLOCK>();
    let done = BLOCK * blocks.len();
    for (k, block) in blocks.iter_mut().enumerate() {
        let mut sums = [0.0; BLOCK];
        for ([back, ahead], weight) in &steps {
            let (back, ahead) = (&back[BLOCK * k..][..BLOCK], &ahead[BLOCK * k..][..BLOCK]);
            for j in 0..BLOCK {
                sums[j] += weight * (back[j] + ahead[j]);
            }
        }
        *block = sums;
    }
    for ([back, ahead], weight) in &steps {
        let pairs = back[done..].iter().zip(&ahead[done..]);
        rest.iter_mut().zip(pairs).for_each(|(sum, (b, a))| *sum += weight * (b + a));
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::grid::Grid;

    fn wave(length_mm: f64) -> Map {
        let grid = Grid { x0_mm: 0.0, y0_mm: 0.0, step_mm: 0.5, nx: 240, ny: 160 };
        Map::from_fn(grid, |x, _| (std::f64::consts::TAU * x / length_mm).sin())
    }

    fn height(map: &Map) -> f64 {
        let inside = (0..map.grid.len()).filter(|i| (60..180).contains(&(i % map.grid.nx)));
        inside.map(|i| f64::from(map.values[i])).fold(0.0, f64::max)
    }

    #[test]
    fn half_of_the_cutoff_wavelength_passes() {
        // The filter's own transmission, exp(-π (α λc / λ)²): ISO 16610-21.
        for (wavelength, passes) in [(10.0, 0.5), (20.0, 0.8409), (5.0, 0.0625)] {
            let found = height(&longer_than(&wave(wavelength), 10.0));
            assert!((found - passes).abs() < 0.005, "{wavelength}: {found}");
        }
        let band = height(&between(&wave(6.0), Some(3.0), Some(10.0)));
        assert!((band - (0.8409 - 0.1459)).abs() < 0.01, "{band}");
    }

    #[test]
    fn holes_stay_holes_and_do_not_pull() {
        let grid = Grid { x0_mm: 0.0, y0_mm: 0.0, step_mm: 1.0, nx: 40, ny: 30 };
        let mut flat = Map::from_fn(grid, |_, _| 0.3);
        flat.values[15 * 40 + 20] = f32::NAN;
        let smooth = longer_than(&flat, 8.0);
        assert!(smooth.values[15 * 40 + 20].is_nan());
        assert!(smooth.values.iter().filter(|v| v.is_finite()).all(|v| (v - 0.3).abs() < 1e-6));
    }
}

//! Connected areas of a mask, and masks made larger or rid of specks.

use crate::grid::Grid;
use rayon::prelude::*;
use std::collections::{HashSet, VecDeque};

/// Connected cells (four neighbours) of a mask as lists of flat indices.
pub fn areas(mask: &[bool], grid: &Grid) -> Vec<Vec<usize>> {
    let mut seen = vec![false; mask.len()];
    let mut out = Vec::new();
    for start in 0..mask.len() {
        if !mask[start] || seen[start] {
            continue;
        }
        seen[start] = true;
        let mut area = vec![start];
        let mut next = 0;
        while next < area.len() {
            let i = area[next];
            next += 1;
            for k in grid.beside(i).into_iter().flatten() {
                if mask[k] && !seen[k] {
                    seen[k] = true;
                    area.push(k);
                }
            }
        }
        out.push(area);
    }
    out
}

/// Cells around some cells up to a distance, through those that are `open`, nearest first, each with the ring it lies
/// in, from 1.
#[must_use]
pub fn rings(grid: &Grid, cells: &[usize], up_to_mm: f64, open: impl Fn(usize) -> bool) -> Vec<(usize, usize)> {
    let most = (up_to_mm / grid.step_mm).ceil() as usize;
    let mut seen: HashSet<usize> = cells.iter().copied().collect();
    let mut next: VecDeque<(usize, usize)> = cells.iter().map(|&i| (i, 0)).collect();
    let mut out = Vec::new();
    while let Some((i, ring)) = next.pop_front() {
        if ring == most {
            continue;
        }
        for k in grid.beside(i).into_iter().flatten() {
            if open(k) && seen.insert(k) {
                out.push((k, ring + 1));
                next.push_back((k, ring + 1));
            }
        }
    }
    out
}

/// Areas of at least `least_mm2`.
pub(crate) fn keep_large(mask: &[bool], grid: &Grid, least_mm2: f64) -> Vec<bool> {
    let mut out = vec![false; mask.len()];
    for area in areas(mask, grid) {
        if area.len() as f64 * grid.step_mm * grid.step_mm >= least_mm2 {
            area.iter().for_each(|&i| out[i] = true);
        }
    }
    out
}

/// Widens a mask by a square margin.
pub fn widen(mask: &[bool], grid: &Grid, by_mm: f64) -> Vec<bool> {
    let (by, nx) = ((by_mm / grid.step_mm).ceil() as usize, grid.nx);
    let mut across = mask.to_vec();
    across.par_chunks_mut(nx).zip(mask.par_chunks(nx)).with_min_len(16).for_each(|(out, row)| {
        for k in 1..=by.min(nx - 1) {
            join(&mut out[k..], &row[..nx - k]);
            join(&mut out[..nx - k], &row[k..]);
        }
    });
    let mut out = vec![false; mask.len()];
    out.par_chunks_mut(nx).enumerate().with_min_len(16).for_each(|(y, out)| {
        for near in y.saturating_sub(by)..(y + by + 1).min(grid.ny) {
            join(out, &across[near * nx..(near + 1) * nx]);
        }
    });
    out
}

fn join(out: &mut [bool], more: &[bool]) {
    out.iter_mut().zip(more).for_each(|(o, m)| *o |= m);
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_single_cell_grows_to_a_square_that_ends_at_the_rim() {
        let grid = Grid { x0_mm: 0.0, y0_mm: 0.0, step_mm: 0.5, nx: 40, ny: 30 };
        for (x, y) in [(20, 15), (1, 28), (39, 0)] {
            let mask: Vec<bool> = (0..grid.len()).map(|i| i == y * 40 + x).collect();
            let wide = widen(&mask, &grid, 1.4);
            let near = |i: usize| (i % 40).abs_diff(x) <= 3 && (i / 40).abs_diff(y) <= 3;
            assert!((0..grid.len()).all(|i| wide[i] == near(i)));
        }
    }
}

//! Connected areas of a mask, and masks made larger or rid of specks.

use crate::grid::Grid;

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
    let by = (by_mm / grid.step_mm).ceil() as usize;
    let pass = |mask: &[bool], stride: usize, along: usize| -> Vec<bool> {
        let mut out = vec![false; mask.len()];
        for i in (0..mask.len()).filter(|&i| mask[i]) {
            let at = (i / stride) % along;
            let (back, ahead) = (at.min(by), (along - 1 - at).min(by));
            (0..=back).for_each(|k| out[i - k * stride] = true);
            (0..=ahead).for_each(|k| out[i + k * stride] = true);
        }
        out
    };
    pass(&pass(mask, 1, grid.nx), grid.nx, grid.ny)
}

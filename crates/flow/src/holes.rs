//! Holes inside what was read that are large enough to hide a dent.

use crate::unread::Unread;
use dentwright_surface::{Fold, Grid, Hole, Map, areas};

/// What the rims of the places tell that were too steep to read, largest first; specks left out.
pub(crate) fn folds(deviation: &Map, sigma: &Map, unread: &[u8]) -> Vec<Fold> {
    let grid = deviation.grid;
    let steep: Vec<bool> = unread.iter().map(|&v| v == Unread::Folded as u8).collect();
    let mut holes = areas(&steep, &grid);
    holes.retain(|hole| hole.len() as f64 * grid.step_mm.powi(2) >= SPECK_MM2);
    holes.sort_by_key(|hole| std::cmp::Reverse(hole.len()));
    holes.into_iter().map(|hole| Fold::of(deviation, sigma, hole)).collect()
}

/// Holes smaller than this hide nothing worth a word, mm².
const SPECK_MM2: f64 = 2.0;

/// Holes that a square of twice the finish scale fits into by area; tags, what a gauge filled in and what lies at the rim are none.
pub(crate) fn holes(unread: &[u8], grid: &Grid, scale_mm: f64) -> Vec<Hole> {
    let known = [Unread::Read, Unread::Tag, Unread::Gauged].map(|code| code as u8);
    let open: Vec<bool> = unread.iter().map(|v| !known.contains(v)).collect();
    let cell = grid.step_mm.powi(2);
    let inside = |i: &usize| {
        let (ix, iy) = (i % grid.nx, i / grid.nx);
        ix > 0 && iy > 0 && ix + 1 < grid.nx && iy + 1 < grid.ny
    };
    let described = |area: Vec<usize>| {
        let n = area.len() as f64;
        let middle = area.iter().map(|&i| grid.position(i)).fold((0.0, 0.0), |s, p| (s.0 + p.0 / n, s.1 + p.1 / n));
        let steep = area.iter().any(|&i| unread[i] == Unread::Folded as u8);
        Hole { x_mm: middle.0, y_mm: middle.1, area_mm2: n * cell, steep }
    };
    let large = |hole: &Hole| hole.steep || hole.area_mm2 >= (2.0 * scale_mm).powi(2);
    areas(&open, grid).into_iter().filter(|area| area.iter().all(inside)).map(described).filter(large).collect()
}

//! Holes inside what was read that are large enough to hide a dent.

use crate::unread::Unread;
use dentwright_surface::{Grid, Hole, areas};

/// Holes that a square of twice the finish scale fits into by area; tags and what lies at the rim are none.
pub(crate) fn holes(unread: &[u8], grid: &Grid, scale_mm: f64) -> Vec<Hole> {
    let open: Vec<bool> = unread.iter().map(|&v| v != Unread::Read as u8 && v != Unread::Tag as u8).collect();
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

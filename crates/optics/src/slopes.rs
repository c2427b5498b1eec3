//! Board points to slopes on the panel's grid.
//!
//! Cell by cell: stand on the surface as known so far, look where the camera sees that spot, take the
//! board point it mirrors, and tilt the surface to the bisector `n ∝ (C-P)/|C-P| + (B-P)/|B-P|`.

use crate::bundle::Scene;
use crate::mirrored::BoardField;
use crate::pixel::Pixel;
use dentwright_surface::{Grid, Map, SlopeMap};
use nalgebra::{Point3, Vector3};
use rayon::prelude::*;

/// Normal (not of unit length) of a mirror at `p` that shows the eye the point `board`.
pub fn bisector(p: &Point3<f64>, eye: &Point3<f64>, board: &Point3<f64>) -> Vector3<f64> {
    (eye - p).normalize() + (board - p).normalize()
}

/// A grid over the part of the panel that mirrors the board. Its step is about two pixels, in quarters of
/// a millimetre, not under half a millimetre.
pub fn grid_over(field: &BoardField, scene: &Scene) -> Option<Grid> {
    let origin = scene.layout.panel_from_camera * Point3::origin();
    let on_panel = |p: &Pixel| {
        let ray = scene.layout.panel_from_camera * scene.camera.ray(p);
        scene.panel.meet(&origin, &ray).0
    };
    let (mut low, mut high) = ([f64::MAX; 2], [f64::MIN; 2]);
    let mut middle = None;
    for m in field.lattice(20_000) {
        let hit = on_panel(&m.pixel);
        low = [low[0].min(hit.x), low[1].min(hit.y)];
        high = [high[0].max(hit.x), high[1].max(hit.y)];
        middle = middle.or(Some(m.pixel));
    }
    let at = middle?;
    let footprint = (on_panel(&(at + Pixel::new(1.0, 0.0))) - on_panel(&at)).norm();
    let step_mm = ((2.0 * footprint) * 4.0).round().max(2.0) / 4.0;
    let first = [low[0], low[1]].map(|v| ((v / step_mm).floor() - 2.0) * step_mm);
    let cells = [0, 1].map(|k| ((high[k] - first[k]) / step_mm).ceil() as usize + 3);
    (cells[0] * cells[1] < MAX_CELLS).then_some(Grid {
        x0_mm: first[0],
        y0_mm: first[1],
        step_mm,
        nx: cells[0],
        ny: cells[1],
    })
}

/// A panel patch of this many cells is not a panel patch but a wrong pose.
const MAX_CELLS: usize = 4_000_000;

/// Slopes on the grid, less those of the smooth panel. `above` is the height over the smooth panel as
/// known so far (NaN counts as zero).
pub fn slopes_on(grid: Grid, field: &BoardField, scene: &Scene, above: Option<&Map>) -> SlopeMap {
    let camera_from_panel = scene.layout.panel_from_camera.inverse();
    let eye = scene.layout.panel_from_camera * Point3::origin();
    let board = scene.layout.panel_from_board;
    let cells: Vec<[f32; 3]> = (0..grid.len())
        .into_par_iter()
        .with_min_len(1024)
        .map(|i| {
            let (x, y) = grid.position(i);
            let (z, zx, zy) = scene.panel.at(x, y);
            let extra = above.map_or(0.0, |m| f64::from(m.values[i]));
            let p = Point3::new(x, y, z + if extra.is_finite() { extra } else { 0.0 });
            let Some((b, sigma)) = scene.camera.project(&(camera_from_panel * p)).and_then(|q| field.sample(&q)) else {
                return [f32::NAN; 3];
            };
            let b = board * Point3::new(b.x, b.y, 0.0);
            let n = bisector(&p, &eye, &b);
            [(-n.x / n.z - zx) as f32, (-n.y / n.z - zy) as f32, (sigma / (2.0 * (b - p).norm())) as f32]
        })
        .collect();
    SlopeMap {
        grid,
        dzdx: cells.iter().map(|c| c[0]).collect(),
        dzdy: cells.iter().map(|c| c[1]).collect(),
        sigma: cells.iter().map(|c| c[2]).collect(),
    }
}

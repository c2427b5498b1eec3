//! A tip that leans lightly on the sheet: its elastic answer, of which nothing stays.
//!
//! One solve with the stiffness the sheet has as it stands; what would yield does not.

use crate::moves::Kind;
use crate::panel::Panel;
use crate::tip::{Load, Tip};
use dentwright_surface::{Grid, Map};
use nalgebra::Vector3;

/// Change of height for one newton outward, mm, over a grid, and at the tip itself; none where the sheet is folded or gives
/// nothing there.
pub fn leant(panel: &Panel, kind: Kind, at: [f64; 2], tip: &Tip, grid: Grid) -> Option<(Map, f64)> {
    let patch = &panel.patch;
    let state = patch.state(&patch.places).ok()?;
    let factor = patch.factor(&state);
    let load = Load::new(&patch.mesh, tip, at, kind.way());
    let mut answer = vec![0.0; 3 * patch.places.len()];
    load.share.iter().for_each(|(node, share)| answer[3 * node + 2] = share.abs());
    factor.solve(&mut answer);
    let moved: Vec<Vector3<f64>> = answer.chunks_exact(3).map(|v| Vector3::new(v[0], v[1], v[2])).collect();
    let change = Map::from_fn(grid, |x, y| patch.mesh.at(x, y, &moved).z);
    let own = patch.mesh.at(at[0], at[1], &moved).z;
    (own > 0.0).then_some((change, own))
}

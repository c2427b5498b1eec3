//! What the panel looks like after a move, as maps.

use crate::panel::Panel;
use crate::strain::Modes;
use dentwright_surface::{Grid, npy_f32};
use std::path::Path;

/// Writes the maps after move number `number` into `folder`; their names with what each holds.
pub fn write(panel: &Panel, grid: &Grid, number: usize, folder: &Path) -> std::io::Result<Vec<String>> {
    let mut names = Vec::new();
    let mut save = |name: &str, shape: &[usize], values: Vec<f32>| {
        let name = format!("{name}_{number}.npy");
        std::fs::write(folder.join(&name), npy_f32(shape, &values))?;
        names.push(name);
        std::io::Result::Ok(())
    };
    let flat = [grid.ny, grid.nx];
    save("deviation", &flat, each(panel, grid, |_, x, y| panel.deviation(x, y) as f32))?;
    let n = panel.patch.layers.len();
    let spent = |i: usize, layer: usize| panel.patch.memory[i * n + layer].spent as f32;
    save("plastic_inner", &flat, each(panel, grid, |i, _, _| spent(i, 0)))?;
    save("plastic_outer", &flat, each(panel, grid, |i, _, _| spent(i, n - 1)))?;
    let three = [grid.ny, grid.nx, 3];
    let thickness = panel.patch.layers.thickness();
    let strain = |i: usize| panel.patch.strained(i).map(|s| components(&s.membrane)).unwrap_or([f32::NAN; 3]);
    let stress = |i: usize| {
        // conjugate modes are sums; half of them are the tensor's modes
        panel.patch.strained(i).map(|s| components(&(s.section.force * (0.5 / thickness)))).unwrap_or([f32::NAN; 3])
    };
    save("membrane_strain", &three, each3(panel, grid, strain))?;
    save("membrane_stress", &three, each3(panel, grid, stress))?;
    Ok(names)
}

/// xx, yy and xy of a plane tensor.
fn components(modes: &Modes) -> [f32; 3] {
    [(modes[0] + modes[1]) as f32, (modes[0] - modes[1]) as f32, modes[2] as f32]
}

/// One value a place of the grid from the nearest point of the sheet; NaN off the sheet.
fn each(panel: &Panel, grid: &Grid, f: impl Fn(usize, f64, f64) -> f32) -> Vec<f32> {
    let nearest = nearest(panel, grid);
    (0..grid.len())
        .map(|k| {
            let (x, y) = grid.position(k);
            nearest[k].map_or(f32::NAN, |i| f(i, x, y))
        })
        .collect()
}

fn each3(panel: &Panel, grid: &Grid, f: impl Fn(usize) -> [f32; 3]) -> Vec<f32> {
    nearest(panel, grid).into_iter().flat_map(|i| i.map_or([f32::NAN; 3], &f)).collect()
}

/// Nearest point of the sheet in the same cell column, a place of the grid.
fn nearest(panel: &Panel, grid: &Grid) -> Vec<Option<usize>> {
    let mesh = &panel.patch.mesh;
    (0..grid.len())
        .map(|k| {
            let (x, y) = grid.position(k);
            if !mesh.holds(x, y) {
                return None;
            }
            let column = mesh.x.cell(x);
            (mesh.columns[column]..mesh.columns[column + 1]).filter(|i| mesh.points[*i].sheet).min_by(|a, b| {
                let far = |i: usize| (mesh.points[i].at[0] - x).powi(2) + (mesh.points[i].at[1] - y).powi(2);
                far(*a).total_cmp(&far(*b))
            })
        })
        .collect()
}

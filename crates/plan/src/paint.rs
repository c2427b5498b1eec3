//! What the paint feels of a panel as it stands.

use dentwright_sheet::{Panel, face_strain, largest};

/// Strain on the paint's outer face where it is greatest as the panel stands.
pub fn paint_strain(panel: &Panel, film_mm: f64) -> f64 {
    let t = panel.patch.layers.thickness();
    let of = |i: usize| {
        let s = panel.patch.strained(i).ok()?;
        let bent = s.curvature[0].abs() + s.curvature[1].hypot(s.curvature[2]);
        Some(face_strain(largest(&s.membrane).max(0.0), bent, t, film_mm))
    };
    panel.sheet_points().filter_map(of).fold(0.0, f64::max)
}

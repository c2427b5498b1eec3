//! Patches for the checks.
#![allow(dead_code)] // not every test file uses every piece

use dentwright_sheet::*;

/// Steel that never yields.
pub fn elastic(e_mpa: f64, nu: f64) -> Metal {
    Metal { e_mpa, nu, hardening: Hardening::Elastic, kinematic_share: 0.0 }
}

/// Even breaks.
pub fn even(low: f64, high: f64, cells: usize) -> Axis {
    Axis::new((0..=cells).map(|i| low + (high - low) * i as f64 / cells as f64).collect())
}

/// Breaks fine at the middle and at the ends.
pub fn towards_middle(half: f64, fine: f64, coarse: f64) -> Axis {
    let focus = |at, fine| Focus { at, reach: 0.0, fine };
    Axis::new(graded(
        -half,
        half,
        &[focus(0.0, fine), focus(-half, 0.5 * coarse), focus(half, 0.5 * coarse)],
        1.3,
        coarse,
    ))
}

/// Flat patch.
pub fn flat(x: Axis, y: Axis, outline: Outline, metal: Metal, t: f64, edges: Edges) -> Panel {
    Panel::new(Patch::new(Mesh::new(x, y, outline, &|_, _| 0.0, 2).expect("flat"), metal, t, 9, &edges))
}

/// Deflection under the tip and force, for loads that grow from one value to the next.
pub fn follow(panel: &mut Panel, tip: Tip, given: &[Given], way: f64) -> Vec<(f64, f64)> {
    let load = Load::new(&panel.patch.mesh, &tip, [0.0, 0.0], way);
    let (mut level, mut force) = (0.0, 0.0);
    given
        .iter()
        .map(|g| {
            let patch = &panel.patch;
            let found = balance(patch, &Drive::Load(&load), *g, &patch.places, (level, force), Tolerance::default())
                .unwrap_or_else(|e| panic!("{g:?}: {e}"));
            (level, force) = (found.level, found.force);
            panel.patch.keep(found.places, found.memory);
            (panel.deviation(0.0, 0.0), force)
        })
        .collect()
}

/// Fails unless `ours` is within `share` of `reference`; says all three.
pub fn assert_near(what: &str, ours: f64, reference: f64, share: f64) {
    let off = ours / reference - 1.0;
    println!("{what}: ours {ours:.6}, reference {reference:.6}, difference {:+.3} %", 100.0 * off);
    assert!(off.abs() <= share, "{what}: ours {ours}, reference {reference}, difference {off:+.5}, allowed {share}");
}

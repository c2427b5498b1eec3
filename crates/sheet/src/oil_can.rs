//! Does the sheet pop: how soft is it at its softest, and at what force does it give way.

use crate::equilibrium::{Drive, Given, Tolerance, balance};
use crate::mesh::Mesh;
use crate::panel::Panel;
use crate::tip::{Load, Tip};
use serde::Serialize;

/// Places along each side at which the stiffness against a light push is asked.
const PROBES: usize = 9;
/// Travel of the search for a pop, in thicknesses, and its steps.
const SEARCH: (f64, usize) = (6.0, 12);
/// A push that has grown this much stiffer than at first, and still grows, after these steps is not going to pop.
const STIFFER: (f64, usize) = (1.3, 2);
/// A force that falls by this share is a pop, not noise.
const FALL: f64 = 0.01;

/// Stability of a panel with nothing touching it.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct OilCan {
    /// Whether it stays where it is.
    pub stable: bool,
    /// Force a mm of a light push where it is softest.
    pub lowest_stiffness_n_per_mm: f64,
    /// Where that is.
    pub softest_at_mm: [f64; 2],
    /// Force at which it gives way there, pressed inward or pushed outward, whichever is less; none where it does
    /// not within the search.
    pub pops_at_n: Option<f64>,
    /// Travel at which it does, outward positive, mm.
    pub pops_after_mm: Option<f64>,
    /// Whether it then stays in its other shape when let go.
    pub stays_popped: Option<bool>,
}

/// Asks the panel as it stands. `None` where its stiffness cannot be had.
pub fn oil_can(panel: &Panel) -> Option<OilCan> {
    let patch = &panel.patch;
    let state = patch.state(&patch.places).ok()?;
    let factor = patch.factor(&state);
    let (bx, by) = (&patch.mesh.x.breaks, &patch.mesh.y.breaks);
    let across = |b: &[f64], k: usize| b[0] + (b[b.len() - 1] - b[0]) * (k as f64 + 1.0) / (PROBES as f64 + 1.0);
    let mut softest = (0.0, [0.0; 2]);
    for i in 0..PROBES {
        for j in 0..PROBES {
            let at = [across(bx, i), across(by, j)];
            if patch.mesh.holds(at[0], at[1]) {
                let mut x = vec![0.0; 3 * patch.places.len()];
                let load = Load::new(&patch.mesh, &Tip::Point, at, 1.0);
                load.share.iter().for_each(|(n, s)| x[3 * n + 2] = *s);
                factor.solve(&mut x);
                let give: f64 = load.share.iter().map(|(n, s)| s * x[3 * n + 2]).sum();
                if give.abs() > softest.0 {
                    softest = (give.abs(), at);
                }
            }
        }
    }
    let stable = factor.negative() == 0;
    let pop =
        [-1.0, 1.0].into_iter().filter_map(|way| pop(panel, softest.1, way)).min_by(|a, b| a.force.total_cmp(&b.force));
    Some(OilCan {
        stable,
        lowest_stiffness_n_per_mm: 1.0 / softest.0,
        softest_at_mm: softest.1,
        pops_at_n: pop.as_ref().map(|p| p.force),
        pops_after_mm: pop.as_ref().map(|p| p.travel),
        stays_popped: pop.as_ref().map(|p| p.stays),
    })
}

struct Pop {
    force: f64,
    travel: f64,
    stays: bool,
}

/// Pushes lightly at a place until the force falls; the metal is watched, not worked: what it would remember is dropped
/// as long as the push stays short of the pop.
fn pop(panel: &Panel, at: [f64; 2], way: f64) -> Option<Pop> {
    let patch = &panel.patch;
    let load = Load::new(&patch.mesh, &probe(&patch.mesh), at, way);
    let (mut places, start) = (patch.places.clone(), load.level(&patch.places));
    let step = SEARCH.0 * patch.layers.thickness() / SEARCH.1 as f64;
    let (mut level, mut force, mut peak) = (start, 0.0, (0.0, 0.0));
    let mut stiffness: Vec<f64> = Vec::new();
    for k in 1..=SEARCH.1 {
        let given = Given::Level(start + way * step * k as f64);
        let found = balance(patch, &Drive::Load(&load), given, &places, (level, force), Tolerance::default()).ok()?;
        stiffness.push((found.force - force) / step);
        (level, force, places) = (found.level, found.force, found.places);
        let growing = stiffness.is_sorted() && stiffness[k - 1] > STIFFER.0 * stiffness[0];
        if k >= STIFFER.1 && growing {
            return None;
        }
        if force > peak.0 {
            peak = (force, level - start);
        } else if force < peak.0 * (1.0 - FALL) {
            return Some(Pop { force: peak.0, travel: peak.1, stays: stays(panel, &load, places, level, start) });
        }
    }
    None
}

/// Whether the force falls below zero further on: a shape that holds itself.
fn stays(panel: &Panel, load: &Load, places: Vec<nalgebra::Vector3<f64>>, level: f64, start: f64) -> bool {
    let free = balance(
        &panel.patch,
        &Drive::Nothing,
        Given::Force(0.0),
        &places,
        (0.0, 0.0),
        Tolerance { rounds: 40, ..Tolerance::default() },
    );
    free.is_ok_and(|f| f.negative == 0 && (load.level(&f.places) - start).abs() > 0.5 * (level - start).abs())
}

/// A finger's width, so that a thin sheet is not asked at a needle's point.
fn probe(mesh: &Mesh) -> Tip {
    let width = mesh.x.breaks[mesh.x.cells()] - mesh.x.breaks[0];
    Tip::Disc { radius_mm: (0.05 * width).min(8.0) }
}

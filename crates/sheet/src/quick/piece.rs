//! The round piece about a place, with what the full sheet holds there.

use super::LIGHT_MM;
use crate::edges::{Held, Springs};
use crate::panel::Panel;
use crate::round::{Bent, Rim, Round};
use crate::spline::{Axis, Focus, graded};
use crate::strain::Modes;
use crate::yielding::Memory;
use dentwright_surface::Map;
use std::f64::consts::{PI, TAU};

/// Directions in which a ring is asked.
const AROUND: usize = 12;
/// How near the piece's give comes to the sheet's, in how many tries, and how far its radius may be off that of a disc of
/// the patch's area.
const NEAR: f64 = 0.02;
const TRIES: usize = 4;
const RANGE: [f64; 2] = [0.35, 1.5];

/// The round piece about a place with what the sheet holds there.
pub(super) fn piece(panel: &Panel, give: &Map, at: [f64; 2], reach: f64) -> Option<Round> {
    let patch = &panel.patch;
    let t = patch.layers.thickness();
    let wanted = give.sample(at[0], at[1]).or_else(|| nearest(give, at))?;
    let far = far(panel, at, wanted)?;
    let focus = Focus { at: 0.0, reach: 0.6 * reach, fine: (0.15 * reach).max(0.8 * t) };
    let mut round = cut(panel, at, Axis::new(graded(0.0, far, &[focus], 1.25, far / 10.0)))?;
    let own = round.give(&round.even(LIGHT_MM));
    if wanted > own {
        round.rim.up = round.rim.up.min(1.0 / (wanted - own) / (TAU * far));
    }
    Some(round)
}

/// Radius of the piece, mm: held at its rim as the patch is at its edge, a light push gives as far as in the full sheet.
fn far(panel: &Panel, at: [f64; 2], wanted: f64) -> Option<f64> {
    let mesh = &panel.patch.mesh;
    let side = |axis: &Axis| axis.breaks[axis.cells()] - axis.breaks[0];
    let even = (side(&mesh.x) * side(&mesh.y) / PI).sqrt();
    let (mut far, mut power) = (even, 2.0);
    let mut before: Option<(f64, f64)> = None;
    for _ in 0..TRIES {
        let focus = Focus { at: 0.0, reach: LIGHT_MM, fine: 0.5 * LIGHT_MM };
        let round = cut(panel, at, Axis::new(graded(0.0, far, &[focus], 1.4, far / 6.0)))?;
        let own = round.give(&round.even(LIGHT_MM));
        if let Some((radius, give)) = before {
            power = ((own / give).ln() / (far / radius).ln()).clamp(0.5, 4.0);
        }
        before = Some((far, own));
        if (own / wanted - 1.0).abs() < NEAR {
            break;
        }
        far = (far * (wanted / own).powf(1.0 / power)).clamp(RANGE[0] * even, RANGE[1] * even);
    }
    Some(far)
}

/// The round piece along an axis, with what the sheet holds there.
fn cut(panel: &Panel, at: [f64; 2], axis: Axis) -> Option<Round> {
    let patch = &panel.patch;
    let stiff = patch.metal.e_mpa * patch.layers.thickness();
    let edge = patch.held.first().map_or(Springs { in_plane: 0.0, out_of_plane: 0.0, turning: 0.0 }, Held::springs);
    let rim = Rim { along: edge.in_plane.min(stiff), up: stiff, turn: edge.turning.min(stiff) };
    let mean = |r: f64| {
        let height = |k: usize| {
            let (s, c) = (TAU * (k as f64 + 0.5) / AROUND as f64).sin_cos();
            patch.mesh.at(at[0] + r * c, at[1] + r * s, &patch.places).z
        };
        (0..AROUND).map(height).sum::<f64>() / AROUND as f64
    };
    let mut round = Round::new(axis, patch.metal.clone(), patch.layers.clone(), rim, &mean);
    let (strains, memory) = rings(panel, at, &round)?;
    round.hold(&strains, memory);
    Some(round)
}

fn nearest(map: &Map, at: [f64; 2]) -> Option<f64> {
    let g = map.grid;
    let hold = |v: f64, low: f64, n: usize| v.clamp(low + 1e-6, low + (n - 1) as f64 * g.step_mm - 1e-6);
    map.sample(hold(at[0], g.x0_mm, g.nx), hold(at[1], g.y0_mm, g.ny))
}

/// What the full sheet holds, meant over every ring of the piece.
fn rings(panel: &Panel, at: [f64; 2], round: &Round) -> Option<(Vec<Bent>, Vec<Memory>)> {
    let patch = &panel.patch;
    let (mesh, n) = (&patch.mesh, patch.layers.len());
    let (mut strains, mut memory) = (Vec::new(), Vec::new());
    for ring in &round.rings {
        let mut bent: Bent = Default::default();
        let mut mean = vec![Memory::default(); n];
        for k in 0..AROUND {
            let turn = TAU * (k as f64 + 0.5) / AROUND as f64;
            let (s, c) = turn.sin_cos();
            let i = mesh.nearest_point(at[0] + ring.radius * c, at[1] + ring.radius * s)?;
            let here = patch.strained(i).ok()?;
            let (s2, c2) = (2.0 * turn).sin_cos();
            let local = |m: &Modes| Modes::new(m[0], c2 * m[1] + s2 * m[2], 0.0) / AROUND as f64;
            bent.0 += local(&here.membrane);
            bent.1 += local(&here.curvature);
            for (to, from) in mean.iter_mut().zip(&patch.memory[i * n..(i + 1) * n]) {
                to.plastic += local(&from.plastic);
                to.back += local(&from.back);
                to.spent += from.spent / AROUND as f64;
            }
        }
        strains.push(bent);
        memory.extend(mean);
    }
    Some((strains, memory))
}

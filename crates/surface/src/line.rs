//! Body lines: where the panel bends along a straight ridge that runs through what was read.
//!
//! A candidate line is scored by the height's second difference across it that three quarters of its
//! length exceed. A body line bends the same way everywhere along its length; a dent bends on a part of
//! it, so this quarter does not see it.
//!
//! Limits: straight lines that cross most of what was read; the strongest one only.

use crate::grid::Map;
use rayon::prelude::*;

/// A straight body line: the points with `x cos a + y sin a = offset`.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BodyLine {
    /// Direction of the line's normal from panel x, rad.
    pub normal_rad: f64,
    /// Distance of the line from the panel's origin along the normal, mm.
    pub offset_mm: f64,
}

impl BodyLine {
    /// Signed distance of a place from the line, and the place along it, mm.
    pub fn across_along(&self, (x, y): (f64, f64)) -> (f64, f64) {
        let (sin, cos) = self.normal_rad.sin_cos();
        (x * cos + y * sin - self.offset_mm, y * cos - x * sin)
    }
}

/// Reach of the second difference while searching and while refining, mm.
const REACH_MM: [f64; 2] = [10.0, 3.0];
/// Least second difference of a line at the searching reach, mm: an eighth of a degree.
const LEAST_MM: f64 = 0.02;
/// Least length along which a line must be seen, mm.
const LEAST_LENGTH_MM: f64 = 100.0;

/// Distance between candidate lines, mm.
const SEARCH_MM: f64 = 3.0;
/// Distance between looks along a line: at a glance, and for its score, mm.
const GLANCE_MM: f64 = 12.0;
const ALONG_MM: f64 = 4.0;

/// The strongest body line of a height map, if there is one.
pub fn find_body_line(height: &Map) -> Option<BodyLine> {
    let grid = height.grid;
    let middle = grid.at(grid.nx / 2, grid.ny / 2);
    let half = 0.5 * grid.step_mm * (grid.nx as f64).hypot(grid.ny as f64);
    let centred = |normal_rad: f64, d: f64| BodyLine {
        normal_rad,
        offset_mm: middle.0 * normal_rad.cos() + middle.1 * normal_rad.sin() + d,
    };
    let strongest_at = |degrees: u32| {
        let a = f64::from(degrees).to_radians();
        let places = (0..(2.0 * half / SEARCH_MM) as usize).map(|k| -half + SEARCH_MM * k as f64);
        let scored = places.filter_map(|d| {
            let line = centred(a, d);
            let glance = bend(height, &line, half, REACH_MM[0], GLANCE_MM);
            (glance > 0.5 * LEAST_MM).then(|| (bend(height, &line, half, REACH_MM[0], ALONG_MM), a, d))
        });
        scored.fold((0.0, 0.0, 0.0), stronger)
    };
    let best = (0..180).into_par_iter().map(strongest_at).reduce(|| (0.0, 0.0, 0.0), stronger);
    if best.0 < LEAST_MM {
        return None;
    }
    let mut fine = (0.0, best.1, best.2);
    for (span_rad, span_mm) in [(0.02, 8.0), (0.004, 1.5)] {
        let (a0, d0) = (fine.1, fine.2);
        fine.0 = 0.0;
        for i in -8..=8 {
            for j in -8..=8 {
                let (a, d) = (a0 + span_rad * f64::from(i) / 8.0, d0 + span_mm * f64::from(j) / 8.0);
                let score = bend(height, &centred(a, d), half, REACH_MM[1], ALONG_MM);
                if score > fine.0 {
                    fine = (score, a, d);
                }
            }
        }
    }
    Some(centred(fine.1, fine.2))
}

/// The stronger of two candidates (score, angle, offset); the first of equals.
fn stronger(a: (f64, f64, f64), b: (f64, f64, f64)) -> (f64, f64, f64) {
    if b.0 > a.0 { b } else { a }
}

/// Second difference, mm, that three quarters of a line exceed, looked at every `step` mm along it; zero
/// where too little of it was read or it bends both ways.
fn bend(height: &Map, line: &BodyLine, half: f64, reach: f64, step: f64) -> f64 {
    let (sin, cos) = line.normal_rad.sin_cos();
    let middle = height.grid.at(height.grid.nx / 2, height.grid.ny / 2);
    let along0 = middle.1 * cos - middle.0 * sin;
    let mut found = Vec::new();
    let mut s = along0 - half;
    while s < along0 + half {
        let at = |d: f64| {
            let d = line.offset_mm + d;
            height.sample(d * cos - s * sin, d * sin + s * cos)
        };
        if let (Some(a), Some(b), Some(c)) = (at(-reach), at(0.0), at(reach)) {
            found.push(a - 2.0 * b + c);
        }
        s += step;
    }
    if (found.len() as f64) * step < LEAST_LENGTH_MM {
        return 0.0;
    }
    found.sort_unstable_by(f64::total_cmp);
    let (quarter, last) = (found.len() / 4, found.len() - 1);
    found[quarter].max(-found[last - quarter]).max(0.0)
}

/// Distances from the line at which the fitted profile has its knots, mm: fine where it bends.
pub(crate) fn profile_knots() -> Vec<f64> {
    let mut side = Vec::new();
    let (mut at, mut step) = (1.0, 1.0);
    while at < 400.0 {
        side.push(at);
        if at >= 12.0 {
            step *= 1.6;
        }
        at += step;
    }
    let mut knots: Vec<f64> = side.iter().rev().map(|v| -v).collect();
    knots.push(0.0);
    knots.extend(side);
    knots
}

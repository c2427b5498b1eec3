//! Body lines: where the panel bends along a straight ridge that runs through what was read.
//!
//! A candidate line is scored by the height's second difference across it, beyond what the panel bends
//! anyway, that seven tenths of its length exceed. A body line bends the same way everywhere along its length;
//! a dent bends on a part of it.
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
    /// The line through two places, mm; the place along it grows from the first to the second.
    pub fn through((x0, y0): (f64, f64), (x1, y1): (f64, f64)) -> Self {
        let normal_rad = ((y1 - y0).atan2(x1 - x0) - std::f64::consts::FRAC_PI_2).rem_euclid(std::f64::consts::TAU);
        let (sin, cos) = normal_rad.sin_cos();
        Self { normal_rad, offset_mm: x0 * cos + y0 * sin }
    }

    /// Signed distance of a place from the line, and the place along it, mm.
    pub fn across_along(&self, (x, y): (f64, f64)) -> (f64, f64) {
        let (sin, cos) = self.normal_rad.sin_cos();
        (x * cos + y * sin - self.offset_mm, y * cos - x * sin)
    }
}

/// Reach of the second difference while searching and while refining, mm.
const REACH_MM: [f64; 2] = [10.0, 3.0];
/// Least second difference of a line at the searching reach beyond the panel's own, mm: an eighth of a degree.
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
        let places: Vec<f64> = (0..(2.0 * half / SEARCH_MM) as usize).map(|k| SEARCH_MM * k as f64 - half).collect();
        let glance = |d: &f64| bend(height, &centred(a, *d), half, REACH_MM[0], GLANCE_MM);
        let bends: Vec<Option<Bend>> = places.iter().map(glance).collect();
        let panel = ordinary(&bends).unwrap_or_default();
        let seen = bends.iter().zip(&places).filter_map(|(bend, d)| bend.as_ref().map(|b| (b.beyond(panel), *d)));
        let scored = seen.filter(|(glance, _)| *glance > 0.5 * LEAST_MM).filter_map(|(_, d)| {
            bend(height, &centred(a, d), half, REACH_MM[0], ALONG_MM).map(|b| (b.beyond(panel), a, d))
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
                let score = bend(height, &centred(a, d), half, REACH_MM[1], ALONG_MM).map_or(0.0, |b| b.beyond(0.0));
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

/// What the panel itself bends across one direction: the middle of all places.
fn ordinary(bends: &[Option<Bend>]) -> Option<f64> {
    let mut all: Vec<f64> = bends.iter().flatten().map(|b| b.middle).collect();
    all.sort_by(f64::total_cmp);
    all.get(all.len() / 2).copied()
}

/// Second differences across a line, mm: the value that 3, 5 and 7 tenths of the line stay below.
struct Bend {
    low: f64,
    middle: f64,
    high: f64,
}

impl Bend {
    /// How far seven tenths of the line lie beyond a value, on one side of it.
    fn beyond(&self, value: f64) -> f64 {
        (self.low - value).max(value - self.high).max(0.0)
    }
}

/// Second differences along a line, looked at every `step` mm; `None` where too little of it was read.
fn bend(height: &Map, line: &BodyLine, half: f64, reach: f64, step: f64) -> Option<Bend> {
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
        return None;
    }
    found.sort_by(f64::total_cmp);
    let at = |share: f64| found[((found.len() - 1) as f64 * share).round() as usize];
    Some(Bend { low: at(0.3), middle: at(0.5), high: at(0.7) })
}

/// Knots of the cubic spline across a line, mm from it: dense where it bends, then farther and farther apart.
pub(crate) fn profile_knots() -> Vec<f64> {
    let mut side = Vec::new();
    let (mut at, mut step) = (FINEST_MM, FINEST_MM);
    while at < FARTHEST_MM {
        side.push(at);
        if at >= DENSE_MM {
            step *= WIDENING;
        }
        at += step;
    }
    let mut knots: Vec<f64> = side.iter().rev().map(|v| -v).collect();
    knots.push(0.0);
    knots.extend(side);
    knots
}

/// Between knots on the line; a cubic spline follows a rounding of twice that to a tenth of a micrometre.
const FINEST_MM: f64 = 1.5;
/// Up to here knots stay dense, mm.
const DENSE_MM: f64 = 9.0;
/// Each gap over the one before, farther out.
const WIDENING: f64 = 1.35;
/// Beyond every panel, mm.
const FARTHEST_MM: f64 = 800.0;

/// The four cubic B-splines that are not zero at a place between the fourth and the fourth last knot: index
/// of the first, and values (de Boor 1978, chapter X).
pub(crate) fn cubic_splines(knots: &[f64], at: f64) -> (usize, [f64; 4]) {
    let k = knots.partition_point(|&knot| knot <= at).clamp(4, knots.len() - 4) - 1;
    let mut b = [1.0, 0.0, 0.0, 0.0];
    for degree in 1..4 {
        let mut saved = 0.0;
        for i in 0..degree {
            let (right, left) = (knots[k + 1 + i], knots[k + 1 + i - degree]);
            let share = b[i] / (right - left);
            b[i] = saved + (right - at) * share;
            saved = (at - left) * share;
        }
        b[degree] = saved;
    }
    (k - 3, b)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::grid::Grid;

    #[test]
    fn splines_sum_to_one_and_follow_a_cubic() {
        let knots = profile_knots();
        for at in [-75.3, -9.0, -0.2, 0.0, 3.7, 41.0] {
            let (first, b) = cubic_splines(&knots, at);
            assert!((b.iter().sum::<f64>() - 1.0).abs() < 1e-12 && b.iter().all(|v| *v >= 0.0));
            // Greville's places reproduce a straight line.
            let line: f64 = (0..4).map(|i| b[i] * knots[first + i + 1..first + i + 4].iter().sum::<f64>() / 3.0).sum();
            assert!((line - at).abs() < 1e-9, "{line} for {at}");
        }
    }

    #[test]
    fn a_ridge_on_a_curved_panel_is_found_and_a_curved_panel_has_none() {
        let grid = Grid { x0_mm: -150.0, y0_mm: -70.0, step_mm: 1.0, nx: 301, ny: 141 };
        let panel = |x: f64, y: f64| -x * x / 6000.0 - y * y / 4000.0;
        assert!(find_body_line(&Map::from_fn(grid, panel)).is_none());
        let ridge = |x: f64, y: f64| {
            let t = (y - 50.0 - 0.1 * x) / 1.005;
            panel(x, y) - 0.035 * t.hypot(25.0)
        };
        let line = find_body_line(&Map::from_fn(grid, ridge)).unwrap();
        let (across, _) = line.across_along((20.0, 52.0));
        assert!(across.abs() < 1.0 && (line.normal_rad - 1.6705).abs() < 0.01, "{line:?}, {across}");
    }
}

//! Slopes that no surface has: where the height that fits them best still climbs otherwise.
//!
//! Along every edge between two cells the height's climb is held against the mean of their slopes. Noise and
//! texture leave a fraction of a milliradian; a board point taken for one a line farther, as at the rim of a
//! fold, leaves several, and the height carries its error far around.

use crate::grid::{Map, SlopeMap};
use crate::regions::{keep_large, widen};

/// Difference that texture and coarse cells do not reach, mm per mm.
const LEAST: f64 = 0.0025;
/// Nor noise, in sigmas of the slope.
const SIGMAS: f64 = 8.0;
/// Smaller patches are specks that do no harm, mm².
const SMALLEST_MM2: f64 = 2.0;
/// Cells this near to a contradiction are not believed either, mm.
const MARGIN_MM: f64 = 1.5;

/// Cells whose slopes contradict their surroundings, with a margin; none on an ordinary panel.
#[must_use]
pub fn contradicted(slopes: &SlopeMap, height: &Map) -> Vec<bool> {
    let grid = slopes.grid;
    let step = grid.step_mm;
    let mut off = vec![false; grid.len()];
    let mut check = |i: usize, j: usize, slope: &[f32]| {
        let climb = f64::from(height.values[j] - height.values[i]) / step;
        let mean = 0.5 * f64::from(slope[i] + slope[j]);
        let noise = f64::from(slopes.sigma[i].max(slopes.sigma[j]));
        if (climb - mean).abs() > LEAST.max(SIGMAS * noise) {
            (off[i], off[j]) = (true, true);
        }
    };
    for i in 0..grid.len() {
        if (i + 1) % grid.nx != 0 {
            check(i, i + 1, &slopes.dzdx);
        }
        if i + grid.nx < grid.len() {
            check(i, i + grid.nx, &slopes.dzdy);
        }
    }
    widen(&keep_large(&off, &grid, SMALLEST_MM2), &grid, MARGIN_MM)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::grid::Grid;
    use crate::integrate::{IntegrateSettings, integrate};

    fn dome(wrong: bool) -> SlopeMap {
        let grid = Grid { x0_mm: -20.0, y0_mm: -15.0, step_mm: 0.5, nx: 81, ny: 61 };
        let bell = |i: usize| {
            let (x, y) = grid.position(i);
            (x, y, -0.8 * (-(x * x + y * y) / 64.0).exp())
        };
        let patch = |x: f64, y: f64| wrong && (6.0..9.0).contains(&x) && y.abs() < 4.0;
        SlopeMap {
            grid,
            dzdx: (0..grid.len()).map(bell).map(|(x, _, z)| (-x / 32.0 * z) as f32).collect(),
            dzdy: (0..grid.len())
                .map(bell)
                .map(|(x, y, z)| (-y / 32.0 * z + if patch(x, y) { 0.012 } else { 0.0 }) as f32)
                .collect(),
            sigma: vec![1e-4; grid.len()],
        }
    }

    #[test]
    fn a_patch_a_line_off_is_found_and_a_steep_dent_is_not() {
        for wrong in [false, true] {
            let slopes = dome(wrong);
            let height = integrate(&slopes, None, &IntegrateSettings::default());
            let off = contradicted(&slopes, &height);
            let count = off.iter().filter(|o| **o).count();
            assert_eq!(count > 0, wrong, "{count} cells");
            // The patch is 3 x 8 mm, 96 cells; what is marked is it and its margin, not the panel.
            assert!(!wrong || (60..500).contains(&count), "{count}");
        }
    }
}

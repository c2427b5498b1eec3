//! What a hole whose metal was too steep to read hides, as far as its rim tells: low or high, and how far at least.
//!
//! The rim was read, so the damage goes at least as far as the rim does: its farthest value less twice its doubt holds
//! whatever lies inside. Nothing is added for the way the metal must still take to turn: a bend of 5 mm radius turns a
//! slope of 100 mrad within half a millimetre.
//!
//! Low or high is told by three signs together: how far the rim stands off, that none of it stands off as clearly the
//! other way, and that it goes on that way toward the hole. A ring of metal pushed up around a deep low (its crown) has
//! these signs of a high too, so a rim must stand higher than crowns do before a hole is called high.

use crate::grid::Map;
use crate::regions::rings;
use crate::spots::SpotKind;
use serde::{Deserialize, Serialize};

/// A hole whose metal was too steep to read.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct Fold {
    /// Low or high; none where its rim does not tell.
    pub kind: Option<SpotKind>,
    /// It goes at least this far, mm, negative for a low; none where the rim does not tell.
    pub at_least_mm: Option<f64>,
    /// Middle of the hole, panel x, mm.
    pub x_mm: f64,
    /// Middle of the hole, panel y, mm.
    pub y_mm: f64,
    /// Diameter of a circle of its area, mm.
    pub across_mm: f64,
    /// Its area, mm².
    pub area_mm2: f64,
    /// Its cells on the grid.
    #[serde(skip)]
    pub cells: Vec<usize>,
}

/// How far the rim of a low must stand off at least to be told, mm: ditches around a high are shallower. A guess.
const DITCH_MM: f64 = 0.03;
/// The same for a high: the crown around a low of three millimetres is lower. A guess from dents of known form.
const CROWN_MM: f64 = 0.1;
/// Share of its farthest value that a rim may stand off the other way.
const OTHER_WAY: f64 = 0.2;
/// Rings of cells around a hole that are its rim, and the rings that tell which way it goes on, mm.
const RIM_MM: f64 = 1.0;
const OUTER_MM: f64 = 2.5;
/// The bound holds with this many doubts.
const SIGMAS: f64 = 2.0;

impl Fold {
    /// What the rim of a hole tells. `cells` is one connected hole, none of it read.
    #[must_use]
    pub fn of(deviation: &Map, sigma: &Map, cells: Vec<usize>) -> Self {
        let grid = deviation.grid;
        let n = cells.len().max(1) as f64;
        let middle = cells.iter().map(|&i| grid.position(i)).fold((0.0, 0.0), |s, p| (s.0 + p.0 / n, s.1 + p.1 / n));
        let area_mm2 = cells.len() as f64 * grid.step_mm.powi(2);
        let told = told(deviation, sigma, &cells);
        Self {
            kind: told.map(|(kind, _)| kind),
            at_least_mm: told.map(|(_, mm)| mm),
            x_mm: middle.0,
            y_mm: middle.1,
            across_mm: 2.0 * (area_mm2 / std::f64::consts::PI).sqrt(),
            area_mm2,
            cells,
        }
    }

    /// Read cells around it up to the width of its rim.
    pub(crate) fn rim(&self, deviation: &Map) -> Vec<usize> {
        rings(&deviation.grid, &self.cells, RIM_MM, |i| deviation.values[i].is_finite())
            .into_iter()
            .map(|(i, _)| i)
            .collect()
    }
}

fn told(deviation: &Map, sigma: &Map, cells: &[usize]) -> Option<(SpotKind, f64)> {
    let step = deviation.grid.step_mm;
    let around = rings(&deviation.grid, cells, OUTER_MM, |i| deviation.values[i].is_finite());
    let inner = |ring: usize| ring as f64 * step <= RIM_MM.max(step);
    // Farthest each way, doubt counted, and the mean near the hole and away from it.
    let (mut low, mut high) = (0.0f64, 0.0f64);
    let (mut near, mut away) = ((0.0, 0.0), (0.0, 0.0));
    for &(i, ring) in &around {
        let (d, s) = (f64::from(deviation.values[i]), SIGMAS * f64::from(sigma.values[i]));
        let sum = if inner(ring) { &mut near } else { &mut away };
        *sum = (sum.0 + d, sum.1 + 1.0);
        if inner(ring) && s.is_finite() {
            (low, high) = (low.min(d + s), high.max(d - s));
        }
    }
    if near.1 == 0.0 || away.1 == 0.0 {
        return None;
    }
    let goes_on = near.0 / near.1 - away.0 / away.1;
    let is_low = -low >= DITCH_MM && high <= -OTHER_WAY * low && goes_on < 0.0;
    let is_high = high >= CROWN_MM && -low <= OTHER_WAY * high && goes_on > 0.0;
    if is_low { Some((SpotKind::Low, low)) } else { is_high.then_some((SpotKind::High, high)) }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::grid::Grid;
    use crate::regions::areas;

    const GRID: Grid = Grid { x0_mm: -30.0, y0_mm: -25.0, step_mm: 0.5, nx: 121, ny: 101 };

    /// A dent with a crown of known form, unread where it is steeper than a limit on the side of positive x.
    fn told_of(depth_mm: f64, crown: f64, hole: impl Fn(f64, f64) -> bool) -> Fold {
        let shape = |x: f64, y: f64| {
            let q = (x * x + y * y) / 64.0;
            -depth_mm * (-q).exp() * (1.0 - crown * q)
        };
        let deviation = Map::from_fn(GRID, |x, y| if hole(x, y) { f64::NAN } else { shape(x, y) });
        let sigma = Map::from_fn(GRID, |x, y| 0.0005 + 0.004 * shape(x, y).abs());
        let open: Vec<bool> = deviation.values.iter().map(|v| v.is_nan()).collect();
        Fold::of(&deviation, &sigma, areas(&open, &GRID).remove(0))
    }

    #[test]
    fn the_bound_lies_under_the_true_depth_and_is_of_use() {
        for (depth, side) in [(2.2, 1.0), (1.0, 1.0), (2.2, -1.0)] {
            let fold = told_of(side * depth, 0.1, |x, y| (x - 1.0).hypot(y) < 6.0);
            assert_eq!(fold.kind, Some(if side > 0.0 { SpotKind::Low } else { SpotKind::High }));
            let bound = fold.at_least_mm.unwrap() * -side;
            assert!((0.5 * depth..depth).contains(&bound), "{bound} of {depth}");
            assert!((fold.across_mm - 12.0).abs() < 0.5 && (fold.x_mm - 1.0).abs() < 0.1, "{fold:?}");
        }
    }

    #[test]
    fn a_low_that_hides_inside_its_crown_is_not_called_high() {
        // 3 mm deep, crown 0.35: a ring of 20 µm at 15.7 mm; the hole takes all that is low and ends on the ring's
        // outer flank, which climbs toward it.
        for radius in [12.0, 14.0, 15.5, 17.0, 19.0] {
            for crown in [0.2, 0.35, 0.5] {
                let fold = told_of(3.0, crown, |x, y| x.hypot(y) < radius);
                assert_ne!(fold.kind, Some(SpotKind::High), "radius {radius}, crown {crown}: {fold:?}");
            }
        }
    }

    #[test]
    fn a_rim_that_says_nothing_says_so() {
        let fold = told_of(0.01, 0.0, |x, y| x.hypot(y) < 6.0);
        assert_eq!((fold.kind, fold.at_least_mm), (None, None));
    }
}

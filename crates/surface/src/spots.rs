//! Lows and highs: connected areas of the deviation that stand out from texture and doubt; areas that touch are
//! parted at the saddle between them, and joined again where a hole that was too steep to read parts them.

use crate::average::average;
use crate::basins::basins;
use crate::fold::Fold;
use crate::grid::{Grid, Map};
use crate::regions::areas;
use serde::{Deserialize, Serialize};
use std::collections::HashSet;

/// Below or above the intended shape.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[serde(rename_all = "lowercase")]
pub enum SpotKind {
    /// Metal below the true surface.
    Low,
    /// Metal above it.
    High,
}

/// One low or high.
#[derive(Debug, Clone, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct Spot {
    /// Low or high.
    pub kind: SpotKind,
    /// Place of the extreme, panel x, mm.
    pub x_mm: f64,
    /// Place of the extreme, panel y, mm.
    pub y_mm: f64,
    /// Deviation at the extreme, mm; negative for a low.
    pub height_mm: f64,
    /// Its one-sigma doubt, mm.
    pub sigma_mm: f64,
    /// Long axis of the ellipse with the area's second moments, mm.
    pub length_mm: f64,
    /// Short axis, mm.
    pub width_mm: f64,
    /// Long axis from panel x toward y, degrees, -90 to 90.
    pub angle_deg: f64,
    /// Area that stands out, mm².
    pub area_mm2: f64,
    /// Volume between it and the intended shape, mm³, positive.
    pub volume_mm3: f64,
    /// Where part of it was too steep to read: it goes at least this far, mm, negative for a low.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub at_least_mm: Option<f64>,
    /// The holes in it that were too steep to read, by their place in the reading's list of them.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub folds: Vec<usize>,
}

/// What counts as a spot.
#[derive(Debug, Clone)]
pub struct SpotSettings {
    /// Smallest deviation of a spot, mm.
    pub least_mm: f64,
    /// And this many times the doubt.
    pub sigmas: f64,
    /// Averaging before the search, mm: keeps orange peel out.
    pub average_mm: f64,
    /// Smaller areas are texture, mm².
    pub least_mm2: f64,
}

impl Default for SpotSettings {
    fn default() -> Self {
        Self { least_mm: 0.0025, sigmas: 3.0, average_mm: 3.0, least_mm2: 12.0 }
    }
}

/// Finds the lows and highs of a deviation map, deepest or highest first. `folds` are its holes that were too steep to
/// read: what borders one and goes the same way is one spot with it.
pub fn find_spots(deviation: &Map, sigma: &Map, folds: &[Fold], settings: &SpotSettings) -> Vec<Spot> {
    let grid = deviation.grid;
    let smooth = average(deviation, settings.average_mm);
    let stands_out = |i: usize, sign: f32| {
        let limit = settings.least_mm.max(settings.sigmas * f64::from(sigma.values[i]));
        f64::from(sign * smooth.values[i]) > limit
    };
    let mut spots = Vec::new();
    for (kind, sign) in [(SpotKind::Low, -1.0f32), (SpotKind::High, 1.0)] {
        // The rim of a strong spot still counts at its own doubt's level or the least height.
        let core: Vec<bool> = (0..grid.len()).map(|i| stands_out(i, sign)).collect();
        let found = areas(&core, &grid);
        let size = |i: usize| f64::from(sign * smooth.values[i]);
        let parted: Vec<Vec<usize>> = found.iter().flat_map(|area| basins(area, &grid, size, PROMINENCE)).collect();
        let joined = joined(parted, deviation, folds, kind);
        let large = joined.iter().filter(|(a, _)| a.len() as f64 * grid.step_mm.powi(2) >= settings.least_mm2);
        spots.extend(large.map(|(area, of)| {
            let mut spot = describe(area, kind, sign, deviation, &smooth, sigma);
            across_holes(&mut spot, area, of, folds, &grid);
            spot
        }));
    }
    spots.sort_by(|a, b| b.height_mm.abs().total_cmp(&a.height_mm.abs()));
    spots
}

/// A spot that touches a larger one counts as its own where the saddle between is lower than its extreme by this
/// share of it.
const PROMINENCE: f64 = 0.3;

/// Areas with the folds of their kind that they border; those that border the same one are one area.
fn joined(areas: Vec<Vec<usize>>, map: &Map, folds: &[Fold], kind: SpotKind) -> Vec<(Vec<usize>, Vec<usize>)> {
    let mut all: Vec<(Vec<usize>, Vec<usize>)> = areas.into_iter().map(|area| (area, Vec::new())).collect();
    for (number, fold) in folds.iter().enumerate().filter(|(_, fold)| fold.kind == Some(kind)) {
        let rim: HashSet<usize> = fold.rim(map).into_iter().collect();
        let (at_rim, mut apart): (Vec<_>, Vec<_>) =
            all.into_iter().partition(|(area, _)| area.iter().any(|i| rim.contains(i)));
        let together = at_rim.into_iter().reduce(|mut one, more| {
            one.0.extend(more.0);
            one.1.extend(more.1);
            one
        });
        if let Some((area, mut of)) = together {
            of.push(number);
            apart.push((area, of));
        }
        all = apart;
    }
    all
}

/// A spot with holes in it: they count toward its size, and it goes at least as far as their rims do.
fn across_holes(spot: &mut Spot, area: &[usize], of: &[usize], folds: &[Fold], grid: &Grid) {
    if of.is_empty() {
        return;
    }
    let holes = of.iter().map(|&k| &folds[k]);
    let cells: Vec<usize> = area.iter().chain(holes.clone().flat_map(|fold| &fold.cells)).copied().collect();
    size_up(spot, &cells, grid);
    let own = spot.height_mm.abs() - BOUND_SIGMAS * spot.sigma_mm;
    let least = holes.filter_map(|fold| fold.at_least_mm).map(f64::abs).fold(own.max(0.0), f64::max);
    spot.at_least_mm = Some(least.copysign(spot.height_mm));
    spot.folds = of.to_vec();
}

/// Doubts that a bound is kept below what was read.
const BOUND_SIGMAS: f64 = 2.0;

fn describe(area: &[usize], kind: SpotKind, sign: f32, deviation: &Map, smooth: &Map, sigma: &Map) -> Spot {
    let grid = deviation.grid;
    let light = |i: usize| peak_value(deviation, &grid, i);
    let top = area.iter().copied().max_by(|&a, &b| (sign * smooth.values[a]).total_cmp(&(sign * smooth.values[b])));
    let top = top.unwrap_or(area[0]);
    let cell = grid.step_mm * grid.step_mm;
    let (x_mm, y_mm) = grid.position(top);
    let mut spot = Spot {
        kind,
        x_mm,
        y_mm,
        height_mm: light(top),
        sigma_mm: f64::from(sigma.values[top]),
        length_mm: 0.0,
        width_mm: 0.0,
        angle_deg: 0.0,
        area_mm2: 0.0,
        volume_mm3: area.iter().map(|&i| f64::from(deviation.values[i]).abs() * cell).sum(),
        at_least_mm: None,
        folds: Vec::new(),
    };
    size_up(&mut spot, area, &grid);
    spot
}

/// Size, turn and area from the second moments of cells.
fn size_up(spot: &mut Spot, cells: &[usize], grid: &Grid) {
    let n = cells.len() as f64;
    let points: Vec<(f64, f64)> = cells.iter().map(|&i| grid.position(i)).collect();
    let mean = points.iter().fold((0.0, 0.0), |s, p| (s.0 + p.0 / n, s.1 + p.1 / n));
    let (mut xx, mut xy, mut yy) = (0.0, 0.0, 0.0);
    for (x, y) in points {
        let (dx, dy) = (x - mean.0, y - mean.1);
        xx += dx * dx / n;
        xy += dx * dy / n;
        yy += dy * dy / n;
    }
    let half_trace = 0.5 * (xx + yy);
    let root = (0.25 * (xx - yy).powi(2) + xy * xy).sqrt();
    let cell = grid.step_mm * grid.step_mm;
    spot.length_mm = 4.0 * (half_trace + root).sqrt();
    spot.width_mm = 4.0 * (half_trace - root).max(cell / 12.0).sqrt();
    spot.angle_deg = (0.5 * (2.0 * xy).atan2(xx - yy)).to_degrees();
    spot.area_mm2 = n * cell;
}

/// Mean of the 3 x 3 cells around the extreme.
fn peak_value(map: &Map, grid: &Grid, i: usize) -> f64 {
    let (ix, iy) = (i % grid.nx, i / grid.nx);
    let (mut sum, mut count) = (0.0, 0.0);
    for y in iy.saturating_sub(1)..(iy + 2).min(grid.ny) {
        for x in ix.saturating_sub(1)..(ix + 2).min(grid.nx) {
            let v = f64::from(map.values[y * grid.nx + x]);
            if v.is_finite() {
                sum += v;
                count += 1.0;
            }
        }
    }
    sum / f64::max(count, 1.0)
}

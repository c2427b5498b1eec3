//! What a round of work changed: a later reading less an earlier one laid on it, with its own doubt.
//!
//! The doubt of the change is that of both deviations, and that of the laying: where a place is not known to better
//! than `σ`, a slope `s` makes `σ s` of height. What does not stand out of that doubt is not called a change.
//!
//! Limits: both readings stand on an intended shape of their own, so a bow of the whole patch is not told from a
//! change of it. Neighbouring errors are alike over about a centimetre, which is what a volume's doubt rests on.

use crate::average::average;
use crate::grid::{Grid, Map};
use crate::laying::Laying;
use crate::regions::areas;
use serde::{Deserialize, Serialize};

/// A deviation with its doubt, mm.
#[derive(Debug, Clone, Copy)]
pub struct Measured<'a> {
    /// Deviation from the intended shape.
    pub deviation: &'a Map,
    /// Its one-sigma doubt.
    pub sigma: &'a Map,
}

/// What counts as a change.
#[derive(Debug, Clone)]
pub struct ChangeSettings {
    /// Smallest change, mm.
    pub least_mm: f64,
    /// And this many times its doubt.
    pub sigmas: f64,
    /// Averaging before the search, mm: keeps orange peel out.
    pub average_mm: f64,
    /// Smaller areas are not told, mm².
    pub least_mm2: f64,
}

impl Default for ChangeSettings {
    fn default() -> Self {
        Self { least_mm: 0.0025, sigmas: 3.0, average_mm: 3.0, least_mm2: 12.0 }
    }
}

/// Nearer to the intended shape than before, or farther from it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum Way {
    /// Nearer.
    Better,
    /// Farther.
    Worse,
}

/// An area that changed. Places in the later reading's frame.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct Worked {
    /// Nearer to the intended shape, or farther from it.
    pub way: Way,
    /// Place of the largest change, panel x, mm.
    pub x_mm: f64,
    /// Place of the largest change, panel y, mm.
    pub y_mm: f64,
    /// Deviation there before, mm.
    pub before_mm: f64,
    /// Deviation there now, mm.
    pub after_mm: f64,
    /// Change there, mm; positive is up.
    pub change_mm: f64,
    /// Its one-sigma doubt, mm.
    pub sigma_mm: f64,
    /// Area, mm².
    pub area_mm2: f64,
    /// Volume moved in it, up less down, mm³.
    pub volume_mm3: f64,
    /// Its one-sigma doubt, mm³.
    pub volume_sigma_mm3: f64,
}

/// A volume with its doubt, mm³.
#[derive(Debug, Clone, Copy, Default, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct Volume {
    /// mm³.
    pub mm3: f64,
    /// One-sigma doubt, mm³.
    pub sigma_mm3: f64,
}

/// A change.
#[derive(Debug, Clone)]
pub struct Change {
    /// Later less earlier deviation, mm, on the later grid; NaN where either was not read.
    pub map: Map,
    /// Its one-sigma doubt, mm.
    pub sigma: Map,
    /// The earlier deviation laid on the later grid, mm.
    pub before: Map,
    /// Areas that changed, the most changed first.
    pub worked: Vec<Worked>,
    /// Volume that came up.
    pub raised: Volume,
    /// Volume that went down.
    pub lowered: Volume,
    /// Share of the later reading's cells that the earlier one read too.
    pub common_fraction: f64,
}

/// Compares a later reading with an earlier one.
#[must_use]
pub fn change(earlier: Measured, later: Measured, laying: &Laying, settings: &ChangeSettings) -> Change {
    let grid = later.deviation.grid;
    let before = laying.laid(earlier.deviation, grid);
    let before_sigma = laying.laid(earlier.sigma, grid);
    let map = zipped(later.deviation, &before, |l, e| l - e);
    let doubt = |i: usize| {
        let shifted = laying.place_sigma_at(grid.position(i)) * steepness(&before, i);
        let (e, l) = (f64::from(before_sigma.values[i]), f64::from(later.sigma.values[i]));
        (e * e + l * l + shifted * shifted).sqrt() as f32
    };
    let smooth = average(&map, settings.average_mm);
    let mut sigma = Map { grid, values: (0..grid.len()).map(doubt).collect() };
    let changed = standing_out(&smooth, &sigma, settings);
    without_the_common(&mut sigma, &map, &changed);
    let changed = standing_out(&smooth, &sigma, settings);
    let nearer = |i: usize| later.deviation.values[i].abs() < before.values[i].abs();
    let mut worked = Vec::new();
    for way in [Way::Better, Way::Worse] {
        let mask: Vec<bool> = (0..grid.len()).map(|i| changed[i] && nearer(i) == (way == Way::Better)).collect();
        let large = |area: &Vec<usize>| area.len() as f64 * grid.step_mm.powi(2) >= settings.least_mm2;
        let found = areas(&mask, &grid).into_iter().filter(large);
        worked.extend(found.map(|area| describe(&area, way, later.deviation, &before, &map, &smooth, &sigma)));
    }
    worked.sort_by(|a, b| b.change_mm.abs().total_cmp(&a.change_mm.abs()));
    let cells =
        |up: bool| -> Vec<usize> { (0..grid.len()).filter(|&i| changed[i] && (map.values[i] > 0.0) == up).collect() };
    let (raised, lowered) = (volume(&map, &sigma, &cells(true)), volume(&map, &sigma, &cells(false)));
    let common = map.values.iter().filter(|v| v.is_finite()).count() as f64;
    let read = later.deviation.values.iter().filter(|v| v.is_finite()).count().max(1) as f64;
    Change {
        raised,
        lowered: Volume { mm3: -lowered.mm3, ..lowered },
        common_fraction: common / read,
        map,
        sigma,
        before,
        worked,
    }
}

/// Cells whose averaged height stands out of its doubt.
fn standing_out(smooth: &Map, sigma: &Map, settings: &ChangeSettings) -> Vec<bool> {
    let limit = |s: f32| settings.least_mm.max(settings.sigmas * f64::from(s));
    smooth.values.iter().zip(&sigma.values).map(|(h, s)| f64::from(h.abs()) > limit(*s)).collect()
}

/// Within these distances of what changed its skirts count as error, mm: the nearer, the more of them; the last holds all
/// that is farther.
const SKIRTS_MM: [f64; 5] = [5.0, 10.0, 20.0, 40.0, f64::INFINITY];
/// A mean square of fewer cells says little.
const CELLS: usize = 200;

/// Takes out of the doubt what both readings have in common and the difference is rid of: the paint's texture and much of
/// the poses, which each of them counts as its own error. Where nothing changed the difference is the error itself, so its
/// mean square there tells how much that is, ring by ring about what changed: the error is larger beside it than far off.
fn without_the_common(sigma: &mut Map, change: &Map, changed: &[bool]) {
    let far = steps_from(changed, &change.grid);
    let ring = |i: usize| {
        let mm = far[i] as f64 * change.grid.step_mm;
        SKIRTS_MM.iter().position(|limit| mm <= *limit).unwrap_or(SKIRTS_MM.len() - 1)
    };
    let (mut said, mut found) = ([0.0; SKIRTS_MM.len()], [0.0; SKIRTS_MM.len()]);
    let mut cells = [0usize; SKIRTS_MM.len()];
    for i in (0..changed.len()).filter(|&i| !changed[i] && change.values[i].is_finite()) {
        said[ring(i)] += f64::from(sigma.values[i]).powi(2);
        found[ring(i)] += f64::from(change.values[i]).powi(2);
        cells[ring(i)] += 1;
    }
    // a ring of few cells goes by the next one outward, the outermost by the next one inward
    let means: [Option<[f64; 2]>; SKIRTS_MM.len()] = std::array::from_fn(|k| {
        let enough = |k: &usize| cells[*k] >= CELLS;
        let k = (k..cells.len()).find(enough).or_else(|| (0..k).rev().find(enough))?;
        Some([said[k], found[k]].map(|sum: f64| sum / cells[k] as f64))
    });
    for i in 0..changed.len() {
        let Some([said, found]) = means[ring(i)] else { return };
        let own = f64::from(sigma.values[i]).powi(2);
        sigma.values[i] = (own - (said - found).max(0.0)).max(found).sqrt() as f32;
    }
}

/// How many steps along rows and columns every cell is from the nearest of these; none of them is out of all reach.
fn steps_from(mask: &[bool], grid: &Grid) -> Vec<u32> {
    let mut steps: Vec<u32> = mask.iter().map(|m| if *m { 0 } else { u32::MAX }).collect();
    let mut edge: std::collections::VecDeque<usize> = (0..mask.len()).filter(|&i| mask[i]).collect();
    while let Some(i) = edge.pop_front() {
        for j in grid.beside(i).into_iter().flatten() {
            if steps[j] == u32::MAX {
                steps[j] = steps[i] + 1;
                edge.push_back(j);
            }
        }
    }
    steps
}

/// What is left of the damage on the cells of a map that were read.
#[derive(Debug, Clone, Copy, Default, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct Residual {
    /// Largest deviation that stands out, mm, signed; 0 where none does.
    pub largest_mm: f64,
    /// Its one-sigma doubt, mm; the ordinary doubt where none stands out.
    pub sigma_mm: f64,
    /// Volume of what stands out, lows and highs together.
    pub volume: Volume,
}

/// What is left of the damage, by the same measure as a change.
#[must_use]
pub fn residual(of: Measured, settings: &ChangeSettings) -> Residual {
    let grid = of.deviation.grid;
    let smooth = average(of.deviation, settings.average_mm);
    let mask = standing_out(&smooth, of.sigma, settings);
    let large = |area: &Vec<usize>| area.len() as f64 * grid.step_mm.powi(2) >= settings.least_mm2;
    let cells: Vec<usize> = areas(&mask, &grid).into_iter().filter(large).flatten().collect();
    let size = Map { grid, values: of.deviation.values.iter().map(|v| v.abs()).collect() };
    let largest = cells.iter().copied().max_by(|&a, &b| smooth.values[a].abs().total_cmp(&smooth.values[b].abs()));
    Residual {
        largest_mm: largest.map_or(0.0, |i| f64::from(smooth.values[i])),
        sigma_mm: largest.map_or_else(|| ordinary(of.sigma), |i| f64::from(of.sigma.values[i])),
        volume: volume(&size, of.sigma, &cells),
    }
}

/// Over this length neighbouring errors are alike, mm: what poses and the intended shape leave. A guess from
/// known-truth captures.
const ALIKE_MM: f64 = 10.0;

/// Volume under some cells; their errors count as alike over [`ALIKE_MM`].
fn volume(map: &Map, sigma: &Map, cells: &[usize]) -> Volume {
    let cell = map.grid.step_mm.powi(2);
    let alike = (ALIKE_MM.powi(2) / cell).clamp(1.0, cells.len().max(1) as f64);
    let squares: f64 = cells.iter().map(|&i| f64::from(sigma.values[i]).powi(2)).sum();
    Volume {
        mm3: cells.iter().map(|&i| f64::from(map.values[i]) * cell).sum(),
        sigma_mm3: cell * (squares * alike).sqrt(),
    }
}

fn describe(area: &[usize], way: Way, after: &Map, before: &Map, map: &Map, smooth: &Map, sigma: &Map) -> Worked {
    let top = area.iter().copied().max_by(|&a, &b| smooth.values[a].abs().total_cmp(&smooth.values[b].abs()));
    let top = top.unwrap_or(area[0]);
    let (x_mm, y_mm) = map.grid.position(top);
    let volume = volume(map, sigma, area);
    Worked {
        way,
        x_mm,
        y_mm,
        before_mm: f64::from(before.values[top]),
        after_mm: f64::from(after.values[top]),
        change_mm: f64::from(map.values[top]),
        sigma_mm: f64::from(sigma.values[top]),
        area_mm2: area.len() as f64 * map.grid.step_mm.powi(2),
        volume_mm3: volume.mm3,
        volume_sigma_mm3: volume.sigma_mm3,
    }
}

fn zipped(a: &Map, b: &Map, f: impl Fn(f32, f32) -> f32) -> Map {
    Map { grid: a.grid, values: a.values.iter().zip(&b.values).map(|(a, b)| f(*a, *b)).collect() }
}

/// Middle one of a map's values.
fn ordinary(map: &Map) -> f64 {
    let mut all: Vec<f32> = map.values.iter().copied().filter(|v| v.is_finite()).collect();
    all.sort_by(f32::total_cmp);
    all.get(all.len() / 2).copied().map_or(f64::NAN, f64::from)
}

/// Slope of a map at a cell from its four neighbours, where they were read.
fn steepness(map: &Map, i: usize) -> f64 {
    let Grid { nx, ny, step_mm, .. } = map.grid;
    let along = |at: usize, length: usize, stride: usize| {
        let (back, ahead) = (at.min(1), (length - 1 - at).min(1));
        let rise = f64::from(map.values[i + ahead * stride]) - f64::from(map.values[i - back * stride]);
        if rise.is_finite() && back + ahead > 0 { rise / ((back + ahead) as f64 * step_mm) } else { 0.0 }
    };
    along(i % nx, nx, 1).hypot(along(i / nx, ny, nx))
}
